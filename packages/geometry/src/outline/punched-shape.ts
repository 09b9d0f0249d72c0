import type { PieceShape } from './plain-shapes.js';
import { punchReach } from './profile-shapes.js';
import type { PunchProfile } from './punch-profile.js';

/** True for a shape with a punched edge. */
export function isPunched({ punched }: Pick<PieceShape, 'punched'>): boolean {
  return Object.values(punched).some((punch) => punch !== undefined);
}

/** True for a rectangle with square corners and plain edges: upright, its box is all of it. */
export function isPlainRectangle({ shape, corners: { tl, tr, br, bl }, punched }: PieceShape): boolean {
  return shape === 'rectangle' && tl + tr + br + bl === 0 && !isPunched({ punched });
}

/** How deep the punches of a shape cut into it from each edge, their eyelets too, in whole ticks; 0 from a plain edge. */
export function punchedDepths({ punched: { top, right, bottom, left } }: Pick<PieceShape, 'punched'>) {
  const depth = (punch: PunchProfile | undefined): number => (punch ? Math.ceil(punchReach(punch)) : 0);
  return { top: depth(top), right: depth(right), bottom: depth(bottom), left: depth(left) };
}

/** True when no edge is shorter than twice the largest corner: then all are drawn as round as they are stated. */
export function cornersFit({ corners: { tl, tr, br, bl }, width, height }: PieceShape): boolean {
  return Math.max(tl, tr, br, bl) * 2 <= Math.min(width, height);
}
