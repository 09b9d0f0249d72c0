import type { Piece, Sketch } from '@trimwell/sketch';
import type { EditorState } from '../../state/state.js';
import { faceMessages } from './face-messages.js';
import type { Stage } from './stage.js';

/** The piece that the Tab key stops at: the one selected last, else the one with the focus, else the lowest. */
function tabStop(
  pieces: ReadonlyMap<string, SVGGElement>,
  selection: readonly string[],
  focused: string | null,
): string | null {
  const last = selection.findLast((id) => pieces.has(id));
  if (last !== undefined) return last;
  return focused ?? pieces.keys().next().value ?? null;
}

/** Sets an attribute when it is another: most stay as they are at every move of a drag. */
function setAttribute(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** The names of `pieces`, for those who do not see the face. Pieces that are not on the stage are passed over. */
export function labelPieces(stage: Stage, sketch: Sketch, pieces: readonly Piece[]): void {
  const groups = stage.pieces();
  for (const piece of pieces) {
    const group = groups.get(piece.id);
    if (!group) continue;
    setAttribute(group, 'role', 'option');
    setAttribute(group, 'aria-label', faceMessages.piece(sketch, piece));
  }
}

/** A list of pieces of which several may be selected, one at a time a stop of the Tab key. */
export function markSelected(stage: Stage, state: EditorState, focused: string | null): void {
  const { sketch, selection, face } = state;
  const { list } = stage;
  const pieces = stage.pieces();
  const stop = tabStop(pieces, selection, focused);
  setAttribute(list, 'role', 'listbox');
  setAttribute(list, 'aria-multiselectable', 'true');
  setAttribute(list, 'aria-label', face === 'front' ? faceMessages.front(sketch) : faceMessages.inside(sketch));
  setAttribute(list, 'aria-describedby', 'help');
  setAttribute(list, 'tabindex', pieces.size === 0 ? '0' : '-1');
  for (const child of list.children) {
    const id = child instanceof SVGGElement ? child.dataset['piece'] : undefined;
    if (id === undefined || pieces.get(id) !== child) {
      setAttribute(child, 'aria-hidden', 'true');
      continue;
    }
    setAttribute(child, 'aria-selected', String(selection.includes(id)));
    setAttribute(child, 'tabindex', id === stop ? '0' : '-1');
  }
}
