import type { PlacedBounds } from '@trimwell/geometry';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import type { CheckField } from './check-field.js';

function meet(one: PlacedBounds, other: PlacedBounds): boolean {
  return one.left <= other.right && one.right >= other.left && one.top <= other.bottom && one.bottom >= other.top;
}

/** The pieces of one that are not, as they are, pieces of the other. */
function changed(sketch: Sketch, other: Sketch): readonly Piece[] {
  const same = new Set(other.pieces);
  return sketch.pieces.filter((piece) => !same.has(piece));
}

/** True when `edits` change nothing but pieces and their order. */
function onlyPieces(before: Sketch, after: Sketch): boolean {
  return (['card', 'unit', 'punches', 'papers', 'mixes'] as const).every((part) => before[part] === after[part]);
}

/** Pieces of which something else may be found after a change, by what has changed for them. */
export interface Affected {
  /** All of them. */
  readonly pieces: ReadonlySet<string>;
  /** Those that were changed or put elsewhere in the order themselves, or that lie below where such a one lies now. */
  readonly covered: ReadonlySet<string>;
}

/**
 * Pieces of which something else may be found after `edits`: those that were changed or put elsewhere in the order, what lies
 * where they lay or lie, and mats with what they mat. Every check but those of levels looks no further. Null when it may be any of them.
 */
export function affectedPieces(before: CheckField, after: CheckField, edits: readonly Edit[]): Affected | null {
  if (!onlyPieces(before.sketch, after.sketch)) return null;
  const ordered = new Set(edits.flatMap((edit) => (edit.do === 'order' ? [edit.piece] : [])));
  const moved = ({ sketch }: CheckField): readonly Piece[] => sketch.pieces.filter(({ id }) => ordered.has(id));
  const [gone, come] = [
    [...changed(before.sketch, after.sketch), ...moved(before)],
    [...changed(after.sketch, before.sketch), ...moved(after)],
  ];
  const boxes = [...gone.map(before.bounds), ...come.map(after.bounds)];
  const ids = new Set([...gone, ...come].map(({ id }) => id));
  const pieces = new Set<string>();
  const covered = new Set(ids);
  for (const piece of after.sketch.pieces) {
    const bounds = after.bounds(piece);
    if (ids.has(piece.id) || (piece.mats && ids.has(piece.mats.piece)) || boxes.some((box) => meet(box, bounds)))
      pieces.add(piece.id);
    const over = after.over(piece);
    if (come.some((each) => over.includes(each) && meet(after.bounds(each), bounds))) covered.add(piece.id);
  }
  return { pieces, covered };
}
