import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { flatCard } from '../../../../tests/kit/flat-card.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Sketch } from '../model/sketch.js';
import type { Finding } from './finding.js';
import { checkSketch } from './findings.js';

function laps(sketch: Sketch): readonly Finding[] {
  return checkSketch(sketch).filter(({ code }) => code === 'overlap-too-small');
}

/** The sketch after the mend of its first lap. */
function mended(sketch: Sketch): Sketch {
  const [first] = laps(sketch);
  expect(first?.fix.length).toBeGreaterThan(0);
  return applyEdits(sketch, first?.fix ?? []);
}

test('a strip that goes too little under two papers is told of both, and is made longer under each in turn (by hand)', () => {
  const sketch = flatCard({
    strip: { at: [15 / 16, 2, 2 + 3 / 8, 1] },
    left: { at: [1 / 4, 1 / 2, 3 / 4, 4] },
    right: { at: [3 + 1 / 4, 1 / 2, 3 / 4, 4] },
  });
  expect(laps(sketch)).toMatchObject([
    { piece: 'strip', other: 'left', amount: inches(1 / 16) },
    { piece: 'strip', other: 'right', amount: inches(1 / 16) },
  ]);
  const once = mended(sketch);
  expect(laps(once)).toMatchObject([{ piece: 'strip', other: 'right' }]);
  const twice = mended(once);
  expect(checkSketch(twice)).toEqual([]);
  // 1/4 in under each: from 3/4 to 3 1/2 in.
  expect(twice.pieces.find(({ id }) => id === 'strip')).toMatchObject({ x: inches(3 / 4), width: inches(2.75) });
});

test('what cannot be made longer unseen is moved; but never out from under another paper', () => {
  // Made longer to the right the tall one would show above and below the other.
  const tall = flatCard({ tall: { at: [1 / 2, 3 / 4, 1.5, 4] }, upper: { at: [1 + 15 / 16, 2, 1.5, 1] } });
  expect(laps(tall)).toMatchObject([{ piece: 'tall', fix: [{ do: 'place', piece: 'tall' }] }]);
  expect(laps(mended(tall))).toEqual([]);
  // Rounded by more than what goes under the other, its corners would be seen to be filled.
  const round = flatCard({
    strip: { at: [1 / 2, 2, 1.5, 1], radius: 1 / 4 },
    upper: { at: [1 + 15 / 16, 1.75, 1.5, 1.5] },
  });
  expect(laps(round)).toMatchObject([{ piece: 'strip', fix: [{ do: 'place' }] }]);
  // Between two papers and higher than both, it can go further under neither: it would come out from under the other.
  const between = flatCard({
    tall: { at: [15 / 16, 1, 2 + 3 / 8, 3] },
    left: { at: [1 / 4, 2, 3 / 4, 1] },
    right: { at: [3 + 1 / 4, 2, 3 / 4, 1] },
  });
  expect(laps(between)).toMatchObject([
    { other: 'left', fix: [] },
    { other: 'right', fix: [] },
  ]);
});

test('no mend of anything parts two papers that lap over each other', () => {
  // 3/64 in from a mark; the next mark is where the other one ends, so that on it the two would only touch.
  const beside = (end: number): Finding | undefined => {
    const sketch = flatCard({ strip: { at: [1 + 3 / 64, 2, 1.5, 1] }, left: { at: [1 / 2, 1, end - 1 / 2, 3] } });
    return checkSketch(sketch).find(({ code }) => code === 'place-off-the-ruler');
  };
  expect(beside(1 + 1 / 2)).toMatchObject({ piece: 'strip', fix: [{ do: 'place', x: inches(1 + 1 / 16) }] });
  expect(beside(1 + 1 / 16)).toMatchObject({ piece: 'strip', fix: [] });
});

test('a paper glued flat over foam does not reach what lies below it, and one on foam is not glued at its edge', () => {
  // The banner lies on the tilted one, an eighth of an inch above the flat one that it laps by a sixteenth.
  const over = (foam: number, own = 0): Sketch =>
    flatCard({
      flat: { at: [2, 2, 1.5, 1] },
      tilted: { at: [1 / 2, 1 / 2, 1.5, 1], tilt: 10, foam },
      banner: { at: [3 / 4, 1.59375, 2.5, 15 / 32], foam: own },
    });
  expect(laps(over(0))).toMatchObject([{ piece: 'flat', other: 'banner', amount: inches(1 / 16) }]);
  expect(laps(over(1 / 8))).toEqual([]);
  expect(laps(over(0, 1 / 8))).toEqual([]);
});

test('what lifts a piece may be far from it: a mend that lets it down onto the end of another is not offered', () => {
  // A hidden piece on foam lifts the panel, and so the upper one off the low one that it laps by a sixteenth.
  const sketch = flatCard({
    low: { at: [3 + 7 / 16, 1, 5 / 8, 1] },
    hidden: { at: [1, 1, 1, 1], foam: 1 / 8 },
    panel: { at: [1 / 2, 1 / 2, 2, 2] },
    upper: { at: [2, 1, 1.5, 1] },
  });
  const found = checkSketch(sketch);
  expect(found.map(({ code, piece }) => `${code} ${piece}`)).toEqual(['hidden hidden']);
  expect(found[0]?.fix).toEqual([]);
});

test('under a panel on its mat, a strip is held by the mat; the lap of the panel is none', () => {
  const mounted = (lap: number): Sketch =>
    flatCard({
      strip: { at: [1 / 2, 2, 1 + lap, 1] },
      mat: { at: [1.5, 1, 2, 3] },
      panel: { at: [1.5 + 1 / 16, 1 + 1 / 16, 2 - 1 / 8, 3 - 1 / 8] },
    });
  // 1/8 in under the mat and 1/16 in under the panel.
  expect(laps(mounted(1 / 8))).toEqual([]);
  expect(laps(mounted(1 / 16))).toMatchObject([{ piece: 'strip', other: 'mat' }]);
});

test('where a panel hides how two strips meet, and as much around it as a slip would open, nothing is told', () => {
  const joined = (x: number, tilt = 0): Sketch =>
    flatCard({
      one: { at: [1 / 2, 2, 1.5, 1 / 2], tilt },
      two: { at: [2 - 1 / 16, 2, 1.5, 1 / 2], tilt },
      panel: { at: [x, 1, 1, 2.5] },
    });
  expect(laps(joined(1.5))).toEqual([]);
  // It ends a sixteenth beyond the lap.
  expect(laps(joined(2 - 1 / 16 - 1 / 16))).toMatchObject([{ piece: 'one', other: 'two' }]);
  // One turned by a quarter against the other: it is 1/2 in wide and 1 1/2 in high.
  const crossed = (x: number): Sketch =>
    flatCard({
      one: { at: [1 / 2, 2, 1.5, 1 / 2] },
      two: { at: [1.5 - 1 / 16, 2, 1.5, 1 / 2], tilt: 90 },
      panel: { at: [x, 1, 1, 2.5] },
    });
  expect(laps(crossed(1.5))).toEqual([]);
  expect(laps(crossed(2.5))).toMatchObject([{ piece: 'one', other: 'two', amount: inches(1 / 16) }]);
});
