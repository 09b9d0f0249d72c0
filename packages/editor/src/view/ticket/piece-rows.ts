import { type Length, ticks } from '@trimwell/geometry';
import { PIECE_KINDS, type Piece, SHAPES } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { cutFrom, setFace, setKind, setPerCard, setRaise, setShape, tiltTo } from '../../state/commands.js';
import { choiceField, common, lengthField, numberField, type TicketDesk } from './ticket-desk.js';

const words = <T extends string>(values: readonly T[]): readonly { readonly value: T; readonly words: string }[] =>
  values.map((value) => ({ value, words: value }));

function ofAll<T>(pieces: readonly Piece[], of: (piece: Piece) => T): T | null {
  return common(pieces.map(of));
}

/** What is the same kind of thing for one piece and for several: paper, shape, kind, face, tilt, foam, how many. */
export function pieceRows(desk: TicketDesk, pieces: readonly Piece[], locked: boolean): TemplateResult {
  const { sketch } = desk.state;
  const sources = [...sketch.papers, ...sketch.mixes].map(({ id, name }) => ({ value: id, words: name }));
  const raise: Length = ofAll(pieces, (piece) => piece.raise) ?? ticks(0);
  return html`<dt>paper</dt>
    <dd>${choiceField(desk, { label: 'Paper', chosen: ofAll(pieces, ({ from }) => from), options: sources, command: cutFrom })}</dd>
    <dt>shape</dt>
    <dd class="pair">
      ${choiceField(desk, { label: 'Shape', chosen: ofAll(pieces, ({ shape }) => shape), options: words(SHAPES), locked, command: setShape })}
      ${choiceField(desk, { label: 'What it is on the card', chosen: ofAll(pieces, ({ kind }) => kind), options: words(PIECE_KINDS), command: setKind })}
    </dd>
    <dt>tilt</dt>
    <dd class="pair">
      <span class="figure">${numberField(desk, { label: 'Tilt in degrees', value: ofAll(pieces, ({ tilt }) => tilt), least: -180, most: 180, locked, command: tiltTo })}°</span>
      <span class="quiet">raised</span>
      ${lengthField(desk, { label: 'Raised by', value: raise, least: 0, command: setRaise })}
    </dd>
    <dt>glued</dt>
    <dd class="pair">
      ${choiceField(desk, {
        label: 'Side of the leaf',
        chosen: ofAll(pieces, ({ face }) => face),
        options: [
          { value: 'front', words: 'front' },
          { value: 'inside', words: 'inside' },
        ],
        locked,
        command: setFace,
      })}
      <span class="figure">${numberField(desk, { label: 'How many on each card', value: ofAll(pieces, ({ perCard }) => perCard), least: 1, most: 24, command: setPerCard })}</span>
      <span class="quiet">a card</span>
    </dd>`;
}
