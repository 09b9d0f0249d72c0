import { expect, test } from 'vitest';
import { cropBox, keptExtent, meanColour, turnedExtent, turnsToLieAs, WHOLE_PICTURE } from './photo-crop.js';

const letter = { width: 850, height: 1100 };
const square = { width: 12, height: 12 };

test('a picture lies as its sheet does after a quarter turn, and is not turned for a square one', () => {
  expect(turnsToLieAs({ width: 4000, height: 3000 }, letter)).toBe(1);
  expect(turnsToLieAs({ width: 3000, height: 4000 }, letter)).toBe(0);
  expect(turnsToLieAs({ width: 4000, height: 3000 }, square)).toBe(0);
  expect(turnedExtent({ width: 4000, height: 3000 }, 3)).toEqual({ width: 3000, height: 4000 });
});

test('as much of the picture is taken as the proportion of the sheet allows, from its middle', () => {
  expect(cropBox({ width: 400, height: 300 }, square, WHOLE_PICTURE)).toEqual({ x: 50, y: 0, width: 300, height: 300 });
  const turned = cropBox({ width: 400, height: 300 }, square, { ...WHOLE_PICTURE, turns: 1 });
  expect(turned).toEqual({ x: 0, y: 50, width: 300, height: 300 });
});

test('closer takes less of it, where across and down say; never anything beyond the picture', () => {
  const crop = { turns: 0, closer: 2, across: 1, down: 0 };
  expect(cropBox({ width: 400, height: 300 }, square, crop)).toEqual({ x: 250, y: 0, width: 150, height: 150 });
  for (const across of [0, 0.3, 1]) {
    for (const turns of [0, 1, 2, 3]) {
      const box = cropBox({ width: 431, height: 297 }, letter, { turns, closer: 1.7, across, down: 1 - across });
      const whole = turnedExtent({ width: 431, height: 297 }, turns);
      expect(box.width / box.height).toBeCloseTo(850 / 1100, 9);
      expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(whole.width + 1e-9);
      expect(box.y + box.height).toBeLessThanOrEqual(whole.height + 1e-9);
    }
  }
});

test('what is kept has at most 1600 pixels on its long side, and never more than there were', () => {
  expect(keptExtent({ width: 3400, height: 4400 })).toEqual({ width: 1236, height: 1600 });
  expect(keptExtent({ width: 300, height: 200 })).toEqual({ width: 300, height: 200 });
  expect(keptExtent({ width: 5000, height: 0.2 })).toEqual({ width: 1600, height: 1 });
});

test('the mean colour is that of all pixels', () => {
  expect(meanColour([255, 0, 0, 255, 0, 0, 255, 255])).toBe('#800080');
  expect(meanColour([1, 2, 3, 255])).toBe('#010203');
});
