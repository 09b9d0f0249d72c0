import { type PieceShape, type PunchProfile, pieceOutline } from '@trimwell/geometry';
import type { Edge, Paper, Piece, Sketch } from '@trimwell/sketch';
import type { GroupItem, Item, SheetLook } from '../drawing/drawing.js';
import { drawArt } from './art.js';

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

/** A piece as a group: its shadow, its paper, its holes, its art, turned by its tilt about its middle. */
export function drawPiece(sketch: Sketch, piece: Piece): GroupItem {
  const key = `piece:${piece.id}`;
  const { outline, holes } = pieceOutline(pieceShape(sketch, piece));
  const fill = { paper: facePaper(sketch, piece) };
  const items: Item[] = [
    { kind: 'path', key: `${key}:shadow`, role: 'shadow', piece: piece.id, outline },
    { kind: 'path', key: `${key}:paper`, role: 'outline', piece: piece.id, outline, fill },
    ...holes.map(
      (hole, index): Item => ({
        kind: 'path',
        key: `${key}:hole${index}`,
        role: 'hidden',
        piece: piece.id,
        outline: hole,
      }),
    ),
    ...(piece.art ? drawArt(piece, piece.art, key) : []),
  ];
  return {
    kind: 'group',
    key,
    role: 'outline',
    piece: piece.id,
    origin: { x: piece.width / 2, y: piece.height / 2 },
    move: { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 },
    turn: piece.tilt,
    items,
    title: piece.name,
  };
}
