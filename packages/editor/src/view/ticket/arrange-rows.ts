import type { Axis } from '@trimwell/geometry';
import { html, type TemplateResult } from 'lit';
import { align, type Line, sameSize, spaceEvenly } from '../../state/commands.js';
import { commandButton, type TicketDesk } from './ticket-desk.js';

const LINES: readonly Line[] = ['near', 'middle', 'far'];
const NAMES: Readonly<Record<Axis, Readonly<Record<Line, string>>>> = {
  x: { near: 'left', middle: 'middle', far: 'right' },
  y: { near: 'top', middle: 'middle', far: 'bottom' },
};

function lines(desk: TicketDesk, axis: Axis): readonly TemplateResult[] {
  return LINES.map((line) => commandButton(desk, NAMES[axis][line], align(axis, line), 'word'));
}

function group(label: string, buttons: readonly TemplateResult[]): TemplateResult {
  return html`<div class="words" role="group" aria-label=${label}>${buttons}</div>`;
}

/** Lining up a single piece on the card. */
export function onCardRows(desk: TicketDesk): TemplateResult {
  return html`<dt>to card</dt>
    <dd>${group('Line up with the card, across', lines(desk, 'x'))}${group('Line up with the card, up and down', lines(desk, 'y'))}</dd>`;
}

/** Lining up, spacing and sizing several pieces; sizes are those of `last`, the one taken last. */
export function arrangeRows(desk: TicketDesk, last: string): TemplateResult {
  const gaps = [
    commandButton(desk, 'even across', spaceEvenly('x'), 'word'),
    commandButton(desk, 'down', spaceEvenly('y'), 'word'),
  ];
  const sizes = [
    commandButton(desk, 'same width', sameSize('x'), 'word'),
    commandButton(desk, 'height', sameSize('y'), 'word'),
  ];
  return html`<dt>line up</dt>
    <dd>${group('Line up, across', lines(desk, 'x'))}${group('Line up, up and down', lines(desk, 'y'))}</dd>
    <dt>gaps</dt>
    <dd>${group('Equal gaps', gaps)}</dd>
    <dt>size</dt>
    <dd>${group(`Size of ${last}`, sizes)}</dd>`;
}
