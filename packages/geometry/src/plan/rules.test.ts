import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPlan } from '../cut/check-plan.js';
import type { CutJob, Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { planCuts } from './plan-cuts.js';

const maybe = (most: number) => fc.option(fc.integer({ min: 1, max: most }), { nil: null, freq: 1 });
const seldom = (most: number) =>
  fc.constantFrom(0, 0, ...Array.from({ length: most }, (_, index) => index + 1)).map(ticks);

/** Jobs so small that everything can be tried, under every rule of the trimmer. */
const tinyJob: fc.Arbitrary<CutJob> = fc
  .record({
    blade: maybe(8),
    narrowestStrip: seldom(4),
    thinnestTrim: seldom(2),
    kerf: seldom(1),
    step: maybe(3),
    width: fc.integer({ min: 4, max: 9 }),
    height: fc.integer({ min: 4, max: 9 }),
    sheets: fc.option(fc.integer({ min: 0, max: 2 }), { nil: null, freq: 1 }),
    directional: fc.boolean(),
    blanks: fc.array(
      fc.record({ w: fc.integer({ min: 1, max: 6 }), h: fc.integer({ min: 1, max: 6 }), turn: fc.boolean() }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ blade, step, width, height, sheets, directional, blanks, ...rules }) => ({
    trimmer: {
      ...rules,
      bladeLength: blade === null ? null : ticks(blade),
      rulerStep: step === null ? null : ticks(step),
      stoppedCuts: false,
    },
    papers: [
      {
        id: 'a',
        width: ticks(width),
        height: ticks(height),
        sheets,
        directional,
        price: null,
        margins: { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) },
      },
    ],
    blanks: blanks.map(({ w, h, turn }, index) => ({
      id: `b${index}`,
      width: ticks(w),
      height: ticks(h),
      quantity: 1,
      papers: null,
      turn,
    })),
  }));

function obeys(rules: Trimmer, across: number, at: number, along: number): boolean {
  const rest = across - at - rules.kerf;
  const thin = Math.min(at, rest);
  return (
    rest >= 0 &&
    (rules.bladeLength === null || along <= rules.bladeLength) &&
    Math.max(at, rest) >= rules.narrowestStrip &&
    (thin === 0 || thin >= rules.thinnestTrim) &&
    (rules.rulerStep === null || at % rules.rulerStep === 0)
  );
}

/** By trying every cut: the sets of blanks (as bits) that one sheet can give. */
function fromOneSheet({ trimmer, papers: [paper], blanks }: CutJob): (set: number) => boolean {
  if (!paper) throw new Error('the job has a paper');
  const known = new Map<string, boolean>();
  const gives = (w: number, h: number, set: number): boolean => {
    if (set === 0) return true;
    if (w <= 0 || h <= 0) return false;
    const key = `${w} ${h} ${set}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const members = blanks.filter((_, index) => set & (1 << index));
    const [only] = members;
    const whole =
      only !== undefined &&
      members.length === 1 &&
      ((only.width === w && only.height === h) ||
        (only.turn && !paper.directional && only.height === w && only.width === h));
    const parted = (across: number, along: number, parts: (at: number, part: number) => boolean): boolean => {
      for (let at = 1; at < across; at += 1) {
        if (!obeys(trimmer, across, at, along)) continue;
        for (let part = set; ; part = (part - 1) & set) {
          if (parts(at, part)) return true;
          if (part === 0) break;
        }
      }
      return false;
    };
    const area = members.reduce((sum, { width, height }) => sum + width * height, 0);
    const found =
      whole ||
      (area <= w * h &&
        (parted(w, h, (at, part) => gives(at, h, part) && gives(w - at - trimmer.kerf, h, set & ~part)) ||
          parted(h, w, (at, part) => gives(w, at, part) && gives(w, h - at - trimmer.kerf, set & ~part))));
    known.set(key, found);
    return found;
  };
  return (set) => gives(paper.width, paper.height, set);
}

/** Fewest sheets for each set of blanks that can be made, Infinity where it cannot. */
function fewestSheets(job: CutJob): readonly number[] {
  const full = (1 << job.blanks.length) - 1;
  const able = fromOneSheet(job);
  const most = job.papers[0]?.sheets ?? Number.POSITIVE_INFINITY;
  const fewest = [0];
  for (let set = 1; set <= full; set += 1) {
    let least = Number.POSITIVE_INFINITY;
    for (let part = set; part > 0; part = (part - 1) & set) {
      if (able(part)) least = Math.min(least, 1 + (fewest[set & ~part] ?? Number.POSITIVE_INFINITY));
    }
    fewest[set] = least <= most ? least : Number.POSITIVE_INFINITY;
  }
  return fewest;
}

test('under all rules at once: never more than is possible, never a bound above the optimum, never a false proof', () => {
  let [jobs, whole, best] = [0, 0, 0];
  fc.assert(
    fc.property(tinyJob, (job) => {
      const plan = planCuts(job, { work: 120_000 });
      expect(checkPlan(job, plan)).toEqual([]);
      const fewest = fewestSheets(job);
      const made = job.blanks.reduce(
        (set, { id }, index) => (plan.unmade.some(({ blank }) => blank === id) ? set : set | (1 << index)),
        0,
      );
      expect(fewest[made]).toBeLessThanOrEqual(plan.counts.sheets);
      const optimum = fewest.at(-1) ?? 0;
      jobs += 1;
      if (optimum < Number.POSITIVE_INFINITY) {
        whole += 1;
        if (plan.complete && plan.counts.sheets === optimum) best += 1;
        expect(plan.proof.lowerBound).toBeLessThanOrEqual(optimum);
      }
      if (plan.proof.fewestSheets) expect(plan.counts.sheets).toBe(optimum);
    }),
    { numRuns: 400, seed: 14 },
  );
  expect(jobs).toBe(400);
  // A first version need not find every optimum; it must not find fewer of them than it does.
  expect(best / whole).toBeGreaterThan(0.95);
});
