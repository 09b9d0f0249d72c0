import { inches, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Edit, Sketch } from '../model/sketch.js';
import { checkSketch } from './findings.js';

const clean = applyEdits(sampleSketch(), [{ do: 'punch', piece: 'strip', edge: 'bottom', punch: null }]);
const round = (radius: number): Edit => ({
  do: 'round',
  piece: 'greeting',
  corners: { tl: inches(radius), tr: inches(radius), br: inches(radius), bl: inches(radius) },
});
const resize = (piece: string, x: number, y: number, width: number, height: number): Edit => ({
  do: 'resize',
  piece,
  x: inches(x),
  y: inches(y),
  width: inches(width),
  height: inches(height),
});

test('a sound sketch has nothing to watch; fifteen whole repeats of 1/4 in fill 3 3/4 in', () => {
  expect(checkSketch(clean)).toEqual([]);
  expect(checkSketch(sampleSketch())).toEqual([]);
});

test.each<readonly [string, readonly Edit[], string, number]>([
  ['radius-too-large', [round(1)], 'greeting', inches(1.25)],
  ['off-the-card', [{ do: 'place', piece: 'strip', x: inches(1), y: inches(5) }], 'strip', inches(1 / 2)],
  ['off-the-ruler', [resize('strip', 0, 0, 2 + 1 / 64, 1)], 'strip', 254],
  [
    'part-repeats',
    [{ do: 'punch', piece: 'strip', edge: 'top', punch: 'scallops' }, resize('strip', 0, 0, 3.625, 1)],
    'strip',
    inches(3 / 16),
  ],
  [
    'punch-too-deep',
    [{ do: 'punch', piece: 'strip', edge: 'top', punch: 'scallops' }, resize('strip', 0, 0, 3.75, 1 / 8)],
    'strip',
    0,
  ],
])('%s is found at its piece, and its fix takes it away without a new one', (code, edits, piece, amount) => {
  const spoilt: Sketch = applyEdits(clean, edits);
  const found = checkSketch(spoilt);
  const finding = found.find((candidate) => candidate.code === code);
  expect(finding, JSON.stringify(found)).toMatchObject({ piece });
  if (code !== 'radius-too-large') expect(finding?.amount).toBe(amount);
  const mended = checkSketch(applyEdits(spoilt, finding?.fix ?? []));
  expect(mended.filter((candidate) => candidate.code === code)).toEqual([]);
  expect(mended.length).toBeLessThan(found.length);
});

test('a piece larger than the card, or tilted, is not moved', () => {
  const wide = applyEdits(clean, [resize('strip', -1, 0, 6, 1)]);
  expect(checkSketch(wide)).toMatchObject([{ code: 'off-the-card', fix: [] }]);
});

test('the marks of a metric sketch are whole millimetres', () => {
  const metric = applyEdits(clean, [
    { do: 'unit', unit: 'mm' },
    { do: 'resize', piece: 'strip', x: ticks(0), y: ticks(0), width: millimetres(80), height: millimetres(20) },
  ]);
  expect(checkSketch(metric).filter(({ piece }) => piece === 'strip')).toEqual([]);
  expect(checkSketch(metric).some(({ code, piece }) => code === 'off-the-ruler' && piece === 'panel')).toBe(true);
});
