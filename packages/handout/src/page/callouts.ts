import type { Point } from '@trimwell/geometry';
import { ellipse } from '@trimwell/geometry';
import { spreadApart } from '../draw/label-placement.js';
import type { Item } from '../drawing/drawing.js';
import type { TextMeasure } from './measure.js';
import { POINT } from './sheet-of-paper.js';

/** What is said of a piece beside the drawing: its letter, its size, and the points of it that can be seen, on the page. */
export interface Callout {
  readonly piece: string;
  readonly letter: string;
  readonly figure: string;
  readonly points: readonly Point[];
  /** Where its leader ends when nothing of it can be seen. */
  readonly middle: Point;
}

/** Letters and figures of callouts, and the distance from line to line. */
const SIZE = 8 * POINT;
const PITCH = 11.5 * POINT;
/** Between the letter and the figure, and between the text, the leader and the drawing. */
const GAP = 4 * POINT;
export const CALLOUT_GAP = 16 * POINT;
const DOT = 2 * POINT;
/** Ink of the wider line under each leader, so that it can be followed over dark paper. */
const RIM_INK = '#fffdf6';
/** Pieces that are seen this near to each other stand neither left nor right of one another. */
const COLUMN = 20 * POINT;

export function calloutWidth({ letter, figure }: Pick<Callout, 'letter' | 'figure'>, measure: TextMeasure): number {
  const own = measure.width(letter, SIZE, 'strong');
  return figure === '' ? own : own + GAP + measure.width(figure, SIZE, 'text');
}

/** The height that so many callouts want, on two sides. */
export function calloutHeight(count: number): number {
  return Math.ceil(count / 2) * PITCH;
}

function mean(points: readonly Point[], middle: Point): number {
  return points.length === 0 ? middle.x : points.reduce((sum, { x }) => sum + x, 0) / points.length;
}

/** The callouts of each side: those that are seen more to the left stand left, as many as to the right. */
function sides(callouts: readonly Callout[]): readonly [left: readonly Callout[], right: readonly Callout[]] {
  const sorted = callouts
    .map((callout, index) => ({ callout, index, x: Math.round(mean(callout.points, callout.middle) / COLUMN) }))
    // Pieces in the middle take turns, so that neither side gets all of one part of the stack.
    .sort((a, b) => a.x - b.x || (a.index % 2) - (b.index % 2) || a.index - b.index)
    .map(({ callout }) => callout);
  const half = Math.floor(sorted.length / 2);
  return [sorted.slice(0, half), sorted.slice(half)];
}

/** The visible point nearest to that side; of those in one column the one nearest to the middle of what is seen of it. */
function anchor({ points, middle }: Callout, left: boolean): Point {
  if (points.length === 0) return middle;
  const sign = left ? 1 : -1;
  const best = Math.min(...points.map(({ x }) => x * sign));
  const column = points.filter(({ x }) => x * sign - best < POINT).sort((a, b) => a.y - b.y);
  return column[Math.floor(column.length / 2)] ?? middle;
}

interface SideSpec {
  readonly left: boolean;
  /** Where the texts begin at the right side, and end at the left side. */
  readonly x: number;
  readonly from: number;
  readonly to: number;
}

function sideItems(
  callouts: readonly Callout[],
  { left, x, from, to }: SideSpec,
  measure: TextMeasure,
): readonly Item[] {
  const wanted = callouts
    .map((callout) => ({ callout, point: anchor(callout, left) }))
    .sort((a, b) => a.point.y - b.point.y || (left ? a.point.x - b.point.x : b.point.x - a.point.x));
  const pitch = Math.min(PITCH, (to - from) / Math.max(1, callouts.length));
  const size = SIZE * Math.min(1, pitch / PITCH);
  const places = spreadApart(
    wanted.map(({ point }) => point.y),
    pitch,
    from + pitch / 2,
    to - pitch / 2,
  );
  return wanted.flatMap(({ callout, point }, index): readonly Item[] => {
    const { letter, figure, piece } = callout;
    const y = places[index] ?? point.y;
    const share = size / SIZE;
    const start = left ? x - calloutWidth(callout, measure) * share : x;
    const text = { kind: 'text', piece, size, align: 'start' } as const;
    const base = y + 0.35 * size;
    const second = start + measure.width(letter, size, 'strong') + GAP * share;
    const end = { x: left ? x + GAP / 2 : x - GAP / 2, y };
    const dot = ellipse(point.x - DOT / 2, point.y - DOT / 2, DOT, DOT);
    const line = { start: end, steps: [{ kind: 'line', to: point }] } as const;
    return [
      { kind: 'path', key: `rim:${piece}`, role: 'art', piece, outline: line, open: true, ink: RIM_INK },
      { kind: 'path', key: `dot-rim:${piece}`, role: 'art', piece, outline: dot, ink: RIM_INK },
      { kind: 'line', key: `leader:${piece}`, role: 'leader', piece, from: end, to: point },
      { kind: 'path', key: `dot:${piece}`, role: 'label', piece, outline: dot },
      { ...text, key: `letter:${piece}`, role: 'label', at: { x: start, y: base }, text: letter, face: 'strong' },
      ...(figure === ''
        ? []
        : [
            {
              ...text,
              key: `size:${piece}`,
              role: 'figure',
              at: { x: second, y: base },
              text: figure,
              face: 'text',
            } as const,
          ]),
    ];
  });
}

export interface CalloutRoom {
  /** Where the texts of the left side end and those of the right side begin. */
  readonly left: number;
  readonly right: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Callouts in two columns beside a drawing, each with a leader to a point of its piece that can be seen. Texts never
 * touch: they are spread apart, and smaller where there is not room for all between `from` and `to`.
 */
export function placeCallouts(callouts: readonly Callout[], room: CalloutRoom, measure: TextMeasure): readonly Item[] {
  const [left, right] = sides(callouts);
  const { from, to } = room;
  return [
    ...sideItems(left, { left: true, x: room.left, from, to }, measure),
    ...sideItems(right, { left: false, x: room.right, from, to }, measure),
  ];
}
