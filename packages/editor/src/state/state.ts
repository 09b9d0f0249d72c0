import type { Length } from '@trimwell/geometry';
import type { Edit, Face, Piece, Sketch } from '@trimwell/sketch';
import { shownSketch } from './shown-sketch.js';

/** What was there before a step, to go back to; `gesture` joins the moves of one drag into one step. */
export interface HistoryEntry {
  readonly document: Sketch;
  readonly on: readonly string[];
  readonly writing: string | null;
  readonly selection: readonly string[];
  readonly face: Face;
  readonly event: string;
  readonly gesture: string | null;
  /** The pieces that it put elsewhere in the order of gluing: they are the same as before, so that nothing else tells which. */
  readonly ordered: readonly string[];
  /** What could be done again before a gesture that is under way; empty for any other step. */
  readonly undone: readonly HistoryEntry[];
}

export interface History {
  readonly past: readonly HistoryEntry[];
  readonly future: readonly HistoryEntry[];
}

/** Everything the editor knows, as a value. */
export interface EditorState {
  /** What is kept. */
  readonly document: Sketch;
  /** What is on the table: the document with its variations `on`; the same object when there are none. */
  readonly sketch: Sketch;
  /** Ids of the variations that are put on. */
  readonly on: readonly string[];
  /** The variation that changes to the card go into, or null: then they change the card itself. It is always on. */
  readonly writing: string | null;
  /** Ids of the selected pieces, in the order in which they were taken, all on one face. */
  readonly selection: readonly string[];
  /** The side of the card that is shown. */
  readonly face: Face;
  readonly history: History;
}

/**
 * One change, as data. `event` names it (`piece.move`, `piece.resize`, …); transactions of one `gesture` make one step
 * of the history; `at` is the time of the user's action in milliseconds. A transaction without edits (selecting, turning
 * the card over, putting a variation on) makes no step.
 */
export interface Transaction {
  readonly event: string;
  readonly edits: readonly Edit[];
  readonly selection?: readonly string[];
  readonly face?: Face;
  readonly on?: readonly string[];
  readonly writing?: string | null;
  /** The edits are made on the card itself, whatever is put on. */
  readonly ofCard?: true;
  readonly gesture?: string;
  /** How far pieces that were arranged lie from where they would be exactly, at most: they came to marks of the ruler. */
  readonly off?: Length;
  readonly at: number;
}

export type Dispatch = (transaction: Transaction) => void;

/** Answers whether it applies; acts only when given `dispatch`. */
export type Command = (state: EditorState, dispatch?: Dispatch, at?: number) => boolean;

/** Most steps that are kept; entries hold references to sketches that share all they do not change. */
export const MOST_STEPS = 500;

/** The state in which a sketch is opened: nothing selected, nothing to undo, no variation on. */
export function openState(document: Sketch): EditorState {
  return {
    document,
    sketch: shownSketch(document, []),
    on: [],
    writing: null,
    selection: [],
    face: 'front',
    history: { past: [], future: [] },
  };
}

/** The selected pieces in gluing order. */
export function selectedPieces({ sketch, selection }: Pick<EditorState, 'sketch' | 'selection'>): readonly Piece[] {
  return selection.length === 0 ? [] : sketch.pieces.filter((piece) => selection.includes(piece.id));
}

/** The selected piece when there is exactly one, else null. */
export function selectedPiece({ sketch, selection }: Pick<EditorState, 'sketch' | 'selection'>): Piece | null {
  const [only] = selection;
  return selection.length === 1 ? (sketch.pieces.find((piece) => piece.id === only) ?? null) : null;
}
