import type { Sketch } from '@trimwell/sketch';
import { shownSketch } from '../state/shown-sketch.js';
import type { EditorState, HistoryEntry } from '../state/state.js';

/** One step of the history, whether done or undone: the sketches on the table before and after it. */
export interface Step {
  readonly event: string;
  readonly before: Sketch;
  readonly after: Sketch;
  /** The pieces that were selected when it was made. */
  readonly selection: readonly string[];
  /** The pieces that it put elsewhere in the order of gluing. */
  readonly ordered: readonly string[];
}

type Things = 'pieces' | 'papers' | 'mixes' | 'punches' | 'variations';

/** What is said of a step: the words, in which `…` is what it was done to, and where to look for that. */
type Naming = readonly [words: string, things?: Things];

const NAMINGS: Readonly<Record<string, Naming>> = {
  'piece.add': ['Cut …', 'pieces'],
  'piece.concentric': ['Follow the corners with …', 'pieces'],
  'piece.duplicate': ['Cut … again', 'pieces'],
  'piece.face': ['Glue … on the other face', 'pieces'],
  'piece.free': ['Take … off what it mats', 'pieces'],
  'piece.hide': ['Put … out of sight', 'pieces'],
  'piece.kind': ['Say what … is', 'pieces'],
  'piece.lock': ['Lock …', 'pieces'],
  'piece.mat': ['Put … behind', 'pieces'],
  'piece.mix': ['Cut … from papers in turn', 'pieces'],
  'piece.move': ['Move …', 'pieces'],
  'piece.name': ['Name …', 'pieces'],
  'piece.paper': ['Cut … from another paper', 'pieces'],
  'piece.paste': ['Paste …', 'pieces'],
  'piece.per-card': ['Change how many of …', 'pieces'],
  'piece.punch': ['Punch an edge of …', 'pieces'],
  'piece.raise': ['Change the foam under …', 'pieces'],
  'piece.remove': ['Take … away', 'pieces'],
  'piece.resize': ['Resize …', 'pieces'],
  'piece.reveal': ['Change the reveal of …', 'pieces'],
  'piece.round': ['Round corners of …', 'pieces'],
  'piece.shape': ['Change the shape of …', 'pieces'],
  'piece.show': ['Bring … into sight', 'pieces'],
  'piece.tilt': ['Tilt …', 'pieces'],
  'piece.unlock': ['Unlock …', 'pieces'],
  'arrange.align': ['Line up …', 'pieces'],
  'arrange.size': ['Make … alike', 'pieces'],
  'arrange.space': ['Space out …', 'pieces'],
  'order.bottom': ['Glue … first', 'pieces'],
  'order.lower': ['Glue … earlier', 'pieces'],
  'order.raise': ['Glue … later', 'pieces'],
  'order.top': ['Glue … last', 'pieces'],
  'near-miss.try-on': ['Try a near miss on …', 'pieces'],
  'paper.add': ['Add …', 'papers'],
  'paper.change': ['Change …', 'papers'],
  'paper.remove': ['Take … off the list', 'papers'],
  'mix.add': ['Mix papers as …', 'mixes'],
  'mix.change': ['Change the mix …', 'mixes'],
  'mix.remove': ['Undo the mix …', 'mixes'],
  'punch.add': ['Bring in the punch …', 'punches'],
  'punch.change': ['Change the punch …', 'punches'],
  'punch.remove': ['Put the punch … away', 'punches'],
  'variation.add': ['Begin the variation …', 'variations'],
  'variation.drop': ['Take a change out of …', 'variations'],
  'variation.duplicate': ['Copy the variation as …', 'variations'],
  'variation.name': ['Name the variation …', 'variations'],
  'variation.note': ['Write a note to …', 'variations'],
  'variation.order': ['Move the variation … in the list', 'variations'],
  'variation.remove': ['Throw the variation … away', 'variations'],
  'variation.start': ['Begin the variation …', 'variations'],
  'variation.take': ['Take … over into the card', 'variations'],
  'contrast.drop': ['Let papers meet again'],
  'contrast.keep': ['Keep papers apart'],
  'batch.cards': ['Change the number of cards'],
  'batch.hidden-centres': ['Change the use of hidden centres'],
  'batch.stopped-cuts': ['Change the use of stopped cuts'],
  'card.base': ['Cut the card base from another paper'],
  'card.change': ['Change the card'],
  'card.envelope': ['Change the envelope'],
  'card.fold': ['Fold the card otherwise'],
  'card.size': ['Change the size of the card'],
  'links.change': ['Change the closing lines'],
  'supplies.change': ['Change the supplies'],
  'sketch.describe': ['Describe the sketch'],
  'sketch.rename': ['Change the title'],
  'sketch.unit': ['Change the unit'],
};

