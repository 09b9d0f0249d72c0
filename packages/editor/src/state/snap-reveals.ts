import { type Axis, type Rect, ticks } from '@trimwell/geometry';
import type { SnapField } from './snap.js';
import { gaps, revealPair, type SnapMark, type SnapRect } from './snap-marks.js';

/** The face of the card as something to snap to. */
export function cardRect({ card }: Pick<SnapField, 'card'>): SnapRect {
  return { x: ticks(0), y: ticks(0), width: card.width, height: card.height };
}

/** True when `inner` lies in `outer`, or reaches over it by no more than `slack`. */
export function holds(outer: Rect, inner: Rect, slack: number): boolean {
  return (
    inner.x - outer.x >= -slack &&
    inner.y - outer.y >= -slack &&
    outer.x + outer.width - inner.x - inner.width >= -slack &&
    outer.y + outer.height - inner.y - inner.height >= -slack
  );
}

/** The smallest of `outers` that `inner` lies in; the later of two alike, since it lies above. */
export function closestAround(inner: Rect, outers: readonly SnapRect[], slack = 0): SnapRect | null {
  let best: SnapRect | null = null;
  // A loop without copies: a drag asks this several times for each frame, of every piece.
  for (const outer of outers) {
    if (outer.tilted || outer === inner || !holds(outer, inner, slack)) continue;
    if (!best || best.width * best.height >= outer.width * outer.height) best = outer;
  }
  return best;
}

/** A gap as wide as a quarter of the card's shorter side, or wider, is no border any more, and nothing to repeat. */
function isReveal(gap: number, { card }: SnapField): boolean {
  return gap > 0 && gap < Math.min(card.width, card.height) / 4;
}

/** Known while the field is: a drag asks for them at every move. */
const known = new WeakMap<SnapField, readonly number[]>();
const around = new WeakMap<SnapField, readonly SnapRect[]>();

/** All that something can lie in: the card, then the pieces. */
export function allAround(field: SnapField): readonly SnapRect[] {
  const before = around.get(field);
  if (before) return before;
  const all = [cardRect(field), ...field.others];
  around.set(field, all);
  return all;
}

/** Every reveal that the pieces show already, smallest first, each once: their gaps to what they lie on. */
export function existingReveals(field: SnapField): readonly number[] {
  const before = known.get(field);
  if (before) return before;
  const found = field.others.flatMap((piece) => {
    const below = piece.tilted ? null : closestAround(piece, allAround(field));
    return below ? [...gaps(piece, below, 'x'), ...gaps(piece, below, 'y')] : [];
  });
  const reveals = [...new Set(found)].filter((gap) => isReveal(gap, field)).sort((a, b) => a - b);
  known.set(field, reveals);
  return reveals;
}

/** The reveals of `placed` along `axis`, as far as they are such: what its other direction can come to as well. */
export function ownReveals(placed: SnapRect, axis: Axis, field: SnapField): readonly number[] {
  const outer = placed.tilted ? null : closestAround(placed, allAround(field));
  return outer ? gaps(placed, outer, axis).filter((gap) => isReveal(gap, field)) : [];
}

/**
 * The reveals of `placed` that are equal on three or four sides, as marks; none when fewer are, or when it lies in
 * nothing. A border that is even but for one side is what the eye goes by while the last side is pulled.
 */
export function evenReveals(placed: SnapRect, field: SnapField): readonly SnapMark[] {
  const outer = placed.tilted ? null : closestAround(placed, allAround(field));
  if (!outer) return [];
  const all = [...revealPair(placed, outer, 'x'), ...revealPair(placed, outer, 'y')];
  const even = all.filter(({ length }) => all.filter((other) => other.length === length).length >= 3);
  return even.every(({ length = 0 }) => isReveal(length, field)) ? even : [];
}
