import type { Edit, Face, Piece, Sketch } from '@trimwell/sketch';

/** What was there before a step, to go back to; `gesture` joins the moves of one drag into one step. */
export interface HistoryEntry {
  readonly sketch: Sketch;
  readonly selection: string | null;
  readonly event: string;
  readonly gesture: string | null;
}

export interface History {
  readonly past: readonly HistoryEntry[];
  readonly future: readonly HistoryEntry[];
}

/** Everything the editor knows, as a value. `selection` is a piece's id; `face` is the side of the card shown. */
export interface EditorState {
  readonly sketch: Sketch;
  readonly selection: string | null;
  readonly face: Face;
  readonly history: History;
}

/**
 * One change, as data. `event` names it (`piece.move`, `piece.resize`, …); transactions of one `gesture` make one step
 * of the history; `at` is the time of the user's action in milliseconds. A transaction without edits (selecting, turning
 * the card over) makes no step.
 */
export interface Transaction {
  readonly event: string;
  readonly edits: readonly Edit[];
  readonly selection?: string | null;
  readonly face?: Face;
  readonly gesture?: string;
  readonly at: number;
}

export type Dispatch = (transaction: Transaction) => void;

/** Answers whether it applies; acts only when given `dispatch`. */
export type Command = (state: EditorState, dispatch?: Dispatch, at?: number) => boolean;

/** Most steps that are kept; entries hold references to sketches that share all they do not change. */
export const MOST_STEPS = 500;

/** The state in which a sketch is opened: nothing selected, nothing to undo. */
export function openState(sketch: Sketch): EditorState {
  return { sketch, selection: null, face: 'front', history: { past: [], future: [] } };
}

/** The selected piece, or null. */
export function selectedPiece(state: EditorState): Piece | null {
  return state.sketch.pieces.find((piece) => piece.id === state.selection) ?? null;
}
