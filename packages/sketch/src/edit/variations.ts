import type { Problem } from '../model/problem.js';
import type { CardEdit, Edit, Sketch, Variation } from '../model/sketch.js';
import { applyEdit, EditError } from './apply-edit.js';

/** A sketch with variations on, and what of them could not be done. */
export interface Varied {
  readonly sketch: Sketch;
  readonly problems: readonly Problem[];
}

/**
 * `sketch` with the variations `on` put on, in the order of the sketch. What of a variation does not fit (it resizes a
 * piece that has been taken away since) is left out and told of; the rest of it is done. Ids that are not there are
 * nothing. Without any, the sketch is the same object.
 */
export function withVariations(sketch: Sketch, on: readonly string[]): Varied {
  const problems: Problem[] = [];
  const varied = sketch.variations
    .filter(({ id }) => on.includes(id))
    .flatMap(({ edits }) => edits)
    .reduce<Sketch>((before, edit) => {
      try {
        return applyEdit(before, edit);
      } catch (error) {
        if (!(error instanceof EditError)) throw error;
        problems.push(...error.problems);
        return before;
      }
    }, sketch);
  return { sketch: varied, problems };
}

/** What is said of the sketch as a whole, whichever variation is being written. */
const OF_THE_SKETCH: ReadonlySet<Edit['do']> = new Set([
  'describe',
  'unit',
  'batch',
  'set-variation',
  'remove-variation',
] satisfies readonly Edit['do'][]);

/** True for a change that a variation can hold. */
export function isCardEdit(edit: Edit): edit is CardEdit {
  return !OF_THE_SKETCH.has(edit.do);
}

type Settled = { readonly do: CardEdit['do']; readonly of: string };

/** What `edit` sets anew as a whole, so that a later one makes it needless; null when it does not. */
function sets(edit: CardEdit): Settled | null {
  switch (edit.do) {
    case 'place':
    case 'resize':
    case 'tilt':
    case 'round':
    case 'cut-from':
      return { do: edit.do, of: edit.piece };
    case 'punch':
      return { do: edit.do, of: `${edit.piece} ${edit.edge}` };
    case 'card':
      return { do: edit.do, of: '' };
    default:
      return null;
  }
}

/**
 * `edits` and then `next`, without what `next` makes needless: while a piece is dragged, only its last place is kept.
 * Only edits of the same sort may lie between, since they touch other pieces.
 */
export function joinEdit(edits: readonly CardEdit[], next: CardEdit): readonly CardEdit[] {
  const mine = sets(next);
  if (!mine) return [...edits, next];
  for (let at = edits.length - 1; at >= 0; at -= 1) {
    const edit = edits[at];
    const set = edit && sets(edit);
    if (set?.do !== mine.do) break;
    if (set.of === mine.of) return [...edits.slice(0, at), ...edits.slice(at + 1), next];
  }
  return [...edits, next];
}

/** `variation` with `edits` made at its end. */
export function withEdits(variation: Variation, edits: readonly CardEdit[]): Variation {
  return { ...variation, edits: edits.reduce(joinEdit, variation.edits) };
}
