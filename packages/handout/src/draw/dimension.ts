import { formatLength, type Length, type LengthStyle } from '@trimwell/geometry';
import type { Item } from '../drawing/drawing.js';

/** A dimension of a length along x or y, as a technical drawing has it. */
export interface DimensionSpec {
  readonly key: string;
  readonly along: 'x' | 'y';
  /** Start and length on the measured axis, and where the dimension line runs on the other. */
  readonly from: number;
  readonly length: Length;
  readonly at: number;
  /** Where the measured edge is, so that witness lines reach from it to the dimension line. */
  readonly edge: number;
  readonly size: number;
  readonly style: LengthStyle;
}

/**
 * A dimension line with oblique strokes at its ends, witness lines that start clear of the edge, and the figure above the
 * line, read from the bottom or, for heights, from the right (ISO 129-1:2018, as given in teaching texts).
 */
export function drawDimension({ key, along, from, length, at, edge, size, style }: DimensionSpec): readonly Item[] {
  const to = from + length;
  const away = Math.sign(at - edge);
  const stroke = size * 0.35;
  const point = (on: number, across: number) => (along === 'x' ? { x: on, y: across } : { x: across, y: on });
  const line = (name: string, a: { x: number; y: number }, b: { x: number; y: number }): Item => ({
    kind: 'line',
    key: `${key}:${name}`,
    role: 'dimension',
    from: a,
    to: b,
  });
  const end = (name: string, on: number): Item =>
    line(
      name,
      { x: point(on, at).x - stroke, y: point(on, at).y + stroke },
      { x: point(on, at).x + stroke, y: point(on, at).y - stroke },
    );
  const witness = (name: string, on: number): Item =>
    line(name, point(on, edge + away * size * 0.4), point(on, at + away * size * 0.4));
  const middle = point((from + to) / 2, at);
  const figure = along === 'x' ? { x: middle.x, y: middle.y - size * 0.4 } : { x: middle.x - size * 0.4, y: middle.y };
  return [
    witness('w1', from),
    witness('w2', to),
    line('line', point(from, at), point(to, at)),
    end('e1', from),
    end('e2', to),
    {
      kind: 'text',
      key: `${key}:figure`,
      role: 'figure',
      at: figure,
      text: formatLength(length, style),
      size,
      align: 'middle',
      turn: along === 'x' ? 0 : -90,
    },
  ];
}
