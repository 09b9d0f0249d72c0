import { type Length, type PlacedBounds, type PlacedPiece, placedBounds } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import { rulerStep } from '../batch/recipe.js';
import type { Piece, Punch, Sketch } from '../model/sketch.js';
import { type CoverMemory, coverMemory } from './cover-memory.js';

/** What all checks of one sketch share. */
export interface CheckField {
  readonly sketch: Sketch;
  /** The marks of the ruler: 1/16 in or 1 mm. */
  readonly step: Length;
  /** `piece` where it lies, with its punches. */
  readonly placed: (piece: Piece) => PlacedPiece;
  /** The upright box that it really reaches to. */
  readonly bounds: (piece: Piece) => PlacedBounds;
  /** What is glued to the same face before `piece`, lowest first. */
  readonly under: (piece: Piece) => readonly Piece[];
  /** What is glued to the same face after it, lowest first. */
  readonly over: (piece: Piece) => readonly Piece[];
  /** What is known of pieces below others. */
  readonly covers: CoverMemory;
}

interface Known {
  readonly punches: readonly Punch[];
  readonly placed: PlacedPiece;
  readonly bounds: PlacedBounds;
}

/** Places by piece: pieces are never changed, and a sketch shares with the one before what did not change. */
const known = new WeakMap<Piece, Known>();

function knownOf(sketch: Sketch, piece: Piece): Known {
  const found = known.get(piece);
  if (found?.punches === sketch.punches) return found;
  const placed = placedPiece(sketch, piece);
  const fresh = { punches: sketch.punches, placed, bounds: placedBounds(placed) };
  known.set(piece, fresh);
  return fresh;
}

/** The field of `sketch`, in which its pieces are looked at; a way to mend it is looked at with the same memory. */
export function checkField(sketch: Sketch, covers: CoverMemory = coverMemory()): CheckField {
  const faces = {
    front: sketch.pieces.filter(({ face }) => face === 'front'),
    inside: sketch.pieces.filter(({ face }) => face === 'inside'),
  };
  const place = new Map([...faces.front, ...faces.inside].map((piece) => [piece, faces[piece.face].indexOf(piece)]));
  return {
    sketch,
    step: rulerStep(sketch.unit),
    placed: (piece) => knownOf(sketch, piece).placed,
    bounds: (piece) => knownOf(sketch, piece).bounds,
    covers,
    under: (piece) => faces[piece.face].slice(0, place.get(piece) ?? 0),
    over: (piece) => faces[piece.face].slice((place.get(piece) ?? 0) + 1),
  };
}
