import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import {
  concentricCorners,
  type Edit,
  everyPiece,
  freeId,
  isRounded,
  MOST_PIECES,
  matPlace,
  type Piece,
  type Sketch,
} from '@trimwell/sketch';
import { chainEdits, onEach } from './on-selected.js';
import { type Command, selectedPieces } from './state.js';

/** The usual reveal of a mat: 1/8 in or 3 mm (common practice, no source). */
export function usualReveal(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** The outermost mat around `piece`, or the piece itself when nothing mats it. */
export function outermost(sketch: Sketch, piece: Piece): Piece {
  const mat = sketch.pieces.find((other) => other.mats?.piece === piece.id);
  return mat ? outermost(sketch, mat) : piece;
}

/**
 * A paper that sets `from` off: the first plain cardstock that is another one, best one that the card itself is not of, so
 * that the mat shows on it; else the first other paper, else the same.
 */
function otherPaper({ papers, card }: Sketch, from: string): string {
  const others = papers.filter((paper) => paper.id !== from);
  const plain = others.filter((paper) => paper.kind === 'cardstock' && paper.look.pattern === 'plain');
  return (plain.find((paper) => paper.id !== card.base) ?? plain[0] ?? others[0])?.id ?? from;
}

function matFor(sketch: Sketch, inner: Piece, reveal: Length, from?: string): Piece {
  return {
    id: freeId('mat', everyPiece(sketch)),
    name: `${inner.name} mat`.slice(-80),
    kind: 'mat',
    face: inner.face,
    shape: inner.shape,
    ...matPlace(inner, reveal),
    tilt: inner.tilt,
    corners: concentricCorners(inner.corners, reveal),
    punched: {},
    from: from ?? otherPaper(sketch, inner.from),
    raise: ticks(0),
    perCard: inner.perCard,
    mats: { piece: inner.id, reveal, ...(isRounded(inner.corners) ? { concentric: true } : {}) },
  };
}

/**
 * Puts a mat right behind every selected piece that shows `reveal` all round (the usual reveal if left out), of the
 * piece's own shape, cut from `from` or from a paper that sets it off; the mats are selected. A piece that is matted
 * gets a mat behind its outermost one, and pieces with the same outermost mat get one together. The mat of a rounded
 * piece is concentric with it.
 */
export function matPiece(reveal?: Length, from?: string): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const shows = reveal ?? usualReveal(sketch.unit);
    const known = from === undefined || [...sketch.papers, ...sketch.mixes].some(({ id }) => id === from);
    const inner = [...new Set(selectedPieces(state).map((piece) => outermost(sketch, piece).id))];
    if (shows <= 0 || !known || inner.length === 0 || sketch.pieces.length + inner.length > MOST_PIECES) return false;
    const edits = chainEdits(sketch, inner, (piece, now) => [
      { do: 'add-piece', piece: matFor(now, piece, shows, from), at: now.pieces.indexOf(piece) },
    ]);
    const selection = edits.flatMap((edit) => (edit.do === 'add-piece' ? [edit.piece.id] : []));
    dispatch?.({ event: 'piece.mat', edits, selection, at });
    return true;
  };
}

/** The mats that the selection names: mats themselves, and the mats right around selected pieces. */
function matsOf(sketch: Sketch, piece: Piece): readonly Piece[] {
  return piece.mats ? [piece] : sketch.pieces.filter((other) => other.mats?.piece === piece.id);
}

/** Sets the reveal of the selected mats, or of the mats right around the selected pieces; the inner piece stays. */
export function setReveal(reveal: Length): Command {
  return (state, dispatch, at = 0) => {
    const mats = new Set(selectedPieces(state).flatMap((piece) => matsOf(state.sketch, piece)));
    const edits = [...mats].flatMap((mat): readonly Edit[] =>
      !mat.mats || mat.mats.reveal === reveal || reveal <= 0 || mat.locked
        ? []
        : [{ do: 'mat', piece: mat.id, mats: { ...mat.mats, reveal } }],
    );
    if (edits.length === 0) return false;
    dispatch?.({ event: 'piece.reveal', edits, at });
    return true;
  };
}

/** Lets the selected mats go: each stays where it is, as a piece of its own that follows nothing. */
export const freeMat: Command = onEach('piece.free', (piece) =>
  piece.mats ? [{ do: 'mat', piece: piece.id, mats: null }] : [],
);
