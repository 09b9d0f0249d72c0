import { flatCardBase, outlineArea, pieceOutline, planCuts, ticks } from '@trimwell/geometry';
import { pieceShape } from '@trimwell/handout';
import { type CutFileOptions, cutFiles, zipCutFiles } from '@trimwell/handout/cut-files';
import { batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';
import DxfParser from 'dxf-parser';
import { expect, test } from 'vitest';
import { paintSvg } from '../handout/pictures.js';
import { boxSize, expectSameDrawing, expectSoundSvg, HUNDREDTH, PER_UNIT, sketches } from './cut-files-kit.js';
import { readDrawings } from './read-drawings.js';
import { readCutSvg } from './read-svg.js';

const CARDS = 3;
const WAYS: readonly CutFileOptions[] = (['sheet', 'piece'] as const).flatMap((each) =>
  (['in', 'mm'] as const).map((unit) => ({ each, unit, cards: CARDS })),
);
const ALL = sketches();

function wayName(sketch: string, { each, unit }: CutFileOptions, file: string): string {
  return `${sketch}-${each}-${unit}-${file}`.replace(/[^\w.-]/g, '-');
}

/** The pieces of the document by name, with the sizes that must come out: the base opened flat, a finished piece. */
function sizesOf(sketch: Sketch): ReadonlyMap<string, readonly [width: number, height: number]> {
  const base = flatCardBase(sketch.card);
  return new Map([
    ['card base', [base.width, base.height] as const],
    ...sketch.pieces.map(({ name, width, height }) => [name, [width, height] as const] as const),
  ]);
}

test.each(ALL)('%s: every piece is its own size within 0.01 mm, its holes with it, in both units', (_, sketch) => {
  const sizes = sizesOf(sketch);
  for (const unit of ['in', 'mm'] as const) {
    const { files } = cutFiles(sketch, { each: 'piece', unit });
    expect(files.length).toBeGreaterThan(sketch.pieces.length);
    for (const { title, text } of files) {
      const svg = readCutSvg(text);
      expectSoundSvg(svg);
      const name = /: (.*), of /.exec(title)?.[1] ?? '';
      const wanted = sizes.get(name);
      const paths = svg.groups.cut?.paths ?? [];
      const [width, height] = boxSize(paths.at(-1)?.box ?? { left: 0, top: 0, right: 0, bottom: 0 });
      // A punched edge reaches the edge of the piece wherever its profile does, which is within a repeat.
      const off = [width * PER_UNIT[unit] - (wanted?.[0] ?? 0), height * PER_UNIT[unit] - (wanted?.[1] ?? 0)];
      expect([name, Math.max(...off.map(Math.abs)) < HUNDREDTH]).toEqual([name, true]);
      expect([svg.unit, svg.width * PER_UNIT[unit]]).toEqual([unit, expect.closeTo(wanted?.[0] ?? 0, 1)]);
      const piece = sketch.pieces.find((each) => each.name === name);
      const holes = piece ? pieceOutline(pieceShape(sketch, piece)).holes.length : 0;
      expect(paths).toHaveLength(holes + 1);
      // The area tells rounded corners from hollow ones, which the size does not.
      const area = piece
        ? outlineArea(pieceOutline(pieceShape(sketch, piece)).outline)
        : (wanted?.[0] ?? 0) * (wanted?.[1] ?? 0);
      const { area: drawn = 0, length = 0 } = paths.at(-1) ?? {};
      expect(Math.abs(drawn * PER_UNIT[unit] ** 2 - Math.abs(area))).toBeLessThan(HUNDREDTH * length * PER_UNIT[unit]);
    }
  }
});

const near = (one: number, other: number): boolean => Math.abs(one - other) < 1e-6;

test.each(ALL)('%s: all pieces of the batch lie on the sheets, the gap kept, none over another', (_, sketch) => {
  const gap = ticks(640);
  const margin = ticks(320);
  const { files, papers, complete, readMe } = cutFiles(sketch, {
    cards: CARDS,
    unit: 'mm',
    gap,
    margin,
    work: 100_000,
  });
  const roomy = papers.flatMap(({ unmade }) => unmade);
  expect(complete).toBe(roomy.length === 0);
  for (const { name, quantity, reason } of roomy) expect(readMe.text).toContain(`${quantity} of ${name} (${reason})`);
  let outlines = 0;
  for (const { text, copies } of files) {
    const svg = readCutSvg(text);
    expectSoundSvg(svg);
    const boxes = (svg.groups.cut?.paths ?? []).map(({ box }) => box);
    const within = (inner: (typeof boxes)[number], outer: (typeof boxes)[number]): boolean =>
      inner.left > outer.left && inner.right < outer.right && inner.top > outer.top && inner.bottom < outer.bottom;
    const pieces = boxes.filter((box) => !boxes.some((other) => within(box, other)));
    outlines += copies * pieces.length;
    for (const { box } of svg.groups.score?.paths ?? []) {
      const across = pieces.some(
        (base) =>
          (near(box.left, box.right) &&
            near(box.left, (base.left + base.right) / 2) &&
            near(box.top, base.top) &&
            near(box.bottom, base.bottom)) ||
          (near(box.top, box.bottom) &&
            near(box.top, (base.top + base.bottom) / 2) &&
            near(box.left, base.left) &&
            near(box.right, base.right)),
      );
      expect(across).toBe(true);
    }
    for (const [index, one] of pieces.entries()) {
      expect(Math.min(one.left, one.top, svg.width - one.right, svg.height - one.bottom)).toBeGreaterThan(0.5 - 1e-6);
      for (const other of pieces.slice(index + 1)) {
        const apart = Math.max(
          other.left - one.right,
          one.left - other.right,
          other.top - one.bottom,
          one.top - other.bottom,
        );
        expect(apart).toBeGreaterThan(1 - 1e-6);
      }
    }
  }
  const wanted = CARDS * (1 + sketch.pieces.reduce((sum, { perCard }) => sum + perCard, 0));
  expect(outlines + roomy.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(wanted);
});

test.each(ALL)(
  '%s: without gap and margin no paper needs more sheets than the guide for straight cuts',
  (_, sketch) => {
    const { papers } = cutFiles(sketch, { cards: 6, gap: ticks(0) });
    const recipe = { ...batchRecipe(sketch), centres: [] };
    const straight = planBatch(recipe, 6, (job) => planCuts(job));
    for (const { paper, plan } of straight.papers) {
      const nested = papers.find((each) => each.paper === paper);
      const missing = (unmade: readonly { readonly quantity: number }[]) =>
        unmade.reduce((sum, { quantity }) => sum + quantity, 0);
      expect(missing(nested?.unmade ?? [])).toBeLessThanOrEqual(missing(plan.unmade));
      if (plan.complete) expect(nested?.sheets).toBeLessThanOrEqual(plan.counts.sheets);
    }
  },
);

test('the card base is opened flat, its fold a dashed line of its own from edge to edge', () => {
  for (const [, sketch] of ALL) {
    const base = flatCardBase(sketch.card);
    const { files } = cutFiles(sketch, { each: 'piece', unit: 'mm' });
    const svg = readCutSvg(files.find(({ title }) => title.includes(': card base, of '))?.text ?? '');
    const lines = (svg.groups.score?.paths ?? []).map(({ points }) => points);
    if (!base.score) {
      expect(lines).toEqual([]);
      continue;
    }
    const at = base.score.at / 640;
    const [w, h] = [base.width / 640, base.height / 640];
    const ends =
      base.score.axis === 'x'
        ? [
            [at, 0],
            [at, h],
          ]
        : [
            [0, at],
            [w, at],
          ]; // prettier-ignore
    expect(
      lines
        .flat()
        .flat()
        .map((number) => number.toFixed(6)),
    ).toEqual(ends.flat().map((number) => number.toFixed(6)));
  }
});

test('librsvg shows each file at the size of its sheet', () => {
  for (const [, sketch] of ALL) {
    const [file] = cutFiles(sketch, { cards: 1 }).files;
    const { width, height } = paintSvg(file?.text ?? '', 50.8);
    expect([width, height]).toEqual([file?.width, file?.height].map((length) => Math.round((length ?? 0) / 320)));
  }
});

test('ezdxf reads every DXF without a complaint, and finds what the SVG shows; so does dxf-parser', () => {
  const texts = new Map<string, string>();
  const drawn = new Map<string, ReturnType<typeof readCutSvg>>();
  for (const [name, sketch] of ALL)
    for (const way of WAYS) {
      const svgs = cutFiles(sketch, way).files;
      for (const [index, { name: file, text, type }] of cutFiles(sketch, { ...way, format: 'dxf' }).files.entries()) {
        expect([type, file.replace(/dxf$/, 'svg')]).toEqual(['image/vnd.dxf', svgs[index]?.name]);
        texts.set(wayName(name, way, file), text);
        drawn.set(wayName(name, way, file), readCutSvg(svgs[index]?.text ?? ''));
      }
    }
  const { drawings } = readDrawings(texts);
  expect(Object.keys(drawings)).toHaveLength(texts.size);
  for (const [name, svg] of drawn) {
    const drawing = drawings[name];
    if (!drawing) throw new Error(`${name} was not read.`);
    expectSameDrawing(name, drawing, svg);
    const parsed = new DxfParser().parseSync(texts.get(name) ?? '');
    const layers = (parsed?.entities ?? []).map(({ type, layer }) => [type, layer]);
    expect(layers).toEqual(drawing.entities.map(({ type, layer }) => [type, layer]));
    const header: { readonly $INSUNITS?: unknown } = parsed?.header ?? {};
    expect(header.$INSUNITS).toBe(svg.unit === 'in' ? 1 : 4);
    const vertices = (parsed?.entities ?? []).flatMap((entity) => ('vertices' in entity ? [entity.vertices] : []));
    expect(JSON.stringify(vertices)).not.toContain('null');
  }
});

test('the zip is sound, dated alike, repeats its bytes in any time zone, and says what is in it', () => {
  const [name, sketch] = ALL[0] ?? [];
  if (!name || !sketch) throw new Error('There is a sketch.');
  const made = cutFiles(sketch, { cards: 2 });
  const zip = zipCutFiles(made);
  const env = process.env as { TZ?: string };
  const zone = env.TZ;
  for (const other of ['Pacific/Kiritimati', 'America/Los_Angeles', 'UTC']) {
    env.TZ = other;
    expect(Buffer.from(zipCutFiles(cutFiles(sketch, { cards: 2 }))).equals(Buffer.from(zip))).toBe(true);
  }
  if (zone === undefined) delete env.TZ;
  else env.TZ = zone;
  const { zips } = readDrawings(new Map([['all.zip', zip]]));
  const read = zips['all.zip'];
  expect([read?.broken, read?.dates]).toEqual([null, ['2000-01-01 00:00']]);
  const wanted = [made.readMe, ...made.files].map((file) => [file.name, file.text]);
  expect(read?.texts).toEqual(Object.fromEntries(wanted));
  const text = made.readMe.text;
  for (const { name: file, copies } of made.files)
    expect(text).toContain(`${file}: ${copies === 1 ? 'once' : `${copies} times`}`);
  expect(text).toContain('Blades: ');
  expect(text).toContain('Machine: ');
  expect(text).toContain('it must measure');
  expect(text).toContain('are scored, not cut');
});

test('files are named by what people call things, each name once', () => {
  const [, sketch] = ALL[0] ?? [];
  if (!sketch) throw new Error('There is a sketch.');
  const names = cutFiles(sketch, { cards: 12 }).files.map(({ name }) => name);
  expect(names).toContain('hedgerow-wreath-spruce-card-sheet-1-cut-3-alike.svg');
  const twins = {
    ...sketch,
    title: '\u7d19',
    papers: sketch.papers.map((paper) => ({ ...paper, name: 'Größe \u7d19' })),
  };
  const files = cutFiles(twins, { cards: 1 }).files.map(({ name }) => name);
  expect(files[0]).toBe('sketch-grosse-sheet-1.svg');
  expect(new Set(files).size).toBe(files.length);
});

test('options that cannot be used are refused by path, value and what is allowed', () => {
  const [, sketch] = ALL[0] ?? [];
  if (!sketch) throw new Error('There is a sketch.');
  expect(() => cutFiles(sketch, { cards: 0 })).toThrow('cards is 0; allowed: a whole number from 1 to 500.');
  expect(() => cutFiles(sketch, { gap: ticks(-1) })).toThrow(
    'gap is -1; allowed: a whole number of ticks from 0 to 65024.',
  );
  expect(() => cutFiles(sketch, { papers: ['none'] })).toThrow('papers[0] is "none"; allowed: an id of a paper: ');
  expect(() => cutFiles(sketch, { format: 'pdf' as 'svg' })).toThrow('format is "pdf"; allowed: svg, dxf.');
});
