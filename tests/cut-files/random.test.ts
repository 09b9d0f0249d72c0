import { cutFiles } from '@trimwell/handout/cut-files';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomSketch } from '../kit/random-sketch.js';
import { expectSameDrawing, expectSoundSvg } from './cut-files-kit.js';
import { readDrawings } from './read-drawings.js';
import { readCutSvg } from './read-svg.js';

test('200 random sketches come out sound in every way, and their DXF is what their SVG is', () => {
  const texts = new Map<string, string>();
  const drawn = new Map<string, ReturnType<typeof readCutSvg>>();
  const titles = new Map<string, string>();
  let number = 0;
  fc.assert(
    fc.property(
      randomSketch(12),
      fc.constantFrom('sheet', 'piece'),
      fc.constantFrom('in', 'mm'),
      (sketch, each, unit) => {
        const options = { each, unit, cards: 2, work: 500 } as const;
        const svgs = cutFiles(sketch, options).files;
        const dxfs = cutFiles(sketch, { ...options, format: 'dxf' }).files;
        expect(dxfs.map(({ name }) => name.replace(/dxf$/, 'svg'))).toEqual(svgs.map(({ name }) => name));
        expect(new Set(svgs.map(({ name }) => name)).size).toBe(svgs.length);
        for (const { name } of svgs) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*\.svg$/);
        svgs.forEach(({ text }, index) => {
          const svg = readCutSvg(text);
          expectSoundSvg(svg);
          // A sketch gives many files; the first ones of each are read by the other reader too.
          if (index >= 2) return;
          number += 1;
          texts.set(`${number}.dxf`, dxfs[index]?.text ?? '');
          drawn.set(`${number}.dxf`, svg);
          texts.set(`${number}.svg`, text);
          titles.set(`${number}.svg`, svgs[index]?.title ?? '');
        });
      },
    ),
    { numRuns: 200, endOnFailure: true },
  );
  const { drawings, svgs } = readDrawings(texts);
  expect(drawn.size).toBeGreaterThan(200);
  for (const [name, title] of titles) {
    expect(svgs[name]).toMatchObject({ tag: '{http://www.w3.org/2000/svg}svg', title });
    const children = Object.values(svgs[name]?.groups ?? {}).flat();
    expect([...new Set(children)]).toEqual(['path']);
  }
  for (const [name, svg] of drawn) {
    const drawing = drawings[name];
    if (!drawing) throw new Error(`${name} was not read.`);
    expectSameDrawing(name, drawing, svg);
  }
}, 240_000);
