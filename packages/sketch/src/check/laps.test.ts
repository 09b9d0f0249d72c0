import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../tests/kit/flat-card.js';
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

test('what cannot be made longer unseen is reached over by the other, by as little as glue needs (by hand)', () => {
  // Made longer to the right the tall one would show above and below the other.
  const twoOf = { tall: { at: [1 / 2, 3 / 4, 1.5, 4] }, upper: { at: [1 + 15 / 16, 2, 1.5, 1] } } as const;
  const tall = flatCard(twoOf);
  const reached = { do: 'resize', piece: 'upper', x: inches(1 + 7 / 8), width: inches(1 + 9 / 16), height: inches(1) };
  expect(laps(tall)).toMatchObject([{ piece: 'tall', fix: [reached] }]);
  expect(laps(mended(tall))).toEqual([]);
  // In line with a caption it stays so, and the tall one, which lies freely, is moved; so where the new end would push what is printed aside.
  const caption = { at: [1 + 15 / 16, 5, 1, 1 / 4] } as const;
  expect(laps(flatCard({ ...twoOf, caption }))).toMatchObject([{ fix: [{ do: 'place', piece: 'tall' }] }]);
  const art: FlatPiece['art'] = { motif: 'words', words: 'Hello', ink: '#334433' };
  const printed = { ...twoOf, upper: { ...twoOf.upper, art } };
  expect(laps(flatCard(printed))).toMatchObject([{ fix: [{ do: 'place', piece: 'tall' }] }]);
  const strip = { at: [1 / 2, 2, 1.5, 1], art } as const;
  const wide = { at: [1 + 15 / 16, 1.5, 1.5, 2] } as const;
  expect(laps(flatCard({ strip, wide }))).toMatchObject([{ fix: [{ do: 'place', piece: 'strip' }] }]);
  // Arms that hold a panel from both sides: it could go further under neither without coming out from under the other.
  const arms = flatCard({
    panel: { at: [15 / 16, 1, 2 + 3 / 8, 3] },
    left: { at: [1 / 4, 2, 3 / 4, 1] },
    right: { at: [3 + 1 / 4, 2, 3 / 4, 1] },
  });
  expect(laps(arms)).toMatchObject([
    { other: 'left', fix: [{ piece: 'left', x: inches(1 / 4), width: inches(13 / 16) }] },
    { other: 'right', fix: [{ piece: 'right', x: inches(3 + 3 / 16), width: inches(13 / 16) }] },
  ]);
  expect(checkSketch(mended(mended(arms)))).toEqual([]);
  // What is glued in between, where the other would reach, is not hidden by it; nor is what bears it moved away under it.
  const label = flatCard({
    tall: { at: [1 / 2, 3 / 4, 1.5, 4] },
    label: { at: [1, 2.25, 7 / 8 + 1 / 32, 1 / 2], shape: 'ellipse' },
    upper: { at: [1 + 15 / 16, 2, 1.5, 1] },
  });
  expect(laps(label)).toMatchObject([{ piece: 'tall', fix: [] }]);
});

test('only what lies freely is moved: the lower one further under, or else the upper one further over', () => {
  // Higher than the strip, the upper one would reach beyond it; and the round corners of the strip would be seen to be filled.
  const round = {
    strip: { at: [1 / 2, 2, 1.5, 1] as const, radius: 1 / 4 },
    upper: { at: [1 + 15 / 16, 1.75, 1.5, 1.5] as const },
  };
  const fix = (more: Readonly<Record<string, FlatPiece>>) =>
    laps(flatCard({ ...more, ...round })).find(({ piece }) => piece === 'strip')?.fix;
  expect(fix({})).toMatchObject([{ do: 'place', piece: 'strip', x: inches(1 / 2 + 3 / 16) }]);
  // In line with the strip, in its middle, or over its edge: it would come out of there.
  const told: readonly FlatPiece['at'][] = [
    [1 / 2, 4, 1, 1],
    [1 / 4, 4, 2, 1],
    [2, 4, 1, 1],
    [3 / 4, 2.5, 1 / 2, 1],
  ];
  for (const at of told)
    expect(fix({ other: { at } })).toMatchObject([{ do: 'place', piece: 'upper', x: inches(1 + 7 / 8) }]);
  expect(fix({ other: { at: [1, 4, 1 / 2, 1], shape: 'ellipse' } })).toMatchObject([{ piece: 'upper' }]);
  // A border of 1/4 in at its left and above it would be uneven.
  const cornered = flatCard({
    panel: { at: [3 / 8, 3 / 8, 2, 2], radius: 1 / 4 },
    upper: { at: [2 + 5 / 16, 5 / 16, 1.5, 2.25] },
  });
  expect(laps(cornered)).toMatchObject([{ piece: 'panel', fix: [{ do: 'place', piece: 'upper' }] }]);
  const atEdge = {
    background: { at: [1 / 4, 4, 1, 1] as const },
    ...round,
    strip: { at: [0, 2, 2, 1] as const, radius: 1 / 4 },
  };
  expect(laps(flatCard(atEdge))).toMatchObject([{ fix: [{ do: 'place', piece: 'upper' }] }]);
  // Beside the strip it tells nothing about where that belongs, though it lies as far from it as it reaches below it.
  expect(fix({ other: { at: [1 / 4, 2.75, 1 / 8, 1 / 2] } })).toMatchObject([{ do: 'place', piece: 'strip' }]);
  expect(fix({ other: { at: [1 / 4, 4, 1, 1] } })).toMatchObject([{ do: 'place', piece: 'strip' }]);
  // Nor is the upper one moved out of line, or onto what lies on the strip before it.
  const beside: FlatPiece = { at: [1 / 2, 4, 1 + 7 / 16, 1] };
  expect(fix({ beside })).toEqual([]);
  const dot = flatCard({
    other: { at: [1 / 2, 4, 1, 1] },
    strip: round.strip,
    dot: { at: [1 + 3 / 4, 2.25, 11 / 64, 1 / 2], shape: 'ellipse' },
    upper: round.upper,
  });
  expect(laps(dot)).toMatchObject([{ piece: 'strip', fix: [] }]);
});

