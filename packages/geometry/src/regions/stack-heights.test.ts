import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { millimetres, ticks } from '../length/length.js';
import type { ThickPiece } from '../stack/levels.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { sideProfile } from './side-profile.js';
import { stackHeights } from './stack-heights.js';

const square = ticks(0);

/** A rectangle in whole millimetres, with its paper's caliper and its foam in millimetres. */
function layer(
  [x, y, width, height]: readonly [number, number, number, number],
  caliper: number,
  raise = 0,
  tilt = 0,
  shape: PlacedPiece['shape']['shape'] = 'rectangle',
): ThickPiece {
  const corners = { tl: square, tr: square, br: square, bl: square };
  return {
    placed: {
      shape: { shape, width: millimetres(width), height: millimetres(height), corners, punched: {} },
      x: millimetres(x),
      y: millimetres(y),
      tilt,
    },
    caliper: millimetres(caliper),
    raise: millimetres(raise),
  };
}

const tops = (stack: readonly ThickPiece[]): readonly number[] =>
  stackHeights(stack).layers.map(({ top }) => top / 640);

test('side by side every piece lies on the card; over each other calipers and foam add up (by hand)', () => {
  expect(tops([layer([0, 0, 20, 20], 0.3), layer([20, 0, 20, 20], 0.2)])).toEqual([0.3, 0.2]);
  expect(tops([layer([0, 0, 20, 20], 0.3), layer([5, 5, 10, 10], 0.2, 1.6), layer([6, 6, 2, 2], 0.3)])).toEqual([
    0.3, 2.1, 2.4,
  ]);
});

test('a bridge between a high and a low support rests on the high one, and so does what lies over the gap (by hand)', () => {
  const stack = [
    layer([0, 0, 20, 20], 0.3, 3),
    layer([40, 0, 20, 20], 0.5),
    layer([10, 5, 40, 10], 0.2),
    layer([25, 8, 5, 5], 0.4),
  ];
  const { layers, height, highest } = stackHeights(stack);
  expect(layers.map(({ top }) => top / 640)).toEqual([3.3, 0.5, 3.5, 3.9]);
  expect(layers[2]).toMatchObject({ bottom: millimetres(3.3), restsOn: [0], over: [0, 1] });
  expect(layers[3]).toMatchObject({ restsOn: [2], over: [2] });
  expect([height, highest]).toEqual([millimetres(3.9), 3]);
});

test('only true outlines bear: a piece in the corner of an oval, or beside a tilted strip, lies on the card (by hand)', () => {
  expect(tops([layer([0, 0, 40, 40], 0.5, 0, 0, 'ellipse'), layer([0, 0, 5, 5], 0.3)])).toEqual([0.5, 0.3]);
  expect(tops([layer([0, 0, 40, 4], 0.5, 0, 45), layer([30, 0, 6, 6], 0.3)])).toEqual([0.5, 0.3]);
});

/** A paper of 0.3 mm, in whole millimetres. */
const paper = (...box: readonly [number, number, number, number]): ThickPiece => layer(box, 0.3);

test('shingles are as high as two of them where each goes a little over the one before; boards climb (by hand)', () => {
  const along = Array.from({ length: 16 }, (_, at) => [at * 10, 0, 12, 20] as const);
  const { layers, height, highest, chain } = stackHeights(along.map((box) => paper(...box)));
  expect(layers.map(({ top }) => top / 640)).toEqual([0.3, ...Array.from({ length: 15 }, () => 0.6)]);
  expect([height, highest, chain]).toEqual([millimetres(0.6), 1, [0, 1]]);
  expect(layers[15]).toMatchObject({ bottom: millimetres(0.3), restsOn: [14], over: [14] });
  expect(stackHeights(along.map((box) => layer(box, 2))).height).toBe(millimetres(32));
});

