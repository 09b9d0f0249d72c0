import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { applyEdits } from '../../edit/apply-edit.js';
import { assembly } from '../assembly.js';
import type { CardFinding } from '../card-finding.js';

/** What is held too little of a flat card with those pieces. */
function held(pieces: Readonly<Record<string, FlatPiece>>): readonly CardFinding[] {
  return assembly(flatCard(pieces)).findings.filter(({ code }) => code === 'held-too-little');
}

const FOAM = 1 / 8;

test('an oval on the edge of a panel on foam is held by a strip; from 1/8 in on it is held well (by hand)', () => {
  const oval = (lap: number) =>
    ({
      panel: { at: [1, 1, 2, 2], foam: FOAM },
      oval: { at: [1.5, 3 - lap, 1, 1], shape: 'ellipse' },
    }) as const;
  const found = held(oval(1 / 16));
  expect(found).toMatchObject([
    { piece: 'oval', severity: 'looks wrong', place: { face: 'front', top: inches(3 - 1 / 16) } },
  ]);
  // The largest disc in the end of an oval touches the edge and the end; it is found to 1/80 mm.
  expect(Math.abs((found[0]?.amount ?? 0) - inches(1 / 16))).toBeLessThan(20);
  expect(held(oval(1 / 8))).toEqual([]);
});

test('what is no wider than a strip is held by all its width; by the end of it, it is not', () => {
  const ribbon = (wide: number) =>
    ({
      window: { at: [3 / 4, 1, 3, 3], foam: FOAM },
      ribbon: { at: [1 / 4, 2.5, 3.5, wide] },
    }) as const;
  expect(held(ribbon(1 / 8))).toEqual([]);
  expect(held(ribbon(1 / 16))).toEqual([]);
  const short = {
    window: { at: [3 / 4, 1, 2, 3], foam: FOAM },
    ribbon: { at: [2.75 - 1 / 32, 2.5, 1, 1 / 8], shape: 'ellipse' },
  } as const;
  expect(held(short)).toMatchObject([{ piece: 'ribbon' }]);
});

test('what lies on several narrow rails is held by all of them', () => {
  const rails = (width: number) =>
    ({
      one: { at: [3 / 4, 1, width, 3], foam: FOAM },
      two: { at: [3 + 1 / 4, 1, width, 3], foam: FOAM },
      greeting: { at: [1 / 2, 2, 3 + 1 / 4, 1], shape: 'ellipse' },
    }) as const;
  expect(held(rails(1 / 8))).toEqual([]);
  expect(held(rails(1 / 16))).toEqual([]);
  expect(held(rails(1 / 64))).toMatchObject([{ piece: 'greeting', amount: expect.closeTo(2 * inches(1 / 64), -2) }]);
});

test('under what holds it a piece is held again; but it is not put where little of it would show', () => {
  const pieces = {
    panel: { at: [1, 1, 2, 2], foam: FOAM },
    oval: { at: [1.5, 3 - 1 / 16, 1, 1], shape: 'ellipse' },
  } as const;
  const sketch = flatCard(pieces);
  const [found] = held(pieces);
  expect(found?.fix).toEqual([{ do: 'order', piece: 'oval', to: 1 }]);
  expect(assembly(applyEdits(sketch, found?.fix ?? [])).findings).toEqual([]);
  // Below what holds it lies a flat panel that would hide most of it.
  const buried = held({
    panel: { at: [1, 1, 2, 2], foam: FOAM },
    flat: { at: [1.25, 2.5, 1.5, 1.5] },
    oval: { at: [1.5, 3 - 1 / 16, 1, 1], shape: 'ellipse' },
  });
  expect(buried).toEqual([]);
  const below = held({
    panel: { at: [1, 1, 2, 2], foam: FOAM },
    flat: { at: [1.25, 3 + 1 / 8, 1.5, 1.5] },
    oval: { at: [1.5, 3 - 1 / 16, 1, 1], shape: 'ellipse' },
  });
  expect(below).toMatchObject([{ piece: 'oval', fix: [] }]);
});

