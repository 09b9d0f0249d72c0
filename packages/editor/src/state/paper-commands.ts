import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { freeId, matPlace, type Piece, type Sketch } from '@trimwell/sketch';
import { MOST_PIECES } from './new-piece-commands.js';
import { onSelected } from './on-selected.js';
import type { Command } from './state.js';

/** Cuts the selected piece from another paper or mix. */
export function cutFrom(from: string): Command {
  return onSelected((piece, { papers, mixes }) => {
    const known = papers.some(({ id }) => id === from) || mixes.some(({ id }) => id === from);
    if (!known || piece.from === from) return null;
    return { event: 'piece.paper', edits: [{ do: 'cut-from', piece: piece.id, from }] };
  });
}

/** The usual reveal of a mat: 1/8 in or 3 mm (common practice, no source). */
export function usualReveal(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** The outermost mat around `piece`, or the piece itself when nothing mats it. */
function outermost(sketch: Sketch, piece: Piece): Piece {
  const mat = sketch.pieces.find((other) => other.mats?.piece === piece.id);
  return mat ? outermost(sketch, mat) : piece;
}

/** A paper that sets `from` off: the first plain cardstock that is another one, else the first other paper, else the same. */
function otherPaper({ papers }: Sketch, from: string): string {
  const others = papers.filter((paper) => paper.id !== from);
  const plain = others.find((paper) => paper.kind === 'cardstock' && paper.look.pattern === 'plain');
  return (plain ?? others[0])?.id ?? from;
}

/** Corners that run concentric with the inner ones, so that the reveal is even round them too; square stays square. */
function matCorners({ corners }: Piece, reveal: Length): Piece['corners'] {
  const outer = (radius: Length): Length => (radius === 0 ? radius : ticks(radius + reveal));
  return { tl: outer(corners.tl), tr: outer(corners.tr), br: outer(corners.br), bl: outer(corners.bl) };
}

/**
 * Puts a mat right behind the selected piece that shows `reveal` all round (the usual reveal if left out), cut from
 * `from` or from a paper that sets it off; the mat is selected. A piece that is matted gets a mat behind its outermost one.
 */
export function matPiece(reveal?: Length, from?: string): Command {
  return onSelected((piece, sketch) => {
    const shows = reveal ?? usualReveal(sketch.unit);
    const known = from === undefined || [...sketch.papers, ...sketch.mixes].some(({ id }) => id === from);
    if (shows <= 0 || !known || sketch.pieces.length >= MOST_PIECES) return null;
    const inner = outermost(sketch, piece);
    const mat: Piece = {
      id: freeId('mat', sketch.pieces),
      name: `${inner.name} mat`.slice(-80),
      kind: 'mat',
      face: inner.face,
      shape: inner.shape,
      ...matPlace(inner, shows),
      tilt: inner.tilt,
      corners: matCorners(inner, shows),
      punched: {},
      from: from ?? otherPaper(sketch, inner.from),
      raise: ticks(0),
      perCard: inner.perCard,
      mats: { piece: inner.id, reveal: shows },
    };
    const at = sketch.pieces.indexOf(inner);
    return { event: 'piece.mat', edits: [{ do: 'add-piece', piece: mat, at }], selection: [mat.id] };
  });
}
