import type { CutJob, CutPaper } from '@trimwell/geometry';

/**
 * Sets of blanks as numbers: how many of each, read as digits of mixed base. Adding stops at what is wanted: a blank too many is
 * left in its offcut.
 */
class Counts {
  readonly wanted: readonly number[];
  readonly full: number;
  readonly #weights: readonly number[];
  readonly #digits: readonly (readonly number[])[];

  constructor(job: CutJob) {
    this.wanted = job.blanks.map(({ quantity }) => quantity);
    const weights: number[] = [];
    let size = 1;
    for (const most of this.wanted) {
      weights.push(size);
      size *= most + 1;
    }
    this.#weights = weights;
    this.full = size - 1;
    this.#digits = Array.from({ length: size }, (_, set) => weights.map((weight, at) => this.#digit(set, weight, at)));
  }

  #digit(set: number, weight: number, at: number): number {
    return Math.floor(set / weight) % ((this.wanted[at] ?? 0) + 1);
  }

  digits(set: number): readonly number[] {
    return this.#digits[set] ?? [];
  }

  one(at: number): number {
    return (this.wanted[at] ?? 0) > 0 ? (this.#weights[at] ?? 0) : 0;
  }

  sum(a: number, b: number): number {
    const [left, right] = [this.digits(a), this.digits(b)];
    return this.#weights.reduce(
      (total, weight, at) => total + weight * Math.min(this.wanted[at] ?? 0, (left[at] ?? 0) + (right[at] ?? 0)),
      0,
    );
  }

  /** Those of `sets` that no other contains. */
  largest(sets: ReadonlySet<number>): readonly number[] {
    const all = [...sets].sort((a, b) => this.copies(b) - this.copies(a));
    const kept: number[] = [];
    for (const set of all) {
      const digits = this.digits(set);
      if (!kept.some((other) => this.digits(other).every((count, at) => count >= (digits[at] ?? 0)))) kept.push(set);
    }
    return kept;
  }

  copies(set: number): number {
    return this.digits(set).reduce((sum, count) => sum + count, 0);
  }
}

/** Where a part `across x along` may be cut, tick by tick, by the trimmer's rules as the cut job states them. */
function cutsOf(job: CutJob, across: number, along: number): readonly number[] {
  const { bladeLength, narrowestStrip, thinnestTrim, kerf, rulerStep } = job.trimmer;
  if (bladeLength !== null && along > bladeLength) return [];
  const ticks = Array.from({ length: Math.max(0, across - 1) }, (_, index) => index + 1);
  return ticks.filter((at) => {
    const rest = across - at - kerf;
    const thin = Math.min(at, rest);
    return (
      rest >= 0 &&
      Math.max(at, rest) >= narrowestStrip &&
      (thin === 0 || thin >= thinnestTrim) &&
      (rulerStep === null || at % rulerStep === 0)
    );
  });
}

/** The largest sets that one sheet of `paper` can give: every cut of every part is tried. */
function setsOf(job: CutJob, counts: Counts, paper: CutPaper): readonly number[] {
  const known = new Map<number, readonly number[]>();
  const part = (w: number, h: number): readonly number[] => {
    const key = w * 4096 + h;
    const before = known.get(key);
    if (before) return before;
    const found = new Set([0]);
    job.blanks.forEach((blank, at) => {
      if (blank.papers && !blank.papers.includes(paper.id)) return;
      const turned = blank.turn && !paper.directional && blank.height === w && blank.width === h;
      if (turned || (blank.width === w && blank.height === h)) found.add(counts.one(at));
    });
    const join = (a: readonly number[], b: readonly number[]): void => {
      for (const left of a) for (const right of b) found.add(counts.sum(left, right));
    };
    for (const at of cutsOf(job, w, h)) join(part(at, h), part(w - at - job.trimmer.kerf, h));
    for (const at of cutsOf(job, h, w)) join(part(w, at), part(w, h - at - job.trimmer.kerf));
    const sets = counts.largest(found);
    known.set(key, sets);
    return sets;
  };
  return part(paper.width, paper.height);
}

/** One way to cut a sheet: from which paper, and how many of each blank it gives. */
export interface SheetSet {
  readonly paper: number;
  readonly counts: readonly number[];
}

/** The largest sets of all papers of `job`, by trying every edge-to-edge cut at every tick. For sheets of a few ticks. */
export function allSheetSets(job: CutJob): readonly SheetSet[] {
  const counts = new Counts(job);
  return job.papers.flatMap((paper, index) =>
    setsOf(job, counts, paper)
      .filter((set) => set > 0)
      .map((set) => ({ paper: index, counts: counts.digits(set) })),
  );
}

/** What any plan for `job` leaves unmade at least, in copies, and the fewest sheets for that, by trying all sets of sheets. */
export function fewestSheetsByAll(job: CutJob): { readonly unmade: number; readonly sheets: number } {
  const counts = new Counts(job);
  const ways = job.papers.map((paper) => setsOf(job, counts, paper).filter((set) => set > 0));
  const all = counts.copies(counts.full);
  let best = { unmade: all, sheets: 0 };
  let states = new Map<string, { readonly made: number; readonly left: readonly number[] }>([
    ['', { made: 0, left: job.papers.map(({ sheets }) => sheets ?? all) }],
  ]);
  for (let sheets = 1; states.size > 0 && best.unmade > 0; sheets += 1) {
    const next = new Map<string, { readonly made: number; readonly left: readonly number[] }>();
    for (const { made, left } of states.values()) {
      ways.forEach((sets, paper) => {
        if ((left[paper] ?? 0) === 0) return;
        const rest = left.map((count, at) => (at === paper ? count - 1 : count));
        for (const set of sets) {
          const sum = counts.sum(made, set);
          if (sum === made) continue;
          next.set(`${sum} ${rest.join(' ')}`, { made: sum, left: rest });
          const unmade = all - counts.copies(sum);
          if (unmade < best.unmade) best = { unmade, sheets };
        }
      });
    }
    states = next;
  }
  return best;
}
