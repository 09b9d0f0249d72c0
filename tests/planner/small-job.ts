import { type CutJob, ticks } from '@trimwell/geometry';
import fc from 'fast-check';

/** Sizes of small jobs. */
export interface SmallJobSizes {
  /** Longest side of a sheet and of a blank, in ticks. */
  readonly sheet: number;
  readonly blank: number;
  readonly kinds: number;
  /** Most copies of a blank. */
  readonly copies: number;
  /** Whether the trimmer has rules. */
  readonly rules: boolean;
}

/**
 * Jobs of a few ticks, for solvers that try everything: two or three papers of different size, limited or not, directional or not;
 * blanks that may turn or not, from all papers or some.
 */
export function smallJob({ sheet, blank, kinds, copies, rules }: SmallJobSizes): fc.Arbitrary<CutJob> {
  const none = ticks(0);
  const side = (least: number, most: number) => fc.integer({ min: least, max: most }).map(ticks);
  const paper = fc.record({
    width: side(Math.ceil(sheet / 2), sheet),
    height: side(Math.ceil(sheet / 2), sheet),
    sheets: fc.constantFrom(null, null, 1, 2, 3),
    directional: fc.boolean(),
  });
  const wanted = fc.record({
    width: side(1, blank),
    height: side(1, blank),
    quantity: fc.integer({ min: 1, max: copies }),
    turn: fc.boolean(),
    papers: fc.constantFrom<(readonly number[] | null)[]>(null, null, null, [0], [1], [0, 1]),
  });
  const trimmer = rules
    ? fc.record({
        bladeLength: fc
          .constantFrom(null, null, sheet - 1, sheet - 2)
          .map((most) => (most === null ? null : ticks(most))),
        narrowestStrip: fc.constantFrom(0, 1, 2, 3).map(ticks),
        thinnestTrim: fc.constantFrom(0, 1, 2).map(ticks),
        kerf: fc.constantFrom(0, 0, 1).map(ticks),
        rulerStep: fc.constantFrom(null, null, 2).map((step) => (step === null ? null : ticks(step))),
        stoppedCuts: fc.constant(false),
      })
    : fc.constant({
        bladeLength: null,
        narrowestStrip: none,
        thinnestTrim: none,
        kerf: none,
        rulerStep: null,
        stoppedCuts: false,
      });
  return fc
    .record({
      trimmer,
      papers: fc.uniqueArray(paper, {
        minLength: 2,
        maxLength: 3,
        selector: ({ width, height }) => `${width} ${height}`,
      }),
      blanks: fc.array(wanted, { minLength: 2, maxLength: kinds }),
    })
    .map(({ trimmer: rulesOf, papers, blanks }) => ({
      trimmer: rulesOf,
      papers: papers.map((one, index) => ({
        ...one,
        id: `p${index}`,
        price: null,
        margins: { top: none, right: none, bottom: none, left: none },
      })),
      blanks: blanks.map((one, index) => ({
        ...one,
        id: `b${index}`,
        papers: one.papers?.map((at) => `p${at}`) ?? null,
      })),
    }));
}
