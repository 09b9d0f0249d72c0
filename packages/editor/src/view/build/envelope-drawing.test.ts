import { inches, type Point } from '@trimwell/geometry';
import type { Item } from '@trimwell/handout';
import { envelopeTemplate } from '@trimwell/sketch/assembly';
import { expect, test } from 'vitest';
import { envelopeDrawing } from './envelope-drawing.js';

const [width, height] = [inches(5.75), inches(4.375)];
const template = envelopeTemplate({ width, height }, { glue: inches(1 / 4), step: inches(1 / 16) });
const folds = envelopeDrawing(template, { unit: 'in' }).items.filter(
  (item): item is Extract<Item, { kind: 'line' }> => item.kind === 'line',
);
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

test('the scores close to a rectangle of the size of the envelope, turned by 45 degrees', () => {
  expect(folds).toHaveLength(4);
  folds.forEach(({ to }, index) => {
    expect(to).toEqual(folds[(index + 1) % 4]?.from);
  });
  const sides = folds.map(({ from, to }) => distance(from, to));
  // What the square is larger than the formula, to the next mark, is shared out: within two marks.
  expect(Math.abs((sides[0] ?? 0) - width)).toBeLessThan(inches(1 / 8));
  expect(Math.abs((sides[1] ?? 0) - height)).toBeLessThan(inches(1 / 8));
  expect(sides[2]).toBeCloseTo(sides[0] ?? 0, 6);
  const [first, second] = folds;
  if (!first || !second) throw new Error('there are folds');
  const turn =
    (first.to.x - first.from.x) * (second.to.x - second.from.x) +
    (first.to.y - first.from.y) * (second.to.y - second.from.y);
  expect(turn).toBeCloseTo(0, 3);
});

test('flaps that would reach over the far side lose their points, and no more', () => {
  const long = envelopeTemplate(
    { width: inches(9), height: inches(4.25) },
    { glue: inches(1 / 4), step: inches(1 / 16) },
  );
  expect(long.tooLong).toBeGreaterThan(0);
  const cut = envelopeDrawing(long, { unit: 'in' }).items.find(({ key }) => key === 'cut');
  if (cut?.kind !== 'path') throw new Error('there is a cut');
  const points = [cut.outline.start, ...cut.outline.steps.map(({ to }) => to)];
  expect(points).not.toContainEqual({ x: long.square, y: 0 });
  expect(points).toContainEqual({ x: 0, y: 0 });
  // What is left of a long flap, from its score in: less than the envelope is high.
  const reach = Math.max(...points.map(({ x, y }) => (x - y) / Math.SQRT2)) - (long.notch - long.scoreOff) / Math.SQRT2;
  const high = (long.notch - long.scoreOff) * Math.SQRT2;
  expect(reach).toBeLessThan(high);
  expect(reach).toBeGreaterThan(high - inches(1 / 2));
});

test('every notch goes in as deep as the score is off, and the square is whole at its corners', () => {
  const cut = envelopeDrawing(template, { unit: 'in' }).items.find(({ key }) => key === 'cut');
  if (cut?.kind !== 'path') throw new Error('there is a cut');
  const points = [cut.outline.start, ...cut.outline.steps.map(({ to }) => to)];
  const inner = points.filter(({ x, y }) => x > 0 && y > 0 && x < template.square && y < template.square);
  expect(inner).toHaveLength(4);
  for (const { x, y } of inner)
    expect(Math.min(x, y, template.square - x, template.square - y)).toBe(template.scoreOff);
  for (const corner of [
    [0, 0],
    [template.square, 0],
    [template.square, template.square],
    [0, template.square],
  ])
    expect(points).toContainEqual({ x: corner[0], y: corner[1] });
});
