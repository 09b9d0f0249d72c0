import { inches, millimetres, ticks } from '@trimwell/geometry';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatCard } from '../../../../tests/kit/flat-card.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { planBatch } from '../batch/batch-plan.js';
import { batchRecipe } from '../batch/batch-recipe.js';
import { SEVERITIES } from '../check/finding.js';
import { checkSketch } from '../check/findings.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Edit, Paper, Piece, Sketch } from '../model/sketch.js';
import { type Assembly, assembly } from './assembly.js';
import type { AssemblyOptions } from './card-facts.js';
import type { CardFindingCode } from './card-finding.js';
import { heightMap } from './height-map.js';

/** The sample with papers of half a millimetre and 200 g/m2, as if measured. */
function measured(change: Partial<Paper> = {}): Sketch {
  const sketch = sampleSketch();
  const caliper = millimetres(0.5);
  return { ...sketch, papers: sketch.papers.map((paper) => ({ ...paper, caliper, gsm: 200, ...change })) };
}

const envelope = (width: number, height: number): Edit => ({
  do: 'card',
  card: { ...measured().card, envelope: { name: 'own', width: inches(width), height: inches(height) } },
});
const base = (change: Partial<Paper>): Edit => {
  const paper = measured().papers.find(({ id }) => id === 'ivory') as Paper;
  return { do: 'set-paper', paper: { ...paper, ...change } };
};
const raise = (piece: string, by: number): Edit => ({ do: 'alter-piece', piece, raise: inches(by) });

test('the stack by hand: mat, panel, the strip, and apart from it the greeting on its foam', () => {
  // Base, mat, panel and strip are 0.5 each; the greeting ends at 2 1/4 in and a little, the strip begins at 3 in.
  const { steps, thickness, front, inside } = assembly(measured());
  const foam = 25.4 / 16;
  expect(steps.map(({ piece, restsOn, adhesive, height }) => [piece, restsOn.join(), adhesive, height / 640])).toEqual([
    ['card-base', '', null, 0.5],
    ['panel-mat', 'card-base', 'flat', 1],
    ['panel', 'panel-mat', 'flat', 1.5],
    ['strip', 'panel', 'flat', 2],
    ['greeting', 'panel', 'foam', 2 + foam],
    ['liner', 'card-base', 'flat', 1],
  ]);
  expect(front.heights.height).toBe(millimetres(1.5) + inches(1 / 16));
  expect(inside.heights.height).toBe(millimetres(0.5));
  // Two leaves, the front and the inside (by hand).
  expect(thickness).toEqual({
    height: 2 * millimetres(0.5) + millimetres(1.5) + inches(1 / 16) + millimetres(0.5),
    base: millimetres(1),
    front: millimetres(1.5) + inches(1 / 16),
    inside: millimetres(0.5),
    estimated: false,
  });
});

