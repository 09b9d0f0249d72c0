import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { glueOverlap } from '../batch/hidden-centres.js';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import type { Check } from './finding.js';

/** What glue needs at least to hold two papers: 1/8 in or 3 mm (common practice, no source). */
function leastOverlap(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

interface Lap {
  readonly axis: 'x' | 'y';
  /** 1 when the upper piece lies over the right or lower edge of this one, -1 over its left or upper edge. */
  readonly way: 1 | -1;
  readonly depth: number;
}

/** How two stretches lap over each other at one end each; null when one holds the other, or when they only touch. */
function lapOf(from: number, size: number, overFrom: number, overSize: number): Omit<Lap, 'axis'> | null {
  const depth = Math.min(from + size, overFrom + overSize) - Math.max(from, overFrom);
  if (depth <= 0 || depth >= size || depth >= overSize) return null;
  return { way: overFrom > from ? 1 : -1, depth };
}

function lapBetween(piece: Piece, upper: Piece, least: Length): Lap | null {
  const level = lapOf(piece.x, piece.width, upper.x, upper.width);
  const upright = lapOf(piece.y, piece.height, upper.y, upper.height);
  const shares = (one: 'x' | 'y', side: 'width' | 'height'): boolean =>
    piece[one] < upper[one] + upper[side] && upper[one] < piece[one] + piece[side];
  if (level && level.depth < least && shares('y', 'height')) return { axis: 'x', ...level };
  if (upright && upright.depth < least && shares('x', 'width')) return { axis: 'y', ...upright };
  return null;
}

/** `piece` made longer under the one that laps over it; what shows stays as it is. */
function tuckedIn(piece: Piece, { axis, way }: Lap, by: number): Edit {
  const level = axis === 'x';
  return {
    do: 'resize',
    piece: piece.id,
    x: ticks(piece.x - (level && way < 0 ? by : 0)),
    y: ticks(piece.y - (!level && way < 0 ? by : 0)),
    width: ticks(piece.width + (level ? by : 0)),
    height: ticks(piece.height + (level ? 0 : by)),
  };
}

/**
 * An upright piece that goes under another by less than glue needs, neither holding the other; mended by making it longer under
 * the other, where nothing of that shows, or else by moving it further under.
 */
export const overlapTooSmall: Check = ({ sketch, over }, piece) => {
  if (piece.tilt !== 0 || piece.shape !== 'rectangle') return null;
  const least = leastOverlap(sketch.unit);
  for (const upper of over(piece)) {
    if (upper.tilt !== 0 || upper.shape !== 'rectangle' || upper.mats?.piece === piece.id) continue;
    const lap = lapBetween(piece, upper, least);
    if (!lap) continue;
    const room = lap.axis === 'x' ? upper.width : upper.height;
    const by = Math.min(glueOverlap(sketch.unit), room - least) - lap.depth;
    const moved = movedBy(piece, lap.axis === 'x' ? lap.way * by : 0, lap.axis === 'y' ? lap.way * by : 0);
    return {
      code: 'overlap-too-small',
      severity: 'looks wrong',
      piece: piece.id,
      other: upper.id,
      amount: ticks(Math.round(lap.depth)),
      fixes: by <= 0 ? [] : piece.mats ? [[moved]] : [[tuckedIn(piece, lap, by)], [moved]],
    };
  }
  return null;
};
