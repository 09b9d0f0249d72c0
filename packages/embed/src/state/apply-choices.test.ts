import { inches, millimetres } from '@trimwell/geometry';
import { AS_MANY_AS_POSSIBLE } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyChoices, offeredVariations, scrapName } from './apply-choices.js';
import { noChoices } from './choices.js';

const document = sampleSketch();
const none = noChoices(document.id);

test('without a choice the sketch is the same object', () => {
  expect(applyChoices(document, none)).toEqual({ sketch: document, problems: [] });
  expect(applyChoices(document, none).sketch).toBe(document);
});

test('one’s own sheet takes the place of the designer’s, without their margins', () => {
  const papers = [{ paper: 'moss', width: millimetres(210), height: millimetres(297), sheets: 3 }];
  const margins = { top: inches(1), right: inches(1), bottom: inches(1), left: inches(1) };
  const sheets = document.papers.map((paper) => (paper.id === 'moss' ? { ...paper, margins } : paper));
  const moss = applyChoices({ ...document, papers: sheets }, { ...none, papers }).sketch.papers.find(
    ({ id }) => id === 'moss',
  );
  expect(moss).toMatchObject({ width: millimetres(210), height: millimetres(297), sheets: 3 });
  expect(Object.values(moss?.margins ?? {})).toEqual([0, 0, 0, 0]);
  const asMany = applyChoices(document, { ...none, papers: [{ paper: 'moss', sheets: null }] });
  expect(asMany.sketch.papers.find(({ id }) => id === 'moss')).not.toHaveProperty('sheets');
});

test('one’s own colour is plain, and a photograph goes before it', () => {
  const papers = [{ paper: 'sprig', ground: '#102030' }];
  const photo = 'ab'.repeat(32);
  const { sketch } = applyChoices(document, { ...none, papers }, new Map([['sprig', photo]]));
  expect(sketch.papers.find(({ id }) => id === 'sprig')?.look).toMatchObject({
    pattern: 'plain',
    ground: '#102030',
    photo,
  });
});

test('a piece is cut from a scrap', () => {
  const scraps = [{ name: 'Blue end', like: 'moss', width: inches(3), height: inches(4), sheets: 2 }];
  const from = [{ piece: 'greeting', from: scrapName(0) }];
  const { sketch, problems } = applyChoices(document, { ...none, scraps, from });
  expect(problems).toEqual([]);
  const source = sketch.pieces.find(({ id }) => id === 'greeting')?.from;
  expect(sketch.papers.find(({ id }) => id === source)).toMatchObject({
    name: 'Blue end',
    width: inches(3),
    height: inches(4),
    sheets: 2,
  });
});

test('the card base too comes from another paper', () => {
  const { sketch } = applyChoices(document, { ...none, from: [{ piece: 'card-base', from: 'moss' }] });
  expect(sketch.card.base).toBe('moss');
});

test('the sketch’s own variations and the ready ones are offered, and go on', () => {
  const offered = offeredVariations(document).map(({ key }) => key);
  expect(offered[0]).toBe('square');
  expect(offered).toContain('ready:plain-edges');
  const { sketch } = applyChoices(document, { ...none, on: ['ready:plain-edges', 'square'] });
  expect(sketch.pieces.every(({ punched }) => Object.values(punched).every((id) => id === undefined))).toBe(true);
  expect(sketch.pieces.find(({ id }) => id === 'greeting')?.corners.tl).toBe(0);
});

test('the number of cards is the reader’s', () => {
  expect(applyChoices(document, { ...none, cards: 9 }).sketch.batch.cards).toBe(9);
  expect(applyChoices(document, { ...none, cards: AS_MANY_AS_POSSIBLE }).sketch.batch.cards).toBe(AS_MANY_AS_POSSIBLE);
});

test('what does not fit the sketch is left out and told of; the rest is done', () => {
  const { sketch, problems } = applyChoices(document, {
    ...none,
    cards: 4,
    on: ['nowhere'],
    papers: [{ paper: 'gone', sheets: 1 }],
    scraps: [{ name: 'a', like: 'gone', width: inches(1), height: inches(1), sheets: 1 }],
    from: [{ piece: 'gone', from: 'moss' }],
  });
  expect(problems).toHaveLength(4);
  expect(sketch).toEqual({ ...document, batch: { ...document.batch, cards: 4 } });
});
