import { type Axis, type Length, nearestStep, type Rect, type Size, ticks } from '@trimwell/geometry';

/** A rectangle to snap to or to move; of a tilted one only the centre is a line that a ruler could lie along. */
export interface SnapRect extends Rect {
  readonly tilted?: boolean;
}

/** What is around while something moves. `tolerance` is in ticks; `others` are the pieces that do not move, base first. */
export interface SnapField {
  readonly card: Size;
  readonly others: readonly SnapRect[];
  readonly step: Length;
  readonly tolerance: number;
}

/**
 * What to draw for one snap. `edge` and `centre` are lines at `at` on `axis`, drawn from `from` to `to` on the other axis. A `reveal` is a dimension along `axis` from `from` to `to`, drawn at `at` on the other axis, and `length`
 * is its figure; coming to a mark of the ruler draws nothing. All in ticks of the card face; a centre may lie on half a tick.
 */
export interface SnapMark {
  readonly axis: Axis;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly kind: 'edge' | 'centre' | 'reveal';
  readonly length?: Length;
}

/** The side of a rectangle that moves while it is resized: `near` is left or top, `far` right or bottom. */
export type Side = 'near' | 'far';

/** A place along one axis that the moving rectangle may come to rest at. */
interface Candidate {
  readonly start: Length;
  readonly size: Length;
  /** Smaller goes first among equally near ones. */
  readonly rank: number;
  readonly marks: (placed: Rect) => readonly SnapMark[];
}

const SIZE = { x: 'width', y: 'height' } as const;
const ACROSS = { x: 'y', y: 'x' } as const;

/** Six screen pixels, but never more than one step: the next mark of the ruler beside a target can always be reached. */
export function snapTolerance(ticksPerPixel: number, step: Length): number {
  return Math.min(6 * ticksPerPixel, step);
}

function end(rect: Rect, axis: Axis): number {
  return rect[axis] + rect[SIZE[axis]];
}

function middle(rect: Rect, axis: Axis): number {
  return rect[axis] + rect[SIZE[axis]] / 2;
}

function placedAt(rect: Rect, axis: Axis, start: number, size: number = rect[SIZE[axis]]): Rect {
  return { ...rect, [axis]: ticks(start), [SIZE[axis]]: ticks(size) };
}

/** A line across both rectangles at `at`. */
function lineMark(axis: Axis, kind: 'edge' | 'centre', at: number, placed: Rect, other: Rect): SnapMark {
  const across = ACROSS[axis];
  const from = Math.min(placed[across], other[across]);
  const to = Math.max(end(placed, across), end(other, across));
  return { axis, at, from, to, kind };
}

function revealMark(axis: Axis, from: number, to: number, at: number): SnapMark {
  return { axis, at, from, to, kind: 'reveal', length: ticks(Math.abs(to - from)) };
}

/** The gaps between `inner` and `outer` along `axis`. */
function gaps(inner: Rect, outer: Rect, axis: Axis): readonly [number, number] {
  return [inner[axis] - outer[axis], end(outer, axis) - end(inner, axis)];
}

function holds(outer: Rect, inner: Rect, slack: number): boolean {
  return (['x', 'y'] as const).every((axis) => gaps(inner, outer, axis).every((gap) => gap >= -slack));
}

/** The smallest of `outers` that `inner` lies in; the later of two alike, since it lies above. */
function closestAround(inner: Rect, outers: readonly SnapRect[], slack = 0): Rect | null {
  return outers
    .filter((outer) => !outer.tilted && outer !== inner && holds(outer, inner, slack))
    .reduce<Rect | null>(
      (best, outer) => (best && best.width * best.height < outer.width * outer.height ? best : outer),
      null,
    );
}

/** A gap as wide as a quarter of the card's shorter side, or wider, is no border any more, and nothing to repeat. */
function isReveal(gap: number, { card }: SnapField): boolean {
  return gap > 0 && gap < Math.min(card.width, card.height) / 4;
}

/** Every reveal that the pieces show already, smallest first, each once: their gaps to what they lie on. */
function existingReveals(field: SnapField, card: Rect): readonly number[] {
  const found = field.others.flatMap((piece) => {
    const below = piece.tilted ? null : closestAround(piece, [card, ...field.others]);
    return below ? [...gaps(piece, below, 'x'), ...gaps(piece, below, 'y')] : [];
  });
  return [...new Set(found)].filter((gap) => isReveal(gap, field)).sort((a, b) => a - b);
}

/** Both reveals along `axis` of `placed` within `outer`, to be drawn when one of them is why it snapped. */
function revealPair(placed: Rect, outer: Rect, axis: Axis): readonly SnapMark[] {
  const at = middle(placed, ACROSS[axis]);
  return [revealMark(axis, outer[axis], placed[axis], at), revealMark(axis, end(placed, axis), end(outer, axis), at)];
}

function moveCandidates(
  moving: SnapRect,
  axis: Axis,
  field: SnapField,
  card: Rect,
  reveals: readonly number[],
): readonly Candidate[] {
  const size = moving[SIZE[axis]];
  const found: Candidate[] = [];
  const outer = closestAround(moving, [card, ...field.others], field.tolerance);
  const lineUp = (target: SnapRect, rank: number): void => {
    const centred = Math.floor(target[axis] + (target[SIZE[axis]] - size) / 2);
    const aligned = (placed: Rect): readonly SnapMark[] =>
      holds(target, placed, 0) && !moving.tilted
        ? [lineMark(axis, 'centre', middle(target, axis), placed, target), ...revealPair(placed, target, axis)]
        : [lineMark(axis, 'centre', middle(target, axis), placed, target)];
    found.push({ start: ticks(centred), size, rank: rank + 1, marks: aligned });
    if (moving.tilted || target.tilted) return;
    for (const edge of [target[axis], end(target, axis)])
      for (const start of [edge, edge - size])
        found.push({
          start: ticks(start),
          size,
          rank,
          marks: (placed) => [lineMark(axis, 'edge', edge, placed, target)],
        });
  };
  lineUp(card, 0);
  for (const other of field.others) lineUp(other, 2);
  if (moving.tilted || !outer) return found;
  for (const gap of reveals) {
    const [near, far] = [outer[axis] + gap, end(outer, axis) - gap - size];
    const one = (first: boolean) => (placed: Rect) =>
      revealPair(placed, outer, axis).slice(first ? 0 : 1, first ? 1 : 2);
    found.push({ start: ticks(near), size, rank: 4, marks: one(true) });
    found.push({ start: ticks(far), size, rank: 4, marks: one(false) });
  }
  return found;
}

