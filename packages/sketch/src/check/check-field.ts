import {
  LAID_FLAT,
  type Length,
  type Level,
  type PlacedBounds,
  type PlacedPiece,
  placedBounds,
} from '@trimwell/geometry';
import { isOpaque, placedPiece } from '../batch/hidden-centres.js';
import { rulerStep } from '../batch/recipe.js';
import type { Face, Piece, Sketch } from '../model/sketch.js';
import { type CoverMemory, coverMemory } from './cover-memory.js';
import { faceLevels, isLifted } from './levels.js';

/** What all checks of one sketch share. */
export interface CheckField {
  readonly sketch: Sketch;
  /** The marks of the ruler: 1/16 in or 1 mm. */
  readonly step: Length;
  /** `piece` where it lies, with its punches. */
  readonly placed: (piece: Piece) => PlacedPiece;
  /** The upright box that it really reaches to. */
  readonly bounds: (piece: Piece) => PlacedBounds;
  /** True when nothing is seen through it. */
  readonly opaque: (piece: Piece) => boolean;
  /** What is glued to the same face before `piece`, lowest first. */
  readonly under: (piece: Piece) => readonly Piece[];
  /** What is glued to the same face after it, lowest first. */
  readonly over: (piece: Piece) => readonly Piece[];
  /** How high it lies, thin papers not counted. */
  readonly level: (piece: Piece) => Level;
  /** True when some piece lies higher than papers that follow each other. */
  readonly lifted: boolean;
  /** What is known of pieces below others. */
  readonly covers: CoverMemory;
}

/** The field of `sketch`, in which its pieces are looked at; a way to mend it is looked at with the same memory. */
export function checkField(sketch: Sketch, covers: CoverMemory = coverMemory()): CheckField {
  const faces = {
    front: sketch.pieces.filter(({ face }) => face === 'front'),
    inside: sketch.pieces.filter(({ face }) => face === 'inside'),
  };
  const place = new Map(Object.values(faces).flatMap((pieces) => pieces.map((piece, at) => [piece, at] as const)));
  const opaque = new Map<string, boolean>();
  const [under, over] = [new Map<Piece, readonly Piece[]>(), new Map<Piece, readonly Piece[]>()];
  const lifted = sketch.pieces.some((piece) => isLifted(sketch, piece));
  const levels = new Map<Face, readonly Level[]>();
  const levelsOn = (face: Face): readonly Level[] => {
    const found = levels.get(face) ?? faceLevels(sketch, faces[face]);
    levels.set(face, found);
    return found;
  };
  return {
    sketch,
    step: rulerStep(sketch.unit),
    placed: (piece) => placedPiece(sketch, piece),
    bounds: (piece) => placedBounds(placedPiece(sketch, piece)),
    level: (piece) => (lifted ? levelsOn(piece.face)[place.get(piece) ?? 0] : undefined) ?? LAID_FLAT,
    lifted,
    covers,
    opaque: (piece) => {
      const answer = opaque.get(piece.from) ?? isOpaque(sketch, piece);
      opaque.set(piece.from, answer);
      return answer;
    },
    under: (piece) => {
      const answer = under.get(piece) ?? faces[piece.face].slice(0, place.get(piece) ?? 0);
      under.set(piece, answer);
      return answer;
    },
    over: (piece) => {
      const answer = over.get(piece) ?? faces[piece.face].slice((place.get(piece) ?? 0) + 1);
      over.set(piece, answer);
      return answer;
    },
  };
}

/** By sketch: sketches are never changed, and several ask what is found in the same one. */
const fields = new WeakMap<Sketch, CheckField>();

/** The field in which the pieces of `sketch` as it is are looked at, the same one each time. */
export function fieldOf(sketch: Sketch): CheckField {
  const field = fields.get(sketch) ?? checkField(sketch);
  fields.set(sketch, field);
  return field;
}
