import { type Axis, type Rect, ticks } from '@trimwell/geometry';
import type { SnapField } from './snap.js';
import { gaps, revealPair, type SnapMark, type SnapRect } from './snap-marks.js';

/** The face of the card as something to snap to. */
export function cardRect({ card }: Pick<SnapField, 'card'>): SnapRect {
  return { x: ticks(0), y: ticks(0), width: card.width, height: card.height };
}

/** True when `inner` lies in `outer`, or reaches over it by no more than `slack`. */
export function holds(outer: Rect, inner: Rect, slack: number): boolean {
  return (['x', 'y'] as const).every((axis) => gaps(inner, outer, axis).every((gap) => gap >= -slack));
}

/** The smallest of `outers` that `inner` lies in; the later of two alike, since it lies above. */
export function closestAround(inner: Rect, outers: readonly SnapRect[], slack = 0): SnapRect | null {
  return outers
    .filter((outer) => !outer.tilted && outer !== inner && holds(outer, inner, slack))
    .reduce<SnapRect | null>(
      (best, outer) => (best && best.width * best.height < outer.width * outer.height ? best : outer),
      null,
    );
}

/** A gap as wide as a quarter of the card's shorter side, or wider, is no border any more, and nothing to repeat. */
function isReveal(gap: number, { card }: SnapField): boolean {
  return gap > 0 && gap < Math.min(card.width, card.height) / 4;
}

/** Known while the field is: a drag asks for them at every move. */
const known = new WeakMap<SnapField, readonly number[]>();

/** Every reveal that the pieces show already, smallest first, each once: their gaps to what they lie on. */
export function existingReveals(field: SnapField): readonly number[] {
  const before = known.get(field);
  if (before) return before;
  const around = [cardRect(field), ...field.others];
  const found = field.others.flatMap((piece) => {
    const below = piece.tilted ? null : closestAround(piece, around);
    return below ? [...gaps(piece, below, 'x'), ...gaps(piece, below, 'y')] : [];
  });
  const reveals = [...new Set(found)].filter((gap) => isReveal(gap, field)).sort((a, b) => a - b);
  known.set(field, reveals);
  return reveals;
}

/** The reveals of `placed` along `axis`, as far as they are such: what its other direction can come to as well. */
export function ownReveals(placed: SnapRect, axis: Axis, field: SnapField): readonly number[] {
  const outer = placed.tilted ? null : closestAround(placed, [cardRect(field), ...field.others]);
  return outer ? gaps(placed, outer, axis).filter((gap) => isReveal(gap, field)) : [];
}

/**
 * The reveals of `placed` that are equal on three or four sides, as marks; none when fewer are, or when it lies in
 * nothing. A border that is even but for one side is what the eye goes by while the last side is pulled.
 */
export function evenReveals(placed: SnapRect, field: SnapField): readonly SnapMark[] {
  const outer = placed.tilted ? null : closestAround(placed, [cardRect(field), ...field.others]);
  if (!outer) return [];
  const all = [...revealPair(placed, outer, 'x'), ...revealPair(placed, outer, 'y')];
  const even = all.filter(({ length }) => all.filter((other) => other.length === length).length >= 3);
  return even.every(({ length = 0 }) => isReveal(length, field)) ? even : [];
}
