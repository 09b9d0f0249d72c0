/**
 * A group of blanks as a person would cut it: a blank, parts side by side (`vertical`) or below each other, or a
 * pinwheel. It has no places, only the least size that holds it: along the cuts the sum of its parts, across them the
 * largest. Every cut tree is one of these in a sheet, with what is left over as offcuts; here the left-over is not said.
 * All sizes are with the blade's kerf added to each blank, so that sums need no kerf of their own.
 */
export interface Slice {
  /** The kind of a blank, `GROUP` or `PINWHEEL`. */
  readonly kind: number;
  readonly turned: boolean;
  readonly vertical: boolean;
  /** Parts of a group, at least two; a group in the same direction is never among them. The arms there are of a pinwheel. */
  readonly parts: readonly Slice[];
  /** Top, right, bottom, left and centre of a pinwheel, turned clockwise; null where nothing lies. Else null. */
  readonly arms: readonly (Slice | null)[] | null;
  readonly w: number;
  readonly h: number;
  /** What its blanks cover. */
  readonly area: number;
}

export const GROUP = -1;
export const PINWHEEL = -2;

const NO_PARTS: readonly Slice[] = [];

/** One blank; `w` and `h` with the kerf, as it lies. */
export function leafSlice(kind: number, turned: boolean, w: number, h: number): Slice {
  return { kind, turned, vertical: false, parts: NO_PARTS, arms: null, w, h, area: w * h };
}

/** Parts side by side or below each other; groups of the same direction are dissolved into it, one part stays itself. */
export function cutSlice(vertical: boolean, parts: readonly Slice[]): Slice {
  const flat: Slice[] = [];
  let w = 0;
  let h = 0;
  let area = 0;
  for (const part of parts) {
    area += part.area;
    w = vertical ? w + part.w : Math.max(w, part.w);
    h = vertical ? Math.max(h, part.h) : h + part.h;
    if (part.kind === GROUP && part.vertical === vertical) flat.push(...part.parts);
    else flat.push(part);
  }
  const [only] = flat;
  if (flat.length === 1 && only) return only;
  return { kind: GROUP, turned: false, vertical, parts: flat, arms: null, w, h, area };
}

/** Where the four cuts of a pinwheel lie when all is pushed to the left and to the top; see `PinwheelNode`. */
export interface PinwheelCuts {
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
}

/** The cuts of a pinwheel of these arms (top, right, bottom, left, centre). */
export function pinwheelCuts(arms: readonly (Slice | null)[]): PinwheelCuts {
  const [top, right, , left, centre] = arms;
  const x1 = left?.w ?? 0;
  const y1 = top?.h ?? 0;
  return {
    x1,
    x2: Math.max(top?.w ?? 0, x1 + (centre?.w ?? 0)),
    y1,
    y2: Math.max(right?.h ?? 0, y1 + (centre?.h ?? 0)),
  };
}

/** Those there are, side by side or below each other; null for none. */
function groupOf(vertical: boolean, parts: readonly (Slice | null)[]): Slice | null {
  const there = parts.filter((part) => part !== null);
  return there.length === 0 ? null : cutSlice(vertical, there);
}

/**
 * Five parts turned around a centre (top, right, bottom, left, centre). Where one of the four arms is missing, cuts from
 * edge to edge do the same, so that it is a group; null when nothing is there.
 */
export function pinwheelSlice(arms: readonly (Slice | null)[]): Slice | null {
  const [t, r, b, l, c] = arms as readonly [Slice | null, Slice | null, Slice | null, Slice | null, Slice | null];
  if (!r) return groupOf(false, [t, groupOf(true, [l, groupOf(false, [c, b])])]);
  if (!b) return groupOf(true, [groupOf(false, [t, groupOf(true, [l, c])]), r]);
  if (!l) return groupOf(false, [groupOf(true, [groupOf(false, [t, c]), r]), b]);
  if (!t) return groupOf(true, [l, groupOf(false, [groupOf(true, [c, r]), b])]);
  const parts = arms.filter((arm) => arm !== null);
  const { x1, x2, y1, y2 } = pinwheelCuts(arms);
  const [, right, bottom, left] = arms;
  const w = Math.max(x2 + (right?.w ?? 0), x1 + (bottom?.w ?? 0));
  const h = Math.max(y2 + (bottom?.h ?? 0), y1 + (left?.h ?? 0));
  const area = parts.reduce((sum, part) => sum + part.area, 0);
  return { kind: PINWHEEL, turned: false, vertical: false, parts, arms, w, h, area };
}

/** Adds how often each kind stands in `slice` to `counts`. */
export function countInto(slice: Slice, counts: number[]): void {
  if (slice.kind >= 0) counts[slice.kind] = (counts[slice.kind] ?? 0) + 1;
  for (const part of slice.parts) countInto(part, counts);
}

/** How often each of `kinds` kinds stands in `slice`. */
export function countsOf(slice: Slice, kinds: number): number[] {
  const counts = Array.from({ length: kinds }, () => 0);
  countInto(slice, counts);
  return counts;
}

/** How many blanks stand in `slice`. */
export function countLeaves(slice: Slice): number {
  if (slice.kind >= 0) return 1;
  let sum = 0;
  for (const part of slice.parts) sum += countLeaves(part);
  return sum;
}

/** `slice` without the blanks for which `keep` says no, asked in order; null when nothing stays. */
export function without(slice: Slice, keep: (leaf: Slice) => boolean): Slice | null {
  if (slice.kind >= 0) return keep(slice) ? slice : null;
  if (slice.arms) {
    const arms = slice.arms.map((arm) => arm && without(arm, keep));
    return arms.every((arm, at) => arm === slice.arms?.[at]) ? slice : pinwheelSlice(arms);
  }
  const parts: Slice[] = [];
  let same = true;
  for (const part of slice.parts) {
    const kept = without(part, keep);
    if (kept !== part) same = false;
    if (kept) parts.push(kept);
  }
  return same ? slice : parts.length === 0 ? null : cutSlice(slice.vertical, parts);
}
