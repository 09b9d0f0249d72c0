import { applyEdits, type Sketch } from '@trimwell/sketch';
import type { EditorState, HistoryEntry, Transaction } from './state.js';
import { MOST_STEPS } from './state.js';

/** A selection that still exists in `sketch`. */
function keptSelection(sketch: Sketch, selection: string | null): string | null {
  return selection !== null && sketch.pieces.some((piece) => piece.id === selection) ? selection : null;
}

/**
 * The only door to a new state. Transactions of the gesture that made the newest step join it; any other one with edits
 * makes a step of its own and empties the future.
 * @throws EditError when an edit cannot be applied; the state is as before.
 */
export function applyTransaction(state: EditorState, transaction: Transaction): EditorState {
  const sketch = transaction.edits.length === 0 ? state.sketch : applyEdits(state.sketch, transaction.edits);
  const wanted = transaction.selection === undefined ? state.selection : transaction.selection;
  const face = transaction.face ?? state.face;
  const next = { sketch, selection: keptSelection(sketch, wanted), face };
  if (transaction.edits.length === 0) return { ...next, history: state.history };
  const newest = state.history.past.at(-1);
  const gesture = transaction.gesture ?? null;
  if (gesture !== null && newest?.gesture === gesture) {
    return { ...next, history: { past: state.history.past, future: [] } };
  }
  const entry: HistoryEntry = { sketch: state.sketch, selection: state.selection, event: transaction.event, gesture };
  return { ...next, history: { past: [...state.history.past, entry].slice(-MOST_STEPS), future: [] } };
}

/** Ends a gesture as if it had not been: the sketch is the very object from before it, and no step remains. */
export function cancelGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  return {
    ...state,
    sketch: newest.sketch,
    selection: newest.selection,
    history: { ...state.history, past: state.history.past.slice(0, -1) },
  };
}

/** Settles a gesture, so that a later one with the same id would be a step of its own. A gesture without effect leaves none. */
export function settleGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  const past = state.history.past.slice(0, -1);
  if (newest.sketch === state.sketch) return { ...state, history: { ...state.history, past } };
  return { ...state, history: { ...state.history, past: [...past, { ...newest, gesture: null }] } };
}
