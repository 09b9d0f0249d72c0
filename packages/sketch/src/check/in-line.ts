import type { Piece } from '../model/sketch.js';

/** True for two rectangles whose sides run alike: their edges are meant to meet, not to be strewn over each other. */
export function inLine(one: Piece, other: Piece): boolean {
  return one.shape === 'rectangle' && other.shape === 'rectangle' && (one.tilt - other.tilt) % 90 === 0;
}
