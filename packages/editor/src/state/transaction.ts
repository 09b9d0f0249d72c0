import {
  applyEdit,
  applyEdits,
  type CardEdit,
  type Edit,
  EditError,
  isCardEdit,
  type Sketch,
  withEdits,
} from '@trimwell/sketch';
import { shownSketch } from './shown-sketch.js';
import type { EditorState, HistoryEntry, Transaction } from './state.js';
import { MOST_STEPS } from './state.js';

/** The part of a selection that still exists in `sketch`; the same list when all of it does. */
export function keptSelection(sketch: Sketch, selection: readonly string[]): readonly string[] {
  const there = (id: string): boolean => sketch.pieces.some((piece) => piece.id === id);
  return selection.every(there) ? selection : selection.filter(there);
}

/** What `state` goes back to when it is undone. */
export function historyEntry(state: EditorState, event: string, gesture: string | null): HistoryEntry {
  const { document, on, writing, selection } = state;
  return { document, on, writing, selection, event, gesture };
}

/**
 * `document` with one change to what is shown with the variations `on`. A change that the card itself cannot take, since
 * it is about something that only a variation brings, goes into the last variation that is on.
 * @throws EditError when it cannot be made on what is shown either.
 */
function changedByOne(document: Sketch, edit: Edit, on: readonly string[]): Sketch {
  const last = document.variations.findLast(({ id }) => on.includes(id));
  if (!last || !isCardEdit(edit)) return applyEdit(document, edit);
  try {
    return applyEdit(document, edit);
  } catch (error) {
    if (!(error instanceof EditError)) throw error;
    applyEdit(shownSketch(document, on), edit);
    return applyEdit(document, { do: 'set-variation', variation: withEdits(last, [edit]) });
  }
}

/** The document after `edits`: changes to the card go into the variation that is being written, if there is one. */
function changedDocument({ document, sketch, on, writing }: EditorState, edits: readonly Edit[]): Sketch {
  const variation = document.variations.find(({ id }) => id === writing);
  if (!variation) return edits.reduce((before, edit) => changedByOne(before, edit, on), document);
  const changes: readonly CardEdit[] = edits.filter(isCardEdit);
  // Tried on what is shown first, so that a change that cannot be made is refused and not written down.
  applyEdits(sketch, changes);
  const others = applyEdits(
    document,
    edits.filter((edit) => !isCardEdit(edit)),
  );
  // Looked up again: one of the other edits may have named it or taken it away.
  const now = others.variations.find(({ id }) => id === writing);
  if (changes.length === 0 || !now) return others;
  return applyEdit(others, { do: 'set-variation', variation: withEdits(now, changes) });
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
  const document = edits.length === 0 ? state.document : changedDocument({ ...state, writing: wanted }, edits);
  const writing = document.variations.some(({ id }) => id === wanted) ? wanted : null;
  const on = worn(document, transaction.on ?? state.on, writing);
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
  const entry = historyEntry(state, transaction.event, gesture);
  return { ...next, history: { past: [...state.history.past, entry].slice(-MOST_STEPS), future: [] } };
}

/** `state` with what `entry` remembers put back; its history stays. */
export function putBack(state: EditorState, { document, on, writing, selection }: HistoryEntry): EditorState {
  return { ...state, document, on, writing, selection, sketch: shownSketch(document, on) };
}

/** Ends a gesture as if it had not been: the sketch is the very object from before it, and no step remains. */
export function cancelGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  return putBack({ ...state, history: { ...state.history, past: state.history.past.slice(0, -1) } }, newest);
}

/** Settles a gesture, so that a later one with the same id would be a step of its own. A gesture without effect leaves none. */
export function settleGesture(state: EditorState, gesture: string): EditorState {
  const newest = state.history.past.at(-1);
  if (!newest || newest.gesture !== gesture) return state;
  const past = state.history.past.slice(0, -1);
  if (newest.document === state.document) return { ...state, history: { ...state.history, past } };
  return { ...state, history: { ...state.history, past: [...past, { ...newest, gesture: null }] } };
}
