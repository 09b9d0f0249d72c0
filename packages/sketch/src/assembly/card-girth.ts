import { convexHull, type Point } from '@trimwell/geometry';
import type { ProfileStretch } from '@trimwell/geometry/regions';
import type { Sketch } from '../model/sketch.js';
import type { CardThickness } from './card-thickness.js';
import { type FaceStack, faceProfile } from './face-stack.js';

/** The length of the shortest band around `corners`. */
export function girth(corners: readonly Point[]): number {
  const ring = convexHull(corners);
  return ring
    .slice(1)
    .reduce((sum, { x, y }, at) => sum + Math.hypot(x - (ring[at]?.x ?? x), y - (ring[at]?.y ?? y)), 0);
}

/** The corners of a closed card seen from one side: its leaves and all that is between them below, the front's profile on top. */
function corners(profile: readonly ProfileStretch[], below: number, side: number): readonly Point[] {
  return [{ x: 0, y: 0 }, { x: side, y: 0 }, { x: 0, y: below }, { x: side, y: below }, ...raised(profile, below, 1)];
}

/** The corners of what lies on a leaf whose surface is at `ground`, upwards or downwards. */
function raised(profile: readonly ProfileStretch[], ground: number, way: 1 | -1): readonly Point[] {
  return profile.flatMap(({ from, to, height, piece }) => {
    if (piece === null) return [];
    const top = ground + way * height;
    return [
      { x: from, y: ground },
      { x: to, y: ground },
      { x: from, y: top },
      { x: to, y: top },
    ];
  });
}

/** The back is seen from behind: what is at its left is at the right of the front. */
function mirrored({ card }: Sketch, axis: 'x' | 'y', { x, y }: Point): Point {
  return axis === 'y' ? { x: card.width - x, y } : { x, y };
}

/** What an envelope has to be larger than the closed card, because the card is thick, in floating ticks. */
export interface CardGirth {
  readonly across: number;
  readonly down: number;
}

/**
 * An envelope of flat width W is 2W round, and a card that fills it lies in it as in a band: so W has to be half the length of the
 * shortest band around the card seen from its end, the perimeter of the convex hull of its profile. A slab as wide as the card
 * and t thick would need t more than its width; a card that is thick in one place only needs less.
 */
export function cardGirth(sketch: Sketch, front: FaceStack, inside: FaceStack, thickness: CardThickness): CardGirth {
  const folded = sketch.card.fold !== 'none';
  // Between the leaves of a folded card all is as thick as its thickest spot; the back of a single leaf is a profile of its own.
  const below = folded ? thickness.height - thickness.front : thickness.base;
  const behind = (axis: 'x' | 'y'): readonly Point[] =>
    folded ? [] : raised(faceProfile(sketch, inside, axis), 0, -1).map((corner) => mirrored(sketch, axis, corner));
  const more = (axis: 'x' | 'y', side: number): number => {
    const all = [...corners(faceProfile(sketch, front, axis), below, side), ...behind(axis)];
    const xs = all.map(({ x }) => x);
    return girth(all) / 2 - (Math.max(...xs) - Math.min(...xs));
  };
  return { across: more('y', sketch.card.width), down: more('x', sketch.card.height) };
}
