import { type Length, nearestStep, ticks } from '@trimwell/geometry';

/** One direction of a card that becomes another: its old and its new length, and the ruler's step. */
export interface FitAxis {
  readonly from: Length;
  readonly to: Length;
  readonly step: Length;
}

/** Where something begins and ends along an axis. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** Share of the shorter card's length that is border at each end, and the most that border is, in steps. */
const BORDER = 1 / 8;
const WIDEST_BORDER = 12;

/** Brought down to a mark. */
export function markBelow(length: number, step: Length): number {
  return Math.floor(length / step) * step;
}

/**
 * How far in from each end places are kept as they are, so that an even border around the card stays even whatever the
 * proportion; what lies between is stretched.
 */
function borderOf({ from, to, step }: FitAxis): number {
  return markBelow(Math.min(BORDER * from, BORDER * to, WIDEST_BORDER * step), step);
}

/** Where a place in the first half of the old card comes on the new one, on a mark. */
function inFirstHalf(axis: FitAxis, at: number): number {
  const border = borderOf(axis);
  if (at <= border) return nearestStep(at, axis.step);
  const stretch = (axis.to - 2 * border) / (axis.from - 2 * border);
  return nearestStep(border + (at - border) * stretch, axis.step);
}

/**
 * Where a place on the old card comes on the new one. Equal places stay equal, so what was flush stays flush; the two
 * halves mirror each other, so what was centred stays centred; the edges of the card stay its edges, and what reaches over
 * them reaches as far. All on marks of the ruler when the new card is; else the marks are counted from a line that leaves
 * the same rest at both edges.
 */
export function fitPlace(axis: FitAxis, at: number): number {
  const { from, to, step } = axis;
  if (at <= 0) return at;
  if (at >= from) return to + (at - from);
  const whole = markBelow(to, step);
  const rest = Math.floor((to - whole) / 2);
  const ruled = { ...axis, to: ticks(whole) };
  return rest + (2 * at <= from ? inFirstHalf(ruled, at) : whole - inFirstHalf(ruled, from - at));
}

/** Places whose new place is settled already, each together with its mirror image. */
export class SettledPlaces {
  readonly #places = new Map<number, number>();

  constructor(readonly axis: FitAxis) {}

  find(at: number): number {
    return this.#places.get(at) ?? fitPlace(this.axis, at);
  }

  /** Settles where `at` comes to; the first to say so is followed. */
  settle(at: number, to: number): void {
    if (this.#places.has(at)) return;
    this.#places.set(at, to);
    const mirror = this.axis.from - at;
    if (!this.#places.has(mirror)) this.#places.set(mirror, this.axis.to - to);
  }
}

/** True for something in the exact middle of the card, or as near to it as ticks allow. */
export function isCentred({ from }: FitAxis, { start, end }: Stretch): boolean {
  return Math.abs(start + end - from) <= 1;
}

/** True for something that lies between the edges of a card of that length. */
function isWithin(length: number, { start, end }: Stretch): boolean {
  return start >= 0 && end <= length;
}

/** A stretch of `size` where `old` was: at the same edge of the card, in its middle, or else about `middle`, on a mark. */
export function placeSized(axis: FitAxis, old: Stretch, size: number, middle: number): Stretch {
  const { from, to, step } = axis;
  const within = isWithin(from, old) && size <= to;
  const bounded = (start: number): number => (within ? Math.max(0, Math.min(start, to - size)) : start);
  const start = (): number => {
    if (isCentred(axis, old)) return Math.floor((to - size) / 2);
    if (old.start === 0) return 0;
    if (old.end === from) return to - size;
    return bounded(nearestStep(middle - size / 2, step));
  };
  const at = start();
  return { start: at, end: at + size };
}

/**
 * `old` on the new card, at its settled places where they allow it, else about their middle. What lies `reach` within it at
 * both ends is a mark long or more, and a whole number of marks unless it is as long as the card.
 */
export function fitStretch(places: SettledPlaces, old: Stretch, reach: number): Stretch {
  const { axis } = places;
  const { step } = axis;
  const [start, end] = [places.find(old.start), places.find(old.end)];
  const spans = old.start === 0 && old.end === axis.from;
  const inside = end - start - 2 * reach;
  if (inside >= step && (spans || inside % step === 0)) return { start, end };
  const size = Math.max(step, markBelow(inside, step)) + 2 * reach;
  return placeSized(axis, old, size, (start + end) / 2);
}
