import { labelPieces } from '@trimwell/handout';
import type { Piece } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { resizeTo, setName } from '../../state/commands.js';
import { holdOf } from '../../state/group.js';
import type { Command } from '../../state/state.js';
import { selectionField } from '../table/selection-field.js';
import { actRow, lastRow, stateNote } from './act-rows.js';
import { onCardRows } from './arrange-rows.js';
import { edgeRows } from './edge-rows.js';
import { matRows } from './mat-rows.js';
import { pieceRows } from './piece-rows.js';
import { FARTHEST, keyOfField, lengthField, type TicketDesk } from './ticket-desk.js';

function nameField(desk: TicketDesk, piece: Piece): unknown {
  const commit = (target: EventTarget | null, run: (command: Command) => void): void => {
    if (!(target instanceof HTMLInputElement)) return;
    if (target.value.trim() === '') target.value = piece.name;
    else run(setName(target.value));
  };
  return selectionField(
    desk.session,
    (run) =>
      html`<input aria-label="Name of the piece" maxlength="80" .value=${piece.name} @keydown=${(event: KeyboardEvent) => keyOfField(event, piece.name)} @change=${({ target }: Event) => commit(target, run)} />`,
  );
}

/** The ticket of one piece: its size, place, reveals, corners, edges, paper and shape, all to be changed in place. */
export function onePiece(desk: TicketDesk, piece: Piece): TemplateResult {
  const { sketch } = desk.state;
  const locked = holdOf(sketch, piece) !== null;
  const width = lengthField(desk, {
    label: 'Width',
    value: piece.width,
    least: 1,
    locked,
    command: (width) => resizeTo({ width }),
  });
  const height = lengthField(desk, {
    label: 'Height',
    value: piece.height,
    least: 1,
    locked,
    command: (height) => resizeTo({ height }),
  });
  const x = lengthField(desk, {
    label: 'From the left',
    value: piece.x,
    least: -FARTHEST,
    locked,
    command: (x) => resizeTo({ x }),
  });
  const y = lengthField(desk, {
    label: 'From the top',
    value: piece.y,
    least: -FARTHEST,
    locked,
    command: (y) => resizeTo({ y }),
  });
  return html`<section class="slip" aria-label="The selected piece" part="ticket">
    <div class="top"><b>${labelPieces(sketch).get(piece.id)}</b>${nameField(desk, piece)}</div>
    <div class="scroll">
    ${stateNote(desk)}
    <dl>
      <dt>size</dt><dd class="pair">${width}×${height}</dd>
      <dt>lies</dt><dd class="pair">${x}→${y}↓</dd>
      ${onCardRows(desk)} ${matRows(desk, piece)} ${edgeRows(desk, piece)} ${pieceRows(desk, [piece], locked)}
    </dl>
    <trimwell-contrast .session=${desk.session} .pointing=${desk.pointing}></trimwell-contrast>
    ${actRow(desk)}
    </div>
    ${lastRow(desk)}
  </section>`;
}
