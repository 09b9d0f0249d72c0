import type { Length } from '@trimwell/geometry';
import {
  type Edge,
  type Edit,
  type Face,
  isConcentric,
  MOST_PER_CARD,
  mattedCorners,
  PIECE_KINDS,
  type Piece,
  SHAPES,
  type Shape,
  type Sketch,
} from '@trimwell/sketch';
import { tiedTo } from './group.js';
import { onEach } from './on-selected.js';
import { isFree } from './place-commands.js';
import { facePieces } from './select-commands.js';
import { type Command, selectedPieces } from './state.js';
import { recut } from './usual-cut.js';

type Alteration = Omit<Extract<Edit, { readonly do: 'alter-piece' }>, 'do' | 'piece'>;

function alter(piece: Piece, change: Alteration): Edit {
  return { do: 'alter-piece', piece: piece.id, ...change };
}

/** Takes the selected pieces away; what matted them stays as free pieces. Locked pieces stay, and stay selected. */
export const remove: Command = (state, dispatch, at = 0) => {
  const chosen = selectedPieces(state);
  const gone = chosen.filter((piece) => !piece.locked);
  if (gone.length === 0) return false;
  const edits = gone.map(({ id }): Edit => ({ do: 'remove-piece', piece: id }));
  const selection = state.selection.filter((id) => !gone.some((piece) => piece.id === id));
  dispatch?.({ event: 'piece.remove', edits, selection, at });
  return true;
};

export type Corner = keyof Piece['corners'];

/** A concentric mat is square, or rounded by more than its reveal: there is no radius for its piece otherwise. */
export function canRound(piece: Piece, corners: Piece['corners']): boolean {
  return !piece.mats || !isConcentric(piece) || mattedCorners(corners, piece.mats.reveal) !== null;
}

/**
 * Rounds all corners of the selected pieces by `radius`, or one of them; 0 makes them square. Only rectangles have
 * corners. Rounding a concentric mat rounds what it mats.
 */
export function setCorners(radius: Length, corner?: Corner): Command {
  return onEach('piece.round', (piece) => {
    if (piece.shape !== 'rectangle' || radius < 0) return [];
    const all = { tl: radius, tr: radius, br: radius, bl: radius };
    const corners = corner ? { ...piece.corners, [corner]: radius } : all;
    const same = (Object.keys(all) as Corner[]).every((one) => corners[one] === piece.corners[one]);
    return same || !canRound(piece, corners) ? [] : [{ do: 'round', piece: piece.id, corners }];
  });
}

/** Punches an edge of the selected pieces, or makes it plain. Only a rectangle's edges are punched. */
export function setPunch(edge: Edge, punch: string | null): Command {
  return onEach('piece.punch', (piece, sketch) => {
    const known = punch === null || sketch.punches.some((other) => other.id === punch);
    if (piece.shape !== 'rectangle' || !known || (piece.punched[edge] ?? null) === punch) return [];
    return [{ do: 'punch', piece: piece.id, edge, punch }];
  });
}

/** Sets the height of the foam under the selected pieces; 0 glues them flat. */
export function setRaise(raise: Length): Command {
  return onEach('piece.raise', (piece) => (raise < 0 || raise === piece.raise ? [] : [alter(piece, { raise })]));
}

/** Names the selected piece; a name has 1 to 80 characters. Several pieces are not named alike. */
export function setName(name: string): Command {
  const text = name.trim();
  const rename = onEach('piece.name', (piece) =>
    text.length < 1 || text.length > 80 || text === piece.name ? [] : [alter(piece, { name: text })],
  );
  return (state, dispatch, at) => state.selection.length === 1 && rename(state, dispatch, at);
}

/**
 * Says what the selected pieces are on the card. A piece that is still as it was cut becomes the usual one of that kind, with
 * its size and shape; one that has been worked on keeps both.
 */