test('what lies on two papers alike is made longer at both ends, so that it stays in the middle (by hand)', () => {
  // A frame: the sides lie on the ends of the rails by 1/32 in, 1/4 in within the background all round.
  const frame = (lower: number) =>
    ({
      top: { at: [3 / 8, 3 / 8, 3.5, 5 / 8] },
      bottom: { at: [3 / 8, 4.5 - lower, 3.5, 5 / 8 + lower] },
      left: { at: [3 / 8, 1 - 1 / 32, 5 / 8, 3.5 + 1 / 16] },
    }) as const;
  // The other side is in line with it, and laps alike.
  const right = { at: [3 + 1 / 4, 1 - 1 / 32, 5 / 8, 3.5 + 1 / 16] } as const;
  expect(laps(flatCard({ ...frame(0), right }))).toMatchObject([
    { piece: 'top', other: 'left', fix: [{ piece: 'left', height: inches(3.5 + 5 / 16) }] },
    { piece: 'top', other: 'right', fix: [{ piece: 'right', height: inches(3.5 + 5 / 16) }] },
    { piece: 'bottom', other: 'left' },
    { piece: 'bottom', other: 'right' },
  ]);
  // Something else that is in line with its lower end keeps it there.
  const beside = { at: [2, 4, 1 / 2, 17 / 32] } as const;
  expect(laps(flatCard({ ...frame(0), beside }))[0]).toMatchObject({ other: 'left', fix: [] });
  const once = mended(flatCard(frame(0)));
  expect(once.pieces.find(({ id }) => id === 'left')).toMatchObject({
    y: inches(1 - 5 / 32),
    height: inches(3.5 + 5 / 16),
  });
  expect(laps(once)).toEqual([]);
  // Also where the other end lies well on its rail: it is in the middle of the card.
  expect(laps(flatCard(frame(1 / 4)))).toMatchObject([
    { piece: 'top', fix: [{ piece: 'left', y: inches(1 - 5 / 32), height: inches(3.5 + 5 / 16) }] },
  ]);
  // In the middle of nothing, one end is enough.
  const bar = flatCard({
    one: { at: [1 / 2, 1 / 2, 1, 1] },
    two: { at: [1 / 2, 3, 1, 1.5] },
    bar: { at: [3 / 4, 1.5 - 1 / 16, 3 / 8, 1.5 + 5 / 16] },
  });
  expect(laps(bar)).toMatchObject([{ piece: 'one', fix: [{ piece: 'bar', height: inches(1.5 + 6 / 16) }] }]);
});

test('no mend hides more of a punched edge (by hand)', () => {
  const upper: FlatPiece = { at: [1 + 15 / 16, 1.5, 1.5, 2] };
  const fix = (strip: Omit<FlatPiece, 'at'>, at: FlatPiece['at'] = [1 / 2, 2, 1.5, 1]) =>
    laps(flatCard({ strip: { at, ...strip }, upper })).find(({ piece }) => piece === 'strip')?.fix;
  // The scallops are 3/16 in deep, of which 1/16 in is under the other one.
  expect(fix({ punched: { right: 'scallop' } })).toEqual([]);
  // On its other sides the strip may have them.
  for (const edge of ['left', 'top', 'bottom'])
    expect(fix({ punched: { [edge]: 'scallop' } })).toMatchObject([{ piece: 'strip' }]);
  // Turned by a quarter its upper edge is on the right.
  expect(fix({ punched: { top: 'scallop' }, tilt: 90 }, [3 / 4, 1.75, 1, 1.5])).toEqual([]);
  expect(fix({ tilt: 90 }, [3 / 4, 1.75, 1, 1.5])).toMatchObject([{ do: 'place', piece: 'strip' }]);
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
  // However thin the foam is.
  expect(laps(over(0, 1 / 32))).toEqual([]);
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
