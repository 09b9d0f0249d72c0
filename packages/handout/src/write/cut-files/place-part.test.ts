import { ellipse, flattenOutline, type Outline } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { placePart } from './place-part.js';

/** Everything that an outline may be made of, not alike in any direction. */
const MIXED: Outline = {
  start: { x: 40, y: 0 },
  steps: [
    { kind: 'line', to: { x: 300, y: 0 } },
    { kind: 'arc', to: { x: 340, y: 90 }, radiusX: 40, radiusY: 90, clockwise: true },
    { kind: 'arc', to: { x: 320, y: 120 }, radiusX: 20, radiusY: 30, clockwise: false },
    { kind: 'curve', control1: { x: 200, y: 190 }, control2: { x: 90, y: 130 }, to: { x: 0, y: 160 } },
    { kind: 'line', to: { x: 40, y: 0 } },
  ],
};

test('a turned part is the part turned by a quarter clockwise, point by point, at its place', () => {
  for (const outline of [MIXED, ellipse(0, 0, 340, 160)]) {
    const part = {
      ...{
        name: 'part',
        cut: [outline],
        score: [
          [
            { x: 0, y: 10 },
            { x: 340, y: 20 },
          ] as const,
        ],
      },
      ...{ width: 340 as never, height: 160 as never },
    };
    const { cut, score } = placePart(part, { x: 1000, y: 2000, turned: true });
    const [turned] = cut;
    if (!turned) throw new Error('The part has an outline.');
    const expected = flattenOutline(outline, 9).map(({ x, y }) => ({ x: 1000 + 160 - y, y: 2000 + x }));
    flattenOutline(turned, 9).forEach((point, index) => {
      expect(point.x).toBeCloseTo(expected[index]?.x ?? Number.NaN, 6);
      expect(point.y).toBeCloseTo(expected[index]?.y ?? Number.NaN, 6);
    });
    expect(score).toEqual([
      [
        { x: 1150, y: 2000 },
        { x: 1140, y: 2340 },
      ],
    ]);
    const moved = placePart(part, { x: 7, y: 8, turned: false });
    expect(moved.cut[0]?.start).toEqual({ x: outline.start.x + 7, y: outline.start.y + 8 });
  }
});