test('what lies in a slit between two boards is as high however the stack is turned (by hand)', () => {
  // The sheet comes down from the board to both sides of the slit, by 0.8 mm; the slit itself is 2 mm deep, and bridged.
  const slit = (turned: boolean) => {
    const at = (x: number, y: number, wide: number, high: number, thick: number): ThickPiece =>
      layer(turned ? [y, x, high, wide] : [x, y, wide, high], thick);
    return [
      at(0, 0, 20, 10, 2),
      at(0, 20, 20, 10, 1.2),
      at(0, 32, 20, 10, 1.2),
      at(0, 0, 20, 42, 0.3),
      at(5, 25, 5, 12, 0.3),
    ];
  };
  expect(tops(slit(false))).toEqual([2, 1.2, 1.2, 2.3, 2.6]);
  expect(tops(slit(true))).toEqual([2, 1.2, 1.2, 2.3, 2.6]);
});

test('a paper comes down beside papers however many, and beside foam of up to 1 mm; beside more it bridges (by hand)', () => {
  const over = (...lower: readonly ThickPiece[]) => [...lower, paper(10, 5, 40, 10), paper(35, 5, 5, 5)];
  const papers = Array.from({ length: 5 }, () => paper(0, 0, 20, 20));
  // Beside them the long one lies on the card, so that what is glued there lies on two papers.
  expect(tops(over(...papers))).toEqual([0.3, 0.6, 0.9, 1.2, 1.5, 1.8, 0.6]);
  expect(stackHeights(over(...papers)).chain).toEqual([0, 1, 2, 3, 4, 5]);
  const foam = (high: number): ThickPiece => layer([0, 0, 20, 20], 0.3, high);
  expect(tops(over(foam(1)))).toEqual([1.3, 1.6, 0.6]);
  expect(tops(over(foam(1.6)))).toEqual([1.9, 2.2, 2.5]);
  // What bridges is borne by the foam, whatever lies below it elsewhere.
  expect(stackHeights(over(foam(1.6))).chain).toEqual([0, 1, 2]);
});

test('foam stands under most of its piece, beside what that partly lies on, unless it is far too low (by hand)', () => {
  const panel = paper(0, 0, 40, 40);
  const banner = layer([0, 10, 20, 5], 0.3, 1.6);
  const tag = (x: number, foam: number) => stackHeights([panel, banner, layer([x, 8, 15, 8], 0.3, foam)]).layers[2];
  // On 1.6 mm of foam on the panel it would lie at 1.9 mm, but the banner is 2.2 mm high.
  expect(tag(15, 1.6)).toMatchObject({ bottom: millimetres(2.2), foam: 0, restsOn: [1], gluedTo: [0] });
  expect(tag(15, 2.5)).toMatchObject({ bottom: millimetres(2.8), foam: millimetres(2.5), restsOn: [0] });
  // On foam of 0.6 mm it is bent up by 1 mm; less is too low for that, and stands on the banner.
  expect(tag(15, 0.6)).toMatchObject({ bottom: millimetres(2.2), foam: 0, gluedTo: [0] });
  expect(tag(15, 0.5)).toMatchObject({ bottom: millimetres(2.7), foam: millimetres(0.5), restsOn: [1], gluedTo: [1] });
  // Lying mostly over the banner, it stands on that.
  expect(tag(5, 1.6)).toMatchObject({ bottom: millimetres(3.8), foam: millimetres(1.6), restsOn: [1], gluedTo: [1] });
});

test('a piece on foam over a slit between raised ones stands on those (by hand)', () => {
  const [left, right] = [layer([0, 0, 20, 40], 0.3, 1.6), layer([22, 0, 20, 40], 0.3, 1.6)];
  const greeting = (x: number) => stackHeights([left, right, layer([x, 10, 30, 10], 0.3, 1.6)]).layers[2];
  expect(greeting(6)).toMatchObject({ bottom: millimetres(3.5), foam: millimetres(1.6), restsOn: [0, 1] });
  expect(greeting(5)).toMatchObject({ bottom: millimetres(3.5), restsOn: [0, 1] });
  const tilted = stackHeights([left, right, layer([6, 10, 30, 10], 0.3, 1.6, 30)]).layers[2];
  expect(tilted).toMatchObject({ bottom: millimetres(3.5), restsOn: [0, 1] });
});