export function setKind(kind: Piece['kind']): Command {
  return onEach('piece.kind', (piece, sketch) =>
    !PIECE_KINDS.includes(kind) || kind === piece.kind ? [] : (recut(sketch, piece, kind) ?? [alter(piece, { kind })]),
  );
}

/** Sets how many of each selected piece one card takes: a whole number from 1 to 24. */
export function setPerCard(perCard: number): Command {
  const possible = Number.isInteger(perCard) && perCard >= 1 && perCard <= MOST_PER_CARD;
  return onEach('piece.per-card', (piece) =>
    !possible || perCard === piece.perCard ? [] : [alter(piece, { perCard })],
  );
}

/** The usual banner or tag, where a piece that is still as it was cut gets its shape; null for all else. */
function usualOf(sketch: Sketch, piece: Piece, shape: Shape): readonly Edit[] | null {
  return shape === 'banner' || shape === 'tag' ? recut(sketch, piece, shape) : null;
}

/**
 * Gives the selected pieces another shape, of the same size; a mat that had its piece's shape follows it, so that the
 * border stays one. A piece that is still as it was cut becomes the usual banner or tag. Corners and punched edges wait for the piece to be a rectangle again. Locked pieces keep theirs.
 */
export function setShape(shape: Shape): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const changing = new Set<string>();
    for (const piece of selectedPieces(state)) {
      if (!SHAPES.includes(shape) || shape === piece.shape || !isFree(sketch, piece)) continue;
      const tied = tiedTo(sketch, piece.id);
      for (const other of sketch.pieces) if (tied.has(other.id) && other.shape === piece.shape) changing.add(other.id);
    }
    if (changing.size === 0) return false;
    const edits = sketch.pieces
      .filter(({ id }) => changing.has(id))
      .flatMap((piece) => usualOf(sketch, piece, shape) ?? [alter(piece, { shape })]);
    dispatch?.({ event: 'piece.shape', edits, at });
    return true;
  };
}

/** Glues the selected pieces, with all that is tied to them, on the other side of the leaf, and shows it. Locked ones stay. */
export function setFace(face: Face): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const moving = new Set(
      selectedPieces(state)
        .filter((piece) => piece.face !== face && isFree(sketch, piece))
        .flatMap(({ id }) => [...tiedTo(sketch, id)]),
    );
    if (moving.size === 0) return false;
    const edits = [...moving].map((piece): Edit => ({ do: 'alter-piece', piece, face }));
    const selection = state.selection.filter((id) => moving.has(id));
    dispatch?.({ event: 'piece.face', edits, selection, face, at });
    return true;
  };
}

/** Locks the selected pieces in their places, or frees them. */
export function setLocked(locked: boolean): Command {
  return onEach(locked ? 'piece.lock' : 'piece.unlock', (piece) =>
    (piece.locked ?? false) === locked ? [] : [alter(piece, { locked })],
  );
}

/** Locks what is selected, or frees it when all of it is locked. */
export const toggleLocked: Command = (state, dispatch, at) =>
  setLocked(!selectedPieces(state).every((piece) => piece.locked))(state, dispatch, at);

/** Puts the selected pieces out of sight on the table, or shows them again. They are cut and glued all the same. */
export function setHidden(hidden: boolean): Command {
  return onEach(hidden ? 'piece.hide' : 'piece.show', (piece) =>
    (piece.hidden ?? false) === hidden ? [] : [alter(piece, { hidden })],
  );
}

/** Hides what is selected, or shows it when all of it is hidden. */
export const toggleHidden: Command = (state, dispatch, at) =>
  setHidden(!selectedPieces(state).every((piece) => piece.hidden))(state, dispatch, at);

/** Shows every hidden piece of this face again. Does not apply when none is hidden. */
export const showAll: Command = (state, dispatch, at = 0) => {
  const edits = facePieces(state)
    .filter((piece) => piece.hidden)
    .map((piece) => alter(piece, { hidden: false }));
  if (edits.length === 0) return false;
  dispatch?.({ event: 'piece.show', edits, at });
  return true;
};
