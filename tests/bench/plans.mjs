import { checkPlan, DEFAULT_WORK, improvePlan, planCuts, QUICK_WORK } from '@trimwell/geometry';
import { against, baseline, percentile, row, seeded, timed } from './measure.mjs';

const INCH = 16256;
const JOBS = 200;

/**
 * A realistic job of one paper: 12 x 12 in (60 %), Letter (30 %) or A4 (10 %); 2 to 6 kinds of blank in steps of 1/8 in
 * (60 %) or 1/16 in, sides from 3/4 in to 5 1/2 in (and to 8 in for one in eight), 1 to 24 of each in the ratio of one
 * number of cards; a third of the papers directional; no limit of sheets; the trimmer of a sketch.
 */
export function realisticJob(random) {
  const sheets = [
    [12 * INCH, 12 * INCH],
    [8.5 * INCH, 11 * INCH],
    [210 * 640, 297 * 640],
  ];
  const [width, height] = sheets[[0, 0, 0, 0, 0, 0, 1, 1, 1, 2][random(10)]];
  const step = random(10) < 6 ? INCH / 8 : INCH / 16;
  const side = () =>
    (Math.floor((0.75 * INCH) / step) + random(Math.floor(((random(8) === 0 ? 7.25 : 4.75) * INCH) / step))) * step;
  const cards = 1 + random(24);
  return {
    trimmer: {
      bladeLength: 12 * INCH,
      narrowestStrip: INCH / 4,
      thinnestTrim: INCH / 16,
      kerf: 0,
      rulerStep: INCH / 16,
      stoppedCuts: false,
    },
    papers: [
      {
        id: 'a',
        width,
        height,
        sheets: null,
        directional: random(3) === 0,
        price: null,
        margins: { top: 0, right: 0, bottom: 0, left: 0 },
      },
    ],
    blanks: Array.from({ length: 2 + random(5) }, (_, n) => ({
      id: `b${n}`,
      width: side(),
      height: side(),
      quantity: cards,
      papers: null,
      turn: true,
    })),
  };
}

/** Time to a first plan and to the best one, the share proven, and plans per second. */
export async function bench() {
  const random = seeded(1);
  const base = baseline();
  const first = [];
  const best = [];
  let proven = 0;
  let wrong = 0;
  const jobs = Array.from({ length: JOBS }, () => realisticJob(random));
  for (const job of jobs) {
    first.push(timed(() => improvePlan(job, { work: QUICK_WORK }).next()));
    let plan;
    best.push(
      timed(() => {
        plan = planCuts(job, { work: DEFAULT_WORK });
      }),
    );
    if (plan.proof.fewestSheets) proven += 1;
    if (checkPlan(job, plan).length > 0) wrong += 1;
  }
  const quick = timed(() => {
    for (const job of jobs) planCuts(job, { work: QUICK_WORK });
  });
  row('baseline arithmetic', `${base.toFixed(2)} ms`);
  row('first slice, median', against(percentile(first, 0.5), base));
  row('first slice, 99th percentile', against(percentile(first, 0.99), base));
  row('best plan, median', against(percentile(best, 0.5), base));
  row('best plan, 99th percentile', against(percentile(best, 0.99), base));
  row('quick plans per second', (JOBS / (quick / 1000)).toFixed(0));
  row('proven fewest', `${proven} of ${JOBS}`);
  row('invalid', `${wrong} of ${JOBS}`);
}
