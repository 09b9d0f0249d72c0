import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expectSketch, type Sketch } from '@trimwell/sketch';
import { expect } from 'vitest';
import { sampleSketch } from '../kit/sample-sketch.js';
import type { ReadDrawing } from './read-drawings.js';
import type { Box, ReadSvg } from './read-svg.js';

const FOLDER = fileURLToPath(new URL('../../demo/sketches/', import.meta.url));

/** The demo's sketches and the sample of the tests, by name. */
export function sketches(): readonly (readonly [string, Sketch])[] {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
  return [
    ...files.map((name) => [name, expectSketch(JSON.parse(readFileSync(`${FOLDER}${name}`, 'utf8')))] as const),
    ['sample', sampleSketch()],
  ];
}

export const PER_UNIT = { in: 16256, mm: 640 } as const;
/** 0.01 mm in ticks, in which every size must agree with the document's. */
export const HUNDREDTH = 6.4;

export function boxSize({ left, top, right, bottom }: Box): readonly [number, number] {
  return [right - left, bottom - top];
}

/** Laws of every SVG file: lengths that agree, closed outlines inside the sheet, lines only, dashed scores, no text. */
export function expectSoundSvg(svg: ReadSvg): void {
  expect(svg.viewBox).toEqual([0, 0, svg.width, svg.height]);
  expect(svg.tags.filter((tag) => !['svg', 'title', 'desc', 'g', 'path'].includes(tag))).toEqual([]);
  const slack = 1e-6 * Math.max(svg.width, svg.height);
  for (const [id, { attributes, paths }] of Object.entries(svg.groups)) {
    expect(['cut', 'score']).toContain(id);
    expect(attributes.get('fill')).toBe('none');
    expect(attributes.has('stroke-dasharray')).toBe(id === 'score');
    for (const { box, closed } of paths) {
      expect(closed).toBe(id === 'cut');
      expect(Math.min(box.left, box.top, svg.width - box.right, svg.height - box.bottom)).toBeGreaterThan(-slack);
    }
  }
}

/** Laws of every DXF file, and that it draws the same as its SVG: each outline one closed line, boxes alike, y upward. */
export function expectSameDrawing(name: string, dxf: ReadDrawing, svg: ReadSvg): void {
  const inches = svg.unit === 'in';
  expect([name, dxf.errors, dxf.version]).toEqual([name, [], 'AC1021']);
  expect([dxf.units, dxf.measurement]).toEqual(inches ? [1, 0] : [4, 1]);
  expect(dxf.layers).toMatchObject({ CUT: 'Continuous', SCORE: 'DASHED' });
  const drawn = [...(svg.groups.score?.paths ?? []), ...(svg.groups.cut?.paths ?? [])];
  expect([name, dxf.entities.length]).toEqual([name, drawn.length]);
  const near = HUNDREDTH / PER_UNIT[inches ? 'in' : 'mm'];
  [0, 0, svg.width, svg.height].forEach((limit, at) => {
    expect(Math.abs((dxf.limits[at] ?? Number.NaN) - limit)).toBeLessThan(1e-5);
  });
  dxf.entities.forEach(({ type, layer, closed, area, box: [left, bottom, right, top] }, index) => {
    const cut = index >= (svg.groups.score?.paths.length ?? 0);
    expect([type, layer]).toEqual(cut ? ['LWPOLYLINE', 'CUT'] : ['LINE', 'SCORE']);
    if (cut) expect(closed).toBe(true);
    // A line that lies within so much of the other encloses the same but for its length times that.
    const path = drawn[index];
    if (cut)
      expect([name, index, Math.abs((area ?? Number.NaN) + (path?.area ?? 0)) < (path?.length ?? 0) * near]).toEqual([
        name,
        index,
        true,
      ]);
    const box = path?.box ?? { left: 0, top: 0, right: 0, bottom: 0 };
    const off = [left - box.left, right - box.right, svg.height - top - box.top, svg.height - bottom - box.bottom];
    expect([name, index, Math.max(...off.map(Math.abs)) < near]).toEqual([name, index, true]);
  });
}
