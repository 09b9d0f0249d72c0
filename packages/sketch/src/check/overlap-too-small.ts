import { inches, type Length, leastLap, millimetres, type Point, ticks, widthAlong } from '@trimwell/geometry';
import { glueOverlap } from '../batch/hidden-centres.js';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import type { Check, Suspect } from './finding.js';

/** What glue needs at least to hold two papers: 1/8 in or 3 mm (common practice, no source). */
export function leastOverlap(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** `piece` made longer by `by` ticks under the one that laps over it; what shows stays as it is. */
function tuckedIn(piece: Piece, { x, y }: Point, by: number): Edit {
  return {
    do: 'resize',
    piece: piece.id,
    x: ticks(piece.x - (x < 0 ? by : 0)),
    y: ticks(piece.y - (y < 0 ? by : 0)),
    width: ticks(piece.width + (x !== 0 ? by : 0)),
    height: ticks(piece.height + (y !== 0 ? by : 0)),
  };
}

/** True for two rectangles whose sides run alike: their edges are meant to meet, not to be strewn over each other. */
function inLine(piece: Piece, upper: Piece): boolean {
  return piece.shape === 'rectangle' && upper.shape === 'rectangle' && (piece.tilt - upper.tilt) % 90 === 0;
}

/** The ways to bring `piece` by `by` ticks further under another. Askew it is moved by whole marks, further rather than less. */
function further(piece: Piece, { x, y }: Point, by: number, step: Length): Suspect['fixes'] {
  if (by <= 0) return [];
  const straight = x === 0 || y === 0;
  const marks = (part: number): number => Math.sign(part) * Math.ceil(Math.abs(part * by) / step - 1e-9) * step;
  const moved = straight ? movedBy(piece, x * by, y * by) : movedBy(piece, marks(x), marks(y));
  const longer = straight && piece.tilt === 0 && !piece.mats;
  return longer ? [[tuckedIn(piece, { x, y }, by)], [moved]] : [[moved]];
}

/**
 * A rectangle that goes under another one whose sides run alike by less than glue needs, neither holding the other; mended by making it
 * longer under the other, where it lies straight and nothing of that shows, or else by moving it further under.
 */
export const overlapTooSmall: Check = ({ sketch, over, placed, step }, piece) => {
  const least = leastOverlap(sketch.unit);
  for (const upper of over(piece)) {
    if (upper.mats?.piece === piece.id || !inLine(piece, upper)) continue;
    const lap = leastLap(placed(piece), placed(upper), least);
    // A lap that is tilted is not exact: it is enough when it is so to the tick.
    if (!lap || Math.round(lap.depth) >= least) continue;
    const room = widthAlong(placed(upper), lap.along);
    const by = Math.ceil(Math.min(glueOverlap(sketch.unit), room - least) - lap.depth);
    return {
      code: 'overlap-too-small',
      severity: 'looks wrong',
      piece: piece.id,
      other: upper.id,
      amount: ticks(Math.round(lap.depth)),
      fixes: further(piece, lap.along, by, step),
    };
  }
  return null;
};
