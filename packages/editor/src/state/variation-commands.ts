import {
  type CardEdit,
  type Edit,
  freeId,
  MOST_VARIATIONS,
  type Sketch,
  type Variation,
  withVariation,
} from '@trimwell/sketch';
import { freeName } from './free-name.js';
import type { Command, EditorState, Transaction } from './state.js';

type Change = Omit<Transaction, 'at'> | null;

/** A command that looks at the whole state: null when it does not apply. */
function whenever(change: (state: EditorState) => Change): Command {
  return (state, dispatch, at = 0) => {
    const transaction = change(state);
    if (!transaction) return false;
    dispatch?.({ ...transaction, at });
    return true;
  };
}

/** A command on one variation: null when it is not there, or when the command does not apply. */
function onVariation(id: string, change: (variation: Variation, place: number, state: EditorState) => Change): Command {
  return whenever((state) => {
    const place = state.document.variations.findIndex((variation) => variation.id === id);
    const variation = state.document.variations[place];
    return variation ? change(variation, place, state) : null;
  });
}

/** `name` without room around it, of 1 to 80 characters, else null. */
function asName(name: string): string | null {
  const text = name.trim();
  return text.length >= 1 && text.length <= 80 ? text : null;
}

/** What a variation is called that was not named. */
export const UNNAMED = 'Another way';

/** Starts a variation at the end; it is put on, and changes to the card go into it from now on. */
export function startVariation(name: string = UNNAMED): Command {
  return whenever(({ document, on }) => {
    const text = asName(name);
    if (text === null || document.variations.length >= MOST_VARIATIONS) return null;
    const id = freeId('variation', document.variations);
    const variation: Variation = { id, name: freeName(text, document.variations), note: '', edits: [] };
    return { event: 'variation.start', edits: [{ do: 'set-variation', variation }], on: [...on, id], writing: id };
  });
}

/** Takes in a variation that is ready, at the end, and puts it on; it is not written in. Does not apply while one is. */
export function addVariation(ready: Variation): Command {
  return whenever(({ document, on, writing }) => {
    if (writing !== null || document.variations.length >= MOST_VARIATIONS) return null;
    const taken = document.variations.some(({ id }) => id === ready.id);
    const id = taken ? freeId(ready.id, document.variations) : ready.id;
    const variation: Variation = { ...ready, id, name: freeName(ready.name, document.variations) };
    return { event: 'variation.add', edits: [{ do: 'set-variation', variation }], on: [...on, id] };
  });
}

/**
 * Changes to the card go into the variation `id` from now on, or into the card again. Variations that come after it are
 * taken off, since they would hide what is changed.
 */
export function writeVariation(id: string | null): Command {
  return whenever(({ document, writing }) => {
    const there = id === null || document.variations.some((variation) => variation.id === id);
    if (!there || id === writing) return null;
    return { event: id === null ? 'variation.written' : 'variation.write', edits: [], writing: id };
  });
}

/**
 * Puts a variation on, or takes it off; neither makes a step. The one that is being written stays on, and those after it
 * stay off.
 */
export function wearVariation(id: string, on: boolean): Command {
  return onVariation(id, (_variation, place, { document, on: worn, writing }) => {
    if (worn.includes(id) === on) return null;
    const written = writing === null ? -1 : document.variations.findIndex((other) => other.id === writing);
    if (writing !== null && (id === writing || (on && place > written))) return null;
    const event = on ? 'variation.on' : 'variation.off';
    return { event, edits: [], on: on ? [...worn, id] : worn.filter((other) => other !== id) };
  });
}

function set(event: string, variation: Variation, at?: number): NonNullable<Change> {
  return { event, edits: [{ do: 'set-variation', variation, ...(at === undefined ? {} : { at }) }] };
}

/** Names a variation; a name has 1 to 80 characters. */
export function renameVariation(id: string, name: string): Command {
  return onVariation(id, (variation) => {
    const text = asName(name);
    return text === null || text === variation.name ? null : set('variation.name', { ...variation, name: text });
  });
}

/** Says of a variation what it is for, in up to 400 characters; none is allowed. */
export function describeVariation(id: string, note: string): Command {
  return onVariation(id, (variation) => {
    const text = note.trim();
    return text.length > 400 || text === variation.note ? null : set('variation.note', { ...variation, note: text });
  });
}

/** Moves a variation to the place `to` in the order, counted from 0: where two set the same thing, the later one has it. */
export function moveVariation(id: string, to: number): Command {
  return onVariation(id, (variation, place, { document }) => {
    const goal = Math.min(Math.max(to, 0), document.variations.length - 1);
    return goal === place ? null : set('variation.order', variation, goal);
  });
}

/** Takes a variation away. */
export function removeVariation(id: string): Command {
  return onVariation(id, () => ({ event: 'variation.remove', edits: [{ do: 'remove-variation', variation: id }] }));
}

/** The edits of a variation that can be made on the card as it is; the rest of it does not fit any more. */
function fitting(document: Sketch, variation: Variation): readonly CardEdit[] {
  const { unfit } = withVariation(document, variation);
  return variation.edits.filter((_edit, index) => !unfit.some(({ edit }) => edit === index));
}

/** Makes what fits of a variation part of the card, and takes the variation away. Not while another one is being written. */
export function takeIntoCard(id: string): Command {
  return onVariation(id, (variation, _place, { document, writing }) => {
    if (writing !== null && writing !== id) return null;
    const edits: readonly Edit[] = [...fitting(document, variation), { do: 'remove-variation', variation: id }];
    return { event: 'variation.take', edits, writing: null, ofCard: true };
  });
}

/** The same variation again right after it, not put on. */
export function duplicateVariation(id: string): Command {
  return onVariation(id, (variation, place, { document }) => {
    if (document.variations.length >= MOST_VARIATIONS) return null;
    const copy = {
      ...variation,
      id: freeId('variation', document.variations),
      name: freeName(variation.name, document.variations),
    };
    return set('variation.duplicate', copy, place + 1);
  });
}

/** Leaves the edit at the place `index` out of a variation. */
export function dropEdit(id: string, index: number): Command {
  return onVariation(id, (variation) => {
    if (!(index in variation.edits)) return null;
    return set('variation.drop', { ...variation, edits: variation.edits.filter((_edit, place) => place !== index) });
  });
}
