import { formatLength, type Length, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { freeMat, select, setReveal } from '../../state/commands.js';
import { commandButton, lengthField, type TicketDesk } from './ticket-desk.js';

/** What shows around a piece on the card, side by side when it is not even. */
export function showsOnCard({ card, unit }: Sketch, piece: Piece): string {
  const right = ticks(card.width - piece.x - piece.width);
  const bottom = ticks(card.height - piece.y - piece.height);
  const [l, t, r, b] = [piece.x, piece.y, right, bottom].map((length) => formatLength(length, { unit, bare: true }));
  if (l === r && t === b && l === t) return `${l} ${unit} of the card all round`;
  return `${l} left, ${r} right, ${t} above, ${b} below`;
}

function reveal(desk: TicketDesk, value: Length, locked: boolean): unknown {
  return lengthField(desk, { label: 'Reveal', value, least: 1, locked, command: setReveal });
}

function link(desk: TicketDesk, piece: Piece): TemplateResult {
  return html`<button class="link" @click=${() => desk.run(select(piece.id))}>${piece.name}</button>`;
}

/** What a mat shows round its piece, what a piece is matted by, or what shows of the card; reveals can be typed. */
export function matRows(desk: TicketDesk, piece: Piece): TemplateResult {
  const { sketch } = desk.state;
  const inner = sketch.pieces.find(({ id }) => id === piece.mats?.piece);
  const mats = sketch.pieces.filter((other) => other.mats?.piece === piece.id);
  const [mat] = mats;
  if (piece.mats && inner)
    return html`<dt>reveal</dt>
      <dd>${reveal(desk, piece.mats.reveal, piece.locked ?? false)}<span>round ${link(desk, inner)}</span>
        ${commandButton(desk, 'Let the mat go', freeMat, 'link')}</dd>`;
  if (mat?.mats)
    return html`<dt>reveal</dt>
      <dd>${reveal(desk, mat.mats.reveal, mat.locked ?? false)}<span>of ${link(desk, mat)}</span></dd>`;
  return html`<dt>shows</dt><dd>${showsOnCard(sketch, piece)}</dd>`;
}
