import { html, nothing, type PropertyValues } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { facePieces, showAll } from '../../state/commands.js';
import { type Command, type EditorState, selectedPieces } from '../../state/state.js';
import { CUT_A_FIRST, PICK_A_PIECE } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { onePiece } from './one-piece.js';
import { severalPieces } from './several-pieces.js';
import type { TicketDesk } from './ticket-desk.js';
import { ticketStyles } from './ticket-styles.js';

/** How long a drag must rest before the ticket follows it, in milliseconds. */
const LATER = 150;

/** What has the focus within `root`, however many shadow roots it lies in; null when nothing there has. */
function focusedIn(root: DocumentFragment | HTMLElement): Element | null {
  const focused = root instanceof ShadowRoot ? root.activeElement : null;
  return focused?.shadowRoot ? (focusedIn(focused.shadowRoot) ?? focused) : focused;
}

/**
 * The ticket at what is selected: one piece with its sizes, place, reveals and paper, or several to arrange.
 * @fires focus-lost - What had the focus on the ticket is gone.
 */
export class TicketElement extends SessionElement implements TicketDesk {
  static override readonly styles = [tableStyles, ticketStyles];

  /** The pointer is down beside the ticket. */
  #pressed = false;
  #late: ReturnType<typeof setTimeout> | null = null;
  #moved = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('pointerdown', this.#commitFirst, true);
    window.addEventListener('pointerup', this.#letGo, true);
    window.addEventListener('pointercancel', this.#letGo, true);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('pointerdown', this.#commitFirst, true);
    window.removeEventListener('pointerup', this.#letGo, true);
    window.removeEventListener('pointercancel', this.#letGo, true);
    this.#pressed = false;
    if (this.#late !== null) clearTimeout(this.#late);
    this.#late = null;
  }

  get state(): EditorState {
    return this.session.state;
  }

  run(command: Command): void {
    command(this.state, this.session.dispatch, Date.now());
  }

  protected concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override get followsPlaces(): boolean {
    return true;
  }

  /**
   * While pieces are dragged the card shows their figures; the ticket follows when they rest, so that no frame waits. Nor
   * does the first one: what a press has taken is shown when the pointer goes up, or rests.
   */
  protected override sessionChanged(change: SessionChange): void {
    const taken = this.#pressed && change.selection && !change.sketch;
    if (!taken && (!change.places || change.settled)) {
      super.sessionChanged(change);
      return;
    }
    this.#moved = performance.now();
    this.#late ??= setTimeout(() => this.#catchUp(), LATER);
  }

  #catchUp(): void {
    const due = this.#moved + LATER - performance.now();
    // One timer that is set again costs less than one that is taken back at every move.
    this.#late = due > 0 ? setTimeout(() => this.#catchUp(), due) : null;
    if (due <= 0) this.requestUpdate();
  }

  /**
   * What stands in a field is committed before a press beside the ticket does anything: before it takes another piece, and
   * before a handle is pulled, which leaves the focus where it is.
   */
  readonly #commitFirst = (event: Event): void => {
    if (event.composedPath().includes(this)) return;
    this.#pressed = true;
    const field = focusedIn(this.renderRoot);
    if (field instanceof HTMLInputElement) field.dispatchEvent(new Event('change'));
  };

  readonly #letGo = (): void => {
    this.#pressed = false;
    if (this.#late === null) return;
    clearTimeout(this.#late);
    this.#late = null;
    this.requestUpdate();
  };

  /** With what was let go or taken away its row of buttons goes too: whoever was on one of them is told of. */
  protected override update(changed: PropertyValues<this>): void {
    const here = focusedIn(this.renderRoot) !== null;
    super.update(changed);
    if (here && focusedIn(this.renderRoot) === null) this.dispatchEvent(new CustomEvent('focus-lost'));
  }

  protected override render() {
    const pieces = selectedPieces(this.state);
    const [first] = pieces;
    if (!first) return this.#nothingSelected();
    return pieces.length === 1 ? onePiece(this, first) : severalPieces(this, pieces);
  }

  #nothingSelected() {
    const hidden = facePieces(this.state).filter((piece) => piece.hidden).length;
    const first = this.state.sketch.pieces.length === 0;
    return html`<p class="empty">${first ? CUT_A_FIRST : PICK_A_PIECE}</p>
      ${
        hidden === 0
          ? nothing
          : html`<p class="empty">${hidden === 1 ? 'One piece is hidden.' : `${hidden} pieces are hidden.`}
              <button class="act" @click=${() => this.run(showAll)}>Show all</button></p>`
      }`;
  }
}
