import { checkPlan, fullestSheet, planCuts } from '@trimwell/geometry';
import { against, baseline, percentile, row, timed } from './measure.mjs';
import { constrained, jobOf, packing, stock, unconstrained } from './open-instances.mjs';
import { readOptions } from './options.mjs';
import { packedSheets } from './other-packers.mjs';

/** Work per instance of each part. */
const WORK = { unconstrained: 200_000, constrained: 8_000_000, stock: 40_000_000, packing: 60_000_000 };

function cells(...values) {
  console.log(values.map((value, at) => (at === 0 ? String(value).padEnd(22) : String(value).padStart(11))).join(''));
}

function times(name, all, base) {
  row(`${name}, time per instance, median`, against(percentile(all, 0.5), base));
  row(`${name}, time per instance, 99th percentile`, against(percentile(all, 0.99), base));
}

function fullest({ sheet, items, rotation }, work) {
  const blanks = items.map(([width, height, value, most = null]) => ({ width, height, value, most, turn: rotation }));
  return fullestSheet(sheet.w, sheet.h, blanks, work);
}

/** What stands behind a value that is not the optimum. */
function verdict(value, { optimal, lower, upper }) {
  if (optimal !== null) return value < optimal ? `WORSE by ${optimal - value}` : value > optimal ? 'ABOVE OPTIMUM' : '';
  return value < lower
    ? `worse than ${lower} by ${lower - value}`
    : value > upper
      ? 'ABOVE BOUND'
      : `open: ${lower} to ${upper}`;
}

function knapsacks(name, instances, work, base) {
  console.log(`\n-- ${name}: one sheet of most value, work ${work} per instance`);
  cells('instance', 'optimum', 'ours', 'bound', 'gap', 'proven');
  const spent = [];
  const reached = [];
  const proven = [];
  for (const instance of instances) {
    let found;
    spent.push(
      timed(() => {
        found = fullest(instance, work);
      }),
    );
    const note = verdict(found.value, instance);
    if (instance.optimal === found.value) reached.push(instance);
    if (found.proven) proven.push(instance);
    const gap = `${((100 * (found.bound - found.value)) / found.bound).toFixed(2)} %`;
    cells(
      instance.name,
      instance.optimal ?? 'open',
      found.value,
      found.bound,
      gap,
      found.proven,
      ...(note ? [`  ${note}`] : []),
    );
  }
  const closed = instances.filter(({ optimal }) => optimal !== null).length;
  row(`${name}, published optimum reached`, `${reached.length} of ${closed} with one (${instances.length} in all)`);
  row(`${name}, proven by us`, `${proven.length} of ${instances.length}`);
  times(name, spent, base);
}

function planned(instance, turn, work, spent) {
  const job = jobOf(instance, turn);
  let plan;
  spent.push(
    timed(() => {
      plan = planCuts(job, { work });
    }),
  );
  const problems = checkPlan(job, plan);
  if (problems.length > 0 || !plan.complete) throw new Error(`${instance.name}: ${JSON.stringify(problems)}`);
  return plan;
}

function least({ optimal, lower, upper }) {
  return { lower: optimal ?? lower, best: optimal ?? upper };
}

function stocks(work, base) {
  console.log(`\n-- stock: fewest equal sheets for the demands, oriented, work ${work} per instance`);
  cells('instance', 'optimum', 'ours', 'bound', 'proven', 'packer');
  const spent = [];
  let ours = 0;
  let known = 0;
  let packer = 0;
  let proven = 0;
  for (const instance of stock()) {
    const plan = planned(instance, false, work, spent);
    const { lower, best } = least(instance.known);
    const { sheets } = plan.counts;
    const other = packedSheets(instance.sheet, instance.items, false);
    const note = sheets > best ? `  WORSE by ${sheets - best}` : sheets < best ? '  BETTER' : '';
    cells(
      instance.name,
      lower === best ? best : `${lower}-${best}`,
      sheets,
      plan.proof.lowerBound,
      plan.proof.fewestSheets,
      other,
      note,
    );
    ours += sheets;
    known += best;
    packer += other;
    if (plan.proof.fewestSheets) proven += 1;
  }
  row('stock, sheets', `ours ${ours}`, `best known ${known}`, `guillotine-packer ${packer}`);
  row('stock, proven by us', `${proven} of ${spent.length}`);
  times('stock', spent, base);
}

function packings(turn, work, base) {
  const way = turn ? 'rotated' : 'oriented';
  console.log(`\n-- packing, ${way}: fewest equal sheets, work ${work} per instance`);
  cells('class, pieces', 'instances', 'best known', 'ours', 'packer', 'proven');
  const spent = [];
  const packer = [];
  const groups = new Map();
  const notes = [];
  for (const instance of packing()) {
    const plan = planned(instance, turn, work, spent);
    const { best } = least(turn ? instance.knownRotated : instance.known);
    const { sheets } = plan.counts;
    let other = 0;
    packer.push(
      timed(() => {
        other = packedSheets(instance.sheet, instance.items, turn);
      }),
    );
    const name = instance.name.split('_').slice(1, 3).join(', ');
    const sums = groups.get(name) ?? [0, 0, 0, 0, 0];
    groups.set(
      name,
      sums.map((sum, at) => sum + [1, best, sheets, other, plan.proof.fewestSheets ? 1 : 0][at]),
    );
    if (sheets !== best)
      notes.push(`${instance.name}: ${sheets}, best known ${best}${sheets < best ? ', BETTER' : ''}`);
    if (sheets > other) notes.push(`${instance.name}: ${sheets}, guillotine-packer ${other}`);
  }
  for (const [name, sums] of groups) cells(name, ...sums);
  const [count, known, ours, theirs, proven] = [...groups.values()].reduce((a, b) => a.map((sum, at) => sum + b[at]));
  cells('all', count, known, ours, theirs, proven);
  console.log(
    notes.length > 0 ? `not the best known value: ${notes.join('; ')}` : 'the best known value on every instance',
  );
  times(`packing ${way}`, spent, base);
  times(`guillotine-packer ${way}`, packer, base);
}

/**
 * The planner on open instances of the literature; `tests/data/cutting` names their sources. `--only PART` runs one part,
 * `--work N` sets the work per instance.
 */
export function bench(args = []) {
  const { only, work } = readOptions(args, { only: null, work: null }, { only: Object.keys(WORK) });
  const base = baseline();
  row('baseline arithmetic', `${base.toFixed(2)} ms`);
  const parts = {
    unconstrained: (amount) => knapsacks('unconstrained', unconstrained(), amount, base),
    constrained: (amount) => knapsacks('constrained', constrained(), amount, base),
    stock: (amount) => stocks(amount, base),
    packing: (amount) => {
      packings(false, amount, base);
      packings(true, amount, base);
    },
  };
  for (const [name, part] of Object.entries(parts)) {
    if (only !== null && only !== name) continue;
    const whole = timed(() => part(work ?? WORK[name]));
    row(`${name}, whole part`, `${(whole / 1000).toFixed(1)} s`);
  }
}
