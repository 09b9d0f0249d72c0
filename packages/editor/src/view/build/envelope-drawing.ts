import { formatLength, formatSize, type LengthStyle, type Outline, type Point } from '@trimwell/geometry';
import type { Drawing, Item } from '@trimwell/handout';
import type { EnvelopeTemplate } from '@trimwell/sketch/assembly';

function polygon([start, ...others]: readonly Point[]): Outline {
  const first = start ?? { x: 0, y: 0 };
  return { start: first, steps: [...others, first].map((to) => ({ kind: 'line', to })) };
}

/**
 * The square that an envelope is folded from, as it lies before you: what is cut, and what is scored. The corners of the envelope lie
 * `notch` along the sides and `scoreOff` in from them (see `envelopeTemplate`), the upper left one along the upper side.
 */
export function envelopeDrawing(template: EnvelopeTemplate, style: LengthStyle): Drawing {
  const { square, notch, scoreOff, inside, tooLong } = template;
  const far = square - notch;
  const corners: readonly Point[] = [
    { x: notch, y: scoreOff },
    { x: square - scoreOff, y: far },
    { x: far, y: square - scoreOff },
    { x: scoreOff, y: notch },
  ];
  const [upper, right, lower, left] = corners as readonly [Point, Point, Point, Point];
  const off = scoreOff;
  // The point of a flap that would reach over the far side of the envelope is cut off, parallel to its score, and a little more.
  const short = tooLong > 0 ? (tooLong + off) * Math.SQRT2 : 0;
  const point = (corner: Point, before: Point, after: Point): readonly Point[] =>
    short === 0
      ? [corner]
      : [
          { x: corner.x + before.x * short, y: corner.y + before.y * short },
          { x: corner.x + after.x * short, y: corner.y + after.y * short },
        ];
  const edge: readonly Point[] = [
    { x: 0, y: 0 },
    { x: notch - off, y: 0 },
    upper,
    { x: notch + off, y: 0 },
    ...point({ x: square, y: 0 }, { x: -1, y: 0 }, { x: 0, y: 1 }),
    { x: square, y: far - off },
    right,
    { x: square, y: far + off },
    { x: square, y: square },
    { x: far + off, y: square },
    lower,
    { x: far - off, y: square },
    ...point({ x: 0, y: square }, { x: 1, y: 0 }, { x: 0, y: -1 }),
    { x: 0, y: notch + off },
    left,
    { x: 0, y: notch - off },
  ];
  const fold = (key: string, from: Point, to: Point): Item => ({ kind: 'line', key, role: 'fold', from, to });
  const room = square * 0.02;
  return {
    title: `Envelope of ${formatSize(inside, style)} from a square of ${formatLength(square, style)}`,
    description: 'Cut along the lines, score along the broken ones, and fold in the short flaps first.',
    box: { x: -room, y: -room, width: square + 2 * room, height: square + 2 * room },
    items: [
      { kind: 'path', key: 'cut', role: 'cut', outline: polygon(edge) },
      fold('fold upper', upper, right),
      fold('fold right', right, lower),
      fold('fold lower', lower, left),
      fold('fold left', left, upper),
    ],
    looks: {},
  };
}
