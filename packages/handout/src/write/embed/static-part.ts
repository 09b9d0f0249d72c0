import { breakableSize } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { pieceTable } from '../../draw/piece-table.js';
import { BLADE_CAUTION } from '../cautions.js';
import { cardFigure } from './card-figure.js';
import { apart, escapeHtml, htmlElement } from './html.js';
import { checkStatic, type StaticOptions } from './snippet-options.js';

const WORDS = {
  sizes: 'sizes for one card',
  columns: { piece: 'Piece', quantity: 'How many', cut: 'Cut', from: 'From' },
} as const;

function sizesTable(sketch: Sketch, unit: Sketch['unit']): string {
  const pieces = pieceTable(sketch, 1);
  // A column of nothing but ones would only make the others narrow.
  const counted = pieces.some(({ quantity }) => quantity > 1);
  const { piece, quantity: howMany, cut, from } = WORDS.columns;
  const columns = [piece, ...(counted ? [howMany] : []), cut, from];
  const head = htmlElement('tr', {}, ...columns.map((column) => htmlElement('th', { scope: 'col' }, column)));
  const rows = pieces.map(({ label, name, quantity, blankWidth, blankHeight, paper }) =>
    htmlElement(
      'tr',
      {},
      htmlElement('th', { scope: 'row' }, `${escapeHtml(label)} `, apart(name)),
      ...(counted ? [htmlElement('td', {}, String(quantity))] : []),
      htmlElement('td', {}, escapeHtml(breakableSize({ width: blankWidth, height: blankHeight }, { unit }))),
      htmlElement('td', {}, apart(paper)),
    ),
  );
  return htmlElement(
    'table',
    {},
    htmlElement('caption', {}, apart(sketch.title), `: ${WORDS.sizes}`),
    `\n${htmlElement('thead', {}, head)}`,
    `\n${htmlElement('tbody', {}, `\n${rows.join('\n')}\n`)}\n`,
  );
}

function linkTo(address: string, text: string): string {
  return htmlElement('a', { href: address, rel: 'noopener nofollow' }, apart(text));
}

/**
 * What stands in a page without any script: the card, the sizes of its pieces as a table, the caution, and where to go
 * on. The same sketch and options give the same text. Sizes are as exact as the program shows them everywhere.
 * @throws SnippetError for an option that cannot be used
 */
export function staticPart(sketch: Sketch, options: StaticOptions = {}): string {
  checkStatic(options);
  const { unit = sketch.unit, link, prefix = `trimwell-${sketch.id}` } = options;
  const credit = sketch.credit ? `, ${apart(sketch.credit)}` : '';
  const links = [...(link ? [link] : []), ...sketch.links];
  return [
    // No figure: pages without styles set it in so far that it would not fit a narrow column.
    htmlElement('div', {}, cardFigure(sketch, unit, prefix)),
    htmlElement('p', {}, apart(sketch.title), credit),
    sizesTable(sketch, unit),
    htmlElement('p', {}, htmlElement('small', {}, escapeHtml(BLADE_CAUTION))),
    ...links.map(({ address, text }) => htmlElement('p', {}, linkTo(address, text))),
  ].join('\n');
}
