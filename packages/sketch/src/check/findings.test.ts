import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Edit, Paper, Piece, Sketch } from '../model/sketch.js';
import { type Finding, type FindingCode, SEVERITIES } from './finding.js';
import { checkSketch } from './findings.js';

const clean = sampleSketch();
const corners = (radius: number): Piece['corners'] => {
  const r = inches(radius);
  return { tl: r, tr: r, br: r, bl: r };
};
const round = (piece: string, radius: number): Edit => ({ do: 'round', piece, corners: corners(radius) });
const resize = (piece: string, x: number, y: number, width: number, height: number): Edit => ({
  do: 'resize',
  piece,
  x: inches(x),
  y: inches(y),
  width: inches(width),
  height: inches(height),
});
const place = (piece: string, x: number, y: number): Edit => ({ do: 'place', piece, x: inches(x), y: inches(y) });
const free = (piece: string): Edit => ({ do: 'mat', piece, mats: null });
const scallop = (edge: 'top' | 'bottom' | 'left'): Edit => ({ do: 'punch', piece: 'strip', edge, punch: 'scallops' });
const plain: Edit = { do: 'punch', piece: 'strip', edge: 'bottom', punch: null };
/** The sprigs, which have an up, on sheets that are too narrow for the strip unless it is turned. */
const narrowPrint: Edit = {
  do: 'set-paper',
  paper: { ...(clean.papers.find(({ id }) => id === 'sprig') as Paper), width: inches(2) },
};
const upright: Edit = { do: 'tilt', piece: 'greeting', tilt: 0 };
const glued: Edit = { do: 'alter-piece', piece: 'greeting', raise: ticks(0) };

const lace = {
  ...clean.punches[0],
  id: 'lace',
  name: 'Lace',
  profile: 'eyelet scallop',
  repeat: inches(1 / 2),
  depth: inches(1 / 8),
  bite: inches(1 / 8),
} as const;

const key = ({ code, piece, edge }: Finding): string => `${code} ${piece} ${edge ?? ''}`;
const rank = ({ severity }: Finding): number => SEVERITIES.indexOf(severity);

/** The fix of `finding` takes it away and brings nothing that is as bad. */
function expectMended(sketch: Sketch, finding: Finding): Sketch {
  const before = new Set(checkSketch(sketch).map(key));
  const mended = applyEdits(sketch, finding.fix);
  const after = checkSketch(mended);
  expect(after.map(key)).not.toContain(key(finding));
  expect(after.filter((other) => !before.has(key(other)) && rank(other) <= rank(finding))).toEqual([]);
  return mended;
}

test('a sound sketch has nothing to watch; fifteen whole repeats of 1/4 in fill 3 3/4 in', () => {
  expect(checkSketch(clean)).toEqual([]);
  expect(checkSketch(applyEdits(clean, [plain]))).toEqual([]);
});

