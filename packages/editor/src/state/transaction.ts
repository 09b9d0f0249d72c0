import type { Sketch } from '@trimwell/sketch';
import { changedDocument } from './changed-document.js';
import { shownSketch } from './shown-sketch.js';
import type { EditorState, HistoryEntry, Transaction } from './state.js';
import { MOST_STEPS } from './state.js';

/** The part of a selection that still exists in `sketch`; the same list when all of it does. */
export function keptSelection(sketch: Sketch, selection: readonly string[]): readonly string[] {
  const there = (id: string): boolean => sketch.pieces.some((piece) => piece.id === id);
  return selection.every(there) ? selection : selection.filter(there);
}

/** What `state` goes back to when `step` is undone. */
export function historyEntry(
  state: EditorState,
  { event, gesture, ordered }: Pick<HistoryEntry, 'event' | 'gesture' | 'ordered'>,
): HistoryEntry {
  const { document, on, writing, selection, face } = state;
  return { document, on, writing, selection, face, event, gesture, ordered, undone: [] };
}

/**
 * Which variations are on, in the order in which they were put on: those that are there; and none that comes after the
 * one that is being written, since it would hide what is changed.
 */
function worn(document: Sketch, wanted: readonly string[], writing: string | null): readonly string[] {
  const places = new Map(document.variations.map(({ id }, place) => [id, place]));
  const last = writing === null ? Number.POSITIVE_INFINITY : (places.get(writing) ?? Number.POSITIVE_INFINITY);
  const all = writing !== null && !wanted.includes(writing) ? [...wanted, writing] : wanted;
  const fits = (id: string): boolean => (places.get(id) ?? Number.NaN) <= last;
  return all.every(fits) ? all : all.filter(fits);
}

/**
 * The only door to a new state. Transactions of the gesture that made the newest step join it; any other one with edits
 * makes a step of its own and empties the future.
 * @throws EditError when an edit cannot be applied; the state is as before.
 */
export function applyTransaction(state: EditorState, transaction: Transaction): EditorState {
  const { edits } = transaction;
  const wanted = transaction.writing === undefined ? state.writing : transaction.writing;
  const wearing = transaction.on ?? state.on;
  const from = { ...state, on: transaction.ofCard ? [] : wearing, writing: wanted };
  const document = edits.length === 0 ? state.document : changedDocument(from, edits);
  const writing = document.variations.some(({ id }) => id === wanted) ? wanted : null;
  const on = worn(document, wearing, writing);
  const sketch = shownSketch(document, on);
  const next = {
    document,
    sketch,
    on,
    writing,
    selection: keptSelection(sketch, transaction.selection ?? state.selection),
    face: transaction.face ?? state.face,
  };
  if (edits.length === 0) return { ...next, history: state.history };
  const newest = state.history.past.at(-1);
  const gesture = transaction.gesture ?? null;
  if (gesture !== null && newest?.gesture === gesture) {
    return { ...next, history: { past: state.history.past, future: [] } };
  }
  // Until it is settled a gesture may still come to nothing, and what was undone before can then be done again.
  const undone = gesture === null ? [] : state.history.future;
  const ordered = edits.flatMap((edit) => (edit.do === 'order' ? [edit.piece] : []));
  const entry: HistoryEntry = { ...historyEntry(state, { event: transaction.event, gesture, ordered }), undone };
  return { ...next, history: { past: [...state.history.past, entry].slice(-MOST_STEPS), future: [] } };
}

/** `state` with what `entry` remembers put back; its history stays. */
export function putBack(state: EditorState, { document, on, writing, selection, face }: HistoryEntry): EditorState {
  return { ...state, document, on, writing, selection, face, sketch: shownSketch(document, on) };
}

/** Ends a gesture as if it had not been: the sketch is the very object from before it, and no step remains. */
export function cancelGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  return putBack({ ...state, history: { past: state.history.past.slice(0, -1), future: newest.undone } }, newest);
}

/** Settles a gesture, so that a later one with the same id would be a step of its own. A gesture without effect leaves none. */
export function settleGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  const past = state.history.past.slice(0, -1);
  if (newest.document === state.document) return { ...state, history: { past, future: newest.undone } };
  return { ...state, history: { ...state.history, past: [...past, { ...newest, gesture: null, undone: [] }] } };
}
