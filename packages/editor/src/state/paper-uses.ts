import type { CardEdit, Edit, Mix, Piece, Sketch, Variation } from '@trimwell/sketch';
import type { EditorState, Transaction } from './state.js';

/** What is cut from a paper or a mix; `variations` are those that name it, put on or not. */
export interface SourceUses {
  /** True when the card base is cut from it. */
  readonly base: boolean;
  readonly pieces: readonly Piece[];
  /** Mixes that it takes turns in. */
  readonly mixes: readonly Mix[];
  readonly variations: readonly Variation[];
}

/**
 * The sketch that a change to the paper or mix `id` is made on: the document, as long as no variation is being written and
 * the document has it; else what is shown.
 */
export function changedSketch({ document, sketch, writing }: EditorState, id: string): Sketch {
  return writing === null && hasSource(document, id) ? document : sketch;
}

function hasSource({ papers, mixes }: Sketch, id: string): boolean {
  return [...papers, ...mixes].some((source) => source.id === id);
}

/** True when `edit` is about the paper or mix `id` itself. */
function isAbout(edit: CardEdit, id: string): boolean {
  switch (edit.do) {
    case 'set-paper':
      return edit.paper.id === id;
    case 'remove-paper':
      return edit.paper === id;
    case 'set-mix':
      return edit.mix.id === id;
    case 'remove-mix':
      return edit.mix === id;
    default:
      return false;
  }
}

/** `papers` with `instead` for `id`, each once. */
function papersWithout(papers: readonly string[], id: string, instead: string): readonly string[] {
  return [...new Set(papers.map((paper) => (paper === id ? instead : paper)))];
}

/** `edit` with `instead` wherever it cuts something from `id`; the same object where it does not. */
function recut(edit: CardEdit, id: string, instead: string): CardEdit {
  switch (edit.do) {
    case 'cut-from':
      return edit.from === id ? { ...edit, from: instead } : edit;
    case 'add-piece':
      return edit.piece.from === id ? { ...edit, piece: { ...edit.piece, from: instead } } : edit;
    case 'card':
      return edit.card.base === id ? { ...edit, card: { ...edit.card, base: instead } } : edit;
    case 'set-mix':
      return edit.mix.papers.includes(id)
        ? { ...edit, mix: { ...edit.mix, papers: papersWithout(edit.mix.papers, id, instead) } }
        : edit;
    default:
      return edit;
  }
}

function names(variation: Variation, id: string): boolean {
  return variation.edits.some((edit) => isAbout(edit, id) || recut(edit, id, '') !== edit);
}

/** What is cut from the paper or mix `id`. While a variation is written, other variations are left as they are. */
export function sourceUses(state: EditorState, id: string): SourceUses {
  const sketch = changedSketch(state, id);
  return {
    base: sketch.card.base === id,
    pieces: sketch.pieces.filter(({ from }) => from === id),
    mixes: sketch.mixes.filter(({ papers }) => papers.includes(id)),
    variations: state.writing === null ? state.document.variations.filter((variation) => names(variation, id)) : [],
  };
}

export function isUsed({ base, pieces, mixes, variations }: SourceUses): boolean {
  return base || pieces.length + mixes.length + variations.length > 0;
}

/**
 * The edits after which the paper or mix `id` is gone and nothing is cut from it any more, but from `instead`; null where
 * nothing is. What only variations have brought is gone when they bring it no more: the card itself has nothing of it.
 */
export function removalOf(state: EditorState, id: string, instead: string | null, removal: CardEdit): readonly Edit[] {
  const recuts = instead === null ? [] : recutAll(state, id, instead);
  const brought = state.writing === null && !hasSource(state.document, id);
  return brought ? recuts.filter((edit) => edit.do === 'set-variation') : [...recuts, removal];
}

/** A change to all of the document at once: what a variation that is on has instead of it stays with the variation. */
export function ofCard({ writing }: EditorState): Pick<Transaction, 'ofCard'> {
  return writing === null ? { ofCard: true } : {};
}

/** The edits after which nothing is cut from `id` any more, but from `instead`. */
function recutAll(state: EditorState, id: string, instead: string): readonly Edit[] {
  const { base, pieces, mixes, variations } = sourceUses(state, id);
  const { card } = changedSketch(state, id);
  return [
    ...(base ? [{ do: 'card', card: { ...card, base: instead } } as const] : []),
    ...pieces.map((piece): Edit => ({ do: 'cut-from', piece: piece.id, from: instead })),
    ...mixes.map((mix): Edit => ({ do: 'set-mix', mix: { ...mix, papers: papersWithout(mix.papers, id, instead) } })),
    ...variations.map((variation): Edit => {
      const edits = variation.edits.filter((edit) => !isAbout(edit, id)).map((edit) => recut(edit, id, instead));
      return { do: 'set-variation', variation: { ...variation, edits } };
    }),
  ];
}