test('glued flat onto the edge of what stands on foam, a piece is held too little; under it, it lies on the panel (by hand)', () => {
  // The strip, 3 to 4 in down, on foam; the greeting, an oval, ends a little over its upper edge, the rest of it in the air.
  const flat = (foam: number, overlap: number, shape: Piece['shape'] = 'ellipse'): Sketch =>
    applyEdits(measured(), [
      { do: 'punch', piece: 'strip', edge: 'bottom', punch: null },
      raise('strip', foam),
      raise('greeting', 0),
      { do: 'alter-piece', piece: 'greeting', shape },
      { do: 'tilt', piece: 'greeting', tilt: 0 },
      {
        do: 'resize',
        piece: 'greeting',
        x: inches(1),
        y: ticks(inches(2) + overlap),
        width: inches(2),
        height: inches(1),
      },
    ]);
  const held = (sketch: Sketch) => assembly(sketch).findings.find(({ code }) => code === 'held-too-little');
  const sketch = flat(1 / 8, inches(1 / 16));
  const found = held(sketch);
  expect(found).toMatchObject({ piece: 'greeting', severity: 'looks wrong', place: { face: 'front', top: inches(3) } });
  expect(found?.place?.bottom).toBeCloseTo(inches(3 + 1 / 16), 0);
  // The largest disc in the end of the oval touches the strip's edge and the end itself; it is found to 1/80 mm.
  expect(Math.abs((found?.amount ?? 0) - inches(1 / 16))).toBeLessThan(20);
  const mended = assembly(applyEdits(sketch, found?.fix ?? []));
  expect(mended.findings.map(({ code }) => code)).not.toContain('held-too-little');
  expect(mended.steps.find(({ piece }) => piece === 'greeting')).toMatchObject({ restsOn: ['panel'], bridges: [] });
  expect(held(flat(1 / 8, inches(1 / 8) + 20))).toBeUndefined();
  // A paper follows a step of a paper or two.
  expect(held(flat(0, inches(1 / 16)))).toBeUndefined();
  // Of two rectangles the lap is told, where it is mended, and not a second time.
  const lapped = flat(1 / 8, inches(1 / 16), 'rectangle');
  expect(checkSketch(lapped)).toMatchObject([{ code: 'overlap-too-small', piece: 'strip', other: 'greeting' }]);
  expect(held(lapped)).toBeUndefined();
});

test('laid over the strip on its foam, the greeting rests on it; through the gap the panel is seen, not what that hides', () => {
  const over: Edit = { do: 'place', piece: 'greeting', x: inches(1), y: inches(2.75) };
  const step = (sketch: Sketch) => assembly(sketch).steps.find(({ piece }) => piece === 'greeting');
  const raised = applyEdits(measured(), [over, raise('strip', 1 / 8)]);
  expect(step(raised)).toMatchObject({ restsOn: ['strip'], bridges: ['panel'] });
  expect(step(raised)?.height).toBe(millimetres(2.5) + inches(3 / 16));
  // A step of one paper is followed: that is no gap.
  expect(step(applyEdits(measured(), [over]))).toMatchObject({ restsOn: ['strip'], bridges: [] });
});

test('half over another piece and half over the bare card, a piece bridges the card', () => {
  const half = measured();
  const pieces = half.pieces.filter(({ id }) => id === 'strip' || id === 'greeting');
  const only = { ...half, pieces, batch: { ...half.batch, contrast: [] } };
  const sketch = applyEdits(only, [
    { do: 'tilt', piece: 'greeting', tilt: 0 },
    { do: 'place', piece: 'greeting', x: inches(1), y: inches(2.75) },
    raise('strip', 1 / 8),
  ]);
  const step = assembly(sketch).steps.find(({ piece }) => piece === 'greeting');
  expect(step).toMatchObject({ restsOn: ['strip'], bridges: ['card-base'] });
});

test('without a fold both faces are on one leaf, and the back is seen mirrored', () => {
  const sketch = measured();
  const flat = applyEdits(sketch, [
    { do: 'card', card: { ...sketch.card, fold: 'none' } },
    { do: 'place', piece: 'liner', x: inches(-1 / 2), y: inches(1 / 8) },
    { do: 'place', piece: 'strip', x: inches(1), y: inches(3) },
  ]);
  const found = assembly(flat);
  expect(found.steps.at(-1)?.height).toBe(found.thickness.height);
  // 1/2 in over the left of the back is 1/2 in over the right of the front, where the strip reaches out as far (by hand).
  expect(found.envelopes.holds.width).toBe(inches(4.75));
});

test('without a fold a card turned over asks for the same envelope', () => {
  const sketch = measured();
  const flat = applyEdits(sketch, [{ do: 'card', card: { ...sketch.card, fold: 'none' } }]);
  const on = (face: 'front' | 'inside') => {
    const pieces = flat.pieces.filter(({ id }) => id === 'greeting').map((piece) => ({ ...piece, face, tilt: 0 }));
    return assembly({ ...flat, pieces }).envelopes.thick;
  };
  expect(on('inside').across).toBeCloseTo(on('front').across, 6);
  expect(on('inside').down).toBeCloseTo(on('front').down, 6);
});

