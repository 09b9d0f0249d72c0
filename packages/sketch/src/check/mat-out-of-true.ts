import { nearestStep, ticks } from '@trimwell/geometry';
import type { Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import type { Check } from './finding.js';
import { revealsOf, sides } from './reveals.js';

/** Marks of the ruler: the widest reveal that is taken for a mat's, and what an inner piece may stick out. */
const WIDEST = 8;
const OUT = 2;
/** Degrees that a mat may be turned against what it mats before it is taken to be meant. */
const TURNED = 10;

/** What `mat`, which follows nothing, lies nearly evenly behind: the lowest piece over it that it would show around. */
function nearlyMatted({ over, step }: CheckField, mat: Piece): Piece | null {
  return (
    over(mat).find((piece) => {
      if (piece.shape !== mat.shape || piece.mats?.piece === mat.id || Math.abs(piece.tilt - mat.tilt) > TURNED)
        return false;
      const reveals = sides(revealsOf(mat, piece, piece.tilt));
      const mean = reveals.reduce((sum, reveal) => sum + reveal, 0) / 4;
      return mean > 0 && mean <= WIDEST * step && reveals.every((r) => r >= -OUT * step && r <= 2 * WIDEST * step);
    }) ?? null
  );
}

/** True when following `inner` from `mat` would lead back to `mat`. */
function circles({ sketch }: CheckField, mat: Piece, inner: Piece): boolean {
  for (let at: Piece | undefined = inner; at; at = sketch.pieces.find(({ id }) => id === at?.mats?.piece))
    if (at.id === mat.id) return true;
  return false;
}

/**
 * A mat that follows nothing and shows unevenly, or crookedly, around the piece it lies behind; mended by making it that
 * piece's mat, with the mark of the ruler nearest to the mean of what shows now.
 */
export const matOutOfTrue: Check = (field, piece) => {
  if (piece.kind !== 'mat' || piece.mats) return null;
  const inner = nearlyMatted(field, piece);
  if (!inner || circles(field, piece, inner)) return null;
  const reveals = sides(revealsOf(piece, inner, inner.tilt));
  const spread = Math.max(...reveals) - Math.min(...reveals);
  if (spread < 1 && inner.tilt === piece.tilt) return null;
  const mean = reveals.reduce((sum, reveal) => sum + reveal, 0) / 4;
  const marks = Math.max(1, Math.round(mean / field.step));
  const choices = [marks, marks - 1, marks + 1].filter((each) => each > 0);
  return {
    code: 'mat-out-of-true',
    severity: 'looks wrong',
    piece: piece.id,
    other: inner.id,
    amount: ticks(Math.round(spread)),
    fixes: choices.map((each) => [
      {
        do: 'mat',
        piece: piece.id,
        mats: { piece: inner.id, reveal: nearestStep(each * field.step, field.step) },
      },
    ]),
  };
};
