/**
 * A group of blanks as a person would cut it: a blank, or parts side by side (`vertical`) or below each other. It has
 * no places, only the least size that holds it: along the cuts the sum of its parts, across them the largest. Every
 * cut tree is one of these in a sheet, with what is left over as offcuts; here the left-over is not said. All sizes
 * are with the blade's kerf added to each blank, so that sums need no kerf of their own.
 */
export interface Slice {
  /** The kind of a blank, -1 for a group. */
  readonly kind: number;
  readonly turned: boolean;
  readonly vertical: boolean;
  /** Parts of a group, at least two; a group in the same direction is never among them. */
  readonly parts: readonly Slice[];
  readonly w: number;
  readonly h: number;
}

const NO_PARTS: readonly Slice[] = [];

/** One blank; `w` and `h` with the kerf, as it lies. */
export function leafSlice(kind: number, turned: boolean, w: number, h: number): Slice {
  return { kind, turned, vertical: false, parts: NO_PARTS, w, h };
}

/** Parts side by side or below each other; groups of the same direction are dissolved into it, one part stays itself. */
export function cutSlice(vertical: boolean, parts: readonly Slice[]): Slice {
  const flat = parts.flatMap((part) => (part.kind < 0 && part.vertical === vertical ? part.parts : [part]));
  const [only] = flat;
  if (flat.length === 1 && only) return only;
  let w = 0;
  let h = 0;
  for (const part of flat) {
    w = vertical ? w + part.w : Math.max(w, part.w);
    h = vertical ? Math.max(h, part.h) : h + part.h;
  }
  return { kind: -1, turned: false, vertical, parts: flat, w, h };
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

/** `slice` without the blanks for which `keep` says no, asked in order; null when nothing stays. */
export function without(slice: Slice, keep: (leaf: Slice) => boolean): Slice | null {
  if (slice.kind >= 0) return keep(slice) ? slice : null;
  const parts = slice.parts.flatMap((part) => without(part, keep) ?? []);
  return parts.length === 0
    ? null
    : parts.length === slice.parts.length && parts.every((part, at) => part === slice.parts[at])
      ? slice
      : cutSlice(slice.vertical, parts);
}