test.each<readonly [FindingCode, string, readonly Edit[], Length, string]>([
  ['radius-too-large', 'greeting', [round('greeting', 1)], inches(1.25), 'stops the build'],
  ['off-the-card', 'strip', [place('strip', 1, 5)], inches(1 / 2), 'looks wrong'],
  ['print-on-its-side', 'strip', [{ do: 'tilt', piece: 'strip', tilt: 90 }], inches(1), 'looks wrong'],
  [
    'print-on-its-side',
    'panel',
    [free('panel-mat'), { do: 'tilt', piece: 'panel', tilt: 180 }],
    inches(5),
    'looks wrong',
  ],
  ['print-must-turn', 'strip', [narrowPrint], inches(1.75), 'stops the build'],
  ['hidden', 'strip', [resize('greeting', 0, 2, 4.25, 3), upright], inches(1), 'looks wrong'],
  ['uneven-reveal', 'strip', [plain, resize('strip', 0.3125, 3, 3.5, 1)], inches(1 / 8), 'looks wrong'],
  ['uneven-reveal', 'liner', [resize('liner', 0.125, 0.125, 4, 5.125)], inches(1 / 8), 'looks wrong'],
  [
    'mat-out-of-true',
    'panel-mat',
    [free('panel-mat'), place('panel-mat', 0.0625, 0.125)],
    inches(1 / 8),
    'looks wrong',
  ],
  [
    'corners-not-concentric',
    'panel-mat',
    [round('panel', 0.125), round('panel-mat', 0.125)],
    inches(1 / 8),
    'looks wrong',
  ],
  ['corners-not-concentric', 'panel-mat', [round('panel-mat', 0.5)], inches(3 / 8), 'looks wrong'],
  [
    'short-punched-edge',
    'strip',
    [plain, scallop('top'), resize('strip', 1, 3, 0.1875, 1)],
    inches(1 / 16),
    'looks wrong',
  ],
  ['part-repeats', 'strip', [scallop('top'), resize('strip', 0, 3, 3.625, 1)], inches(3 / 16), 'looks wrong'],
  [
    'punch-too-deep',
    'strip',
    [plain, scallop('top'), resize('strip', 0.25, 3, 3.75, 0.125)],
    inches(0),
    'stops the build',
  ],
  [
    'overlap-too-small',
    'strip',
    [plain, upright, glued, resize('greeting', 0.5, 3.9375, 3, 1)],
    inches(1 / 16),
    'looks wrong',
  ],
  ['too-narrow', 'strip', [plain, resize('strip', 0.25, 3, 3.75, 0.1875)], inches(3 / 16), 'worth knowing'],
  ['off-the-ruler', 'strip', [plain, resize('strip', 0.25, 3, 2 + 1 / 64, 1)], ticks(254), 'worth knowing'],
  ['place-off-the-ruler', 'strip', [plain, place('strip', 0.25, 3 + 1 / 64)], ticks(254), 'worth knowing'],
  ['punched-edge-covered', 'strip', [upright, resize('greeting', 0.25, 3.5, 3.75, 1)], inches(1 / 8), 'worth knowing'],
])('%s is found at %s, and its fix takes it away', (code, piece, edits, amount, severity) => {
  const spoilt = applyEdits(clean, edits);
  const finding = checkSketch(spoilt).find((candidate) => candidate.code === code);
  expect(finding, JSON.stringify(checkSketch(spoilt))).toMatchObject({ piece, amount, severity });
  if (!finding) throw new Error('found above');
  expect(finding.fix.length).toBeGreaterThan(0);
  expectMended(spoilt, finding);
});

test('a tilted piece is judged by its true outline: a long strip turned over the edge, a circle turned within it', () => {
  const turned = applyEdits(clean, [plain, place('strip', 0.25, 0.25), { do: 'tilt', piece: 'strip', tilt: 20 }]);
  const finding = checkSketch(turned).find(({ code }) => code === 'off-the-card');
  // Half the height of the box less half the strip: (3.75 sin 20 + 1 cos 20) / 2 - 0.75 in (by hand).
  expect((finding?.amount ?? 0) / inches(1)).toBeCloseTo(0.361, 2);
  if (!finding) throw new Error('found above');
  const mended = expectMended(turned, finding);
  const moved = mended.pieces.find(({ id }) => id === 'strip');
  expect((moved?.y ?? 0) % inches(1 / 16)).toBe(0);
  const circle = applyEdits(clean, [
    plain,
    { do: 'alter-piece', piece: 'greeting', shape: 'ellipse' },
    resize('greeting', 0, 0, 2, 2),
    { do: 'tilt', piece: 'greeting', tilt: 45 },
  ]);
  expect(checkSketch(circle).map(({ code }) => code)).not.toContain('off-the-card');
});