test('what is borne all over bridges nothing, however much lies deeper', () => {
  const { steps } = assembly(measured());
  expect(steps.find(({ piece }) => piece === 'panel')).toMatchObject({ restsOn: ['panel-mat'], bridges: [] });
  expect(steps.find(({ piece }) => piece === 'strip')).toMatchObject({ restsOn: ['panel'], bridges: [] });
});

test('the profile from below: mat, panel, greeting where it lies, panel, mat, and the bare edge of the card', () => {
  const upright = applyEdits(measured(), [{ do: 'tilt', piece: 'greeting', tilt: 0 }]);
  const { profiles } = assembly(upright);
  expect(profiles.front.fromBelow.map(({ from, to }) => [from / inches(1), to / inches(1)])).toEqual([
    [0, 0.125],
    [0.125, 0.25],
    [0.25, 1],
    [1, 3.25],
    [3.25, 4],
    [4, 4.125],
    [4.125, 4.25],
  ]);
});

test('the height map: each piece where it lies topmost, and together all that is glued on (by hand)', () => {
  const sketch = applyEdits(measured(), [
    { do: 'tilt', piece: 'greeting', tilt: 0 },
    { do: 'round', piece: 'greeting', corners: (measured().pieces[0] as Piece).corners },
    { do: 'punch', piece: 'strip', edge: 'bottom', punch: null },
  ]);
  const map = heightMap(sketch, assembly(sketch).front);
  const square = inches(1) ** 2;
  // Mat 4 x 5 1/4 less panel 3 3/4 x 5; panel less strip 3 3/4 x 1 and greeting 2 1/4 x 3/4.
  expect(map.map(({ piece, height, area }) => [piece, height / 640, area / square])).toEqual([
    ['panel-mat', 0.5, 21 - 18.75],
    ['panel', 1, 18.75 - 3.75 - 1.6875],
    ['strip', 1.5, 3.75],
    ['greeting', 1.5 + 25.4 / 16, 1.6875],
  ]);
  expect(map[0]?.rings).toHaveLength(2);
});

test('the sample has nothing to watch, with and without its plan', () => {
  expect(assembly(measured()).findings).toEqual([]);
  const sketch = measured();
  const batch = planBatch(batchRecipe(sketch), 6);
  expect(assembly(sketch, { batch }).findings).toEqual([]);
});

test('all posts are told without being asked for one, and the notice with them', () => {
  const { post, notice, posted } = assembly(measured());
  expect(post).toHaveLength(6);
  expect(notice).toContain('check with your post office');
  // US A2, the smallest usual envelope that holds 4 1/4 x 5 1/2 in (common practice); three sheets of envelope paper.
  expect([posted.width, posted.height]).toEqual([inches(4.375), inches(5.75)]);
  expect(posted.thickness).toBe(assembly(measured()).thickness.height + Math.round(3 * 0.13 * 640));
});

const rank = (severity: (typeof SEVERITIES)[number]): number => SEVERITIES.indexOf(severity);

/** A fix takes its finding away, and brings neither the card nor a piece anything as bad that was not there before. */
function expectMended(sketch: Sketch, options: AssemblyOptions, found: Assembly): void {
  const before = new Set([...found.findings, ...checkSketch(sketch)].map(({ code, piece }) => `${code} ${piece}`));
  for (const finding of found.findings) {
    if (finding.fix.length === 0) continue;
    const mended = applyEdits(sketch, finding.fix);
    const batch = options.batch && planBatch(batchRecipe(mended), options.batch.cards);
    const after = [...assembly(mended, { ...options, ...(batch ? { batch } : {}) }).findings, ...checkSketch(mended)];
    expect(after.map(({ code, piece }) => `${code} ${piece}`)).not.toContain(`${finding.code} ${finding.piece}`);
    const fresh = after.filter(({ code, piece }) => !before.has(`${code} ${piece}`) && code !== 'letter-surcharge');
    expect(fresh.filter(({ severity }) => rank(severity) <= rank(finding.severity))).toEqual([]);
  }
}

