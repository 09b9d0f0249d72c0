import { checkPlan, DEFAULT_WORK, improvePlan, planCuts } from '@trimwell/geometry';
import { against, baseline, percentile, row, seeded } from './measure.mjs';
import { readOptions } from './options.mjs';
import { packedSheets, shelvedSheets } from './other-packers.mjs';
import { realisticJob } from './realistic-job.mjs';

const NO_RULES = {
  bladeLength: null,
  narrowestStrip: 0,
  thinnestTrim: 0,
  kerf: 0,
  rulerStep: null,
  stoppedCuts: false,
};

/** A plan in slices, with the milliseconds to the first plan, to the final number of sheets, to the final plan and to the proof. */
function followed(job, work) {
  const start = performance.now();
  const seen = [];
  const slices = improvePlan(job, { work });
  let slice;
  do {
    slice = slices.next();
    const plan = slice.value;
    const last = seen.at(-1)?.plan;
    if (plan !== last) seen.push({ plan, at: performance.now() - start });
  } while (!slice.done);
  const end = performance.now() - start;
  const plan = slice.value;
  const cuts = JSON.stringify(plan.sheets);
  return {
    plan,
    first: seen[0].at,
    sheets: seen.find((one) => one.plan.complete === plan.complete && one.plan.counts.sheets === plan.counts.sheets).at,
    best: seen.find((one) => JSON.stringify(one.plan.sheets) === cuts).at,
    proof: seen.find((one) => one.plan.proof.fewestSheets)?.at ?? null,
    end,
  };
}

/** Blanks by the paper they are cut from by a baseline, the first one they may come from. */
function byPaper(job) {
  return job.papers.map((paper) => ({
    paper,
    items: job.blanks
      .filter(({ papers }) => (papers?.[0] ?? job.papers[0].id) === paper.id)
      .map(({ width, height, quantity, turn }) => ({
        w: width,
        h: height,
        demand: quantity,
        turn: turn && !paper.directional,
      })),
  }));
}

/**
 * Sheets of both baselines, each paper for itself, null where a paper has too few sheets for it. Sides are multiples of the
 * ruler's step and no sheet is longer than the blade, so edge-to-edge cuts of theirs keep the trimmer's rules. The packer turns all
 * or nothing: it may turn where every blank of the paper may, else what fits only turned is handed to it turned.
 */
function baselines(job) {
  const counts = byPaper(job).map(({ paper, items }) => {
    const sheet = { w: paper.width, h: paper.height };
    const free = items.every(({ turn }) => turn);
    const laid = items.map((item) =>
      item.w <= sheet.w && item.h <= sheet.h ? item : { ...item, w: item.h, h: item.w },
    );
    return {
      most: paper.sheets ?? Number.POSITIVE_INFINITY,
      shelves: shelvedSheets(sheet, items),
      packer: packedSheets(sheet, laid, free),
    };
  });
  const total = (name) =>
    counts.some((count) => count[name] > count.most) ? null : counts.reduce((sum, count) => sum + count[name], 0);
  return { shelves: total('shelves'), packer: total('packer') };
}

/** Our sheets against a baseline's, over the cases that both make whole. */
function compare(name, cases, key) {
  const both = cases.filter((one) => one.plan.complete && one.others[key] !== null);
  const sum = (values) => values.reduce((total, value) => total + value, 0);
  const more = both.filter((one) => one.plan.counts.sheets > one.others[key]);
  const fewer = both.filter((one) => one.plan.counts.sheets < one.others[key]);
  row(
    `sheets, ours and ${name}`,
    `${sum(both.map(({ plan }) => plan.counts.sheets))} and ${sum(both.map(({ others }) => others[key]))}`,
    `fewer in ${fewer.length} of ${both.length}`,
    `MORE in ${more.length}`,
  );
  for (const { number, plan, others, job } of more) {
    const free = planCuts({ ...job, trimmer: NO_RULES }).counts.sheets;
    console.log(`  case ${number}: ${plan.counts.sheets} sheets, ${name} ${others[key]}, ours without rules ${free}`);
  }
  const missed = cases.filter((one) => !one.plan.complete && one.others[key] !== null);
  row(`made by ${name} and not by us`, `${missed.length}`, missed.map(({ number }) => `case ${number}`).join(', '));
}

/**
 * Batches of cards by chance (`realistic-job.mjs` states how): `--cases N` of them, numbered from 0, from `--seed N`, `--work N` for each.
 */
export function bench(args = []) {
  const { cases: count, seed, work } = readOptions(args, { cases: 1000, seed: 1, work: DEFAULT_WORK });
  const base = baseline();
  const random = seeded(seed);
  const jobs = Array.from({ length: count }, () => realisticJob(random));
  // The first plans of a process are slow and say nothing about the rest.
  for (const job of jobs.slice(0, 5)) planCuts(job, { work });
  const cases = jobs.map((job, number) => ({ number, job, ...followed(job, work), others: baselines(job) }));
  const problems = cases.map(({ number, job, plan }) => ({ number, found: checkPlan(job, plan) }));
  const wrong = problems.filter(({ found }) => found.length > 0);
  const whole = cases.filter(({ plan }) => plan.complete);
  const hopeless = cases.filter(
    ({ plan }) => !plan.complete && plan.unmade.every((one) => !one.reason.includes('budget')),
  );
  const proven = whole.filter(({ plan }) => plan.proof.fewestSheets);
  row('baseline arithmetic', `${base.toFixed(2)} ms`);
  row('cases', `${count} from seed ${seed}`, `work ${work} each`);
  row('invalid', `${wrong.length}`, wrong.map(({ number, found }) => `case ${number}: ${found[0].problem}`).join('; '));
  row(
    'made whole',
    `${whole.length}`,
    `not, for want of sheets ${hopeless.length}`,
    `not found ${count - whole.length - hopeless.length}`,
  );
  row(
    'proven fewest, of those made whole',
    `${proven.length} (${((100 * proven.length) / whole.length).toFixed(2)} %)`,
  );
  const gaps = whole.filter(({ plan }) => !plan.proof.fewestSheets);
  for (const { number, plan } of gaps)
    console.log(`  case ${number}: ${plan.counts.sheets} sheets, bound ${plan.proof.lowerBound} by ${plan.proof.by}`);
  for (const [name, values] of [
    ['first plan', cases.map(({ first }) => first)],
    ['final number of sheets', cases.map(({ sheets }) => sheets)],
    ['best plan', cases.map(({ best }) => best)],
    ['proof, where there is one', proven.map(({ proof }) => proof)],
    ['end of the search', cases.map(({ end }) => end)],
  ]) {
    row(`time to ${name}, median`, against(percentile(values, 0.5), base));
    row(`time to ${name}, 99th percentile`, against(percentile(values, 0.99), base));
  }
  compare('shelves', cases, 'shelves');
  compare('guillotine-packer', cases, 'packer');
}
