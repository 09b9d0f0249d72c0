import type { Meter } from '../sheet/meter.js';
import { type FreeRect, withoutBox } from './free-rects.js';
import type { FillSheet, KindPlace, NestTask } from './nest-draft.js';

/** How a place is chosen; the least value wins, and among equal ones the first. */
export const PLACE_RULES = ['lowest top', 'least short side left', 'least long side left', 'least area left'] as const;

/** One way to fill a sheet. */
export interface FillRule {
  /** Indices of the kinds, the first to be placed first. */
  readonly order: readonly number[];
  readonly choose: (typeof PLACE_RULES)[number];
  /** Each kind as long as it goes, or at every step whatever kind fits best. */
  readonly mixed: boolean;
  /** Most of each kind on one sheet. */
  readonly most?: readonly number[];
}

interface Candidate {
  readonly place: KindPlace;
  readonly box: FreeRect;
  readonly value: number;
  readonly second: number;
}

function rankOf(choose: FillRule['choose'], free: FreeRect, width: number, height: number): readonly [number, number] {
  const [beside, below] = [free.width - width, free.height - height];
  switch (choose) {
    case 'lowest top':
      return [free.y + height, free.x];
    case 'least short side left':
      return [Math.min(beside, below), Math.max(beside, below)];
    case 'least long side left':
      return [Math.max(beside, below), Math.min(beside, below)];
    case 'least area left':
      return [free.width * free.height - width * height, Math.min(beside, below)];
  }
}

function bestOfKind(
  task: NestTask,
  kind: number,
  free: readonly FreeRect[],
  choose: FillRule['choose'],
): Candidate | null {
  const size = task.kinds[kind];
  if (!size) return null;
  let best: Candidate | null = null;
  for (const turned of task.turns[kind] ? [false, true] : [false]) {
    const [width, height] = turned ? [size.height, size.width] : [size.width, size.height];
    for (const each of free) {
      if (width > each.width || height > each.height) continue;
      const [value, second] = rankOf(choose, each, width, height);
      if (best !== null && (value > best.value || (value === best.value && second >= best.second))) continue;
      const { x, y } = each;
      best = { place: { kind, x, y, turned }, box: { x, y, width, height }, value, second };
    }
  }
  return best;
}

/** Free rectangles that are looked at in about 0.1 microseconds, which is one step of work. */
const LOOKS_PER_STEP = 8;

/**
 * Fills a sheet by keeping its largest free rectangles (the rules are those of J. Jylänki, A Thousand Ways to Pack the
 * Bin, 2010, section 2.3; from memory), not bound to straight cuts. Places something whenever something wanted fits.
 */
export function fillFreely(task: NestTask, rule: FillRule, meter: Meter): FillSheet {
  return (wanted) => {
    const left = wanted.map((count, kind) => Math.min(count, rule.most?.[kind] ?? Number.POSITIVE_INFINITY));
    const places: KindPlace[] = [];
    let free: readonly FreeRect[] = [{ x: 0, y: 0, width: task.width, height: task.height }];
    // A kind that fits nowhere will not fit later either.
    let open = rule.order.filter((kind) => (left[kind] ?? 0) > 0);
    while (open.length > 0 && free.length > 0) {
      let best: Candidate | null = null;
      const fitting: number[] = [];
      for (const kind of open) {
        const found: Candidate | null = !rule.mixed && best !== null ? null : bestOfKind(task, kind, free, rule.choose);
        meter.spend((free.length * 2) / LOOKS_PER_STEP);
        if (found === null && (rule.mixed || best === null)) continue;
        fitting.push(kind);
        if (found === null) continue;
        const better =
          best === null || found.value < best.value || (found.value === best.value && found.second < best.second);
        if (better) best = found;
      }
      if (best === null) break;
      const { place, box } = best;
      places.push(place);
      left[place.kind] = (left[place.kind] ?? 0) - 1;
      meter.spend((free.length * free.length) / LOOKS_PER_STEP);
      free = withoutBox(free, box);
      open = fitting.filter((kind) => (left[kind] ?? 0) > 0);
    }
    return places;
  };
}