test.each<readonly [CardFindingCode, string, readonly Edit[], string | undefined, boolean]>([
  ['envelope-too-tight', 'stops the build', [envelope(5.25, 4.375)], undefined, true],
  ['envelope-too-tight', 'looks wrong', [envelope(5.75, 4.25 + 1 / 64)], undefined, true],
  ['envelope-too-tight', 'worth knowing', [envelope(5.75, 4.25 + 3 / 32)], undefined, true],
  ['fold-across-grain', 'worth knowing', [base({ grain: 'width', directional: true })], undefined, false],
  ['fold-across-grain', 'looks wrong', [base({ grain: 'width', directional: true, gsm: 300 })], undefined, false],
  ['letter-surcharge', 'worth knowing', [], 'US', false],
  ['dearer-letter', 'worth knowing', [raise('greeting', 1 / 4)], 'US', true],
  ['dearer-letter', 'worth knowing', [raise('greeting', 1 / 4)], 'DE', false],
  ['no-letter', 'looks wrong', [raise('greeting', 1)], 'US', true],
])('%s (%s) is found, and its fix, where it has one, takes it away', (code, severity, edits, post, fixed) => {
  const sketch = applyEdits(measured(), edits);
  const options = post === undefined ? {} : { post };
  const found = assembly(sketch, options);
  const finding = found.findings.find((each) => each.code === code);
  expect(finding, JSON.stringify(found.findings)).toMatchObject({ severity });
  expect((finding?.fix.length ?? 0) > 0).toBe(fixed);
  expectMended(sketch, options, found);
});

test('a dark base without anything inside gets a liner of the light plain paper, which takes the finding away', () => {
  const dark = applyEdits(measured(), [
    base({ look: { pattern: 'plain', ground: '#101018', inks: [], repeat: inches(1) } }),
    { do: 'remove-piece', piece: 'liner' },
  ]);
  const found = assembly(dark);
  expect(found.findings).toMatchObject([{ code: 'dark-inside', fix: [{ do: 'add-piece', at: 0 }] }]);
  expectMended(dark, {}, found);
  const liner = applyEdits(dark, found.findings[0]?.fix ?? []).pieces[0];
  expect(liner).toMatchObject({
    face: 'inside',
    x: inches(1 / 8),
    width: inches(4),
    height: inches(5.25),
    from: 'moss',
  });
});

test('the liner is of an opaque plain paper that is large enough', () => {
  const dark = applyEdits(measured(), [
    base({ look: { pattern: 'plain', ground: '#101018', inks: [], repeat: inches(1) } }),
    { do: 'remove-piece', piece: 'liner' },
  ]);
  const [moss] = dark.papers.filter(({ id }) => id === 'moss');
  if (!moss) throw new Error('the sample has moss card');
  const vellum = { ...moss, id: 'mist', kind: 'vellum' } as const;
  const scrap = { ...moss, id: 'scrap', width: inches(3), height: inches(3) };
  const from = (papers: Sketch['papers']): unknown => {
    const [fix] = assembly({ ...dark, papers }).findings.flatMap((each) =>
      each.code === 'dark-inside' ? each.fix : [],
    );
    return fix?.do === 'add-piece' ? fix.piece.from : null;
  };
  expect(from([vellum, scrap, ...dark.papers])).toBe('moss');
  // The other papers of the sample are patterned, or dark by now.
  const others = dark.papers.map((paper) =>
    paper.id === 'moss' ? { ...paper, width: inches(3), height: inches(3) } : paper,
  );
  expect(from(others)).not.toBe('moss');
});

