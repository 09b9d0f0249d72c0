import { inches, type Length, leastSheets, millimetres, ticks } from '@trimwell/geometry';
import { applyEdit } from '../edit/apply-edit.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { batchRecipe } from './batch-recipe.js';
import { realSheets } from './centre-papers.js';
import { matsOf, type ResizeEdit, smallerEdits } from './near-miss-edit.js';
import { baselineOf, type Gain, gainOf, hopeless, worth } from './near-miss-gain.js';
import { planForSheets } from './plan-for-sheets.js';
import type { PlanOne } from './plan-job.js';
import { type BatchRecipe, rulerStep } from './recipe.js';
import { rememberPlans } from './remember-plans.js';
import { provenShort } from './yield.js';
import type { PaperSheets } from './yield-curve.js';

type Size = Pick<Piece, 'width' | 'height'>;

/** A small change of size that saves sheets or adds cards, each with a complete valid plan behind it. */
export interface NearMiss {
  /** The piece to change: the innermost where it has mats, which follow it with their reveals. */
  readonly piece: string;
  /** The mats that get smaller with it. */
  readonly mats: readonly string[];
  readonly edit: ResizeEdit;
  readonly from: Size;
  readonly to: Size;
  /** Ticks taken off each side; one of them is 0, but for a circle, which stays one. */
  readonly change: Size;
  /** Sheets saved at the same number of cards, by paper; empty when cards are added. */
  readonly saves: readonly PaperSheets[];
  /** Cards added from the same sheets at hand; 0 when sheets are saved. */
  readonly adds: number;
  /** True when it is proven that the sketch as it is needs those sheets, or gives no card more. */
  readonly proven: boolean;
}

/** What near misses were looked for from, and those that were found. */
export interface NearMisses {
  /** Cards that the sketch makes as it is; null when "as many as possible" has no end and nothing can be compared. */
  readonly cards: number | null;
  /** Sheets that those cards need as it is. */
  readonly sheets: number;
  readonly tolerance: Length;
  /** The smallest change first, then the greatest gain, then the least area, then gluing order. */
  readonly misses: readonly NearMiss[];
}

export interface NearMissOptions {
  /** The most that a side may become smaller. Default 1/8 in, or 3 mm in metric sketches. */
  readonly tolerance?: Length;
  /** The number of cards. Default the batch's. */
  readonly cards?: Sketch['batch']['cards'];
  /** Pieces that must stay as they are; what is tied to them by a mat stays too. */
  readonly keep?: ReadonlySet<string>;
  /** Plans one job; default `planForSheets()`. */
  readonly planOne?: PlanOne;
  /** Whether to look for proofs beyond those that come with the plans. Default true. */
  readonly prove?: boolean;
}

/** How far a side may shrink by default: 1/8 in or 3 mm. */
export function nearMissTolerance(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

const sizeOf = ({ width, height }: Size): Size => ({ width, height });
const area = ({ width, height }: Size): number => width * height;

/** The order of suggestions among pieces in gluing order; what compares equal stays in that order. */
function compareMisses(a: NearMiss, b: NearMiss): number {
  const largest = ({ change }: NearMiss): number => Math.max(change.width, change.height);
  const lost = ({ from, to }: NearMiss): number => area(from) - area(to);
  return largest(a) - largest(b) || worth(b) - worth(a) || lost(a) - lost(b);
}

/** At most one suggestion for each piece and gain: the first, so the smallest, of `misses` in their order. */
function smallestOfEach(misses: readonly NearMiss[]): readonly NearMiss[] {
  const seen = new Set<string>();
  return [...misses].sort(compareMisses).filter(({ piece, saves, adds }) => {
    const key = JSON.stringify([piece, saves, adds]);
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}

/**
 * The smallest changes of single pieces that save a sheet at the wanted number of cards, or add cards where the sheets
 * at hand do not give as many as wanted. Only smaller sizes can save paper, so each side of each piece (both at once for a circle) is tried on the
 * marks of the ruler below it, down to `tolerance`; mats follow with their reveals, and the card base stays. Bounds skip
 * what is hopeless, but every suggestion is a complete plan that was really found. Each slice is one planned size and
 * yields what is found so far; the result has everything.
 */
export function* nearMisses(sketch: Sketch, options: NearMissOptions = {}): Generator<NearMisses, NearMisses> {
  const { tolerance = nearMissTolerance(sketch.unit), keep = new Set<string>(), prove = true } = options;
  const planOne = rememberPlans(options.planOne ?? planForSheets());
  const recipe = batchRecipe(sketch);
  const base = baselineOf(recipe, options.cards ?? sketch.batch.cards, planOne);
  if (!base) return { cards: null, sheets: 0, tolerance, misses: [] };
  const sheets = [...base.plans.values()].reduce((total, { plan }) => total + realSheets(plan), 0);
  const step = rulerStep(sketch.unit);
  const found: NearMiss[] = [];
  const soFar = (): NearMisses => ({ cards: base.cards, sheets, tolerance, misses: smallestOfEach(found) });
  const proofs = new Map<string, boolean>();
  const proven = ({ adds, saves }: Gain): boolean => {
    const key = adds > 0 ? 'cards' : JSON.stringify(saves.map(({ paper }) => paper));
    const known = proofs.get(key) ?? (adds > 0 ? prove && provenShort(recipe, base.cards + 1) : provenFewest(saves));
    proofs.set(key, known);
    return known;
  };
  const provenFewest = (saves: Gain['saves']): boolean =>
    saves.every(({ paper }) => {
      const before = base.plans.get(paper);
      if (!before) return false;
      return before.plan.proof.fewestSheets || (prove && leastSheets(before.job).value >= realSheets(before.plan));
    });
  yield soFar();
  for (const piece of sketch.pieces) {
    const mats = matsOf(sketch, piece).map(({ id }) => id);
    if (piece.mats || [piece.id, ...mats].some((id) => keep.has(id))) continue;
    for (const edits of smallerEdits(piece, tolerance, step)) {
      const after = (edit: ResizeEdit): BatchRecipe => batchRecipe(applyEdit(sketch, edit));
      const smallest = edits.at(-1);
      if (!smallest) continue;
      yield soFar();
      // With hidden centres a smaller piece hides less: then the smallest size does not speak for those between.
      if (recipe.centres.length === 0 && hopeless(after(smallest), base)) continue;
      let least = 0;
      for (const edit of edits) {
        const gain = gainOf(after(edit), base, least);
        if (gain) {
          least = worth(gain);
          const change = { width: ticks(piece.width - edit.width), height: ticks(piece.height - edit.height) };
          const sizes = { from: sizeOf(piece), to: sizeOf(edit), change };
          found.push({ piece: piece.id, mats, edit, ...sizes, ...gain, proven: proven(gain) });
        }
        yield soFar();
      }
    }
  }
  return soFar();
}
