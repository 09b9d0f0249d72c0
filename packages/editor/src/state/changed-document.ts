import {
  applyEdit,
  applyEdits,
  type CardEdit,
  type Edit,
  EditError,
  isCardEdit,
  type Sketch,
  withEdits,
} from '@trimwell/sketch';
import { shownSketch } from './shown-sketch.js';
import type { EditorState } from './state.js';

/** What `edit` would set anew, as it stands in `sketch`; undefined for what only comes or goes, and for what is said of the sketch. */
function setBy(sketch: Sketch, edit: CardEdit): unknown {
  switch (edit.do) {
    case 'card':
      return sketch.card;
    case 'set-paper':
      return sketch.papers.find(({ id }) => id === edit.paper.id);
    case 'set-mix':
      return sketch.mixes.find(({ id }) => id === edit.mix.id);
    case 'set-punch':
      return sketch.punches.find(({ id }) => id === edit.punch.id);
    case 'order':
      return sketch.pieces.map(({ id }) => id);
    case 'describe':
    case 'unit':
    case 'batch':
    case 'add-piece':
    case 'remove-piece':
    case 'remove-paper':
    case 'remove-mix':
    case 'remove-punch':
      return undefined;
    default:
      return setOfPiece(sketch, edit);
  }
}

type PieceEdit = Extract<
  CardEdit,
  { readonly do: 'place' | 'resize' | 'tilt' | 'round' | 'punch' | 'cut-from' | 'mat' | 'alter-piece' }
>;

function setOfPiece({ pieces }: Sketch, edit: PieceEdit): unknown {
  const piece = pieces.find(({ id }) => id === edit.piece);
  if (!piece) return undefined;
  switch (edit.do) {
    case 'place':
      return [piece.x, piece.y];
    case 'resize':
      return [piece.x, piece.y, piece.width, piece.height];
    case 'tilt':
      return piece.tilt;
    case 'round':
      return piece.corners;
    case 'punch':
      return piece.punched[edit.edge];
    case 'cut-from':
      return piece.from;
    case 'mat':
      return piece.mats;
    case 'alter-piece': {
      const { do: _do, piece: _piece, ...fields } = edit;
      return Object.keys(fields).map((field) => piece[field as keyof typeof fields]);
    }
  }
}

/** True when the card itself has something else there than what is shown: a variation that is on sets it. */
function isVaried(document: Sketch, shown: Sketch, edit: CardEdit): boolean {
  return JSON.stringify(setBy(document, edit)) !== JSON.stringify(setBy(shown, edit));
}

/**
 * `document` with one change to what is shown with the variations `on`. It goes to the card itself; but what a variation
 * sets, or what only a variation brings, is changed in the last variation that is on: what is shown then changes as it
 * should, and the card keeps its own.
 * @throws EditError when it cannot be made on what is shown.
 */
function changedByOne(document: Sketch, edit: Edit, on: readonly string[]): Sketch {
  const last = document.variations.findLast(({ id }) => on.includes(id));
  if (!last || !isCardEdit(edit)) return applyEdit(document, edit);
  const shown = shownSketch(document, on);
  const varied = (): Sketch => {
    applyEdit(shown, edit);
    return applyEdit(document, { do: 'set-variation', variation: withEdits(last, [edit]) });
  };
  if (isVaried(document, shown, edit)) return varied();
  try {
    return applyEdit(document, edit);
  } catch (error) {
    if (!(error instanceof EditError)) throw error;
    return varied();
  }
}

/** The document after `edits`: changes to the card go into the variation that is being written, if there is one. */
export function changedDocument(
  { document, sketch, on, writing }: Pick<EditorState, 'document' | 'sketch' | 'on' | 'writing'>,
  edits: readonly Edit[],
): Sketch {
  const variation = document.variations.find(({ id }) => id === writing);
  if (!variation) return edits.reduce((before, edit) => changedByOne(before, edit, on), document);
  const changes: readonly CardEdit[] = edits.filter(isCardEdit);
  // Tried on what is shown first, so that a change that cannot be made is refused and not written down.
  applyEdits(sketch, changes);
  const others = applyEdits(
    document,
    edits.filter((edit) => !isCardEdit(edit)),
  );
  // Looked up again: one of the other edits may have named it or taken it away.
  const now = others.variations.find(({ id }) => id === writing);
  if (changes.length === 0 || !now) return others;
  return applyEdit(others, { do: 'set-variation', variation: withEdits(now, changes) });
}
