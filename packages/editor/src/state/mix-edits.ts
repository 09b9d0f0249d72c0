import { everySource, freeId, type Mix, MOST_IN_MIX, MOST_MIXES } from '@trimwell/sketch';
import { freeName } from './free-name.js';
import { changedSketch, isUsed, ofCard, removalOf, sourceUses } from './paper-uses.js';
import type { Command, EditorState } from './state.js';

/** What a mix is called that was not named. */
export const UNNAMED_MIX = 'Mix';

/** The mix that a change is made on, or null when there is none of that id. */
export function mixToChange(state: EditorState, id: string): Mix | null {
  return changedSketch(state, id).mixes.find((mix) => mix.id === id) ?? null;
}

/**
 * Makes a mix of `papers`, in that order; if left out, of the first two patterned papers, else of the first two papers. Does
 * not apply without papers, with unknown ones, or when the sketch is full.
 */
export function addMix(papers?: readonly string[]): Command {
  return (state, dispatch, at = 0) => {
    const { sketch, document } = state;
    const patterned = sketch.papers.filter(({ kind }) => kind === 'patterned paper');
    const usual = (patterned.length > 1 ? patterned : sketch.papers).slice(0, 2).map(({ id }) => id);
    const chosen = [...new Set(papers ?? usual)];
    const known = chosen.every((id) => sketch.papers.some((paper) => paper.id === id));
    if (chosen.length === 0 || chosen.length > MOST_IN_MIX || !known || sketch.mixes.length >= MOST_MIXES) return false;
    const id = freeId('mix', [...everySource(document), ...sketch.papers, ...sketch.mixes]);
    const mix: Mix = { id, name: freeName(UNNAMED_MIX, sketch.mixes), papers: chosen };
    dispatch?.({ event: 'mix.add', edits: [{ do: 'set-mix', mix }], at });
    return true;
  };
}

/** A command that puts another mix in place of the one with this id: null when it does not apply. */
function onMix(id: string, change: (mix: Mix, state: EditorState) => Mix | null): Command {
  return (state, dispatch, at = 0) => {
    const before = mixToChange(state, id);
    const mix = before && change(before, state);
    if (!mix) return false;
    dispatch?.({ event: 'mix.change', edits: [{ do: 'set-mix', mix }], at });
    return true;
  };
}

/** Names a mix. Does not apply to its own name, or to an empty one. */
export function nameMix(id: string, name: string): Command {
  return onMix(id, (mix) => {
    const text = name.trim();
    return text === '' || text.length > 80 || text === mix.name ? null : { ...mix, name: text };
  });
}

/** Puts a paper into a mix, last. Does not apply to one that is in it. */
export function putIntoMix(id: string, paper: string): Command {
  return onMix(id, (mix, { sketch }) => {
    const known = sketch.papers.some((other) => other.id === paper);
    if (!known || mix.papers.includes(paper) || mix.papers.length >= MOST_IN_MIX) return null;
    return { ...mix, papers: [...mix.papers, paper] };
  });
}

/** Takes a paper out of a mix; the last one stays in it. */
export function takeOutOfMix(id: string, paper: string): Command {
  return onMix(id, (mix) => {
    const papers = mix.papers.filter((other) => other !== paper);
    return papers.length === 0 || papers.length === mix.papers.length ? null : { ...mix, papers };
  });
}

/** Lets a paper of a mix take its turn so many places later, or earlier when `by` is negative. */
export function moveInMix(id: string, paper: string, by: number): Command {
  return onMix(id, (mix) => {
    const from = mix.papers.indexOf(paper);
    const to = from + by;
    if (from < 0 || by === 0 || to < 0 || to >= mix.papers.length) return null;
    const others = mix.papers.filter((other) => other !== paper);
    return { ...mix, papers: [...others.slice(0, to), paper, ...others.slice(to)] };
  });
}

/**
 * Takes a mix away. Pieces that are cut from it are cut from the paper or mix `instead` in the same step, in variations
 * too; without `instead` it applies only to a mix that nothing is cut from.
 */
export function removeMix(id: string, instead?: string): Command {
  return (state, dispatch, at = 0) => {
    const { papers, mixes } = changedSketch(state, id);
    if (!mixes.some((mix) => mix.id === id)) return false;
    const known = [...papers, ...mixes].some((source) => source.id === instead && source.id !== id);
    if (instead === undefined ? isUsed(sourceUses(state, id)) : !known) return false;
    const edits = removalOf(state, id, instead ?? null, { do: 'remove-mix', mix: id });
    dispatch?.({ event: 'mix.remove', edits, ...ofCard(state), at });
    return true;
  };
}
