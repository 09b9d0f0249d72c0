import { type CutJob, type Length, ticks } from '@trimwell/geometry';
import fc from 'fast-check';

const unit = 100;

/** Lengths in coarse steps with an odd tick now and then, so that fits are often exact and sometimes just missed. */
function side(most: number): fc.Arbitrary<Length> {
  return fc
    .tuple(fc.integer({ min: 1, max: most }), fc.constantFrom(0, 0, 0, 0, 0, 1, -1))
    .map(([steps, odd]) => ticks(Math.max(1, steps * unit + odd)));
}

/** Jobs with every rule of the trimmer on and off, several papers, limits, margins, directions and prices. */
export function randomJob(): fc.Arbitrary<CutJob> {
  const margin = fc.constantFrom(0, 0, 0, 50, 100).map(ticks);
  const paper = fc.record({
    width: side(14).map((length) => ticks(length + 300)),
    height: side(14).map((length) => ticks(length + 300)),
    sheets: fc.option(fc.integer({ min: 0, max: 4 }), { nil: null, freq: 2 }),
    directional: fc.boolean(),
    margins: fc.record({ top: margin, right: margin, bottom: margin, left: margin }),
  });
  const blank = fc.record({
    width: side(9),
    height: side(9),
    quantity: fc.integer({ min: 0, max: 7 }),
    turn: fc.boolean(),
    papers: fc.option(fc.nat({ max: 2 }), { nil: null, freq: 2 }),
  });
  const trimmer = fc.record({
    bladeLength: fc.option(
      fc.integer({ min: 5, max: 20 }).map((n) => ticks(n * unit)),
      { nil: null, freq: 2 },
    ),
    narrowestStrip: fc.constantFrom(0, 0, 150, 300).map(ticks),
    thinnestTrim: fc.constantFrom(0, 0, 2, 60).map(ticks),
    kerf: fc.constantFrom(0, 0, 0, 1, 7).map(ticks),
    rulerStep: fc.constantFrom(null, null, 1, 50, 100).map((step) => (step === null ? null : ticks(step))),
    stoppedCuts: fc.boolean(),
  });
  return fc
    .record({
      trimmer,
      papers: fc.array(paper, { minLength: 1, maxLength: 3 }),
      blanks: fc.array(blank, { minLength: 1, maxLength: 5 }),
      prices: fc.option(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 3, maxLength: 3 }), {
        nil: null,
        freq: 1,
      }),
    })
    .map(({ trimmer: rules, papers, blanks, prices }) => ({
      trimmer: rules,
      papers: papers.map((one, index) => ({ ...one, id: `p${index}`, price: prices?.[index] ?? null })),
      blanks: blanks.map((one, index) => ({
        ...one,
        id: `b${index}`,
        papers: one.papers === null ? null : [`p${one.papers % papers.length}`],
      })),
    }));
}
