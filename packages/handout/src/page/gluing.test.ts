import { assembly } from '@trimwell/sketch/assembly';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../tests/kit/flat-card.js';
import { stepOnto } from './gluing.js';

/** What each piece but the background is glued onto, as `piece: what`. */
function glued(pieces: Readonly<Record<string, FlatPiece>>): readonly string[] {
  const sketch = flatCard(pieces);
  return assembly(sketch)
    .steps.filter(({ piece }) => piece in pieces)
    .map((step) => `${step.piece}: ${stepOnto(sketch, step).join()}`);
}

test('a piece is glued onto what is under its middle, by true outlines (by hand)', () => {
  const disc = { at: [1 / 2, 1 / 2, 3, 3], shape: 'ellipse' } as const;
  // One in the empty corner of the disc's box, one within it.
  expect(glued({ disc, dot: { at: [1 / 2, 1 / 2, 1 / 4, 1 / 4] } })).toEqual(['disc: background', 'dot: background']);
  expect(glued({ disc, dot: { at: [2, 2, 1 / 4, 1 / 4] } })).toEqual(['disc: background', 'dot: disc']);
  // A bar that is turned by a quarter stands upright.
  const bar = { at: [1 / 2, 2, 3, 1 / 2], tilt: 90 } as const;
  expect(glued({ bar, dot: { at: [1.75, 1, 1 / 2, 1 / 2] } })).toEqual(['bar: background', 'dot: bar']);
  expect(glued({ bar, dot: { at: [3 / 4, 2, 1 / 2, 1 / 2] } })).toEqual(['bar: background', 'dot: background']);
});

test('where that is too far down, it is glued onto all that bears it (by hand)', () => {
  const panels = {
    one: { at: [1 / 2, 1 / 2, 1.5, 4], foam: 1 / 16 },
    two: { at: [2 + 1 / 16, 1 / 2, 1.5, 4], foam: 1 / 16 },
  } as const;
  const upper = { at: [1 + 1 / 32, 1.5, 2, 1] } as const;
  const onto = ['one: background', 'two: background', 'upper: one,two'];
  expect(glued({ ...panels, upper: { ...upper, foam: 1 / 16 } })).toEqual(onto);
  expect(glued({ ...panels, upper })).toEqual(onto);
});
