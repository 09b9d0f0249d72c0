import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import {
  BASIC_SIZES,
  basisWeightOfGsm,
  estimatedCalipers,
  gsmOfBasisWeight,
  PAPER_GRADES,
  type PaperGrade,
  pointsThick,
  readPaperWeight,
} from './paper-weights.js';

// Published factors by grade: mills' and press makers' tables differ by up to 0.14 %.
test.each<readonly [PaperGrade, number, readonly number[]]>([
  ['bond', 3.7597, [3.76, 3.7606]],
  ['cover', 2.7041, [2.704, 2.7042, 2.7048, 2.708]],
  ['text', 1.4801, [1.48, 1.4802, 1.4805]],
  ['index', 1.808, [1.81]],
  ['tag', 1.6275, [1.627, 1.63]],
  ['bristol', 2.1928, [2.19]],
])('a pound of %s is %f g/m2, as published tables have it within 0.2 %', (grade, exact, published) => {
  expect(gsmOfBasisWeight(1, grade)).toBeCloseTo(exact, 4);
  for (const factor of published) expect(Math.abs(gsmOfBasisWeight(1, grade) / factor - 1)).toBeLessThan(0.002);
});

// Rounded values of published charts; tolerance 1 % as the charts differ.
test.each<readonly [number, PaperGrade, number]>([
  [60, 'cover', 162],
  [65, 'cover', 176],
  [80, 'cover', 216],
  [100, 'cover', 270],
  [110, 'cover', 298],
  [130, 'cover', 352],
  [110, 'index', 199],
  [80, 'text', 118.4],
  [90, 'text', 133.218],
  [20, 'bond', 75.2],
  [28, 'bond', 105.3],
])('%i lb %s is %f g/m2', (pounds, grade, gsm) => {
  expect(Math.abs(gsmOfBasisWeight(pounds, grade) / gsm - 1)).toBeLessThan(0.01);
  expect(basisWeightOfGsm(gsmOfBasisWeight(pounds, grade), grade)).toBeCloseTo(pounds, 9);
});

test('a ream weighs what it says: 500 letter sheets of 20 lb bond are 5 lb (a quarter of the basic size, by hand)', () => {
  const [width, height] = BASIC_SIZES.bond;
  expect(width * height).toBe(4 * 8.5 * 11);
  expect((gsmOfBasisWeight(20, 'bond') * 8.5 * 11 * 0.0254 ** 2 * 500) / 453.59237).toBeCloseTo(5, 9);
});

test('weights are read as packets print them; pounds of nothing, and weights of no paper, are not', () => {
  expect(readPaperWeight('216 gsm')).toEqual({ gsm: 216, grade: null });
  expect(readPaperWeight('216 g/m²')).toEqual({ gsm: 216, grade: null });
  expect(readPaperWeight(' 80 lb Cover ')?.gsm).toBeCloseTo(216.33, 2);
  expect(readPaperWeight('65# cover')?.grade).toBe('cover');
  for (const text of ['80 lb', '80 lb velvet', '', '5 gsm', '3000 gsm', '-80 lb cover', '80 cover'])
    expect(readPaperWeight(text)).toBeNull();
  for (const grade of PAPER_GRADES) expect(readPaperWeight(`90 lb ${grade}`)?.grade).toBe(grade);
});

// A printer's chart of smooth and coated cover (for reference only, it says) and a mill merchant's of bond.
test.each<readonly [number, PaperGrade, number]>([
  [60, 'cover', 5.5],
  [80, 'cover', 8],
  [100, 'cover', 10],
  [110, 'cover', 12],
  [120, 'cover', 14],
  [20, 'bond', 3.8],
  // Uncoated craft stock, from memory: these disagree with the chart, which is why the estimate is a range.
  [65, 'cover', 9.5],
  [80, 'cover', 12],
  [100, 'cover', 14.5],
  [110, 'cover', 16],
])('%i lb %s of %f points lies within the estimated calipers', (pounds, grade, points) => {
  const { least, most, estimated } = estimatedCalipers(gsmOfBasisWeight(pounds, grade));
  expect(estimated).toBe(true);
  expect(pointsThick(points)).toBeGreaterThanOrEqual(least);
  expect(pointsThick(points)).toBeLessThanOrEqual(most);
});

test('a thousand points are an inch', () => {
  expect(pointsThick(1_000)).toBe(inches(1));
});
