import type { Piece } from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import type { TicketDesk } from './ticket-desk.js';

/** Corners and edges, which only rectangles have. */
export function edgeRows({ session, pointing }: TicketDesk, piece: Piece): TemplateResult | typeof nothing {
  if (piece.shape !== 'rectangle') return nothing;
  return html`<dt>corners</dt>
    <dd><trimwell-corners .session=${session} .pointing=${pointing}></trimwell-corners></dd>
    <dt>edges</dt>
    <dd><trimwell-edges .session=${session} .pointing=${pointing}></trimwell-edges></dd>`;
}
