import { breakableSize, type LengthStyle } from '@trimwell/geometry';
import { layCard, PLAIN_HAND, pieceTable } from '@trimwell/handout';
import type { Sketch } from '@trimwell/sketch';
import { WORDS } from './first-words.js';
import { type Child, type Part, part } from './part.js';
import { svgNode } from './svg-nodes.js';

/** Height of letters and figures on the card's picture, in ticks: a share of the card that can be read at its size here. */
export function letterSize({ card }: Sketch): number {
  return Math.max(card.width, card.height) / 26;
}

/** The card in plain shapes and colours: what can be shown at once. */
export function plainCard(sketch: Sketch, style: LengthStyle): SVGElement {
  return svgNode(layCard(sketch, { face: 'front', style, size: letterSize(sketch) }, PLAIN_HAND), null);
}

/** Text of a sketch, set apart, so that its writing direction turns nothing around it. */
export function apart(text: string): Part {
  return part('bdi', {}, text);
}

function sizesTable(sketch: Sketch, style: LengthStyle): Part {
  const pieces = pieceTable(sketch, 1);
  // A column of nothing but ones would only make the others narrow.
  const counted = pieces.some(({ quantity }) => quantity > 1);
  const columns = [WORDS.piece, counted && WORDS.howMany, WORDS.cut, WORDS.from];
  const head = columns.map((text) => text && part('th', { scope: 'col' }, text));
  const rows = pieces.map(({ label, name, quantity, blankWidth, blankHeight, paper }) =>
    part(
      'tr',
      {},
      part('th', { scope: 'row' }, part('b', {}, label), ' ', apart(name)),
      counted && part('td', { class: 'few' }, String(quantity)),
      part('td', { class: 'size' }, breakableSize({ width: blankWidth, height: blankHeight }, style)),
      part('td', {}, apart(paper)),
    ),
  );
  return part(
    'table',
    { part: 'sizes' },
    part('caption', {}, WORDS.sizes),
    part('thead', {}, part('tr', {}, head)),
    part('tbody', {}, rows),
  );
}

/** The title, the card as `picture`, and its sizes: what is shown before anything else is loaded. */
export function firstLook(sketch: Sketch, style: LengthStyle, picture: Element): readonly Child[] {
  return [
    part(
      'div',
      { class: 'head', part: 'title' },
      part('b', { role: 'heading', 'aria-level': '3' }, apart(sketch.title)),
      sketch.number ? part('span', {}, apart(sketch.number)) : null,
    ),
    part(
      'div',
      { class: 'look', role: 'group', 'aria-label': WORDS.sizes },
      part('div', { class: 'card', part: 'card' }, picture),
      sizesTable(sketch, style),
    ),
  ];
}
