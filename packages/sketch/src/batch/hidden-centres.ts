import {
  fallsThrough,
  hiddenCentre,
  inches,
  type Length,
  millimetres,
  type PieceShape,
  type PlacedPiece,
  type PunchProfile,
  type Rect,
} from '@trimwell/geometry';
import { EDGES, type Edge, type Piece, type Sketch } from '../model/sketch.js';

/** The part of a piece that can be cut out before gluing, because what is glued above hides it. */
export interface HiddenCentre {
  readonly piece: string;
  /** Where it lies, in the piece's own untilted frame. */
  readonly place: Rect;
}

export interface HiddenCentresOptions {
  /** The marks of the ruler that sides are rounded down to. */
  readonly step: Length;
  /** What stays of the piece around its centre. Default `glueOverlap(unit)`. */
  readonly overlap?: Length;
  /** Pieces that are looked at. Default all. */
  readonly wanted?: (piece: Piece) => boolean;
}

/** The glued frame that stays around a centre by default: 1/4 in or 6 mm (common practice, no source). */
export function glueOverlap(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 4) : millimetres(6);
}

interface Place {
  readonly punches: Sketch['punches'];
  readonly placed: PlacedPiece;
}

/** Places by piece: pieces are never changed, and a sketch shares with the one before what did not change. */
const known = new WeakMap<Piece, Place>();

/** `piece` as it lies on its face, with its punches looked up; the same one each time, so that what is found out of it is kept with it. */
export function placedPiece({ punches }: Sketch, piece: Piece): PlacedPiece {
  const found = known.get(piece);
  if (found?.punches === punches) return found.placed;
  const { x, y, tilt } = piece;
  const placed = { shape: shapeOf(punches, piece), x, y, tilt };
  known.set(piece, { punches, placed });
  return placed;
}

/** A shape as it was made out of a piece. */
interface Made {
  readonly piece: Piece;
  readonly punches: Sketch['punches'];
  readonly outline: PieceShape;
}

/** Shapes by the corners of their pieces, which a piece keeps when it is moved: its outline, and all that is found out of it, too. */
const made = new WeakMap<Piece['corners'], Made>();

function shapeOf(punches: Sketch['punches'], piece: Piece): PieceShape {
  const { shape, width, height, corners } = piece;
  const last = made.get(corners);
  const same =
    last?.punches === punches &&
    last.piece.shape === shape &&
    last.piece.width === width &&
    last.piece.height === height &&
    last.piece.punched === piece.punched;
  if (last && same) return last.outline;
  const punched: { [edge in Edge]?: PunchProfile } = {};
  for (const edge of EDGES) {
    const punch = punches.find(({ id }) => id === piece.punched[edge]);
    if (punch) punched[edge] = punch;
  }
  const outline: PieceShape = { shape, width, height, corners, punched };
  made.set(corners, { piece, punches, outline });
  return outline;
}

/** The papers of a piece: those of its mix, or its own. */
function papersOf(sketch: Sketch, { from }: Piece): readonly string[] {
  return sketch.mixes.find(({ id }) => id === from)?.papers ?? [from];
}

/** True when nothing is seen through a piece; vellum is translucent, and a hole below it shows. */
export function isOpaque(sketch: Sketch, piece: Piece): boolean {
  return papersOf(sketch, piece).every((paper) => sketch.papers.find(({ id }) => id === paper)?.kind !== 'vellum');
}

/** All that is glued to the same face after `piece`, in gluing order. */
function glueOver(sketch: Sketch, piece: Piece): readonly Piece[] {
  return sketch.pieces.slice(sketch.pieces.indexOf(piece) + 1).filter(({ face }) => face === piece.face);
}

/**
 * The hidden centre of each piece that has one, in gluing order: the largest rectangle below the opaque pieces that are
 * glued above it on its face, less the frame that has to stay. Foam under a cover, or under the piece itself, hides
 * nothing and shows nothing: a raised cover still covers. A piece has no centre when something glued over it, opaque or
 * not, would then have nothing to be glued to. Whether it is of use to any blank is another matter.
 */
export function hiddenCentres(
  sketch: Sketch,
  { step, overlap = glueOverlap(sketch.unit), wanted = () => true }: HiddenCentresOptions,
): readonly HiddenCentre[] {
  const place = (piece: Piece): PlacedPiece => placedPiece(sketch, piece);
  return sketch.pieces.filter(wanted).flatMap((piece): readonly HiddenCentre[] => {
    const own = place(piece);
    const above = glueOver(sketch, piece);
    const hiding = above.filter((cover) => isOpaque(sketch, cover)).map(place);
    const centre = hiding.length > 0 ? hiddenCentre(own, hiding, { overlap, step }) : null;
    if (!centre || fallsThrough(own, above.map(place), centre, overlap).length > 0) return [];
    return [{ piece: piece.id, place: centre }];
  });
}

/** The fewest pieces that hide `centre`, in gluing order: from the top down, each that can be missed is left out. */
export function coversOf(sketch: Sketch, centre: HiddenCentre, options: HiddenCentresOptions): readonly string[] {
  const piece = sketch.pieces.find(({ id }) => id === centre.piece);
  if (!piece) return [];
  const { step, overlap = glueOverlap(sketch.unit) } = options;
  const { width, height } = centre.place;
  const own = placedPiece(sketch, piece);
  const opaque = glueOver(sketch, piece).filter((cover) => isOpaque(sketch, cover));
  const covers = opaque.map((cover) => ({ id: cover.id, place: placedPiece(sketch, cover) }));
  const hides = (some: typeof covers): boolean => {
    const places = some.map(({ place }) => place);
    const still = hiddenCentre(own, places, { step, overlap });
    return still !== null && still.width * still.height >= width * height;
  };
  // Most centres lie below one large piece.
  const alone = covers.find((cover) => hides([cover]));
  if (alone) return [alone.id];
  let needed = covers;
  for (const cover of [...covers].reverse()) {
    const fewer = needed.filter((each) => each !== cover);
    if (hides(fewer)) needed = fewer;
  }
  return needed.map(({ id }) => id);
}
