import { type Length, ticks } from '@trimwell/geometry';
import { type Edge, type Edit, movedBy, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { onSelected } from './on-selected.js';
import { leastSide } from './resize.js';
import { type Command, selectedPiece, type Transaction } from './state.js';

export * from './new-piece-commands.js';
export * from './paper-commands.js';

/** Pieces of the face that is shown, base first. */
export function facePieces(state: { readonly sketch: Sketch; readonly face: Piece['face'] }): readonly Piece[] {
  return state.sketch.pieces.filter((piece) => piece.face === state.face);
}

/** A step of the history with one edit. */
function one(event: string, edit: Edit): Omit<Transaction, 'at'> {
  return { event, edits: [edit] };
}

/** Selects `piece` alone, or nothing. Does not apply to a piece that is not there, or that alone is selected already. */
export function select(piece: string | null): Command {
  return (state, dispatch, at = 0) => {
    const selection = piece === null ? [] : [piece];
    if (selection.length === state.selection.length && selection[0] === state.selection[0]) return false;
    const found = state.sketch.pieces.find((other) => other.id === piece);
    if (piece !== null && !found) return false;
    dispatch?.({ event: 'piece.select', edits: [], selection, ...(found ? { face: found.face } : {}), at });
    return true;
  };
}

/** Selects nothing. */
export const clearSelection: Command = select(null);

function selectAlong(by: 1 | -1): Command {
  return (state, dispatch, at) => {
    const pieces = facePieces(state);
    const from = pieces.findIndex((piece) => piece.id === state.selection.at(-1));
    const start = from < 0 && by < 0 ? 0 : from;
    const next = pieces[(start + by + pieces.length) % Math.max(1, pieces.length)];
    return next ? select(next.id)(state, dispatch, at) : false;
  };
}

/** Selects the next piece upwards in the stack; after the topmost comes the lowest. */
export const selectNext: Command = selectAlong(1);
/** Selects the next piece downwards in the stack; after the lowest comes the topmost. */
export const selectPrevious: Command = selectAlong(-1);

/** Shows the other side of the card's front leaf. Does not apply to a card without a fold that has nothing inside. */
export const turnOver: Command = ({ sketch, face }, dispatch, at = 0) => {
  const bare =
    sketch.card.fold === 'none' && face === 'front' && !sketch.pieces.some((piece) => piece.face === 'inside');
  if (bare) return false;
  dispatch?.({ event: 'card.turn', edits: [], selection: [], face: face === 'front' ? 'inside' : 'front', at });
  return true;
};

/** Moves the selected piece by steps of the ruler. */
export function nudge(right: number, down: number): Command {
  return onSelected((piece, sketch) => {
    const step = rulerStep(sketch.unit);
    return right === 0 && down === 0 ? null : one('piece.move', movedBy(piece, right * step, down * step));
  });
}

/** Makes the selected piece wider and higher by steps of the ruler; its left and top stay. Never below one step. */
export function grow(wider: number, higher: number): Command {
  return onSelected((piece, sketch) => {
    const step = rulerStep(sketch.unit);
    const least = leastSide(sketch, piece, step);
    const width = ticks(Math.max(Math.min(piece.width, least), piece.width + wider * step));
    const height = ticks(Math.max(Math.min(piece.height, least), piece.height + higher * step));
    if (width === piece.width && height === piece.height) return null;
    return one('piece.resize', { do: 'resize', piece: piece.id, x: piece.x, y: piece.y, width, height });
  });
}

/** Sets what is stated of the selected piece's place. Does not apply when nothing changes or a mat would hold nothing. */
export function resizeTo(place: {
  readonly x?: Length;
  readonly y?: Length;
  readonly width?: Length;
  readonly height?: Length;
}): Command {
  return onSelected((piece, sketch) => {
    const { x = piece.x, y = piece.y, width = piece.width, height = piece.height } = place;
    const least = leastSide(sketch, piece, ticks(1));
    if (width < least || height < least) return null;
    if (width !== piece.width || height !== piece.height) {
      return one('piece.resize', { do: 'resize', piece: piece.id, x, y, width, height });
    }
    return x === piece.x && y === piece.y ? null : one('piece.move', { do: 'place', piece: piece.id, x, y });
  });
}

/** The piece that a mat follows in the end; a mat has no place or tilt of its own. */
function innermost(sketch: Sketch, piece: Piece): Piece {
  const inner = piece.mats && sketch.pieces.find((other) => other.id === piece.mats?.piece);
  return inner ? innermost(sketch, inner) : piece;
}

/** `degrees` as a tilt from -180 (not taken) to 180, to a thousandth of a degree. */
export function asTilt(degrees: number): number {
  const round = Math.round(degrees * 1000) / 1000;
  const turn = ((round % 360) + 360) % 360;
  return Math.round((turn > 180 ? turn - 360 : turn) * 1000) / 1000;
}

/** Turns the selected piece to `degrees` clockwise from upright. Tilting a mat tilts what it mats, so that it stays even. */
export function tiltTo(degrees: number): Command {
  return onSelected((piece, sketch) => {
    const tilt = asTilt(degrees);
    const inner = innermost(sketch, piece);
    return tilt === inner.tilt ? null : one('piece.tilt', { do: 'tilt', piece: inner.id, tilt });
  });
}

/** Turns the selected piece by `degrees` clockwise. */
export function tilt(degrees: number): Command {
  return (state, dispatch, at) => {
    const piece = selectedPiece(state);
    return piece ? tiltTo(innermost(state.sketch, piece).tilt + degrees)(state, dispatch, at) : false;
  };
}

/** Where the selected piece would lie in the order of gluing, among all pieces; null when it lies there already. */
function reorder(event: string, to: (place: number, last: number) => number): Command {
  return onSelected((piece, sketch) => {
    const mine = facePieces({ sketch, face: piece.face });
    const from = mine.indexOf(piece);
    const goal = mine[Math.min(Math.max(to(from, mine.length - 1), 0), mine.length - 1)];
    return !goal || goal === piece
      ? null
      : one(event, { do: 'order', piece: piece.id, to: sketch.pieces.indexOf(goal) });
  });
}

/** Glues the selected piece one place later: it lies over the piece that lay over it. Does not apply to the topmost. */
export const raiseOrder: Command = reorder('order.raise', (from) => from + 1);
/** Glues the selected piece one place earlier. Does not apply to the lowest. */
export const lowerOrder: Command = reorder('order.lower', (from) => from - 1);
/** Glues the selected piece last. */
export const toTop: Command = reorder('order.top', (_from, last) => last);
/** Glues the selected piece first, right on the card. */
export const toBottom: Command = reorder('order.bottom', () => 0);

/** Removes the selected piece; what matted it stays as a free piece. */
export const remove: Command = onSelected((piece) => ({
  ...one('piece.remove', { do: 'remove-piece', piece: piece.id }),
  selection: [],
}));

export type Corner = keyof Piece['corners'];

/** Rounds all corners of the selected piece by `radius`, or one of them; 0 makes them square. Only rectangles have corners. */
export function setCorners(radius: Length, corner?: Corner): Command {
  return onSelected((piece) => {
    if (piece.shape !== 'rectangle' || radius < 0) return null;
    const all = { tl: radius, tr: radius, br: radius, bl: radius };
    const corners = corner ? { ...piece.corners, [corner]: radius } : all;
    const same = (Object.keys(all) as Corner[]).every((one) => corners[one] === piece.corners[one]);
    return same ? null : one('piece.round', { do: 'round', piece: piece.id, corners });
  });
}

/** Punches an edge of the selected piece, or makes it plain. Only a rectangle's edges are punched. */
export function setPunch(edge: Edge, punch: string | null): Command {
  return onSelected((piece, sketch) => {
    const known = punch === null || sketch.punches.some((other) => other.id === punch);
    if (piece.shape !== 'rectangle' || !known || (piece.punched[edge] ?? null) === punch) return null;
    return one('piece.punch', { do: 'punch', piece: piece.id, edge, punch });
  });
}

/** Sets the height of the foam under the selected piece; 0 glues it flat. */
export function setRaise(raise: Length): Command {
  return onSelected((piece) =>
    raise < 0 || raise === piece.raise ? null : one('piece.raise', { do: 'alter-piece', piece: piece.id, raise }),
  );
}

/** Names the selected piece; a name has 1 to 80 characters. */
export function setName(name: string): Command {
  return onSelected((piece) => {
    const text = name.trim();
    if (text.length < 1 || text.length > 80 || text === piece.name) return null;
    return one('piece.name', { do: 'alter-piece', piece: piece.id, name: text });
  });
}