/** Whether a step of this event has a name of its own; others are named after the words of their event. */
export function hasStepName(event: string): boolean {
  return event in NAMINGS || event.startsWith('mend.');
}

/** The words of an event that has no name: `card.turn-round` is `Turn round`. */
function namingOf(event: string): Naming {
  if (event.startsWith('mend.')) return ['Mend …', 'pieces'];
  const known = NAMINGS[event];
  if (known) return known;
  const words = event.slice(event.indexOf('.') + 1).replaceAll('-', ' ');
  return [`${words.charAt(0).toUpperCase()}${words.slice(1)}`];
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Records that are new, other or gone after a step; by their names after it, or before it when they are gone. */
function changed(before: readonly Named[], after: readonly Named[]): readonly Named[] {
  const old = new Map(before.map((record) => [record.id, record]));
  const now = new Set(after.map(({ id }) => id));
  return [...after.filter((record) => old.get(record.id) !== record), ...before.filter(({ id }) => !now.has(id))];
}

const MANY: Readonly<Record<Things, string>> = {
  pieces: 'pieces',
  papers: 'papers',
  mixes: 'mixes',
  punches: 'punches',
  variations: 'variations',
};

function subjectOf({ before, after, selection, ordered }: Step, things: Things): string {
  const differ = changed(before[things], after[things]);
  const moved = things === 'pieces' ? before.pieces.filter(({ id }) => ordered.includes(id)) : [];
  const all = differ.length > 0 ? differ : moved;
  // What merely follows, as a mat does, is left out when the piece itself was selected.
  const chosen = things === 'pieces' ? all.filter(({ id }) => selection.includes(id)) : [];
  const meant = chosen.length > 0 ? chosen : all;
  const [only] = meant;
  if (meant.length === 1 && only) return only.name;
  if (meant.length > 1) return `${meant.length} ${MANY[things]}`;
  // Nothing of them differs.
  const named = before[things].filter(({ id }) => selection.includes(id));
  return named.length === 1 && named[0] ? named[0].name : MANY[things];
}

/** A step in a few words: `Move Gingham strip`, `Tilt 3 pieces`, `Change the unit`. */
export function stepName(step: Step): string {
  const [words, things] = namingOf(step.event);
  return things ? words.replace('…', () => subjectOf(step, things)) : words;
}

function shownOf({ document, on }: Pick<HistoryEntry, 'document' | 'on'>): Sketch {
  return shownSketch(document, on);
}

/** The steps that are done, oldest first, then those that are undone, the next to be done again first. */
export function historySteps(state: EditorState): { readonly done: readonly Step[]; readonly undone: readonly Step[] } {
  const { past, future } = state.history;
  return {
    done: past.map(
      (entry, index): Step => ({
        event: entry.event,
        before: shownOf(entry),
        after: shownOf(past[index + 1] ?? state),
        selection: entry.selection,
        ordered: entry.ordered,
      }),
    ),
    undone: future.map(
      (entry, index): Step => ({
        event: entry.event,
        before: shownOf(future[index - 1] ?? state),
        after: shownOf(entry),
        selection: entry.selection,
        ordered: entry.ordered,
      }),
    ),
  };
}

function newestSteps(state: EditorState): { readonly done: Step | null; readonly undone: Step | null } {
  const { past, future } = state.history;
  const near = historySteps({ ...state, history: { past: past.slice(-1), future: future.slice(0, 1) } });
  return { done: near.done[0] ?? null, undone: near.undone[0] ?? null };
}

/** What Undo would take back, in words, or null: `Undo: Move Gingham strip`. */
export function undoLabel(state: EditorState): string | null {
  const { done } = newestSteps(state);
  return done && `Undo: ${stepName(done)}`;
}

/** What Redo would do again, in words, or null. */
export function redoLabel(state: EditorState): string | null {
  const { undone } = newestSteps(state);
  return undone && `Redo: ${stepName(undone)}`;
}
