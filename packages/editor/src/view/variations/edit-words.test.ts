import { inches, ticks } from '@trimwell/geometry';
import type { CardEdit, Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { editWords } from './edit-words.js';
import { wayText } from './way-words.js';

const sketch = sampleSketch();
const panel = sketch.pieces[1];
const paper = sketch.papers[0];
const punch = sketch.punches[0];
if (!panel || !paper || !punch) throw new Error('the sample has them');

const said = (...edits: CardEdit[]) =>
  editWords(sketch, { id: 'v', name: 'V', note: '', edits }).map(({ says }) =>
    says.replaceAll('\u00a0', ' ').replaceAll('⁄', '/'),
  );

const round = (radius: number, other = radius): CardEdit => ({
  do: 'round',
  piece: 'greeting',
  corners: { tl: inches(radius), tr: inches(other), br: inches(radius), bl: inches(radius) },
});
const strip = { piece: 'strip', x: inches(1 / 4), y: inches(3) };

test.each<readonly [string, readonly CardEdit[]]>([
  ['Strip: 3 3/4 × 1 in → 3 3/4 × 1 1/4 in', [{ do: 'resize', ...strip, width: inches(3.75), height: inches(1.25) }]],
  ['Strip: moved to 1/4 in from the left, 3 in from the top', [{ do: 'place', ...strip }]],
  [
    'Strip: moved to 1 in from the left, 3 in from the top',
    [{ do: 'resize', ...strip, x: inches(1), width: inches(3.75), height: inches(1) }],
  ],
  ['Greeting: tilted -6° → 0°', [{ do: 'tilt', piece: 'greeting', tilt: 0 }]],
  ['Greeting: corners square', [round(0)]],
  ['Greeting: corners rounded by 1/4 in', [round(1 / 4)]],
  ['Greeting: corners rounded each in its own way', [round(1 / 4, 0)]],
  ['Strip: bottom edge plain', [{ do: 'punch', piece: 'strip', edge: 'bottom', punch: null }]],
  ['Strip: top edge with Small scallops', [{ do: 'punch', piece: 'strip', edge: 'top', punch: 'scallops' }]],
  ['Strip: glued earlier', [{ do: 'order', piece: 'strip', to: 0 }]],
  ['Strip: glued later', [{ do: 'order', piece: 'strip', to: 4 }]],
  ['Strip: from Moss card, not Prints', [{ do: 'cut-from', piece: 'strip', from: 'moss' }]],
  ['Panel mat: no longer a mat', [{ do: 'mat', piece: 'panel-mat', mats: null }]],
  [
    'Panel mat: shows 1/4 in around Panel',
    [{ do: 'mat', piece: 'panel-mat', mats: { piece: 'panel', reveal: inches(1 / 4) } }],
  ],
  ['Greeting: glued flat, not raised by 1/16 in', [{ do: 'alter-piece', piece: 'greeting', raise: ticks(0) }]],
  [
    'Greeting: called Words, glued inside, raised by 1/8 in',
    [{ do: 'alter-piece', piece: 'greeting', name: 'Words', face: 'inside', raise: inches(1 / 8) }],
  ],
  ['Strip: left out', [{ do: 'remove-piece', piece: 'strip' }]],
  ['Tab: added, 3 3/4 × 5 in', [{ do: 'add-piece', piece: { ...panel, id: 'tab', name: 'Tab' } }]],
  [
    'Card: 4 1/4 × 5 1/2 in → 5 × 7 in, folded at the top',
    [{ do: 'card', card: { ...sketch.card, width: inches(5), height: inches(7), fold: 'top' } }],
  ],
  ['Paper Ivory card: changed', [{ do: 'set-paper', paper }]],
  ['Paper Ivory card: added', [{ do: 'set-paper', paper: { ...paper, id: 'other' } }]],
  ['Mix Prints: left out', [{ do: 'remove-mix', mix: 'prints' }]],
  ['Punch Small scallops: changed', [{ do: 'set-punch', punch }]],
  ['Batch: 9 cards', [{ do: 'batch', batch: { ...sketch.batch, cards: 9 } }]],
  ['Measured in millimetres', [{ do: 'unit', unit: 'mm' }]],
])('%s', (words, edits) => {
  expect(said(...edits)).toEqual([words]);
});

test('each change is told against what those before it leave, and what does not fit is told apart', () => {
  const wide: CardEdit = { do: 'resize', ...strip, width: inches(3), height: inches(1) };
  const words = editWords(sketch, {
    id: 'v',
    name: 'V',
    note: '',
    edits: [wide, { do: 'remove-piece', piece: 'lace' }, { ...wide, width: inches(2) }],
  });
  expect(words.map(({ says }) => says.replaceAll('\u00a0', ' ').replaceAll('⁄', '/'))).toEqual([
    'Strip: 3 3/4 × 1 in → 3 × 1 in',
    'lace: left out',
    'Strip: 3 × 1 in → 2 × 1 in',
  ]);
  expect(words.map(({ unfit }) => unfit)).toEqual([false, true, false]);
  expect(words.map(({ piece, index }) => [piece, index])).toEqual([
    ['strip', 0],
    ['lace', 1],
    ['strip', 2],
  ]);
});

const figures = (sheets: number, most: number | null = null, cards = 12, complete = true) => ({
  sheets,
  most,
  cards,
  complete,
});

test('a way says what it does to the card, the sheets and the yield, against the card as it is', () => {
  const larger: Sketch = { ...sketch, card: { ...sketch.card, width: inches(5), height: inches(7) } };
  expect(wayText(sketch, sketch, null, figures(3))).toBe('Counting sheets…');
  expect(wayText(sketch, sketch, figures(18), figures(18))).toBe('As many sheets');
  expect(wayText(sketch, sketch, figures(18, 20), figures(16, 24))).toBe('16 sheets, not 18; up to 24 cards, not 20');
  expect(wayText(sketch, sketch, figures(2), figures(1))).toBe('1 sheet, not 2');
  expect(wayText(sketch, sketch, figures(18, 12, 12), figures(18, 10, 10))).toBe(
    '10 cards, not 12; 18 sheets; up to 10 cards, not 12',
  );
  expect(wayText(sketch, sketch, figures(18), figures(12, null, 12, false))).toBe('not all of it can be cut');
  expect(wayText(sketch, larger, figures(18), figures(24))).toBe('Card 5 × 7 in; 24 sheets, not 18');
});
