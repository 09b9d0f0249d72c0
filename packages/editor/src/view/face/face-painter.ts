import { drawCard, drawPiece } from '@trimwell/handout';
import type { Piece, Sketch } from '@trimwell/sketch';
import { changedPieces } from '../../state/changed-pieces.js';
import type { EditorState } from '../../state/state.js';
import { type FaceView, FIGURE } from './face-view.js';
import { labelPieces, markSelected } from './label-pieces.js';
import type { Stage } from './stage.js';

interface Drawn {
  readonly sketch: Sketch;
  readonly face: Piece['face'];
  readonly zoom: number;
}

/**
 * Keeps the stage in step with the state. While something is dragged only the pieces that changed are drawn and named
 * anew; anything else draws the whole card, of which the stage keeps what is the same.
 */
export class FacePainter {
  #drawn: Drawn | null = null;
  #marked: { readonly selection: readonly string[]; readonly focused: string | null } | null = null;

  constructor(private readonly stage: Stage) {}

  /** Draws everything at the next turn, though the sketch is the same: a photograph has come. */
  forget(): void {
    this.#drawn = null;
  }

  /** Shows `state`; `focused` is the piece with the keyboard's focus. */
  show(state: EditorState, { zoom, left, top }: FaceView, focused: string | null): void {
    const { sketch, face } = state;
    const drawn = this.#drawn?.face === face && this.#drawn.zoom === zoom ? this.#drawn : null;
    const changed = drawn && changedPieces(drawn.sketch, sketch);
    if (changed) {
      const shown = changed.filter((piece) => piece.face === face && !piece.hidden);
      this.stage.amend(shown.map((piece) => drawPiece(sketch, piece)));
      labelPieces(this.stage, sketch, shown);
    } else {
      const size = FIGURE / zoom;
      this.stage.show(drawCard(sketch, { face, style: { unit: sketch.unit }, size, leaveOutHidden: true }));
      this.stage.scale(zoom, left, top);
      labelPieces(this.stage, sketch, sketch.pieces);
    }
    this.#drawn = { sketch, face, zoom };
    const marked = changed && this.#marked?.selection === state.selection && this.#marked.focused === focused;
    if (!marked) markSelected(this.stage, state, focused);
    this.#marked = { selection: state.selection, focused };
  }
}
