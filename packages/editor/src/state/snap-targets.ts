import { type Axis, type Length, type Rect, ticks } from '@trimwell/geometry';
import type { SnapField } from './snap.js';
import {
  ACROSS,
  end,
  gapMark,
  lineMark,
  middle,
  revealPair,
  SIZE,
  type SnapMark,
  type SnapRect,
} from './snap-marks.js';
import { cardRect, closestAround, holds } from './snap-reveals.js';

/** A place along one axis that the moving rectangle may come to rest at. */
export interface Candidate {
  readonly start: Length;
  readonly size: Length;
  /** Smaller goes first among equally near ones. */
  readonly rank: number;
  readonly marks: (placed: Rect) => readonly SnapMark[];
}

/** The edges and the centre of `target` that are within reach, for `moving` to line up with its own. */
function lineUps(
  moving: SnapRect,
  target: SnapRect,
  axis: Axis,
  rank: number,
  { tolerance }: SnapField,
): readonly Candidate[] {
  const size = moving[SIZE[axis]];
  const near = (start: number): boolean => Math.abs(start - moving[axis]) <= tolerance;
  const found: Candidate[] = [];
  const at = middle(target, axis);
  const centred = Math.floor(at - size / 2);
  if (near(centred)) {
    const marks = (placed: Rect): readonly SnapMark[] => [
      lineMark(axis, 'centre', at, placed, target),
      ...(holds(target, placed, 0) && !moving.tilted ? revealPair(placed, target, axis) : []),
    ];
    found.push({ start: ticks(centred), size, rank: rank + 1, marks });
  }
  if (moving.tilted || target.tilted) return found;
  for (const edge of [target[axis], end(target, axis)])
    for (const start of [edge, edge - size])
      if (near(start)) {
        const marks = (placed: Rect): readonly SnapMark[] => [lineMark(axis, 'edge', edge, placed, target)];
        found.push({ start: ticks(start), size, rank, marks });
      }
  return found;
}

/** Where `moving` shows one of `reveals` to what it lies in. */
function revealTargets(
  moving: SnapRect,
  axis: Axis,
  field: SnapField,
  reveals: readonly number[],
): readonly Candidate[] {
  const outer = closestAround(moving, [cardRect(field), ...field.others], field.tolerance);
  if (!outer) return [];
  const size = moving[SIZE[axis]];
  const one = (side: 0 | 1) => (placed: Rect) => [revealPair(placed, outer, axis)[side]];
  return reveals.flatMap((gap): readonly Candidate[] => [
    { start: ticks(outer[axis] + gap), size, rank: 4, marks: one(0) },
    { start: ticks(end(outer, axis) - gap - size), size, rank: 4, marks: one(1) },
  ]);
}

/** The upright pieces that `moving` stands in one row with along `axis`, first to last. */
function rowOf(moving: SnapRect, axis: Axis, { others }: SnapField): readonly SnapRect[] {
  const across = ACROSS[axis];
  return others
    .filter((other) => !other.tilted && other[across] < end(moving, across) && moving[across] < end(other, across))
    .toSorted((one, other) => one[axis] - other[axis]);
}

/** Where the gap between `moving` and a neighbour is as wide as the gap beside it: before, between and behind two of its row. */
function gapTargets(moving: SnapRect, axis: Axis, field: SnapField): readonly Candidate[] {
  const size = moving[SIZE[axis]];
  const row = rowOf(moving, axis, field);
  const candidate = (start: number, marks: Candidate['marks']): Candidate => ({
    start: ticks(Math.floor(start)),
    size,
    rank: 5,
    marks,
  });
  return row.flatMap((one): readonly Candidate[] => {
    const other = row.find((later) => later[axis] > end(one, axis));
    if (!other) return [];
    const gap = other[axis] - end(one, axis);
    const around = [
      candidate(one[axis] - gap - size, (placed) => [gapMark(axis, placed, one), gapMark(axis, one, other)]),
      candidate(end(other, axis) + gap, (placed) => [gapMark(axis, one, other), gapMark(axis, other, placed)]),
    ];
    if (gap <= size) return around;
    const between = candidate(end(one, axis) + (gap - size) / 2, (placed) => [
      gapMark(axis, one, placed),
      gapMark(axis, placed, other),
    ]);
    return [between, ...around];
  });
}

/** What `moving` could come to along `axis`. Lines out of reach are left out at once: there are five to every piece. */
export function moveTargets(
  moving: SnapRect,
  axis: Axis,
  field: SnapField,
  reveals: readonly number[],
): readonly Candidate[] {
  const lines = [
    ...lineUps(moving, cardRect(field), axis, 0, field),
    ...field.others.flatMap((other) => lineUps(moving, other, axis, 2, field)),
  ];
  if (moving.tilted) return lines;
  return [...lines, ...revealTargets(moving, axis, field, reveals), ...gapTargets(moving, axis, field)];
}
