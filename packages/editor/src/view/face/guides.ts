import { type Axis, type Length, type Point, type Rect, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { boxAround } from '../../state/group.js';
import { HANDLES, handlePoint } from '../../state/resize.js';
import type { SnapMark } from '../../state/snap.js';
import type { DrawnMarks } from './drawn-marks.js';
import { faceMessages } from './face-messages.js';
import { type FaceView, toStage } from './face-view.js';
import type { OverlayModel } from './overlay.js';

interface Segment {
  readonly from: Point;
  readonly to: Point;
}

function along(axis: Axis, on: number, across: number): Point {
  return axis === 'x' ? { x: on, y: across } : { x: across, y: on };
}

function line(marks: DrawnMarks, { from, to }: Segment, name: string, cased = true): void {
  const d = `M${from.x.toFixed(2)} ${from.y.toFixed(2)}L${to.x.toFixed(2)} ${to.y.toFixed(2)}`;
  if (cased) marks.draw('path', { d, class: 'casing' });
  marks.draw('path', { d, class: name });
}

function text(marks: DrawnMarks, at: Point, words: string, anchor: 'start' | 'middle', name = 'figure'): void {
  marks.draw('text', { x: at.x.toFixed(1), y: at.y.toFixed(1), 'text-anchor': anchor, class: name }, words);
}

/** What guides are drawn with: level marks, and marks that are turned so that they read upwards. */
export interface GuideMarks {
  readonly level: DrawnMarks;
  /** Its x runs up the stage and its y to the right. */
  readonly upwards: DrawnMarks;
}

/** The line that something lines up with; centres are drawn as chain lines (ISO 128 practice). */
function drawLine(marks: DrawnMarks, mark: SnapMark, view: FaceView): void {
  const from = toStage(along(mark.axis, mark.at, mark.from), view);
  const to = toStage(along(mark.axis, mark.at, mark.to), view);
  const reach = mark.axis === 'x' ? { x: 0, y: 10 } : { x: 10, y: 0 };
  line(
    marks,
    { from: { x: from.x - reach.x, y: from.y - reach.y }, to: { x: to.x + reach.x, y: to.y + reach.y } },
    mark.kind,
  );
}

/** A reveal as a small dimension: a line over the gap, a stroke at each end, its figure beside it. */
function drawReveal(
  marks: DrawnMarks,
  mark: SnapMark & { readonly length: Length },
  view: FaceView,
  unit: Sketch['unit'],
): void {
  if (mark.length === 0) return;
  const from = toStage(along(mark.axis, mark.from, mark.at), view);
  const to = toStage(along(mark.axis, mark.to, mark.at), view);
  line(marks, { from, to }, 'reveal');
  for (const end of [from, to]) {
    const across = mark.axis === 'x' ? { x: 0, y: 5 } : { x: 5, y: 0 };
    line(
      marks,
      { from: { x: end.x - across.x, y: end.y - across.y }, to: { x: end.x + across.x, y: end.y + across.y } },
      'reveal',
    );
  }
  const figure = faceMessages.figure(mark.length, unit);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  if (mark.axis === 'x') text(marks, { x: middle.x, y: middle.y - 9 }, figure, 'middle');
  else text(marks, { x: middle.x + 8, y: middle.y + 4 }, figure, 'start');
}

/** Distance of a chain of dimensions from the card, in pixels. */
const CHAIN = { x: 13, y: 27 };

/** The stretches along `axis` that an upright box divides the card into, from edge to edge, those of no length left out. */
export function chainOf(
  { card }: Pick<Sketch, 'card'>,
  box: Rect,
  axis: Axis,
): readonly { readonly from: number; readonly to: number; readonly own: boolean }[] {
  const [most, start, size] = axis === 'x' ? [card.width, box.x, box.width] : [card.height, box.y, box.height];
  const all = [
    { from: 0, to: start, own: false },
    { from: start, to: start + size, own: true },
    { from: start + size, to: most, own: false },
  ];
  return all.filter(({ from, to }) => to > from);
}

/**
 * The reveals and size of what is selected as a chain of dimensions above the card and at its right (ISO 129-1:2018
 * practice, as given in teaching texts), so that no line runs over the other pieces. A figure too wide for its stretch
 * stands higher.
 */
function drawChain({ level, upwards }: GuideMarks, { sketch, view }: OverlayModel, box: Rect, axis: Axis): void {
  const { width } = sketch.card;
  const across = axis === 'x' ? -CHAIN.x / view.zoom : width + CHAIN.y / view.zoom;
  for (const { from, to, own } of chainOf(sketch, box, axis)) {
    const [a, b] = [toStage(along(axis, from, across), view), toStage(along(axis, to, across), view)];
    const name = own ? 'chain own' : 'chain';
    line(level, { from: a, to: b }, name, false);
    for (const { x, y } of [a, b])
      line(level, { from: { x: x - 4, y: y + 4 }, to: { x: x + 4, y: y - 4 } }, name, false);
    const words = faceMessages.figure(ticks(to - from), sketch.unit);
    const tight = Math.hypot(b.x - a.x, b.y - a.y) < words.length * 6 + 4 ? 11 : 0;
    const at = axis === 'x' ? { x: (a.x + b.x) / 2, y: a.y - 6 - tight } : { x: a.x - 6 - tight, y: (a.y + b.y) / 2 };
    const figure = own ? 'figure own beside' : 'figure beside';
    if (axis === 'x') text(level, at, words, 'middle', figure);
    else text(upwards, { x: -at.y, y: at.x }, words, 'middle', figure);
  }
}

/** The box that the chains measure: of one upright piece, or around several as far as they are upright. */
function chained(selected: readonly Piece[]): Rect | null {
  return boxAround(selected.filter(({ tilt }) => tilt === 0));
}

/** The chains of what is selected; beside them, while something is dragged, what it snaps to and its figure. */
export function drawGuides(marks: GuideMarks, model: OverlayModel): void {
  const { level } = marks;
  const { sketch, view, selected, moment } = model;
  const box = chained(selected);
  if (box) for (const axis of ['x', 'y'] as const) drawChain(marks, model, box, axis);
  const [only] = selected;
  if (!moment || !only) return;
  for (const mark of moment.marks) {
    if (mark.length === undefined) drawLine(level, mark, view);
    else drawReveal(level, { ...mark, length: mark.length }, view, sketch.unit);
  }
  // The chains say where an upright piece is moved to.
  if (moment.event === 'piece.move' && box) return;
  const below = lowestPoint(only, view);
  slip(level, { x: below.x, y: below.y + 26 }, moment.figure);
}

/** The lowest point of a piece on the stage, in the middle of it from left to right. */
function lowestPoint(piece: Piece, view: FaceView): Point {
  const corners = HANDLES.map((handle) => toStage(handlePoint(piece, piece.tilt, handle), view));
  return { x: toStage(handlePoint(piece, 0, { x: 0, y: 0 }), view).x, y: Math.max(...corners.map(({ y }) => y)) };
}

/** A figure on a slip of paper. */
function slip(marks: DrawnMarks, at: Point, words: string): void {
  const width = words.length * 7 + 18;
  const [x, y] = [String(at.x - width / 2), String(at.y - 17)];
  marks.draw('rect', { width: String(width), height: '24', x, y, rx: '2', class: 'slip' });
  text(marks, at, words, 'middle', 'slip-figure');
}