test('a lap is measured along the sides of the papers, however both are turned; round ones may lie over each other as they like', () => {
  const tilt = (piece: string, degrees: number): Edit => ({ do: 'tilt', piece, tilt: degrees });
  // Two strips of 2 by 1 in end to end, both turned by 30 degrees about middles that lie 1 15/16 in apart along the turned side.
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  const toTick = (length: number): number => Math.round(length * inches(1)) / inches(1);
  const beside = (apart: number): readonly Edit[] => [
    plain,
    upright,
    glued,
    resize('strip', 0.5, 1, 2, 1),
    resize('greeting', toTick(0.5 + apart * cos), toTick(1 + apart * sin), 2, 1),
    tilt('strip', 30),
    tilt('greeting', 30),
  ];
  const lapped = applyEdits(clean, beside(1.9375));
  const finding = checkSketch(lapped).find(({ code }) => code === 'overlap-too-small');
  expect(Math.abs((finding?.amount ?? 0) - inches(1 / 16))).toBeLessThan(2);
  if (!finding) throw new Error('found above');
  expect(finding.fix).toMatchObject([{ do: 'place' }]);
  expectMended(lapped, finding);
  for (const apart of [1.5, 2.0001]) {
    const codes = checkSketch(applyEdits(clean, beside(apart))).map(({ code }) => code);
    expect(codes).not.toContain('overlap-too-small');
  }
  const oval: Edit = { do: 'alter-piece', piece: 'greeting', shape: 'ellipse' };
  const round = applyEdits(clean, [...beside(1.9375), oval]);
  expect(checkSketch(round).map(({ code }) => code)).not.toContain('overlap-too-small');
});

test('a piece larger than the card is not moved; one that is only over the edge of a metric card by a tick is', () => {
  const wide = applyEdits(clean, [plain, resize('strip', -1, 3, 6, 1)]);
  expect(checkSketch(wide)).toMatchObject([{ code: 'off-the-card', fix: [] }]);
  const tick = applyEdits(clean, [plain, { do: 'place', piece: 'strip', x: ticks(-1), y: inches(3) }]);
  expect(checkSketch(tick).find(({ code }) => code === 'off-the-card')).toMatchObject({ amount: 1 });
});

test('what is under vellum is seen; two covers hide what one does not', () => {
  const cover = applyEdits(clean, [plain, upright, resize('greeting', 0, 2, 4.25, 3)]);
  const paper = cover.papers.find(({ id }) => id === 'ivory');
  if (!paper) throw new Error('ivory is there');
  expect(checkSketch(cover).map(({ code }) => code)).toContain('hidden');
  const vellum = applyEdits(cover, [{ do: 'set-paper', paper: { ...paper, kind: 'vellum' } }]);
  expect(checkSketch(vellum).map(({ code }) => code)).not.toContain('hidden');
});

test('below a tilted cover with one punched edge a piece is hidden up to its plain edges, and seen at the punched one', () => {
  // Both turned by 30 degrees; the greeting ends 1/64 in within the strip on three sides, far less than the scallops are deep.
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  const below = (height: number): Sketch => {
    const down = 1 / 64 + height / 2 - 1 / 2;
    const width = 3 - 2 / 64;
    const toTick = (length: number): number => Math.round(length * inches(1)) / inches(1);
    return applyEdits(clean, [
      resize('strip', 0.5, 2, 3, 1),
      { do: 'tilt', piece: 'strip', tilt: 30 },
      resize('greeting', toTick(2 - down * sin - width / 2), toTick(2.5 + down * cos - height / 2), width, height),
      { do: 'alter-piece', piece: 'greeting', shape: 'rectangle' },
      { do: 'tilt', piece: 'greeting', tilt: 30 },
      { do: 'order', piece: 'greeting', to: clean.pieces.findIndex(({ id }) => id === 'strip') },
    ]);
  };
  const hidden = (sketch: Sketch) => checkSketch(sketch).filter(({ code }) => code === 'hidden');
  expect(hidden(below(1 / 2))).toMatchObject([{ piece: 'greeting', other: 'strip' }]);
  expect(hidden(below(15 / 16))).toEqual([]);
});

