import { insertAt, type Lie, SpotSearch } from './insert-slice.js';
import type { Stock, Task } from './kinds.js';
import type { Meter } from './meter.js';
import { waysOf } from './places.js';
import { countLeaves, leafSlice, type Slice, without } from './slice.js';

/** How boldly blanks are taken out and put back. */
export interface Pace {
  /** Blanks that one round takes out, on average. */
  readonly takenOut: number;
  /** How many rounds back a worse result is still forgiven: the more, the slower and the farther. */
  readonly memory: number;
}

const USUAL_PACE: Pace = { takenOut: 6, memory: 60 };
/** Sheets that are looked at beside those that something was taken out of. */
const LOOKED_AT_ALSO = 2;
/** Share of places overlooked. */
const BLINK = 0.01;
/** Places looked at that count for one step of work. */
const LOOKS_PER_STEP = 1;

/** Sheets in the order of their numbers: which stock each is, and the group of blanks on it (null: empty). */
export interface FilledSheets {
  readonly stocks: readonly number[];
  readonly roots: readonly (Slice | null)[];
}

/** Ways in which each kind may lie on each stock. */
export function liesOf(task: Task): readonly (readonly (readonly Lie[])[])[] {
  return task.stocks.map((_, stock) => {
    const ways = waysOf(task, stock, () => true);
    return task.kinds.map((__, kind) => ways.filter((way) => way.kind === kind));
  });
}

/**
 * Tries to get all blanks onto a given set of sheets: takes some out of one or two sheets, puts all that is missing back
 * where it wastes least, and keeps the result unless more is missing than a while ago (ruin and recreate with late
 * acceptance, goal-driven as in Gardeyn and Wauters 2022; the trees and the measure of waste are our own).
 */
export class Refill {
  readonly #lies: readonly (readonly (readonly Lie[])[])[];
  readonly #search: SpotSearch;
  readonly #history: number[];
  #roots: (Slice | null)[];
  #missing: number[];
  #short: number;
  #round = 0;

  #best: readonly (Slice | null)[];
  #least: number;

  /**
   * Starts from `sheets`; what they hold beyond the demand is taken off. `worth` says how much each missing blank counts,
   * by default its area.
   */
  constructor(
    private readonly task: Task,
    private readonly sheets: FilledSheets,
    private readonly random: () => number,
    private readonly meter: Meter,
    private readonly worth: readonly number[] = task.kinds.map(({ width, height }) => width * height),
    private readonly pace: Pace = USUAL_PACE,
  ) {
    this.#lies = liesOf(task);
    this.#search = new SpotSearch(BLINK, random);
    this.#missing = task.kinds.map(({ demand }) => demand);
    this.#roots = sheets.roots.map((root) => root && this.#within(root));
    this.#short = this.#shortOf(this.#missing);
    this.#history = new Array<number>(pace.memory).fill(this.#short);
    this.#best = this.#roots;
    this.#least = this.#short;
  }

