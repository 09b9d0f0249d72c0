import type { Piece, Sketch } from '@trimwell/sketch';
import { type Command, selectedPiece, type Transaction } from './state.js';

/** A command that only looks at the selected piece: null when it does not apply. */
export function onSelected(change: (piece: Piece, sketch: Sketch) => Omit<Transaction, 'at'> | null): Command {
  return (state, dispatch, at = 0) => {
    const piece = selectedPiece(state);
    const transaction = piece && change(piece, state.sketch);
    if (!transaction) return false;
    dispatch?.({ ...transaction, at });
    return true;
  };
}
