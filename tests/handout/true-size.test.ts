import { flattenOutline, type Outline, TICKS_PER_INCH } from '@trimwell/geometry';
import type { Page } from '@trimwell/handout';
import { writePdf } from '@trimwell/handout/pdf';
import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { randomSketch } from '../kit/random-sketch.js';
import { blocksOf, laidOut, SAMPLES, type Sample, sampleOf } from './pages-kit.js';
import { read } from './read-pdf.js';

const DOTS_PER_INCH = 300;
const DOTS_PER_TICK = DOTS_PER_INCH / TICKS_PER_INCH;
/** The width of an outline on paper, 0.18 mm, in dots. */
const LINE = (0.18 / 25.4) * DOTS_PER_INCH;
/** How far around a piece ink is looked for, in dots: nearer than any caption and any neighbour. */
const AROUND = 6;

/** True when straight edges meet at an angle that is not right: there the mitre of a line goes farther than half its width. */
function slanted({ start, steps }: Outline): boolean {
  let from = start;
  return steps.some((step) => {
    const { x, y } = from;
    from = step.to;
    return step.kind === 'line' && Math.abs(step.to.x - x) > 1 && Math.abs(step.to.y - y) > 1;
  });
}

/** A piece that is printed whole: where it lies on its page and how far its outline goes, in dots. */
interface Printed {
  readonly piece: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** How much farther than half a line its mitres may go. */
  readonly mitre: number;
}

function extentOf(outlines: readonly Outline[]): { readonly width: number; readonly height: number } {
  const points = outlines.flatMap((outline) => flattenOutline(outline, 96));
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  return { width: span(points.map(({ x }) => x)), height: span(points.map(({ y }) => y)) };
}

function printedOn(page: Page): readonly Printed[] {
  return blocksOf([page]).flatMap(({ tag, box, items: [item] }) => {
    if (tag !== 'Figure' || item?.kind !== 'group' || !item.key.startsWith('template:')) return [];
    const outlines = item.items.flatMap((each) => (each.kind === 'path' ? [each.outline] : []));
    const extent = extentOf(outlines);
    const [width, height] = item.turn === 90 ? [extent.height, extent.width] : [extent.width, extent.height];
    const [left, top] = [box.x * DOTS_PER_TICK, box.y * DOTS_PER_TICK];
    const mitre = outlines.some(slanted) ? LINE : 0;
    return [
      { piece: item.piece ?? '', left, top, width: width * DOTS_PER_TICK, height: height * DOTS_PER_TICK, mitre },
    ];
  });
}

/** How far the ink goes within a part of a picture, in dots, the width of one line taken off. */
function inkWithin({ data, width }: PNG, { left, top, width: w, height: h }: Printed) {
  const [x0, x1] = [Math.floor(left - AROUND), Math.ceil(left + w + AROUND)];
  const [y0, y1] = [Math.floor(top - AROUND), Math.ceil(top + h + AROUND)];
  const [columns, rows] = [new Set<number>(), new Set<number>()];
  for (let y = y0; y <= y1; y += 1)
    for (let x = x0; x <= x1; x += 1)
      if ((data[(y * width + x) * 4] ?? 255) < 128) {
        columns.add(x);
        rows.add(y);
      }
  const span = (found: ReadonlySet<number>): number => Math.max(...found) - Math.min(...found) + 1 - LINE;
  return { width: span(columns), height: span(rows) };
}

function painted(pdf: Uint8Array, page: number): PNG {
  const only = String(page);
  const args = ['-r', String(DOTS_PER_INCH), '-f', only, '-l', only, '-singlefile', '-gray', '-png', 'FILE'];
  return PNG.sync.read(read('pdftoppm', pdf, args).bytes);
}

/** What is not as wide or high on paper as it should be, by more than a dot; how many pieces were measured. */
async function measured(sample: Sample, paper: 'letter' | 'a4') {
  const pages = laidOut(sample, { templates: true, paper });
  const pdf = await writePdf(pages, { created: new Date('2026-11-26T00:00:00Z') });
  const off: string[] = [];
  let count = 0;
  pages.pages.forEach((page, index) => {
    const pieces = printedOn(page);
    if (pieces.length === 0) return;
    const picture = painted(pdf, index + 1);
    for (const printed of pieces) {
      const ink = inkWithin(picture, printed);
      count += 1;
      const over = (side: 'width' | 'height'): number => ink[side] - printed[side];
      if ([over('width'), over('height')].some((more) => more < -1 || more > 1 + printed.mitre))
        off.push(`${printed.piece}: ${ink.width} x ${ink.height}, not ${printed.width} x ${printed.height}`);
    }
  });
  return { off, count };
}

describe('pieces at true size, painted at 300 dots an inch by poppler', () => {
  test.each(SAMPLES)(
    '$name',
    async (sample) => {
      const { off, count } = await measured(sample, sample.sketch.unit === 'mm' ? 'a4' : 'letter');
      expect(off).toEqual([]);
      expect(count).toBeGreaterThan(sample.sketch.pieces.length / 2);
    },
    60_000,
  );

  test('of random sketches', async () => {
    let pieces = 0;
    for (const [index, sketch] of fc.sample(randomSketch(12), { seed: 300, numRuns: 6 }).entries()) {
      const { off, count } = await measured(sampleOf(`random ${index}`, sketch), index % 2 === 0 ? 'letter' : 'a4');
      expect(off).toEqual([]);
      pieces += count;
    }
    expect(pieces).toBeGreaterThan(20);
  }, 120_000);
});
