import { applyEdits, type Edit, type Piece, type Sketch } from '@trimwell/sketch';
import { type Command, selectedPiece, selectedPieces, type Transaction } from './state.js';

/** A command that only looks at the one selected piece: null when it does not apply; it never does for several. */
export function onSelected(change: (piece: Piece, sketch: Sketch) => Omit<Transaction, 'at'> | null): Command {
  return (state, dispatch, at = 0) => {
    const piece = selectedPiece(state);
    const transaction = piece && change(piece, state.sketch);
    if (!transaction) return false;
    dispatch?.({ ...transaction, at });
    return true;
  };
}

/**
 * `command` on the pieces `ids`, whatever is selected by now: for what was typed while they were. What is selected and which
 * face is shown stay.
 */
export function onPieces(ids: readonly string[], command: Command): Command {
  return (state, dispatch, at) => {
    const { selection, face } = state;
    const stay = (transaction: Transaction): void => dispatch?.({ ...transaction, selection, face });
    return command({ ...state, selection: ids }, dispatch && stay, at);
  };
}

/** A command that dispatches `edits` as one step; does not apply when there are none. */
export function withEdits(
  event: string,
  edits: readonly Edit[],
  more: Pick<Transaction, 'selection' | 'face'> = {},
): Omit<Transaction, 'at'> | null {
  return edits.length === 0 ? null : { event, edits, ...more };
}

/**
 * A command that changes every selected piece by itself, as one step: `change` gives the edits of one piece, or none
 * where it does not apply. It applies when it does to one of them.
 */
export function onEach(event: string, change: (piece: Piece, sketch: Sketch) => readonly Edit[]): Command {
  return (state, dispatch, at = 0) => {
    const edits = selectedPieces(state).flatMap((piece) => change(piece, state.sketch));
    if (edits.length === 0) return false;
    dispatch?.({ event, edits, at });
    return true;
  };
}

/**
 * Edits that are made one after the other: `change` sees the sketch as the edits before have left it. Pieces that are
 * no longer there are passed over.
 */
export function chainEdits(
  sketch: Sketch,
  ids: readonly string[],
  change: (piece: Piece, sketch: Sketch) => readonly Edit[],
): readonly Edit[] {
  const all: Edit[] = [];
  let now = sketch;
  for (const id of ids) {
    const piece = now.pieces.find((one) => one.id === id);
    const edits = piece ? change(piece, now) : [];
    now = applyEdits(now, edits);
    all.push(...edits);
  }
  return all;
}
