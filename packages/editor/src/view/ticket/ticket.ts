import { html, nothing } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { facePieces, showAll } from '../../state/commands.js';
import { type Command, type EditorState, selectedPieces } from '../../state/state.js';
import { PICK_A_PIECE } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { onePiece } from './one-piece.js';
import { severalPieces } from './several-pieces.js';
import type { TicketDesk } from './ticket-desk.js';
import { ticketStyles } from './ticket-styles.js';

/** How long the ticket waits while places change at every frame, in milliseconds. */
const LATER = 150;

/** The ticket at what is selected: one piece with its sizes, place, reveals and paper, or several to arrange. */
export class TicketElement extends SessionElement implements TicketDesk {
  static override readonly styles = [tableStyles, ticketStyles];

  #late: ReturnType<typeof setTimeout> | null = null;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
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

  /** While pieces are dragged the card shows their figures; the ticket follows a little later, so that no frame waits. */
  protected override sessionChanged(change: SessionChange): void {
    if (!change.places || change.settled) super.sessionChanged(change);
    else this.#late ??= setTimeout(() => this.#catchUp(), LATER);
  }

  #catchUp(): void {
    this.#late = null;
    this.requestUpdate();
  }

  protected override render() {
    const pieces = selectedPieces(this.state);
    const [first] = pieces;
    if (!first) return this.#nothingSelected();
    return pieces.length === 1 ? onePiece(this, first) : severalPieces(this, pieces);
  }

  #nothingSelected() {
    const hidden = facePieces(this.state).filter((piece) => piece.hidden).length;
    return html`<p class="empty">${PICK_A_PIECE}</p>
      ${
        hidden === 0
          ? nothing
          : html`<p class="empty">${hidden === 1 ? 'One piece is hidden.' : `${hidden} pieces are hidden.`}
              <button class="act" @click=${() => this.run(showAll)}>Show all</button></p>`
      }`;
  }
}
