import { inches, millimetres } from '@trimwell/geometry';
import { render } from 'lit';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { assemblySight } from '../../session/assembly-sight.js';
import { cardSection } from './card-section.js';
import { sectionPicture } from './section-picture.js';

/** A flat card with those pieces, cut through 2 1/2 in from the top. */
function cutThrough(pieces: Readonly<Record<string, FlatPiece>>) {
  const sketch = flatCard(pieces);
  const sight = assemblySight({ sketch, batch: null, post: null });
  return { sketch, section: cardSection({ sketch, sight }, { along: 'x', at: inches(2.5) }) };
}

/** Where the cut meets each piece: stretches in inches, each with its height above the front in millimetres. */
function cut(pieces: Readonly<Record<string, FlatPiece>>) {
  const { slabs } = cutThrough(pieces).section;
  const front = 2 * millimetres(0.3);
  const told = slabs.filter(({ piece }) => piece in pieces);
  return told.map(({ piece, spans }) => [
    piece,
    ...spans.map(({ from, to, bottom }) => [from / inches(1), to / inches(1), (bottom - front) / millimetres(1)]),
  ]);
}

/** Each strip lies on the one before by a quarter of its inch. */
const strips = {
  one: { at: [1 / 2, 2, 1, 1] },
  two: { at: [1.25, 2, 1, 1] },
  three: { at: [2, 2, 1, 1] },
} as const;

test('along the line a paper comes down beside another one, and a strip on foam bridges all (by hand)', () => {
  // Each lies on the background of 0.3 mm, or where it laps on two papers.
  expect(cut(strips)).toEqual([
    ['one', [0.5, 1.5, 0.3]],
    ['two', [1.25, 1.5, 0.6], [1.5, 2.25, 0.3]],
    ['three', [2, 2.25, 0.6], [2.25, 3, 0.3]],
  ]);
  const foam = { ...strips, foam: { at: [1, 2, 2, 1], foam: 1 / 8 }, over: { at: [1 / 2, 2.25, 3, 1 / 2] } } as const;
  const height = 0.9 + 25.4 / 8;
  expect(cut(foam).slice(3)).toEqual([
    // Where it lies over two papers, its foam is pressed by one of them.
    ['foam', [1, 1.25, height], [1.25, 1.5, height], [1.5, 2, height], [2, 2.25, height], [2.25, 3, height]],
    // Wherever it reaches beyond the foam it stays as high as on it.
    ['over', [0.5, 3.5, height + 0.3]],
  ]);
});

test('foam is where it stands, and not between a piece and what that touches beside it (by hand)', () => {
  const pieces = {
    banner: { at: [1 / 2, 2, 2, 1], foam: 1 / 8 },
    tag: { at: [2.25, 2.25, 1, 1 / 2], foam: 1 / 8 },
  } as const;
  const tag = cutThrough(pieces).section.slabs.find(({ piece }) => piece === 'tag');
  // Beside the banner, which is a paper higher than its foam, that reaches down to the background.
  expect(tag?.spans.map(({ from, to, foam }) => [from / inches(1), to / inches(1), foam])).toEqual([
    [2.25, 2.5, 0],
    [2.5, 3.25, inches(1 / 8) + millimetres(0.3)],
  ]);
});

test('a paper is drawn in one piece over a step, and a letter stands over it where another one lies beside it', () => {
  const { sketch, section } = cutThrough(strips);
  const root = document.createElement('div');
  render(
    sectionPicture(sketch, section, 600, null, () => {}),
    root,
  );
  // Two leaves, the background, and the three strips; the first two have another one to their right, and no leader.
  expect(root.querySelectorAll('.paper')).toHaveLength(6);
  expect(root.querySelectorAll('.leader')).toHaveLength(4);
  // Each begins where its paper ends: at 4 1/4 in, at 4 1/8, and at 3.
  const from = [...root.querySelectorAll('.leader')].map((leader) =>
    Number.parseFloat(leader.getAttribute('d')?.slice(1) ?? ''),
  );
  const [base, , background, three] = from as [number, number, number, number];
  expect((base - three) / (base - background)).toBeCloseTo(10, 6);
  const across = (letter: string): number =>
    Number([...root.querySelectorAll('text')].find((text) => text.textContent === letter)?.getAttribute('x'));
  expect(across('C')).toBeLessThan(across('D'));
  expect(across('E')).toBe(across('B'));
  // No paper is painted over a letter.
  const painted = [...root.querySelectorAll('.paper, text:not(.figure)')].map(({ localName }) => localName);
  expect(painted).toEqual([...Array(6).fill('path'), ...Array(6).fill('text')]);
});