test('ovals go over each other within their curves, and tilted papers that abut do not (by hand)', () => {
  const oval = (x: number): ThickPiece => layer([x, 0, 10, 20], 0.3, 0, 0, 'ellipse');
  // The third one reaches the second, and not the first.
  expect(tops([oval(0), oval(8), oval(16)])).toEqual([0.3, 0.6, 0.6]);
  // The second strip begins where the first one ends, to the tick: 20 mm further along 30 degrees, less than a tick over it.
  const strip = (x: number, y: number): ThickPiece => {
    const { placed, ...thick } = layer([0, 0, 20, 10], 0.3, 0, 30);
    return { ...thick, placed: { ...placed, x: ticks(x), y: ticks(y) } };
  };
  const along = 20 * 640 * Math.cos(Math.PI / 6);
  expect(tops([strip(0, 0), strip(Math.floor(along), 20 * 320)])).toEqual([0.3, 0.3]);
});

test('papers lap over each other between the arcs of their round corners (by hand)', () => {
  const round = (x: number, y: number): ThickPiece => {
    const { placed, ...thick } = paper(x, y, 30, 30);
    const [radius] = [millimetres(12)];
    return {
      ...thick,
      placed: { ...placed, shape: { ...placed.shape, corners: { tl: radius, tr: radius, br: radius, bl: radius } } },
    };
  };
  // The corners reach over each other by 11 mm both ways, of which their arcs leave a lens 5.6 mm long; a label lies over that.
  expect(tops([round(0, 0), round(19, 19), paper(15, 15, 20, 20)])).toEqual([0.3, 0.6, 0.9]);
  expect(tops([round(0, 0), round(23, 23), paper(15, 15, 20, 20)])).toEqual([0.3, 0.3, 0.6]);
});

test('the tip of a corner on a board bears a piece, even where no line meets it (by hand)', () => {
  // Tilted by 10 degrees its lower left corner is furthest to the left; it reaches a hundredth of a millimetre over the board.
  const corner = (10 - 10 * Math.cos(Math.PI / 18) - 10 * Math.sin(Math.PI / 18)) * 640;
  const at = (deep: number): ThickPiece => {
    const { placed, ...thick } = layer([0, 10, 20, 20], 0.3, 0, 10);
    return { ...thick, placed: { ...placed, x: ticks(Math.round(20 * 640 - corner - deep)) } };
  };
  const board = layer([0, 0, 20, 60], 2);
  expect(tops([board, at(7)])).toEqual([2, 2.3]);
  expect(tops([board, at(-7)])).toEqual([2, 0.3]);
});