  /** `root` without what is more than is missing, which is counted down. */
  #within(root: Slice): Slice | null {
    return without(root, ({ kind }) => {
      const left = this.#missing[kind] ?? 0;
      if (left > 0) this.#missing[kind] = left - 1;
      return left > 0;
    });
  }

  #shortOf(missing: readonly number[]): number {
    return missing.reduce((sum, count, kind) => sum + count * (this.worth[kind] as number), 0);
  }

  /** The sheets as they stand, once nothing is missing; null before. */
  get done(): FilledSheets | null {
    return this.#short === 0 ? { stocks: this.sheets.stocks, roots: this.#roots } : null;
  }

  /** The sheets on which least was missing. */
  get best(): FilledSheets {
    return { stocks: this.sheets.stocks, roots: this.#best };
  }

  /** Runs `rounds` rounds, fewer when all is placed or the work is used up; true when all is placed. */
  run(rounds: number): boolean {
    for (let round = 0; round < rounds && this.#short > 0 && !this.meter.empty; round += 1) this.#step();
    return this.#short === 0;
  }

  #step(): void {
    const roots = [...this.#roots];
    const missing = [...this.#missing];
    const before = this.#search.looked;
    const touched = new Set<number>();
    this.#takeOut(roots, missing, touched);
    // What is missing has found no room elsewhere before; now and then another sheet is looked at all the same.
    for (let more = 0; more < LOOKED_AT_ALSO; more += 1) touched.add(Math.floor(this.random() * roots.length));
    this.#putBack(
      roots,
      missing,
      [...touched].sort((a, b) => a - b),
    );
    this.meter.spend(4 + (this.#search.looked - before) / LOOKS_PER_STEP);
    const short = this.#shortOf(missing);
    const place = this.#round % this.pace.memory;
    this.#round += 1;
    if (short <= this.#short || short <= (this.#history[place] as number)) {
      this.#roots = roots;
      this.#missing = missing;
      this.#short = short;
      if (short < this.#least) {
        this.#least = short;
        this.#best = roots;
      }
    }
    this.#history[place] = this.#short;
  }

  #takeOut(roots: (Slice | null)[], missing: number[], touched: Set<number>): void {
    let wanted = 1 + Math.floor(this.random() * (2 * this.pace.takenOut - 1));
    for (let tries = 0; wanted > 0 && tries < 6; tries += 1) {
      const sheet = Math.floor(this.random() * roots.length);
      const root = roots[sheet];
      if (!root) continue;
      touched.add(sheet);
      const all = countLeaves(root);
      const part = all <= wanted ? root : this.#somePart(root, wanted);
      const gone = new Set<Slice>();
      collect(part, gone);
      roots[sheet] = without(root, (leaf) => {
        if (!gone.has(leaf)) return true;
        missing[leaf.kind] = (missing[leaf.kind] as number) + 1;
        wanted -= 1;
        return false;
      });
    }
  }

  /** A part with at most `most` blanks, by chance. */
  #somePart(root: Slice, most: number): Slice {
    let part = root;
    while (part.kind < 0 && (countLeaves(part) > most || this.random() < 0.3)) {
      part = part.parts[Math.floor(this.random() * part.parts.length)] as Slice;
    }
    return part;
  }

  #putBack(roots: (Slice | null)[], missing: number[], sheets: readonly number[]): void {
    const { kinds, stocks } = this.task;
    const rule = Math.floor(this.random() * 4);
    const weight = (kind: number): number => {
      const { width, height } = kinds[kind] as { width: number; height: number };
      const noise = 0.8 + 0.4 * this.random();
      if (rule === 0) return Math.max(width, height) * noise;
      if (rule === 1) return Math.min(width, height) * noise;
      return rule === 2 ? this.random() : (this.worth[kind] as number) * noise;
    };
    const order = missing.flatMap((count, kind) => (count > 0 ? [{ kind, weight: weight(kind) }] : []));
    order.sort((a, b) => b.weight - a.weight || a.kind - b.kind);
    for (const { kind } of order) {
      while ((missing[kind] as number) > 0) {
        this.#search.start(Number.POSITIVE_INFINITY);
        let into = -1;
        let empty = -1;
        for (const sheet of sheets) {
          const root = roots[sheet];
          const stock = this.sheets.stocks[sheet] as number;
          const lies = this.#lies[stock]?.[kind] ?? [];
          if (lies.length === 0) continue;
          const { width, height } = stocks[stock] as Stock;
          const { kerf } = this.task.job.trimmer;
          if (!root) {
            if (empty < 0) empty = sheet;
            continue;
          }
          const [lie] = lies as readonly [Lie];
          if (root.area + lie.w * lie.h > (width + kerf) * (height + kerf)) continue;
          if (this.#search.look(root, width + kerf, height + kerf, lies)) into = sheet;
        }
        const spot = this.#search.best;
        if (spot && into >= 0) roots[into] = insertAt(roots[into] as Slice, spot, kind);
        else if (empty >= 0) {
          const lies = this.#lies[this.sheets.stocks[empty] as number]?.[kind] ?? [];
          const lie = lies[Math.floor(this.random() * lies.length)] as Lie;
          roots[empty] = leafSlice(kind, lie.turned, lie.w, lie.h);
        } else break;
        missing[kind] = (missing[kind] as number) - 1;
      }
    }
  }
}

function collect(slice: Slice, into: Set<Slice>): void {
  if (slice.kind >= 0) into.add(slice);
  for (const part of slice.parts) collect(part, into);
}
