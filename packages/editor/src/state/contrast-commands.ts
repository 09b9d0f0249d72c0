import {
  type Edit,
  everySource,
  freeId,
  LONGEST_NAME,
  type Mix,
  MOST_CONTRASTS,
  MOST_IN_CONTRAST,
  MOST_IN_MIX,
  MOST_MIXES,
  type Sketch,
} from '@trimwell/sketch';
import { type Command, type EditorState, selectedPieces, type Transaction } from './state.js';

type Contrast = Sketch['batch']['contrast'];

/** True when no two of `pieces` may share a paper on one card. */
export function areApart(contrast: Contrast, pieces: readonly string[]): boolean {
  return pieces.every((one, index) =>
    pieces.slice(index + 1).every((other) => contrast.some((group) => group.includes(one) && group.includes(other))),
  );
}

/** The pieces that `piece` must not share a paper with, in the order in which they are named. */
export function apartFrom(contrast: Contrast, piece: string): readonly string[] {
  const others = contrast.filter((group) => group.includes(piece)).flat();
  return [...new Set(others)].filter((other) => other !== piece);
}

/** `contrast` without groups that say no more than another one does. */
function withoutNeedless(contrast: Contrast): Contrast {
  return contrast.filter((group, index) =>
    contrast.every((other, at) => {
      if (at === index || !group.every((piece) => other.includes(piece))) return true;
      return other.length === group.length && index < at;
    }),
  );
}

/** `contrast` with no two of `pieces` sharing a paper. */
export function keptApart(contrast: Contrast, pieces: readonly string[]): Contrast {
  return withoutNeedless([...contrast, [...pieces]]);
}

/** `contrast` in which any of `pieces` may share a paper; towards all other pieces they stay as they were. */
export function letShare(contrast: Contrast, pieces: readonly string[]): Contrast {
  const split = contrast.flatMap((group) => {
    const shared = group.filter((piece) => pieces.includes(piece));
    if (shared.length < 2) return [group];
    const rest = group.filter((piece) => !pieces.includes(piece));
    return shared.map((piece) => group.filter((other) => other === piece || rest.includes(other)));
  });
  return withoutNeedless(split.filter((group) => group.length > 1));
}

/** `contrast` as a step, or null where it is none or more than a sketch holds. Contrasts are said of the batch of the card itself. */
function contrastStep(
  { document: { batch } }: EditorState,
  event: string,
  contrast: Contrast,
): Omit<Transaction, 'at'> | null {
  const full = contrast.length > MOST_CONTRASTS || contrast.some((group) => group.length > MOST_IN_CONTRAST);
  if (full || JSON.stringify(contrast) === JSON.stringify(batch.contrast)) return null;
  return { event, edits: [{ do: 'batch', batch: { ...batch, contrast } }] };
}

/** True when `piece` draws on a mix, so that its paper changes from card to card. */
export function takesTurns({ pieces, mixes }: Sketch, piece: string): boolean {
  const from = pieces.find(({ id }) => id === piece)?.from;
  return mixes.some(({ id }) => id === from);
}

function onCard({ document }: EditorState, pieces: readonly string[]): boolean {
  return pieces.every((id) => document.pieces.some((piece) => piece.id === id));
}

/**
 * No two of `pieces` (the selected ones if left out) share a paper on one card. Applies to two or more pieces of the card
 * itself, at least one of which takes turns among papers, that may share a paper so far.
 */
export function keepApart(pieces?: readonly string[]): Command {
  return (state, dispatch, at = 0) => {
    const ids = pieces ?? selectedPieces(state).map(({ id }) => id);
    const { contrast } = state.document.batch;
    const able = new Set(ids).size > 1 && onCard(state, ids) && ids.some((id) => takesTurns(state.sketch, id));
    if (!able || areApart(contrast, ids)) return false;
    const step = contrastStep(state, 'contrast.keep', keptApart(contrast, ids));
    if (!step) return false;
    dispatch?.({ ...step, at });
    return true;
  };
}

/** `pieces` (the selected ones if left out) may share a paper again; what they must not share with others stays. */
export function letPiecesShare(pieces?: readonly string[]): Command {
  return (state, dispatch, at = 0) => {
    const ids = pieces ?? selectedPieces(state).map(({ id }) => id);
    const step = contrastStep(state, 'contrast.drop', letShare(state.document.batch.contrast, ids));
    if (!step) return false;
    dispatch?.({ ...step, at });
    return true;
  };
}

/** Cuts all selected pieces from one paper or mix, those that are not yet. */
export function cutAllFrom(from: string): Command {
  return (state, dispatch, at = 0) => {
    const { papers, mixes } = state.sketch;
    if (![...papers, ...mixes].some(({ id }) => id === from)) return false;
    const edits = selectedPieces(state)
      .filter((piece) => piece.from !== from)
      .map((piece): Edit => ({ do: 'cut-from', piece: piece.id, from }));
    if (edits.length === 0) return false;
    dispatch?.({ event: 'piece.paper', edits, at });
    return true;
  };
}

/** What a new mix of `papers` is called: the names of the papers, as far as a name goes. */
function mixName({ papers }: Sketch, ids: readonly string[]): string {
  const names = ids.map((id) => papers.find((paper) => paper.id === id)?.name ?? id);
  const all = `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return all.length <= LONGEST_NAME ? all : `${names.length} papers in turn`;
}

/**
 * Cuts the selected pieces from a mix of `papers`: from the one there is, in whatever order, or from a new one. Applies to
 * one or more pieces and to two or more papers of the sketch.
 */
export function cutFromPapers(papers: readonly string[], name?: string): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const ids = [...new Set(papers)];
    const known = ids.every((id) => sketch.papers.some((paper) => paper.id === id));
    const pieces = selectedPieces(state);
    if (pieces.length === 0 || ids.length < 2 || ids.length > MOST_IN_MIX || !known) return false;
    const same = (mix: Mix): boolean => mix.papers.length === ids.length && ids.every((id) => mix.papers.includes(id));
    const there = sketch.mixes.find(same);
    if (!there && sketch.mixes.length >= MOST_MIXES) return false;
    if (there) return cutAllFrom(there.id)(state, dispatch, at);
    const text = name?.trim() ?? '';
    const mix: Mix = {
      id: freeId('mix', everySource(sketch)),
      name: text === '' ? mixName(sketch, ids) : text.slice(0, LONGEST_NAME),
      papers: ids,
    };
    const edits: readonly Edit[] = [
      { do: 'set-mix', mix },
      ...pieces.map((piece): Edit => ({ do: 'cut-from', piece: piece.id, from: mix.id })),
    ];
    dispatch?.({ event: 'piece.mix', edits, at });
    return true;
  };
}