/** How high a random stack is, spot by spot, straight from the rules; all sides are whole and odd millimetres. */
function raster(stack: readonly ThickPiece[], size: number): readonly number[] {
  const spots = Array.from({ length: size * size }, () => ({ high: 0, pieces: [] as number[] }));
  const levels: { readonly ground: number; readonly top: number }[] = [];
  const levelTop = (pieces: readonly number[]): number => Math.max(0, ...pieces.map((each) => levels[each]?.top ?? 0));
  return stack.map(({ placed: { x, y, shape }, caliper, raise }, at) => {
    const [left, top, width, height] = [x, y, shape.width, shape.height].map((each) => each / 640) as [
      number,
      number,
      number,
      number,
    ];
    const own = spots.filter((_, spot) => {
      const [across, down] = [(spot % size) - left, Math.floor(spot / size) - top];
      return across >= 0 && across < width && down >= 0 && down < height;
    });
    const highest = levelTop(own.flatMap(({ pieces }) => pieces));
    const points = [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((across) =>
      [0.1, 0.3, 0.5, 0.7, 0.9].map(
        (down) => spots[Math.floor(top + down * height) * size + Math.floor(left + across * width)],
      ),
    );
    // The 13th of 25.
    const under = points.map((spot) => levelTop(spot?.pieces ?? [])).sort((a, b) => b - a)[12] ?? 0;
    const ground = raise === 0 ? highest : under + raise >= highest - 640 ? under : highest;
    levels.push({ ground, top: Math.max(highest, ground + raise) + (caliper > 640 ? caliper : 0) });
    const below = own.map((spot) => ({ spot, level: levels[spot.pieces.at(-1) ?? -1]?.top ?? 0 }));
    const reached = (level: number): boolean => level >= ground - 640;
    const bottom = Math.max(
      ...below.map(({ spot, level }) => spot.high + (reached(level) && level <= ground ? raise : 0)),
    );
    for (const { spot, level } of below) {
      const comesDown = raise === 0 && caliper <= 640 && reached(level);
      spot.high = (comesDown ? spot.high : bottom) + caliper;
      spot.pieces.push(at);
    }
    return bottom + caliper;
  });
}

test('500 random stacks of papers, boards and foam are as high as a raster of whole millimetres', () => {
  const some = fc.array(
    fc.record({
      box: fc.tuple(fc.nat(14), fc.nat(14), fc.nat(5), fc.nat(5)),
      kind: fc.constantFrom('paper', 'paper', 'board', 'foam', 'thin'),
    }),
    { minLength: 1, maxLength: 14 },
  );
  const kinds: Readonly<Record<string, readonly [caliper: number, raise: number]>> = {
    paper: [0.3, 0],
    board: [2, 0],
    foam: [0.3, 1.6],
    thin: [0.3, 0.7],
  };
  fc.assert(
    fc.property(some, (pieces) => {
      const stack = pieces.map(({ box: [x, y, wide, high], kind }) =>
        layer([x, y, 2 * wide + 1, 2 * high + 1], ...(kinds[kind] ?? [0.3, 0])),
      );
      const { layers, height, chain } = stackHeights(stack);
      expect(layers.map(({ top }) => top)).toEqual(raster(stack, 24));
      // The chain is what it says: it adds up to the height.
      const sum = chain.reduce((all, at) => all + (stack[at]?.caliper ?? 0) + (layers[at]?.foam ?? 0), 0);
      expect(sum).toBe(height);
      // Turned by a quarter it is as high.
      const turned = stack.map(({ placed, ...thick }): ThickPiece => {
        const { x, y, shape } = placed;
        return {
          ...thick,
          placed: { ...placed, x: y, y: x, shape: { ...shape, width: shape.height, height: shape.width } },
        };
      });
      expect(stackHeights(turned).layers.map(({ top }) => top)).toEqual(layers.map(({ top }) => top));
    }),
    { numRuns: 500 },
  );
});

test('an empty face has no height and no highest piece', () => {
  expect(stackHeights([])).toEqual({ layers: [], levels: [], height: 0, highest: null, chain: [] });
});

test('from the side the highest piece is seen over each stretch, and what hangs over the card (by hand)', () => {
  const stack = [layer([10, 0, 20, 20], 0.3), layer([25, 5, 25, 5], 0.2)];
  const heights = stackHeights(stack);
  const seen = (axis: 'x' | 'y', side: number) =>
    sideProfile(stack, heights, axis, millimetres(side)).map(({ from, to, height, piece }) => [
      from / 640,
      to / 640,
      height / 640,
      piece,
    ]);
  expect(seen('y', 40)).toEqual([
    [0, 10, 0, null],
    [10, 25, 0.3, 0],
    [25, 50, 0.5, 1],
  ]);
  expect(seen('x', 30)).toEqual([
    [0, 5, 0.3, 0],
    [5, 10, 0.5, 1],
    [10, 20, 0.3, 0],
    [20, 30, 0, null],
  ]);
});
