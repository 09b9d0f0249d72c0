import type { EditorState, HistoryEntry } from './state.js';
import { historyEntry, putBack } from './transaction.js';

function step(state: EditorState, to: HistoryEntry): readonly [EditorState, HistoryEntry] {
  return [putBack(state, to), historyEntry(state, { ...to, gesture: null })];
}

/** One step back: the sketch is the same object as before the step. The same state when there is nothing to undo. */
export function undo(state: EditorState): EditorState {
  const entry = state.history.past.at(-1);
  if (!entry) return state;
  const [next, back] = step(state, entry);
  return { ...next, history: { past: state.history.past.slice(0, -1), future: [back, ...state.history.future] } };
}

/** One step forward again. The same state when nothing was undone. */
export function redo(state: EditorState): EditorState {
  const [entry, ...future] = state.history.future;
  if (!entry) return state;
  const [next, back] = step(state, entry);
  return { ...next, history: { past: [...state.history.past, back], future } };
}

/** The name of the step that `undo` would take back, or null. */
export function undoEvent(state: EditorState): string | null {
  return state.history.past.at(-1)?.event ?? null;
}

/** The name of the step that `redo` would make again, or null. */
export function redoEvent(state: EditorState): string | null {
  return state.history.future[0]?.event ?? null;
}
