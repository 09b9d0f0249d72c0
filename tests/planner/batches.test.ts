import { type CutJob, checkPlan, improvePlan, planCuts, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';

/** Width, height and number in ruler marks of a sixteenth of an inch or in millimetres, as a blank of a batch. */
type Batch = readonly (readonly [width: number, height: number, count: number, turn: boolean])[];

/** Blanks of one paper in a club trimmer: a blade, a strip that can be held, a ruler. */
function jobOf(sheet: readonly [number, number], batches: readonly Batch[], mark: number): CutJob {
  const none = ticks(0);
  return {
    trimmer: {
      bladeLength: ticks(305 * 640),
      narrowestStrip: ticks(4 * mark),
      thinnestTrim: ticks(mark),
      kerf: none,
      rulerStep: ticks(mark),
      stoppedCuts: false,
    },
    papers: batches.map((_, at) => ({
      id: `p${at}`,
      width: ticks(sheet[0] * mark),
      height: ticks(sheet[1] * mark),
      sheets: null,
      directional: false,
      price: null,
      margins: { top: none, right: none, bottom: none, left: none },
    })),
    blanks: batches.flatMap((batch, at) =>
      batch.map(([width, height, quantity, turn], index) => ({
        id: `b${at} ${index}`,
        width: ticks(width * mark),
        height: ticks(height * mark),
        quantity,
        papers: [`p${at}`],
        turn,
      })),
    ),
  };
}

const SIXTEENTH = 1016;
const MILLIMETRE = 640;

/** Batches of invented cards; no published values, so that only what is proven is asked for. */
const SEVEN_CARDS: Batch = [
  [136, 88, 7, true],
  [82, 64, 7, true],
  [84, 60, 7, true],
  [74, 58, 7, true],
  [68, 28, 7, true],
  [68, 24, 14, true],
  [68, 22, 7, true],
  [56, 16, 7, true],
  [48, 18, 7, true],
];
const TEN_CARDS: Batch = [
  [210, 148, 10, true],
  [136, 92, 10, true],
  [87, 125, 10, false],
  [96, 41, 20, true],
  [82, 43, 10, false],
  [68, 51, 10, true],
  [69, 19, 20, true],
];
const NINETEEN_CARDS: Batch = [
  [210, 148, 19, true],
  [143, 97, 19, true],
  [86, 138, 19, false],
  [105, 47, 19, true],
  [105, 42, 57, true],
  [92, 43, 76, true],
  [67, 52, 76, true],
  [77, 38, 76, true],
  [45, 27, 19, true],
];

test.each([
  ['a linear plan of 7 sheets is all there is below: 8 by trying', [192, 192], SEVEN_CARDS, SIXTEENTH, 8],
  ['two thousandths of a sheet to spare in 8', [305, 305], TEN_CARDS, MILLIMETRE, 8],
  ['380 blanks on 25 sheets, of which they cover 96 of 100', [305, 305], NINETEEN_CARDS, MILLIMETRE, 25],
] as const)('%s', (_, sheet, batch, mark, sheets) => {
  const job = jobOf(sheet, [batch], mark);
  const plan = planCuts(job);
  expect(checkPlan(job, plan)).toEqual([]);
  expect([plan.counts.sheets, plan.proof.fewestSheets]).toEqual([sheets, true]);
});

test('what can be proven soon is proven before anything is tidied up', () => {
  // The same small batch on three papers: its number of sheets is soon proven, fewer layouts and cuts take longer.
  const batch: Batch = [
    [95, 60, 24, true],
    [70, 50, 24, true],
    [90, 20, 24, true],
  ];
  const job = jobOf([305, 305], [batch, batch, batch], MILLIMETRE);
  const slices = improvePlan(job);
  let slice = slices.next();
  let proven: number | null = null;
  while (!slice.done) {
    if (slice.value.proof.fewestSheets) proven ??= slice.value.work;
    slice = slices.next();
  }
  expect(slice.value.proof.fewestSheets).toBe(true);
  expect(proven).not.toBeNull();
  expect(proven).toBeLessThan(0.5 * slice.value.work);
});