test('through the eyelets of a punched edge a piece below is seen', () => {
  // Deeper than the scallops, and where the eyelets are: their far side is 1/16 + 1/8 + 1/20 in from the edge.
  const below = (from: number): readonly Finding[] =>
    checkSketch(
      applyEdits({ ...clean, punches: [...clean.punches, lace] }, [
        plain,
        upright,
        glued,
        { do: 'alter-piece', piece: 'greeting', shape: 'rectangle' },
        { do: 'punch', piece: 'strip', edge: 'top', punch: 'lace' },
        resize('greeting', 1, 3 + from, 2, 1 / 4),
        { do: 'order', piece: 'greeting', to: clean.pieces.findIndex(({ id }) => id === 'strip') },
      ]),
    ).filter(({ code }) => code === 'hidden');
  expect(below(9 / 64)).toEqual([]);
  expect(below(1 / 4)).toMatchObject([{ piece: 'greeting' }]);
});

test('no piece is moved in below a cover, nor a cover over it', () => {
  const pushed = (piece: string, cover: string): readonly Finding[] => {
    const order: Edit = { do: 'order', piece: cover, to: clean.pieces.length - 1 };
    const at = [resize(piece, 3.5, 2, 1, 1), resize(cover, 2.75, 1.75, 1.5, 1.5)];
    return checkSketch(applyEdits(clean, [plain, upright, glued, order, ...at]));
  };
  expect(pushed('strip', 'greeting')).toContainEqual(
    expect.objectContaining({ code: 'off-the-card', piece: 'strip', fix: [] }),
  );
  const over = applyEdits(clean, [
    plain,
    upright,
    glued,
    resize('strip', 2.75, 2, 1, 1),
    resize('greeting', 3, 1.75, 1.5, 1.5),
  ]);
  expect(checkSketch(over)).toContainEqual(
    expect.objectContaining({ code: 'off-the-card', piece: 'greeting', fix: [] }),
  );
});

test('borders that are meant to differ are left alone: a wide foot, a strip at the edge, a middle between two marks', () => {
  const foot = applyEdits(clean, [resize('liner', 0.125, 0.125, 4, 4.75)]);
  const flush = applyEdits(clean, [plain, resize('strip', 0.25, 3, 3.625, 1)]);
  const between = applyEdits(clean, [plain, resize('strip', 0.3125, 3, 3.6875, 1)]);
  for (const sketch of [foot, flush, between]) expect(checkSketch(sketch).map(key)).toEqual([]);
});

test('a square corner within a rounded one is told only where it nearly pokes out; a rounded one within a square one never', () => {
  expect(checkSketch(applyEdits(clean, [round('panel-mat', 0.125)]))).toEqual([]);
  expect(checkSketch(applyEdits(clean, [round('panel', 0.25)]))).toEqual([]);
  expect(checkSketch(applyEdits(clean, [round('panel', 0.125), round('panel-mat', 0.25)]))).toEqual([]);
});

test('a mat is brought back into true by following the piece it lies behind', () => {
  const loose = applyEdits(clean, [free('panel-mat'), place('panel-mat', 0.0625, 0.125)]);
  const [finding] = checkSketch(loose);
  expect(finding).toMatchObject({ code: 'mat-out-of-true', other: 'panel' });
  const mended = applyEdits(loose, finding?.fix ?? []);
  expect(mended.pieces[0]).toEqual(clean.pieces[0]);
});

test('the marks of a metric sketch are whole millimetres', () => {
  const metric = applyEdits(clean, [
    plain,
    { do: 'unit', unit: 'mm' },
    { do: 'resize', piece: 'strip', x: ticks(0), y: ticks(0), width: millimetres(80), height: millimetres(20) },
  ]);
  expect(checkSketch(metric).filter(({ piece }) => piece === 'strip')).toEqual([]);
  expect(checkSketch(metric).some(({ code, piece }) => code === 'off-the-ruler' && piece === 'panel')).toBe(true);
});

