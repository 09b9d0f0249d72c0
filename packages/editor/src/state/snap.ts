import { type Axis, type Length, nearestStep, type Point, type Rect, type Size, ticks } from '@trimwell/geometry';
import { end, gaps, lineMark, revealPair, SIZE, type SnapMark, type SnapRect } from './snap-marks.js';
import { cardRect, closestAround, evenReveals, existingReveals, ownReveals } from './snap-reveals.js';
import { type Candidate, moveTargets } from './snap-targets.js';

export type { SnapMark, SnapRect } from './snap-marks.js';

/** What is around while something moves. `tolerance` is in ticks; `others` are the pieces that do not move, base first. */
export interface SnapField {
  readonly card: Size;
  readonly others: readonly SnapRect[];
  readonly step: Length;
  readonly tolerance: number;
}

/** The side of a rectangle that moves while it is resized: `near` is left or top, `far` right or bottom. */
export type Side = 'near' | 'far';

/** A rectangle come to rest, and the marks that say on what. */
export interface Snapped {
  readonly rect: Rect;
  readonly marks: readonly SnapMark[];
}

/** Six screen pixels, but never more than one step: the next mark of the ruler beside a target can always be reached. */
export function snapTolerance(ticksPerPixel: number, step: Length): number {
  return Math.min(6 * ticksPerPixel, step);
}

/** The nearest candidate within `tolerance`; of two equally near the one of lower rank, then the earlier. */
function nearest(
  candidates: readonly Candidate[],
  tolerance: number,
  distance: (candidate: Candidate) => number,
): Candidate | null {
  return candidates.reduce<Candidate | null>((best, candidate) => {
    const far = distance(candidate);
    if (far > tolerance) return best;
    if (!best) return candidate;
    const before = far - distance(best);
    return before < 0 || (before === 0 && candidate.rank < best.rank) ? candidate : best;
  }, null);
}

/** The same stretch is marked once, whatever the reasons for it. */
function once(marks: readonly SnapMark[]): readonly SnapMark[] {
  const text = ({ axis, kind, at, from, to }: SnapMark): string => [axis, kind, at, from, to].join(' ');
  return marks.filter((mark, index) => marks.findIndex((other) => text(other) === text(mark)) === index);
}

/** The marks of a rectangle at rest; when a reveal is one of them, also the others that make an even border with it. */
function marksAt(placed: SnapRect, marks: readonly SnapMark[], field: SnapField): readonly SnapMark[] {
  const bordered = marks.some(({ kind }) => kind === 'reveal');
  return once(bordered ? [...marks, ...evenReveals(placed, field)] : marks);
}

/**
 * Where `moving` comes to rest. Each axis for itself: the nearest target within the tolerance, else the nearest mark of
 * the ruler. Targets are edges and centres of the card and of the other pieces (edges line up with edges, centres with
 * centres), reveals that are shown already or along the other axis, and gaps as wide as the next one in a row of pieces.
 * Only places on marks of the ruler are targets, and those flush with an edge of the card, where no ruler is needed.
 * Equally near targets are taken in this order: the card's edges, its centre, other pieces' edges, their centres,
 * reveals, gaps; then the lower piece first. `ruled` is the point of `moving`, from its left top, that comes to marks:
 * that of the piece which is dragged, when it is one of several.
 */
export function snapMove(moving: SnapRect, field: SnapField, ruled: Point = { x: 0, y: 0 }): Snapped {
  const reveals = existingReveals(field);
  const fits = (start: number, axis: Axis): boolean =>
    (start + ruled[axis]) % field.step === 0 || start === 0 || start + moving[SIZE[axis]] === field.card[SIZE[axis]];
  const along = (rect: SnapRect, axis: Axis, gapsToo: readonly number[]): Candidate | null =>
    nearest(
      moveTargets(rect, axis, field, [...reveals, ...gapsToo]).filter(({ start }) => fits(start, axis)),
      field.tolerance,
      ({ start }) => Math.abs(start - rect[axis]),
    );
  const rested = (found: Candidate | null, axis: Axis): Length =>
    found?.start ?? ticks(nearestStep(moving[axis] + ruled[axis], field.step) - ruled[axis]);
  const first = along(moving, 'x', []);
  const across: SnapRect = { ...moving, x: rested(first, 'x') };
  const y = along(across, 'y', ownReveals(across, 'x', field));
  const high: SnapRect = { ...moving, y: rested(y, 'y') };
  const x = first ?? along(high, 'x', ownReveals({ ...across, y: high.y }, 'y', field));
  const rect: Rect = { x: rested(x, 'x'), y: high.y, width: moving.width, height: moving.height };
  return {
    rect,
    marks: marksAt({ ...moving, ...rect }, [...(x?.marks(rect) ?? []), ...(y?.marks(rect) ?? [])], field),
  };
}

