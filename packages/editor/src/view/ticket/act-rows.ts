import { html, nothing, type TemplateResult } from 'lit';
import {
  clearSelection,
  duplicate,
  lowerOrder,
  matPiece,
  raiseOrder,
  remove,
  toggleHidden,
  toggleLocked,
} from '../../state/commands.js';
import { selectedPieces } from '../../state/state.js';
import { commandButton, type TicketDesk } from './ticket-desk.js';

/** Every press takes one more piece while this is on: what Shift does for those who have no Shift at hand. */
function gatherButton({ pointing, state }: TicketDesk): TemplateResult {
  return html`<button
    aria-pressed=${pointing.gathering}
    @click=${() => {
      pointing.gathering = !pointing.gathering;
    }}
  >${pointing.gathering ? `Selecting, ${state.selection.length} so far` : 'Select more'}</button>`;
}

/** What can be done with one piece or with several. */
export function actRow(desk: TicketDesk): TemplateResult {
  const pieces = selectedPieces(desk.state);
  const all = (is: 'locked' | 'hidden'): boolean => pieces.every((piece) => piece[is]);
  return html`<div class="acts">
      ${commandButton(desk, 'Glue later', raiseOrder)}${commandButton(desk, 'Glue earlier', lowerOrder)}
      ${commandButton(desk, 'Mat it', matPiece())}${commandButton(desk, 'Cut again', duplicate)}
      ${commandButton(desk, all('locked') ? 'Unlock' : 'Lock in place', toggleLocked)}
      ${commandButton(desk, all('hidden') ? 'Show' : 'Hide', toggleHidden)}
    </div>`;
}

/** One more piece, away with it, and the way out: at hand however far the slip goes on. */
export function lastRow(desk: TicketDesk): TemplateResult {
  const done = (): void => {
    desk.pointing.gathering = false;
    desk.run(clearSelection);
  };
  return html`<div class="acts last">
      ${gatherButton(desk)}${commandButton(desk, 'Take away', remove, 'act')}
      <button @click=${done}>Done</button>
    </div>`;
}

/** Says what is locked or hidden; nothing otherwise. */
export function stateNote(desk: TicketDesk): TemplateResult | typeof nothing {
  const pieces = selectedPieces(desk.state);
  const locked = pieces.filter((piece) => piece.locked).length;
  const hidden = pieces.filter((piece) => piece.hidden).length;
  if (locked + hidden === 0) return nothing;
  const one = pieces.length === 1;
  const says = [
    locked === 0 ? '' : one ? 'Locked: it stays where it is.' : `${locked} locked: they stay where they are.`,
    hidden === 0 ? '' : one ? 'Hidden on the table, but cut and glued.' : `${hidden} hidden, but cut and glued.`,
  ];
  return html`<p class="note">${says.join(' ')}</p>`;
}
