import { batchRecipe, type MixPlan, mixPlan, type Piece, type Sketch } from '@trimwell/sketch';
import { areApart, takesTurns } from '../../state/contrast-commands.js';
import type { EditorState } from '../../state/state.js';
import { mixReasons } from '../batch-messages.js';

export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The names of the papers that `piece` takes turns among; empty for a piece of one paper. */
export function turnsAmong({ mixes, papers }: Sketch, piece: Piece): readonly string[] {
  const mix = mixes.find(({ id }) => id === piece.from);
  return (mix?.papers ?? []).map((id) => papers.find((paper) => paper.id === id)?.name ?? id);
}

/** Why `pieces` cannot be kept apart as they are, as a sentence; empty where they can. */
export function whyNotApart(state: EditorState, pieces: readonly Piece[]): string {
  const own = pieces.filter(({ id }) => !state.document.pieces.some((piece) => piece.id === id));
  if (own.length > 0) {
    const names = listed(own.map(({ name }) => name));
    return `Only a variation has ${names}; what contrasts is said of the card itself.`;
  }
  if (pieces.some(({ id }) => takesTurns(state.sketch, id))) return '';
  return 'Each of them has one paper on all cards. Cut one of them from several papers first.';
}

/** Why pieces among `pieces` that should contrast share a paper all the same: a sentence for each two; empty when none do. */
export function whyNotKept(sketch: Sketch, pieces: readonly string[], cards: number): readonly string[] {
  const { contrast } = sketch.batch;
  if (!contrast.some((group) => group.some((piece) => pieces.includes(piece)))) return [];
  const plan = mixPlan(batchRecipe(sketch), cards);
  const mine = plan.clashes.filter(({ pieces: pair }) =>
    pieces.length > 1 ? pair.every((piece) => pieces.includes(piece)) : pair.some((piece) => pieces.includes(piece)),
  );
  const only: MixPlan = { ...plan, clashes: mine, allDifferent: 'yes' };
  return mixReasons(sketch, only);
}

/** Pieces that `piece` may still be kept apart from: those of the card of which it or they take turns. */
export function mayContrast({ document, sketch }: EditorState, piece: Piece): readonly Piece[] {
  if (!document.pieces.some(({ id }) => id === piece.id)) return [];
  const turns = takesTurns(sketch, piece.id);
  return document.pieces.filter(
    ({ id }) =>
      id !== piece.id && (turns || takesTurns(sketch, id)) && !areApart(document.batch.contrast, [piece.id, id]),
  );
}
