import { ticks } from '@trimwell/geometry';
import type { Edit, Piece } from '../model/sketch.js';
import type { Check } from './finding.js';
import { directionalPapers } from './print-must-turn.js';

/** Degrees from which on a print no longer stands up, and what tilting may miss a quarter turn by. */
const LEANS = 45;

/** What lies at the top left, the top, … after so many clockwise quarter turns of what lies there now. */
function turned<T>(ring: readonly [T, T, T, T], quarters: number): readonly [T, T, T, T] {
  const at = (place: number): T => ring[(((place - quarters) % 4) + 4) % 4] as T;
  return [at(0), at(1), at(2), at(3)];
}

/** Edits that cut a piece upright which is now turned by whole quarters, so that it looks the same but for its print. */
function upright({ id, x, y, width, height, corners, punched, tilt }: Piece): readonly Edit[] {
  const quarters = tilt / 90;
  const sideways = quarters % 2 !== 0;
  const [wide, high] = sideways ? [height, width] : [width, height];
  const [tl, tr, br, bl] = turned([corners.tl, corners.tr, corners.br, corners.bl], quarters);
  const [top, right, bottom, left] = turned([punched.top, punched.right, punched.bottom, punched.left], quarters);
  const edges = { top, right, bottom, left } as const;
  return [
    { do: 'tilt', piece: id, tilt: 0 },
    {
      do: 'resize',
      piece: id,
      x: ticks(x + Math.round((width - wide) / 2)),
      y: ticks(y + Math.round((height - high) / 2)),
      width: wide,
      height: high,
    },
    { do: 'round', piece: id, corners: { tl, tr, br, bl } },
    ...(['top', 'right', 'bottom', 'left'] as const)
      .filter((edge) => edges[edge] !== punched[edge])
      .map((edge): Edit => ({ do: 'punch', piece: id, edge, punch: edges[edge] ?? null })),
  ];
}

/**
 * A piece tilted so far that the print of its paper, which has an up, lies on its side or on its head; mended, where it is tilted by whole
 * quarters and is no mat, by cutting the same shape upright.
 */
export const printOnItsSide: Check = ({ sketch }, piece) => {
  if (Math.abs(piece.tilt) < LEANS || directionalPapers(sketch, piece).length === 0) return null;
  const alike = piece.shape === 'rectangle' || piece.shape === 'ellipse';
  return {
    code: 'print-on-its-side',
    severity: 'looks wrong',
    piece: piece.id,
    amount: piece.height,
    fixes: alike && piece.tilt % 90 === 0 && !piece.mats ? [upright(piece)] : [],
  };
};
