import { facePieces } from '../../state/commands.js';
import type { EditorState } from '../../state/state.js';
import { faceMessages } from './face-messages.js';
import type { Stage } from './stage.js';

/** The piece that the Tab key stops at: the one selected last, else the one with the focus, else the lowest. */
function tabStop(
  pieces: ReadonlyMap<string, SVGGElement>,
  selection: readonly string[],
  focused: string | null,
): string | null {
  const last = selection.at(-1);
  if (last !== undefined && pieces.has(last)) return last;
  return focused ?? pieces.keys().next().value ?? null;
}

/** Names and states for those who do not see the face: a list of pieces, one at a time a stop of the Tab key. */
export function labelPieces(stage: Stage, state: EditorState, focused: string | null): void {
  const { sketch, selection, face } = state;
  const { list } = stage;
  const pieces = stage.pieces();
  const stop = tabStop(pieces, selection, focused);
  list.setAttribute('role', 'listbox');
  list.setAttribute('aria-multiselectable', 'true');
  list.setAttribute('aria-label', face === 'front' ? faceMessages.front(sketch) : faceMessages.inside(sketch));
  list.setAttribute('aria-describedby', 'help');
  list.setAttribute('tabindex', pieces.size === 0 ? '0' : '-1');
  const groups = new Set<Element>(pieces.values());
  for (const child of list.children) if (!groups.has(child)) child.setAttribute('aria-hidden', 'true');
  for (const piece of facePieces(state)) {
    const group = pieces.get(piece.id);
    if (!group) continue;
    group.setAttribute('role', 'option');
    group.setAttribute('aria-label', faceMessages.piece(sketch, piece));
    group.setAttribute('aria-selected', String(selection.includes(piece.id)));
    group.setAttribute('tabindex', piece.id === stop ? '0' : '-1');
  }
}
