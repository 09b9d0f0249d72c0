import type { Edit, Sketch } from '@trimwell/sketch';
import { holdOf } from '../../state/group.js';

/** True when one of `edits` would change what a locked piece holds: its place, its size, its order, or that it is there. */
export function isHeld(sketch: Sketch, edits: readonly Edit[]): boolean {
  if (!sketch.pieces.some(({ locked }) => locked)) return false;
  return edits.some((edit) => {
    const piece = 'piece' in edit ? sketch.pieces.find(({ id }) => id === edit.piece) : undefined;
    switch (edit.do) {
      case 'place':
      case 'resize':
      case 'tilt':
        // What it mats, and its mats, move along.
        return piece !== undefined && holdOf(sketch, piece) !== null;
      case 'order':
      case 'mat':
      case 'remove-piece':
        return piece?.locked === true;
      default:
        return false;
    }
  });
}
