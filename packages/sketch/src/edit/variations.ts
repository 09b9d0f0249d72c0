import { type Problem, problemAt } from '../model/problem.js';
import { type CardEdit, type Edit, MOST_EDITS, type Sketch, type Variation } from '../model/sketch.js';
import { applyEdit, EditError } from './apply-edit.js';
import { joinEdit } from './join-edit.js';

/** An edit of a variation that could not be made, by its place among the edits. */
export interface Unfit {
  readonly variation: string;
  readonly edit: number;
  readonly problems: readonly Problem[];
}

/** A sketch with variations on, and what of them could not be done. */
export interface Varied {
  readonly sketch: Sketch;
  readonly problems: readonly Problem[];
  readonly unfit: readonly Unfit[];
}

function tried(sketch: Sketch, edit: Edit): Sketch | readonly Problem[] {
  try {
    return applyEdit(sketch, edit);
  } catch (error) {
    if (error instanceof EditError) return error.problems;
    throw error;
  }
}

/** `sketch` with the edits of one variation, which need not be one of its own. */
export function withVariation(sketch: Sketch, { id, edits }: Variation): Varied {
  const unfit: Unfit[] = [];
  const varied = edits.reduce<Sketch>((before, edit, index) => {
    const after = tried(before, edit);
    if ('pieces' in after) return after;
    unfit.push({ variation: id, edit: index, problems: after });
    return before;
  }, sketch);
  return { sketch: varied, problems: unfit.flatMap(({ problems }) => problems), unfit };
}

/**
 * `sketch` with the variations `on` put on, in the order of the sketch: where two set the same thing, the later one has
 * it. What of a variation does not fit (it resizes a piece that has been taken away since) is left out and told of; the
 * rest of it is done. Ids that are not there are nothing. Without any, the sketch is the same object.
 */
export function withVariations(sketch: Sketch, on: readonly string[]): Varied {
  return sketch.variations
    .filter(({ id }) => on.includes(id))
    .reduce<Varied>(
      (before, variation) => {
        const after = withVariation(before.sketch, variation);
        return {
          sketch: after.sketch,
          problems: [...before.problems, ...after.problems],
          unfit: [...before.unfit, ...after.unfit],
        };
      },
      { sketch, problems: [], unfit: [] },
    );
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

/**
 * `variation` with `edits` made at its end.
 * @throws EditError when it would hold more edits than a sketch keeps.
 */
export function withEdits(variation: Variation, edits: readonly CardEdit[]): Variation {
  const joined = edits.reduce(joinEdit, variation.edits);
  if (joined.length > MOST_EDITS) {
    const path = ['variations', variation.id, 'edits'];
    throw new EditError([problemAt('edit-refused', path, joined.length, `at most ${MOST_EDITS} changes`)]);
  }
  return { ...variation, edits: joined };
}

/**
 * Every piece of the card and of its variations, whether they are on or not: a new piece takes none of their ids, so that
 * variations can be put on together.
 */
export function everyPiece({ pieces, variations }: Sketch): readonly { readonly id: string }[] {
  const brought = variations.flatMap(({ edits }) =>
    edits.flatMap((edit) => (edit.do === 'add-piece' ? [edit.piece] : [])),
  );
  return brought.length === 0 ? pieces : [...pieces, ...brought];
}

/** Every mix of the sketch and of its variations, and every paper, with which a mix shares its names. */
export function everySource({ papers, mixes, variations }: Sketch): readonly { readonly id: string }[] {
  const brought = variations.flatMap(({ edits }) =>
    edits.flatMap((edit): readonly { readonly id: string }[] => {
      if (edit.do === 'set-mix') return [edit.mix];
      return edit.do === 'set-paper' ? [edit.paper] : [];
    }),
  );
  return [...papers, ...mixes, ...brought];
}
