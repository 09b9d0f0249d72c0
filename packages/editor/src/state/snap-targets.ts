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
import { allAround, cardRect, closestAround, holds } from './snap-reveals.js';

/** A place along one axis that the moving rectangle may come to rest at. */
export interface Candidate {
  readonly start: Length;
  readonly size: Length;
  /** Smaller goes first among equally near ones. */
  readonly rank: number;
  readonly marks: (placed: Rect) => readonly SnapMark[];
}

/** Adds the edges and the centre of `target` that are within reach, for `moving` to line up with its own. */
function addLineUps(
  found: Candidate[],
  moving: SnapRect,
  target: SnapRect,
  axis: Axis,
  rank: number,
  tolerance: number,
): void {
  const size = moving[SIZE[axis]];
  const near = (start: number): boolean => Math.abs(start - moving[axis]) <= tolerance;
  const at = middle(target, axis);
  const centred = Math.floor(at - size / 2);
  if (near(centred)) {
    const marks = (placed: Rect): readonly SnapMark[] => [
      lineMark(axis, 'centre', at, placed, target),
      ...(holds(target, placed, 0) && !moving.tilted ? revealPair(placed, target, axis) : []),
    ];
    found.push({ start: ticks(centred), size, rank: rank + 1, marks });
  }
  if (moving.tilted || target.tilted) return;
  const addEdge = (edge: number, start: number): void => {
    if (!near(start)) return;
    const marks = (placed: Rect): readonly SnapMark[] => [lineMark(axis, 'edge', edge, placed, target)];
    found.push({ start: ticks(start), size, rank, marks });
  };
  const [first, last] = [target[axis], end(target, axis)];
  addEdge(first, first);
  addEdge(first, first - size);
  addEdge(last, last);
  addEdge(last, last - size);
}

/** Where `moving` shows one of `reveals` to what it lies in. */
function revealTargets(
  moving: SnapRect,
  axis: Axis,
  field: SnapField,
  reveals: readonly number[],
): readonly Candidate[] {
  const outer = closestAround(moving, allAround(field), field.tolerance);
  if (!outer) return [];
  const size = moving[SIZE[axis]];
  const one = (side: 0 | 1) => (placed: Rect) => [revealPair(placed, outer, axis)[side]];
  const found: Candidate[] = [];
  for (const gap of reveals)
    for (const [start, side] of [[outer[axis] + gap, 0] as const, [end(outer, axis) - gap - size, 1] as const])
      if (Math.abs(start - moving[axis]) <= field.tolerance)
        found.push({ start: ticks(start), size, rank: 4, marks: one(side) });
  return found;
}

/** The upright pieces that `moving` stands in one row with along `axis`, first to last. */
function rowOf(moving: SnapRect, axis: Axis, { others }: SnapField): readonly SnapRect[] {
  const across = ACROSS[axis];
  const [from, to] = [moving[across], end(moving, across)];
  const row: SnapRect[] = [];
  for (const other of others) if (!other.tilted && other[across] < to && from < end(other, across)) row.push(other);
  return row.sort((one, other) => one[axis] - other[axis]);
}

/**
 * Where the gap between `moving` and a neighbour is as wide as the gap beside it, as far as it is within reach: before,
 * between and behind two of its row.
 */
function gapTargets(moving: SnapRect, axis: Axis, field: SnapField): readonly Candidate[] {
  const size = moving[SIZE[axis]];
  const row = rowOf(moving, axis, field);
  const found: Candidate[] = [];
  const offer = (place: number, marks: Candidate['marks']): void => {
    const start = Math.floor(place);
    if (Math.abs(start - moving[axis]) <= field.tolerance) found.push({ start: ticks(start), size, rank: 5, marks });
  };
  for (const one of row) {
    const other = row.find((later) => later[axis] > end(one, axis));
    if (!other) continue;
    const gap = other[axis] - end(one, axis);
    if (gap > size)
      offer(end(one, axis) + (gap - size) / 2, (placed) => [gapMark(axis, one, placed), gapMark(axis, placed, other)]);
    offer(one[axis] - gap - size, (placed) => [gapMark(axis, placed, one), gapMark(axis, one, other)]);
    offer(end(other, axis) + gap, (placed) => [gapMark(axis, one, other), gapMark(axis, other, placed)]);
  }
  return found;
}

/** What `moving` could come to along `axis` within reach: an edge and a centre for each piece, reveals, equal gaps. */
export function moveTargets(
  moving: SnapRect,
  axis: Axis,
  field: SnapField,
  reveals: readonly number[],
): readonly Candidate[] {
  // One list that grows: a drag asks for it several times for each frame, and almost nothing is within reach.
  const found: Candidate[] = [];
  addLineUps(found, moving, cardRect(field), axis, 0, field.tolerance);
  for (const other of field.others) addLineUps(found, moving, other, axis, 2, field.tolerance);
  if (moving.tilted) return found;
  return [...found, ...revealTargets(moving, axis, field, reveals), ...gapTargets(moving, axis, field)];
}
