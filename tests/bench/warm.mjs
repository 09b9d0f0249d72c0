import { checkPlan, DEFAULT_WORK, planCuts, QUICK_WORK } from '@trimwell/geometry';
import { against, baseline, percentile, row, seeded, timed } from './measure.mjs';
import { readOptions } from './options.mjs';
import { realisticJob } from './realistic-job.mjs';

/** `job` with its blank `at` wider by `by`. */
function widened(job, at, by) {
  return {
    ...job,
    blanks: job.blanks.map((blank, index) => (index === at ? { ...blank, width: blank.width + by } : blank)),
  };
}

/** The blank that can grow most within the papers it comes from, and by how much. */
function roomiest(job) {
  const rooms = job.blanks.map((blank) => {
    const papers = job.papers.filter(({ id }) => blank.papers?.includes(id) ?? true);
    return Math.min(...papers.map((paper) => (blank.height <= paper.height ? paper.width - blank.width : -1)));
  });
  const room = Math.max(...rooms);
  return { at: rooms.indexOf(room), room };
}

/** Drags of `moves` moves: jobs by chance in which some blank can grow by as many steps of the ruler. */
function drags(seed, count, moves) {
  const random = seeded(seed);
  const found = [];
  while (found.length < count) {
    const job = realisticJob(random);
    const step = job.trimmer.rulerStep;
    const { at, room } = roomiest(job);
    if (room >= moves * step) found.push({ job, at, step });
  }
  return found;
}

function measured(job, options) {
  let plan;
  const time = timed(() => {
    plan = planCuts(job, options);
  });
  const problems = checkPlan(job, plan);
  return { plan, time, wrong: problems.length };
}

/**
 * A blank is dragged wider by one step of the ruler a move. At every move: a plan from nothing with the work of a drag and with
 * all the work, and plans that start from the plan of the move before. `--jobs N` drags of `--moves N` from `--seed N`.
 */
export function bench(args = []) {
  const { jobs, moves, seed } = readOptions(args, { jobs: 10, moves: 40, seed: 1 });
  const base = baseline();
  const ways = {
    'cold quick': { work: QUICK_WORK, warm: false, runs: [] },
    'cold full': { work: DEFAULT_WORK, warm: false, runs: [] },
    'warm quick': { work: QUICK_WORK, warm: true, runs: [] },
    'warm full': { work: DEFAULT_WORK, warm: true, runs: [] },
  };
  const all = Object.values(ways);
  for (const { job, at, step } of drags(seed, jobs, moves)) {
    const start = planCuts(job);
    const previous = all.map(() => start);
    for (let move = 1; move <= moves; move += 1) {
      const moved = widened(job, at, move * step);
      all.forEach(({ work, warm, runs }, way) => {
        const run = measured(moved, warm ? { work, previous: previous[way] } : { work });
        previous[way] = run.plan;
        runs.push(run);
      });
    }
  }
  row('baseline arithmetic', `${base.toFixed(2)} ms`);
  row('moves', `${jobs} jobs x ${moves}, seed ${seed}`);
  const full = ways['cold full'].runs;
  for (const [name, { runs }] of Object.entries(ways)) {
    const spent = runs.map(({ time }) => time);
    const work = runs.map(({ plan }) => plan.work);
    row(`${name}, time, median`, against(percentile(spent, 0.5), base));
    row(`${name}, time, 99th percentile`, against(percentile(spent, 0.99), base));
    row(`${name}, work, median and 99th percentile`, `${percentile(work, 0.5)}`, `${percentile(work, 0.99)}`);
    const sum = runs.reduce((total, { plan }) => total + plan.counts.sheets, 0);
    const compared = runs.map(({ plan }, index) =>
      plan.complete === full[index].plan.complete ? Math.sign(plan.counts.sheets - full[index].plan.counts.sheets) : 0,
    );
    const more = compared.filter((sign) => sign > 0).length;
    const fewer = compared.filter((sign) => sign < 0).length;
    const incomplete = runs.filter(({ plan }) => !plan.complete).length;
    row(
      `${name}, sheets`,
      `${sum}`,
      `more than cold full at ${more} moves, fewer at ${fewer}`,
      `incomplete ${incomplete}`,
    );
    const proven = runs.filter(({ plan }) => plan.proof.fewestSheets).length;
    const wrong = runs.filter((run) => run.wrong > 0).length;
    row(`${name}, proven and invalid`, `${proven} of ${runs.length}`, `invalid ${wrong}`);
  }
  const jumps = (runs) =>
    runs.filter(({ plan }, index) => index % moves > 0 && plan.counts.sheets !== runs[index - 1].plan.counts.sheets)
      .length;
  row('changes in the number of sheets', ...Object.entries(ways).map(([name, { runs }]) => `${name} ${jumps(runs)}`));
}
