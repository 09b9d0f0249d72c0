import type { Piece } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { select } from '../../state/commands.js';
import { selectedBodies } from '../../state/group.js';
import { actRow, lastRow, stateNote } from './act-rows.js';
import { arrangeRows } from './arrange-rows.js';
import { pieceRows } from './piece-rows.js';
import type { TicketDesk } from './ticket-desk.js';

/** More names than this are told by their number. */
const MOST_NAMES = 6;

function names(desk: TicketDesk, pieces: readonly Piece[]): TemplateResult {
  const some = pieces.length > MOST_NAMES ? pieces.slice(0, MOST_NAMES - 1) : pieces;
  const rest = pieces.length - some.length;
  return html`<p class="names">
    ${some.map((piece) => html`<button class="link" title="Take ${piece.name} alone" @click=${() => desk.run(select(piece.id))}>${piece.name}</button>`)}
    ${rest > 0 ? html`<span class="quiet">and ${rest} more</span>` : ''}
  </p>`;
}

/** The ticket of several pieces: lining up, spacing and sizing them, and all that can be set of each at once. */
export function severalPieces(desk: TicketDesk, pieces: readonly Piece[]): TemplateResult {
  const last = pieces.find(({ id }) => id === desk.state.selection.at(-1))?.name ?? '';
  const locked = selectedBodies(desk.state).every((body) => body.locked !== null);
  return html`<section class="slip" aria-label="The selected pieces" part="ticket">
    <div class="top"><b>${pieces.length} pieces</b></div>
    <div class="scroll">
    ${names(desk, pieces)} ${stateNote(desk)}
    <dl>${arrangeRows(desk, last)} ${pieceRows(desk, pieces, locked)}</dl>
    <trimwell-contrast .session=${desk.session} .pointing=${desk.pointing}></trimwell-contrast>
    ${actRow(desk)}
    </div>
    ${lastRow(desk)}
  </section>`;
}
