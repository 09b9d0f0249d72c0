import type { Outline, Point } from '@trimwell/geometry';
import { arcCurves } from './arc-curves.js';
import { type Matrix, place } from './matrix.js';
import { allPoints } from './number.js';

/** Path operators of an outline (ISO 32000-2, 8.5.2), closed unless `open`; arcs as curves. */
export function outlineOperators({ start, steps }: Outline, matrix: Matrix, open = false): string {
  const at = (point: Point) => {
    const { x, y } = place(matrix, point);
    return allPoints(x, y);
  };
  const parts = [`${at(start)} m`];
  let from = start;
  for (const step of steps) {
    if (step.kind === 'line') parts.push(`${at(step.to)} l`);
    else {
      const curves = step.kind === 'arc' ? arcCurves(from, step) : [step];
      for (const { control1, control2, to } of curves) parts.push(`${at(control1)} ${at(control2)} ${at(to)} c`);
    }
    from = step.to;
  }
  if (!open) parts.push('h');
  return parts.join('\n');
}

/** A command of path data and its numbers. */
const COMMAND = /([Mmlcqz])([^Mmlcqz]*)/g;

function pairs(text: string): readonly Point[] {
  const numbers = (text.match(/-?[\d.]+/g) ?? []).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, index) => ({
    x: numbers[2 * index] ?? 0,
    y: numbers[2 * index + 1] ?? 0,
  }));
}

/**
 * Path operators of the path data that prints are drawn with: `M` and the relative `m`, `l`, `c`, `q`, `z`, in pairs of
 * numbers. A quadratic curve becomes the same cubic one.
 */
export function dataOperators(d: string): string {
  const parts: string[] = [];
  let [here, first]: [Point, Point] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const [, command = '', text = ''] of d.matchAll(COMMAND)) {
    if (command === 'z') {
      parts.push('h');
      here = first;
      continue;
    }
    const all = pairs(text);
    const each = command === 'c' ? 3 : command === 'q' ? 2 : 1;
    for (let index = 0; index + each <= all.length; index += each) {
      const from = here;
      const absolute = all
        .slice(index, index + each)
        .map(({ x, y }) => (command === 'M' ? { x, y } : { x: from.x + x, y: from.y + y }));
      const [a = from, b = a, c = b] = absolute;
      here = c;
      if (command === 'l') parts.push(`${allPoints(a.x, a.y)} l`);
      else if (command === 'c') parts.push(`${allPoints(a.x, a.y, b.x, b.y, c.x, c.y)} c`);
      else if (command === 'q') {
        const [one, two] = [from, b].map((end) => ({
          x: end.x + (2 / 3) * (a.x - end.x),
          y: end.y + (2 / 3) * (a.y - end.y),
        })) as [Point, Point];
        parts.push(`${allPoints(one.x, one.y, two.x, two.y, b.x, b.y)} c`);
      } else {
        first = here;
        parts.push(`${allPoints(a.x, a.y)} m`);
      }
    }
  }
  return parts.join('\n');
}
