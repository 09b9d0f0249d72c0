import { pieceOutline } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import type { GroupItem } from '../drawing/drawing.js';
import { drawArt } from './art.js';
import { drawCardMarks } from './card-marks.js';
import { type Hand, layPiece } from './lay-piece.js';

export * from './piece-look.js';

/** Draws pieces as they are, with their corners, punches and art, and what is written beside them. */
export const TRUE_HAND: Hand = { outline: pieceOutline, art: drawArt, marks: drawCardMarks };

/** A piece as a group: its shadow, its paper, its holes, its art, turned by its tilt about its middle. */
export function drawPiece(sketch: Sketch, piece: Piece): GroupItem {
  return layPiece(sketch, piece, TRUE_HAND);
}
