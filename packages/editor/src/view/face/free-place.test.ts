import { expect, test } from 'vitest';
import { freePlace } from './free-place.js';

const SIDE = 26;
const at = (x: number, y: number) => ({ x, y });

test('what is free stays; what is taken gives way to the nearest side, also up and down (by hand)', () => {
  expect(freePlace(at(100, 100), [], SIDE, null)).toEqual(at(100, 100));
  expect(freePlace(at(100, 100), [at(126, 100)], SIDE, null)).toEqual(at(100, 100));
  expect(freePlace(at(100, 100), [at(110, 101)], SIDE, null)).toEqual(at(84, 100));
  expect(freePlace(at(100, 100), [at(90, 101)], SIDE, null)).toEqual(at(116, 100));
  expect(freePlace(at(100, 100), [at(101, 110)], SIDE, null)).toEqual(at(100, 84));
  expect(freePlace(at(100, 100), [at(101, 90)], SIDE, null)).toEqual(at(100, 116));
  // Between one on the left and one on the right, and one below: up is all that is left.
  expect(freePlace(at(100, 100), [at(80, 100), at(125, 100), at(103, 120)], SIDE, null)).toEqual(at(100, 74));
});

test('nothing leaves the stage as long as it has room, and none lies on another', () => {
  const stage = { width: 130, height: 104 };
  const taken: { x: number; y: number }[] = [];
  // At the sides there is room for five by four.
  for (const [x, y] of [
    [0, 0],
    [130, 0],
    [0, 200],
    [500, 104],
  ] as const)
    taken.push(freePlace(at(x, y), taken, SIDE, stage));
  expect(taken).toEqual([at(13, 13), at(117, 13), at(13, 91), at(117, 91)]);
  while (taken.length < 20) taken.push(freePlace(at(13, 13), taken, SIDE, stage));
  for (const [index, one] of taken.entries()) {
    expect(one.x).toBeGreaterThanOrEqual(13);
    expect(one.x).toBeLessThanOrEqual(117);
    expect(one.y).toBeGreaterThanOrEqual(13);
    expect(one.y).toBeLessThanOrEqual(91);
    for (const other of taken.slice(0, index))
      expect(Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y))).toBeGreaterThan(SIDE - 0.001);
  }
  expect(freePlace(at(50, 300), taken, SIDE, stage)).toEqual(at(50, 91));
});