test('a board under a piece makes the letter uneven, as foam does; papers do not', () => {
  const flat = flatCard({ tile: { at: [1, 1, 1.5, 1.5] } });
  expect(assembly(flat).posted.uneven).toBe(false);
  expect(assembly(flatCard({ tile: { at: [1, 1, 1.5, 1.5], foam: 1 / 16 } })).posted.uneven).toBe(true);
  const [paper] = flat.papers;
  if (!paper) throw new Error('the card has a paper');
  const papers = [paper, { ...paper, id: 'board', caliper: millimetres(2) }];
  const pieces = flat.pieces.map((piece) => (piece.id === 'tile' ? { ...piece, from: 'board' } : piece));
  expect(assembly({ ...flat, papers, pieces }).posted.uneven).toBe(true);
});

test('a card larger than every usual envelope gets one that is folded from paper', () => {
  const sketch = measured();
  const large: Sketch = { ...sketch, card: { ...sketch.card, width: inches(11), height: inches(11.5) } };
  const found = assembly(large);
  expect(found.findings.map(({ code }) => code)).toContain('no-usual-envelope');
  expectMended(large, {}, found);
});

test('what the sheets do not give, and cuts between the marks of the ruler, are told from the plan', () => {
  const short = applyEdits(measured(), [
    { do: 'resize', piece: 'strip', x: inches(0.25), y: inches(3), width: inches(13), height: inches(1) },
  ]);
  const batch = planBatch(batchRecipe(short), 6);
  const [unmade] = assembly(short, { batch }).findings;
  expect(unmade).toMatchObject({ code: 'cannot-be-cut', severity: 'stops the build', piece: 'strip', amount: 6 });
  const off = applyEdits(measured(), [
    { do: 'punch', piece: 'strip', edge: 'bottom', punch: null },
    { do: 'resize', piece: 'strip', x: inches(0.25), y: inches(3), width: inches(2 + 1 / 64), height: inches(1) },
  ]);
  const options = { batch: planBatch(batchRecipe(off), 2) };
  const found = assembly(off, options);
  expect(found.findings.length).toBeGreaterThan(0);
  expect(found.findings[0]).toMatchObject({ code: 'cut-off-the-ruler', piece: 'strip', amount: 254 });
  expect(found.findings.some(({ fix }) => fix.length > 0)).toBe(true);
  expectMended(off, options, found);
});

test('what hangs over the edge of the card has to go into the envelope too', () => {
  const over = applyEdits(measured(), [{ do: 'place', piece: 'strip', x: inches(1), y: inches(3) }]);
  // The strip ends at 4 3/4 in, half an inch beyond the card.
  expect(assembly(over).envelopes.holds).toEqual({ width: inches(4.75), height: inches(5.5) });
});

const spoiling: fc.Arbitrary<Edit> = fc.oneof(
  fc
    .tuple(fc.integer({ min: 60, max: 120 }), fc.integer({ min: 60, max: 120 }))
    .map(([w, h]) => envelope(w / 16, h / 16)),
  fc
    .tuple(fc.constantFrom('greeting', 'strip', 'panel'), fc.constantFrom(0, 1 / 16, 1 / 8, 1 / 4))
    .map(([piece, by]) => raise(piece, by)),
  fc.constantFrom<Edit>(base({ grain: 'width', directional: true }), base({ gsm: 320 })),
  fc
    .tuple(fc.constantFrom('greeting', 'strip'), fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 70 }))
    .map(([piece, x, y]): Edit => ({ do: 'place', piece, x: ticks(x * 1016), y: ticks(y * 1016) })),
);

test('whatever is wrong, each fix that is offered takes its finding away and brings none that is as bad', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(
      fc.array(spoiling, { minLength: 1, maxLength: 4 }),
      fc.constantFrom('US', 'DE', 'GB', undefined),
      (edits, post) => {
        const sketch = applyEdits(measured(), edits);
        const options = post === undefined ? {} : { post };
        const found = assembly(sketch, options);
        for (const { code, fix } of found.findings) if (fix.length > 0) seen.add(code);
        expectMended(sketch, options, found);
      },
    ),
    { numRuns: 60, seed: 23 },
  );
  expect([...seen].sort()).toEqual(expect.arrayContaining(['dearer-letter', 'envelope-too-tight']));
});
