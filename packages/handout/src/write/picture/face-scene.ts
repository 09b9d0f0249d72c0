import { placedBounds } from '@trimwell/geometry';
import type { Face, Sketch } from '@trimwell/sketch';
import { drawCard } from '../../draw/card.js';
import { pieceShape } from '../../draw/piece.js';
import type { Drawing, Item } from '../../drawing/drawing.js';

/** How far beyond the card a picture goes to show a piece that hangs over its edge, as a share of the card's larger side. */
const BEYOND = 0.3;

/** The card with what hangs over its edges, in ticks. */
function faceBox(sketch: Sketch, face: Face): Drawing['box'] {
  const { width, height } = sketch.card;
  const room = Math.max(width, height) * BEYOND;
  const bounds = sketch.pieces
    .filter((piece) => piece.face === face)
    .map((piece) => placedBounds({ shape: pieceShape(sketch, piece), x: piece.x, y: piece.y, tilt: piece.tilt }));
  const [left, top] = [
    Math.max(-room, Math.min(0, ...bounds.map((each) => each.left))),
    Math.max(-room, Math.min(0, ...bounds.map((each) => each.top))),
  ];
  const right = Math.min(width + room, Math.max(width, ...bounds.map((each) => each.right)));
  const bottom = Math.min(height + room, Math.max(height, ...bounds.map((each) => each.bottom)));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** One face of the card as it looks when it is made: no sizes, no letters, and no score along its edge. */
export function faceDrawing(sketch: Sketch, face: Face): Drawing {
  const drawing = drawCard(sketch, { face, style: { unit: sketch.unit }, dimensions: false });
  const made = (item: Item): boolean => item.role !== 'fold';
  return { ...drawing, box: faceBox(sketch, face), items: drawing.items.filter(made) };
}

/** Pieces that stand on foam. */
export function raisedPieces(sketch: Sketch): ReadonlySet<string> {
  return new Set(sketch.pieces.filter(({ raise }) => raise > 0).map(({ id }) => id));
}
