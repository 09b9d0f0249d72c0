import { inches, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { checkSketch } from '../check/findings.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { applyEdits } from './apply-edit.js';
import { largerFocal } from './larger-focal.js';
import { otherCardSize } from './other-card-size.js';
import { readyVariations } from './ready-variations.js';
import { withVariation } from './variations.js';

const plain: Sketch = { ...sampleSketch(), variations: [] };
const greeting = plain.pieces.find(({ id }) => id === 'greeting') as Piece;
const square = { tl: ticks(0), tr: ticks(0), br: ticks(0), bl: ticks(0) };

/** The sample with an upright focal piece, 2 x 2 in, with a mat of 1/8 in, in the middle of the panel. */
function withFocal(place: Partial<Piece> = {}): Sketch {
  const at = { x: inches(1 + 1 / 8), y: inches(2), width: inches(2), height: inches(2), tilt: 0 };
  const focal: Piece = { ...greeting, id: 'focal', name: 'Focal', kind: 'focal piece', ...at, ...place };
  const mat: Piece = { ...focal, id: 'focal-mat', kind: 'mat', mats: { piece: 'focal', reveal: inches(1 / 8) } };
  const loose: Sketch = { ...plain, pieces: [...plain.pieces.filter(({ id }) => id !== 'strip'), mat, focal] };
  const { x, y, width, height } = focal;
  // Resizing to the size it has brings the mat to its place.
  return applyEdits({ ...loose, batch: { ...loose.batch, contrast: [] } }, [
    { do: 'resize', piece: 'focal', x: ticks(x + 1), y, width, height },
    { do: 'resize', piece: 'focal', x, y, width, height },
  ]);
}

const ids = (sketch: Sketch) => readyVariations(sketch).map(({ id }) => id);
const findings = (sketch: Sketch) => checkSketch(sketch).map(({ code, piece }) => `${code} ${piece}`);

test('only what applies is offered', () => {
  expect(ids(plain)).toEqual(['square-corners', 'plain-edges', 'glued-flat', 'another-card-size']);
  expect(ids({ ...plain, pieces: plain.pieces.map((piece) => ({ ...piece, corners: square })) })).toEqual([
    'plain-edges',
    'glued-flat',
    'another-card-size',
  ]);
  const bare = { ...plain, batch: { ...plain.batch, contrast: [] } };
  expect(ids({ ...bare, pieces: plain.pieces.filter(({ id }) => id === 'liner') })).toEqual(['another-card-size']);
  expect(ids(withFocal())).toContain('larger-focal-piece');
});

test('what a variation of the sketch does already is not offered again, whatever it is called', () => {
  expect(ids(sampleSketch())).toEqual(['plain-edges', 'glued-flat', 'another-card-size']);
  const [first] = readyVariations(plain);
  if (!first) throw new Error('the sample has round corners');
  expect(ids({ ...plain, variations: [{ ...first, id: 'mine', name: 'Mine' }] })).not.toContain('square-corners');
});

test('what is not accepted is not offered', () => {
  const none = (varied: Sketch): boolean => varied.pieces.every(({ raise }) => raise > 0 || raise === 0) && false;
  expect(readyVariations(plain, none)).toEqual([]);
  const raised = (varied: Sketch): boolean => varied.pieces.some(({ raise }) => raise > 0);
  expect(readyVariations(plain, raised).map(({ id }) => id)).toEqual([
    'square-corners',
    'plain-edges',
    'another-card-size',
  ]);
});

test('square corners, plain edges and no foam are exact', () => {
  const [corners, edges, flat] = readyVariations(plain);
  if (!corners || !edges || !flat) throw new Error('three are ready');
  expect(corners.edits).toEqual([{ do: 'round', piece: 'greeting', corners: square }]);
  expect(edges.edits).toEqual([{ do: 'punch', piece: 'strip', edge: 'bottom', punch: null }]);
  expect(flat.edits).toEqual([{ do: 'alter-piece', piece: 'greeting', raise: 0 }]);
});

test('none of the ready ones gives a new finding', () => {
  for (const sketch of [plain, sampleSketch(), withFocal()]) {
    const before = findings(sketch);
    const accepts = (varied: Sketch): boolean => findings(varied).every((finding) => before.includes(finding));
    const ready = readyVariations(sketch, accepts);
    expect(ready.length).toBeGreaterThan(1);
    for (const variation of ready) {
      const { sketch: varied, problems } = withVariation(sketch, variation);
      expect(problems).toEqual([]);
      expect(findings(varied).filter((finding) => !before.includes(finding))).toEqual([]);
    }
  }
});

test('a larger focal piece grows all round by marks of the ruler; its mat stays even and what it lies on still shows', () => {
  const sketch = withFocal();
  // The panel shows 7/8 in at the left and right of the focal piece; 1/8 in of that is mat.
  expect(largerFocal(sketch, () => true)).toEqual([
    { do: 'resize', piece: 'focal', x: inches(3 / 4), y: inches(2 - 3 / 8), width: inches(2.75), height: inches(2.75) },
  ]);
  const tight = withFocal({ x: inches(3 / 4) });
  const [edit] = largerFocal(tight, () => true);
  expect(edit).toMatchObject({ x: inches(1 / 2), width: inches(2.5) });
  const varied = applyEdits(tight, edit ? [edit] : []);
  expect(varied.pieces.find(({ id }) => id === 'focal-mat')).toMatchObject({ x: inches(3 / 8), width: inches(2.75) });
});

test('no room, no focal piece, or nothing accepted: none larger', () => {
  expect(largerFocal(plain, () => true)).toEqual([]);
  expect(largerFocal(withFocal({ x: inches(1 / 2) }), () => true)).toEqual([]);
  expect(largerFocal(withFocal(), () => false)).toEqual([]);
  const small = largerFocal(withFocal(), ({ pieces }) =>
    pieces.every(({ id, width }) => id !== 'focal' || width < inches(2.25)),
  );
  expect(small).toMatchObject([{ width: inches(2 + 1 / 8) }]);
});

test('a tilted focal piece keeps its corners on what it lies on, and a punched edge keeps whole repeats', () => {
  const upright = largerFocal(withFocal({ x: inches(7 / 8) }), () => true);
  const tilted = largerFocal(withFocal({ x: inches(7 / 8), tilt: 8 }), () => true);
  expect(upright).toMatchObject([{ width: inches(2.75) }]);
  expect(tilted).toMatchObject([{ width: inches(2 + 3 / 8) }]);
  const punched = withFocal({ x: inches(15 / 16), punched: { top: 'scallops' } });
  const longer = largerFocal({ ...punched, pieces: punched.pieces }, () => true);
  expect(longer).toMatchObject([{ width: inches(2.75) }]);
  const tightly = withFocal({ x: inches(11 / 16), punched: { top: 'scallops' } });
  expect(largerFocal(tightly, () => true)).toMatchObject([{ width: inches(2.25) }]);
});

test('in millimetres the marks are millimetres', () => {
  const metric = withFocal();
  const [edit] = largerFocal({ ...metric, unit: 'mm' }, () => true);
  expect(edit).toMatchObject({ do: 'resize', piece: 'focal', width: inches(2) + 2 * millimetres(10) });
});

const cardOf = (sketch: Sketch, accepts = (_varied: Sketch): boolean => true) => {
  const edits = otherCardSize(sketch, accepts);
  const varied = applyEdits(sketch, edits);
  return { edits, card: [varied.card.width, varied.card.height], varied };
};

test('another card size is the other usual one of its form, upright or lying, without the envelope', () => {
  const envelope = { name: 'US A2', width: inches(5.75), height: inches(4.375) };
  const { card, varied } = cardOf({ ...plain, card: { ...plain.card, envelope } });
  expect(card).toEqual([inches(5), inches(7)]);
  expect('envelope' in varied.card).toBe(false);
  expect(varied.pieces.find(({ id }) => id === 'panel-mat')).toMatchObject({ x: inches(1 / 8), width: inches(4.75) });
  const lying = { ...plain, card: { ...plain.card, width: inches(7), height: inches(5), fold: 'top' as const } };
  expect(cardOf(lying).card).toEqual([inches(5.5), inches(4.25)]);
  expect(cardOf({ ...plain, card: { ...plain.card, width: inches(5), height: inches(5) } }).card).toEqual([
    inches(5),
    inches(5),
  ]);
  const large = plain.papers.map((paper) => ({ ...paper, width: inches(12), height: inches(12) }));
  const square = { ...plain, papers: large, card: { ...plain.card, width: inches(5), height: inches(5) } };
  expect(cardOf(square).card).toEqual([inches(6), inches(6)]);
  expect(
    cardOf({ ...plain, unit: 'mm', card: { ...plain.card, width: millimetres(99), height: millimetres(210) } }).card,
  ).toEqual([millimetres(70), millimetres(148)]);
});

test('a size that its paper does not give, or that is not accepted, is passed over', () => {
  const small = plain.papers.map((paper) => (paper.id === 'ivory' ? { ...paper, height: inches(9.5) } : paper));
  expect(cardOf({ ...plain, papers: small }).edits).toEqual([]);
  const upright = plain.papers.map((paper) => (paper.id === 'ivory' ? { ...paper, directional: true } : paper));
  expect(cardOf({ ...plain, papers: upright }).edits).toEqual([]);
  expect(cardOf(plain, () => false).edits).toEqual([]);
  const own = { ...plain, card: { ...plain.card, width: inches(4), height: inches(5) } };
  expect(cardOf(own).card).toEqual([inches(5), inches(7)]);
  expect(cardOf(own, ({ card }) => card.width < inches(5)).card).toEqual([inches(4.25), inches(5.5)]);
});
