import { type Length, ticks } from '@trimwell/geometry';
import type { Corners, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import type { Check } from './finding.js';
import { revealsOf, sides } from './reveals.js';

const CORNERS = ['tl', 'tr', 'br', 'bl'] as const;
/** The widest even border that is taken for a mat's, in marks of the ruler. */
const WIDEST = 8;

/** The even border of `outer` around `inner`, or null when it is not even, not narrow, or none. */
function evenReveal(outer: Piece, inner: Piece, step: Length): number | null {
  if (outer.shape !== 'rectangle' || inner.shape !== 'rectangle' || outer.tilt !== inner.tilt) return null;
  const reveals = sides(revealsOf(outer, inner, inner.tilt)).map(Math.round);
  const [reveal = 0] = reveals;
  return reveal > 0 && reveal <= WIDEST * step && reveals.every((other) => other === reveal) ? reveal : null;
}

/** The lowest piece over `outer` that it shows evenly around. */
function nested({ over, sketch, step }: CheckField, outer: Piece) {
  const matted = sketch.pieces.find(({ id }) => id === outer.mats?.piece);
  for (const inner of matted ? [matted] : over(outer)) {
    const reveal = evenReveal(outer, inner, step);
    if (reveal !== null) return { inner, reveal };
  }
  return null;
}

/**
 * How far an outer radius is from that which shares its middle with the inner one: both rounded, `inner + reveal`. A square
 * corner within a round one is told only where it leaves less than half of the border; a round one within a square one is meant.
 */
function offCentre(outer: number, inner: number, reveal: number): number {
  if (outer === 0) return 0;
  if (inner > 0) return Math.abs(outer - inner - reveal);
  // From the square corner to the arc, along the diagonal.
  const left = outer <= reveal ? reveal : outer - Math.SQRT2 * (outer - reveal);
  return left < reveal / 2 ? outer - reveal : 0;
}

/** Rounded corners of two nested rectangles that do not share their middles; mended at the outer one, or else at the inner. */
export const cornersNotConcentric: Check = (field, outer) => {
  const found = outer.shape === 'rectangle' ? nested(field, outer) : null;
  if (!found) return null;
  const { inner, reveal } = found;
  const off = CORNERS.map((corner) => offCentre(outer.corners[corner], inner.corners[corner], reveal));
  const amount = Math.max(...off);
  if (amount < field.step / 2) return null;
  const changed = (corners: Corners, radius: (corner: keyof Corners) => number): Corners => {
    const wanted = CORNERS.map((corner, at) => (off[at] === 0 ? corners[corner] : ticks(Math.max(0, radius(corner)))));
    const [tl = corners.tl, tr = corners.tr, br = corners.br, bl = corners.bl] = wanted;
    return { tl, tr, br, bl };
  };
  const around = changed(outer.corners, (corner) => inner.corners[corner] + reveal);
  const within = changed(inner.corners, (corner) => outer.corners[corner] - reveal);
  return {
    code: 'corners-not-concentric',
    severity: outer.mats ? 'looks wrong' : 'worth knowing',
    piece: outer.id,
    other: inner.id,
    amount: ticks(Math.round(amount)),
    fixes: [[{ do: 'round', piece: outer.id, corners: around }], [{ do: 'round', piece: inner.id, corners: within }]],
  };
};