function placedAt(rect: Rect, axis: Axis, start: number, size: number): Rect {
  return { ...rect, [axis]: ticks(start), [SIZE[axis]]: ticks(size) };
}

/** What a pulled side can come to: edges, an equal reveal across, reveals shown already or along the other axis. */
function edgeTargets(rect: Rect, axis: Axis, side: Side, to: number, field: SnapField): readonly Candidate[] {
  const card = cardRect(field);
  const fixed = side === 'far' ? rect[axis] : end(rect, axis);
  const candidate = (at: number, rank: number, marks: Candidate['marks']): readonly Candidate[] => {
    const size = side === 'far' ? at - fixed : fixed - at;
    const start = side === 'far' ? fixed : at;
    return size < field.step || size % field.step !== 0
      ? []
      : [{ start: ticks(start), size: ticks(size), rank, marks }];
  };
  const flat = field.others.filter((other) => !other.tilted);
  const edges = [card, ...flat].flatMap((target) =>
    [target[axis], end(target, axis)].flatMap((edge) =>
      candidate(edge, target === card ? 0 : 2, (placed) => [lineMark(axis, 'edge', edge, placed, target)]),
    ),
  );
  const [start, size] = side === 'far' ? [fixed, to - fixed] : [to, fixed - to];
  const loose: SnapRect = { ...rect, [axis]: start, [SIZE[axis]]: size };
  const outer = closestAround(loose, [card, ...flat], field.tolerance);
  if (!outer) return edges;
  const [near, far] = gaps(loose, outer, axis);
  const across = side === 'far' ? near : far;
  const pull = (gap: number): number => (side === 'far' ? end(outer, axis) - gap : outer[axis] + gap);
  const own = ownReveals(loose, axis === 'x' ? 'y' : 'x', field);
  const opposite = across > 0 ? candidate(pull(across), 1, (placed) => revealPair(placed, outer, axis)) : [];
  const shown = [...own, ...existingReveals(field)].flatMap((gap) =>
    candidate(pull(gap), 4, (placed) => [revealPair(placed, outer, axis)[side === 'far' ? 1 : 0]]),
  );
  return [...edges, ...opposite, ...shown];
}

/**
 * Where the `side` of `rect` comes to rest while it is pulled to `to` along `axis`; the other side stays. Targets are
 * edges of the card and of other pieces, the place where both reveals are equal, reveals shown already and those along
 * the other axis, as far as the size is then a whole number of marks, since it is the size that is cut; else the nearest
 * such size. Order among equally near ones as for `snapMove`. The size is never below one step.
 */
export function snapEdge(rect: Rect, axis: Axis, side: Side, to: number, field: SnapField): Snapped {
  const fixed = side === 'far' ? rect[axis] : end(rect, axis);
  const edgeOf = ({ start, size }: { start: number; size: number }): number => (side === 'far' ? start + size : start);
  const best = nearest(edgeTargets(rect, axis, side, to, field), field.tolerance, (one) => Math.abs(edgeOf(one) - to));
  if (best) {
    const placed = placedAt(rect, axis, best.start, best.size);
    return { rect: placed, marks: marksAt(placed, best.marks(placed), field) };
  }
  const size = Math.max(field.step, nearestStep(side === 'far' ? to - fixed : fixed - to, field.step));
  return { rect: placedAt(rect, axis, side === 'far' ? fixed : fixed - size, size), marks: [] };
}
