import type { PieceShape, PunchProfile } from '@trimwell/geometry';
import type { Edge, Paper, Piece, Sketch } from '@trimwell/sketch';
import type { SheetLook } from '../drawing/drawing.js';

/** The shape of a piece with its punches looked up. */
export function pieceShape(sketch: Sketch, piece: Piece): PieceShape {
  const punched: { [edge in Edge]?: PunchProfile } = {};
  for (const [edge, id] of Object.entries(piece.punched) as [Edge, string | undefined][]) {
    const punch = sketch.punches.find((candidate) => candidate.id === id);
    if (punch) punched[edge] = punch;
  }
  const { shape, width, height, corners } = piece;
  return { shape, width, height, corners, punched };
}

/** The paper that a piece shows: its own, or the paper of its mix that the card `card` (from 0) gets. */
export function shownPaper(sketch: Sketch, from: string, card = 0): string {
  const mix = sketch.mixes.find((candidate) => candidate.id === from);
  if (!mix) return from;
  return mix.papers[card % mix.papers.length] ?? from;
}

/**
 * The paper that `piece` shows on the face and in the stack. Roles of one mix start one paper further each, as they are
 * dealt, so that both show a true card.
 */
export function facePaper(sketch: Sketch, piece: Piece): string {
  const mixed = sketch.mixes.some((mix) => mix.id === piece.from);
  return shownPaper(
    sketch,
    piece.from,
    mixed ? sketch.pieces.filter(({ from }) => from === piece.from).indexOf(piece) : 0,
  );
}

/** The look of a paper, with the size of its sheet when there is a photograph of it. */
export function sheetLook({ look, width, height }: Paper): SheetLook {
  return look.photo === undefined ? look : { ...look, sheet: { width, height } };
}

/** The looks of all papers of a sketch, by paper id. */
export function looksOf(sketch: Sketch): Readonly<Record<string, SheetLook>> {
  return Object.fromEntries(sketch.papers.map((paper) => [paper.id, sheetLook(paper)]));
}
