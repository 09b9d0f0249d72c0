import { ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import { expectSketch } from '../read/read-sketch.js';
import { writeSketch } from '../read/write-sketch.js';
import { PROFILES } from './sketch.js';
import { samePunch, USUAL_PUNCHES, USUAL_RADII } from './usual-punches.js';

test.each(['in', 'mm'] as const)(
  'the library in %s has every profile, on marks of the ruler, and is kept by a sketch',
  (unit) => {
    const punches = USUAL_PUNCHES[unit].map((punch, index) => ({ ...punch, id: `own-${index}` }));
    expect(new Set(punches.map(({ profile }) => profile))).toEqual(new Set(PROFILES));
    expect(new Set(punches.map(({ name }) => name)).size).toBe(punches.length);
    const mark = unit === 'in' ? 508 : 64;
    for (const { repeat, depth, bite } of punches)
      expect([repeat % mark, depth % mark, bite % mark]).toEqual([0, 0, 0]);
    const kept = applyEdits(
      sampleSketch(),
      punches.map((punch) => ({ do: 'set-punch', punch }) as const),
    );
    expect(expectSketch(writeSketch(kept)).punches).toEqual(kept.punches);
  },
);

test('usual radii go up, each on a mark', () => {
  for (const radii of Object.values(USUAL_RADII)) expect([...radii].sort((a, b) => a - b)).toEqual(radii);
  expect(USUAL_RADII.in.map((radius) => radius / 1016)).toEqual([2, 3, 4, 6, 8]);
  expect(USUAL_RADII.mm.map((radius) => radius / 640)).toEqual([3, 5, 6.5, 10]);
});

test('punches are the same by what they leave and take, not by name', () => {
  const [one] = USUAL_PUNCHES.in;
  if (!one) throw new Error('the library is empty');
  expect(samePunch(one, { ...one, name: 'Other' })).toBe(true);
  expect(samePunch(one, { ...one, bite: ticks(one.bite + 1) })).toBe(false);
});
