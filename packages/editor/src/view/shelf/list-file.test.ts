import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { readListFile } from './list-file.js';

const LIST = 'name,paper,width,height\r\nPanel,Moss,4 in,5 1/4 in\r\nStrip,Rose,4 in,3/4 in\r\n';

test('a list without a card lies on one like that on the table, and that is told', () => {
  const table = sampleSketch();
  const reading = readListFile(LIST, 'our_autumn-card.csv', table);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join());
  const { width, height, fold } = table.card;
  expect(reading.sketch.card).toMatchObject({ width, height, fold });
  expect(reading.sketch.title).toBe('our autumn card');
  expect(reading.sketch.pieces.map((piece) => [piece.name, piece.width])).toEqual([
    ['Panel', inches(4)],
    ['Strip', inches(4)],
  ]);
  expect(reading.told[0]).toContain('The list names no card');
});

test('a list with a card base keeps its own card', () => {
  const base = 'name,kind,paper,width,height,blank width,blank height\r\nCard,card base,Moss,5 in,7 in,10 in,7 in\r\n';
  const reading = readListFile(`${base}Panel,panel,Rose,4 in,6 in,4 in,6 in\r\n`, 'list.csv', sampleSketch());
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join());
  expect(reading.sketch.card).toMatchObject({ width: inches(5), height: inches(7), fold: 'left' });
});

test('what is wrong is told by row and column, whatever the card is', () => {
  const reading = readListFile(LIST.replace('5 1/4 in', 'tall'), 'list.csv', sampleSketch());
  if (reading.ok) throw new Error('It was read.');
  expect(reading.problems.map(({ message }) => message).join()).toMatch(/row 2.*height.*"tall"/i);
});