test('worst first, then in gluing order', () => {
  const spoilt = applyEdits(clean, [
    place('strip', 1, 5),
    round('greeting', 1),
    resize('liner', 0.125, 0.125, 4, 5.125),
  ]);
  const ranks = checkSketch(spoilt).map(rank);
  expect(ranks.length).toBeGreaterThan(2);
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
});

const spoiling: fc.Arbitrary<Edit> = fc.oneof(
  fc
    .record({
      piece: fc.constantFrom('panel', 'strip', 'greeting', 'liner', 'panel-mat'),
      x: fc.integer({ min: -4, max: 60 }),
      y: fc.integer({ min: -4, max: 80 }),
      width: fc.integer({ min: 6, max: 70 }),
      height: fc.integer({ min: 6, max: 90 }),
      off: fc.constantFrom(0, 0, 127, 254),
    })
    .map(
      ({ piece, x, y, width, height, off }): Edit => ({
        do: 'resize',
        piece,
        x: ticks(x * 1016 + off),
        y: ticks(y * 1016),
        width: ticks(width * 1016 + off),
        height: ticks(height * 1016),
      }),
    ),
  fc
    .constantFrom('panel', 'panel-mat', 'greeting', 'strip')
    .chain((piece) => fc.constantFrom(0, 1 / 8, 1 / 4, 1 / 2, 1).map((radius): Edit => round(piece, radius))),
  fc.constantFrom<Edit>(scallop('top'), scallop('left'), free('panel-mat'), upright, {
    do: 'tilt',
    piece: 'strip',
    tilt: 12,
  }),
  fc.constantFrom(90, -90, 180).map((tilt): Edit => ({ do: 'tilt', piece: 'strip', tilt })),
  fc.constantFrom(0, 1, 2, 3).map((to): Edit => ({ do: 'order', piece: 'strip', to })),
);

test('whatever is wrong, each fix that is offered takes its finding away and brings none that is as bad', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(fc.array(spoiling, { minLength: 1, maxLength: 5 }), (edits) => {
      const spoilt = applyEdits(clean, edits);
      for (const finding of checkSketch(spoilt)) {
        if (finding.fix.length === 0) continue;
        seen.add(finding.code);
        expectMended(spoilt, finding);
      }
    }),
    { numRuns: 250, seed: 41 },
  );
  expect(seen.size).toBeGreaterThanOrEqual(10);
});

test('a punch with eyelets is too deep where the eyelets are, though its profile is not', () => {
  const low = applyEdits({ ...clean, punches: [...clean.punches, lace] }, [
    plain,
    { do: 'punch', piece: 'strip', edge: 'top', punch: 'lace' },
    resize('strip', 0.25, 3, 3.75, 0.1875),
  ]);
  const found = checkSketch(low).find(({ code }) => code === 'punch-too-deep');
  // The far side of an eyelet: 1/16 + 1/8 + 1/20 in from the edge.
  expect(found).toMatchObject({
    piece: 'strip',
    edge: 'top',
    amount: Math.ceil(inches(1) * (1 / 16 + 1 / 8 + 1 / 20)) - inches(3 / 16),
  });
  if (found) expectMended(low, found);
});

test('cut upright, a punched strip that was turned by a quarter lies where it lay, its punched edge too', () => {
  const sketch = applyEdits(clean, [{ do: 'tilt', piece: 'strip', tilt: 90 }]);
  const finding = checkSketch(sketch).find(({ code }) => code === 'print-on-its-side');
  const strip = applyEdits(sketch, finding?.fix ?? []).pieces.find(({ id }) => id === 'strip');
  // About its middle at (2 1/8, 3 1/2) in; a clockwise quarter brings the lower edge to the left (by hand).
  expect(strip).toMatchObject({
    tilt: 0,
    x: inches(1.625),
    y: inches(1.625),
    width: inches(1),
    height: inches(3.75),
    punched: { left: 'scallops' },
  });
  expect(strip?.punched.bottom).toBeUndefined();
});