test('papers follow each other, however many lie in a stack; a board is not followed', () => {
  // Twelve papers, 3.6 mm of them, and an oval over the edge of the last.
  const shingles = Object.fromEntries(
    Array.from({ length: 12 }, (_, at) => [`paper-${at}`, { at: [1, 1, 2, 2] } satisfies FlatPiece]),
  );
  const oval: FlatPiece = { at: [1.5, 3 - 1 / 16, 1, 1], shape: 'ellipse' };
  expect(held({ ...shingles, oval })).toEqual([]);
  const sketch = flatCard({ board: { at: [1, 1, 2, 2] }, oval });
  const [paper] = sketch.papers;
  if (!paper) throw new Error('the card has a paper');
  const papers = [...sketch.papers, { ...paper, id: 'board', caliper: inches(1 / 8) }];
  const pieces = sketch.pieces.map((piece) => (piece.id === 'board' ? { ...piece, from: 'board' } : piece));
  const found = assembly({ ...sketch, papers, pieces }).findings;
  expect(found.map(({ code, piece }) => `${code} ${piece}`)).toContain('held-too-little oval');
});

test('a lap that is told at what holds a piece is not told once more; one that is told elsewhere says nothing of it', () => {
  const lap = { panel: { at: [1, 1, 2, 2], foam: FOAM }, strip: { at: [1.5, 3 - 1 / 16, 1, 1] } } as const;
  expect(held(lap)).toEqual([]);
  // Turned against the panel that holds it, it also goes a sixteenth over a flat paper that it does not reach.
  const other = held({
    panel: { at: [1, 1, 2, 2], foam: FOAM, tilt: 3 },
    low: { at: [1.5, 3 + 13 / 16, 1, 1] },
    strip: { at: [1.5, 2.95, 1, 15 / 16] },
  });
  expect(other).toMatchObject([{ piece: 'strip' }]);
});

test('a piece on foam stands on that beside what it partly lies on, unless its foam is far too low for it (by hand)', () => {
  const beside = (lap: number, foam: number) =>
    ({ one: { at: [1, 1, 1.5, 1.5], foam: FOAM }, two: { at: [2.5 - lap, 1.25, 1, 1], foam } }) as const;
  // On foam of its own it lies as high as the other one, to a paper.
  expect(held(beside(1 / 32, FOAM))).toEqual([]);
  // On foam that is 1 mm lower it is bent up by so much; on foam of 1/16 in it would have to be by 1.6 mm.
  expect(held(beside(1 / 32, FOAM - 1 / 25.4))).toEqual([]);
  expect(held(beside(1 / 32, 1 / 16))).toMatchObject([{ piece: 'two', amount: expect.closeTo(inches(1 / 32), -2) }]);
  expect(held(beside(1 / 8, 1 / 16))).toEqual([]);
  expect(held(beside(0, 1 / 16))).toEqual([]);
  // On a foot it stands again.
  const foot = { foot: { at: [2 + 7 / 8, 1.5, 1 / 2, 1 / 2], foam: FOAM } } as const;
  expect(held({ ...foot, ...beside(1 / 32, 1 / 16) })).toEqual([]);
});

test('the tip of a thin oval holds less than its depth tells (geometry of the ellipse)', () => {
  const flame = (lap: number) =>
    ({
      panel: { at: [1, 1, 2, 2], foam: FOAM },
      flame: { at: [2, 3 - lap, 3 / 16, 1.75], shape: 'ellipse' },
    }) as const;
  // A disc of 1/8 in goes into the oval where that is as wide: 0.22 in from its tip, and so into 0.29 in of it.
  expect(held(flame(0.25))).toMatchObject([{ piece: 'flame' }]);
  expect(held(flame(0.25))[0]?.amount).toBeGreaterThan(inches(3 / 32));
  expect(held(flame(0.3))).toEqual([]);
});