/** The nearest candidate within `tolerance` of `rect`; of two equally near the one of lower rank, then the earlier. */
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

/** A rectangle come to rest, and the marks that say on what. */
export interface Snapped {
  readonly rect: Rect;
  readonly marks: readonly SnapMark[];
}

/** Along the other axis the gaps that this axis has just come to count as reveals too: 1/4 at the left, 1/4 at the top. */
function ownReveals(placed: SnapRect, field: SnapField, card: Rect): readonly number[] {
  const outer = placed.tilted ? null : closestAround(placed, [card, ...field.others]);
  return outer ? gaps(placed, outer, 'x').filter((gap) => isReveal(gap, field)) : [];
}

/**
 * Where `moving` comes to rest. Each axis for itself, x first: the nearest target within the tolerance, else the nearest
 * multiple of the step. Targets are edges and centres of the card and of the other pieces (edges line up with edges,
 * centres with centres), and reveals that are shown already. Equally near targets are taken in this order: the card's
 * edges, its centre, other pieces' edges, their centres, reveals; then the lower piece first. A centre that would fall on
 * half a tick is taken half a tick lower.
 */
export function snapMove(moving: SnapRect, field: SnapField): Snapped {
  const card: Rect = { x: ticks(0), y: ticks(0), ...field.card };
  const reveals = existingReveals(field, card);
  const along = (rect: SnapRect, axis: Axis, gapsToo: readonly number[]): Candidate | null =>
    nearest(moveCandidates(rect, axis, field, card, gapsToo), field.tolerance, ({ start }) =>
      Math.abs(start - rect[axis]),
    );
  const x = along(moving, 'x', reveals);
  const across: SnapRect = { ...moving, x: x?.start ?? nearestStep(moving.x, field.step) };
  const y = along(across, 'y', [...reveals, ...ownReveals(across, field, card)]);
  const rect: Rect = {
    x: across.x,
    y: y?.start ?? nearestStep(moving.y, field.step),
    width: moving.width,
    height: moving.height,
  };
  return { rect, marks: [...(x?.marks(rect) ?? []), ...(y?.marks(rect) ?? [])] };
}

/**
 * Where the `side` of `rect` comes to rest while it is pulled to `to` along `axis`; the other side stays. Targets are
 * edges of the card and of other pieces, the place where both reveals are equal, and reveals shown already; else the
 * size becomes a multiple of the step, since it is the size that is cut. Order among equally near ones as for `snapMove`.
 * The size is never below one step.
 */
export function snapEdge(rect: Rect, axis: Axis, side: Side, to: number, field: SnapField): Snapped {
  const card: Rect = { x: ticks(0), y: ticks(0), ...field.card };
  const fixed = side === 'far' ? rect[axis] : end(rect, axis);
  const candidate = (at: number, rank: number, marks: Candidate['marks']): readonly Candidate[] => {
    const size = side === 'far' ? at - fixed : fixed - at;
    return size < field.step ? [] : [{ start: ticks(side === 'far' ? fixed : at), size: ticks(size), rank, marks }];
  };
  const flat = field.others.filter((other) => !other.tilted);
  const found = [card, ...flat].flatMap((target) =>
    [target[axis], end(target, axis)].flatMap((edge) =>
      candidate(edge, target === card ? 0 : 2, (placed) => [lineMark(axis, 'edge', edge, placed, target)]),
    ),
  );
  const pulled = side === 'far' ? { start: fixed, size: to - fixed } : { start: to, size: fixed - to };
  const loose: SnapRect = { ...rect, [axis]: pulled.start, [SIZE[axis]]: pulled.size };
  const outer = closestAround(loose, [card, ...flat], field.tolerance);
  if (outer) {
    const [near, far] = gaps(loose, outer, axis);
    const other = side === 'far' ? near : far;
    const pull = (gap: number): number => (side === 'far' ? end(outer, axis) - gap : outer[axis] + gap);
    if (other > 0) found.push(...candidate(pull(other), 1, (placed) => revealPair(placed, outer, axis)));
    for (const gap of existingReveals(field, card))
      found.push(
        ...candidate(pull(gap), 4, (placed) =>
          revealPair(placed, outer, axis).filter((_, n) => n === (side === 'far' ? 1 : 0)),
        ),
      );
  }
  const edgeOf = ({ start, size }: { start: number; size: number }): number => (side === 'far' ? start + size : start);
  const best = nearest(found, field.tolerance, (one) => Math.abs(edgeOf(one) - to));
  if (best) {
    const placed = placedAt(rect, axis, best.start, best.size);
    return { rect: placed, marks: best.marks(placed) };
  }
  const size = Math.max(field.step, nearestStep(Math.abs(to - fixed) * (pulled.size < 0 ? -1 : 1), field.step));
  return { rect: placedAt(rect, axis, side === 'far' ? fixed : fixed - size, size), marks: [] };
}
