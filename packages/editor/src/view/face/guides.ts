import { type Axis, type Length, type Point, type Rect, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { boxAround } from '../../state/group.js';
import { HANDLES, handlePoint } from '../../state/resize.js';
import type { SnapMark } from '../../state/snap.js';
import { faceMessages } from './face-messages.js';
import { type FaceView, toStage } from './face-view.js';
import type { GuidePen } from './guide-pen.js';
import type { OverlayModel } from './overlay.js';

function along(axis: Axis, on: number, across: number): Point {
  return axis === 'x' ? { x: on, y: across } : { x: across, y: on };
}

/** The line that something lines up with; centres are drawn as chain lines (ISO 128 practice). */
function drawLine(pen: GuidePen, mark: SnapMark, view: FaceView): void {
  const from = toStage(along(mark.axis, mark.at, mark.from), view);
  const to = toStage(along(mark.axis, mark.at, mark.to), view);
  const reach = mark.axis === 'x' ? { x: 0, y: 10 } : { x: 10, y: 0 };
  pen.line(
    { from: { x: from.x - reach.x, y: from.y - reach.y }, to: { x: to.x + reach.x, y: to.y + reach.y } },
    mark.kind,
  );
}

/** A reveal as a small dimension: a line over the gap, a stroke at each end, its figure beside it. */
function drawReveal(
  pen: GuidePen,
  mark: SnapMark & { readonly length: Length },
  view: FaceView,
  unit: Sketch['unit'],
): void {
  if (mark.length === 0) return;
  const from = toStage(along(mark.axis, mark.from, mark.at), view);
  const to = toStage(along(mark.axis, mark.to, mark.at), view);
  pen.line({ from, to }, 'reveal');
  for (const end of [from, to]) {
    const across = mark.axis === 'x' ? { x: 0, y: 5 } : { x: 5, y: 0 };
    pen.line(
      { from: { x: end.x - across.x, y: end.y - across.y }, to: { x: end.x + across.x, y: end.y + across.y } },
      'reveal',
    );
  }
  const figure = faceMessages.figure(mark.length, unit);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  if (mark.axis === 'x') pen.text({ x: middle.x, y: middle.y - 9 }, figure, 'middle');
  else pen.text({ x: middle.x + 8, y: middle.y + 4 }, figure, 'start');
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
function drawChain(pen: GuidePen, { sketch, view }: OverlayModel, box: Rect, axis: Axis): void {
  const { width } = sketch.card;
  const across = axis === 'x' ? -CHAIN.x / view.zoom : width + CHAIN.y / view.zoom;
  for (const { from, to, own } of chainOf(sketch, box, axis)) {
    const [a, b] = [toStage(along(axis, from, across), view), toStage(along(axis, to, across), view)];
    const name = own ? 'chain own' : 'chain';
    pen.line({ from: a, to: b }, name, false);
    for (const { x, y } of [a, b]) pen.line({ from: { x: x - 4, y: y + 4 }, to: { x: x + 4, y: y - 4 } }, name, false);
    const words = faceMessages.figure(ticks(to - from), sketch.unit);
    const tight = Math.hypot(b.x - a.x, b.y - a.y) < words.length * 6 + 4 ? 11 : 0;
    const at = axis === 'x' ? { x: (a.x + b.x) / 2, y: a.y - 6 - tight } : { x: a.x - 6 - tight, y: (a.y + b.y) / 2 };
    const figure = own ? 'figure own beside' : 'figure beside';
    if (axis === 'x') pen.text(at, words, 'middle', figure);
    else pen.textUpwards(at, words, figure);
  }
}

/** The box that the chains measure: of one upright piece, or around several as far as they are upright. */
function chained(selected: readonly Piece[]): Rect | null {
  return boxAround(selected.filter(({ tilt }) => tilt === 0));
}

/** The chains of what is selected; beside them, while something is dragged, what it snaps to and its figure. */
export function drawGuides(pen: GuidePen, model: OverlayModel): void {
  const { sketch, view, selected, moment } = model;
  const box = chained(selected);
  if (box) for (const axis of ['x', 'y'] as const) drawChain(pen, model, box, axis);
  const [only] = selected;
  if (!moment || !only) return;
  for (const mark of moment.marks) {
    if (mark.length === undefined) drawLine(pen, mark, view);
    else drawReveal(pen, { ...mark, length: mark.length }, view, sketch.unit);
  }
  // The chains say where an upright piece is moved to.
  if (moment.event === 'piece.move' && box) return;
  const below = lowestPoint(only, view);
  pen.slip({ x: below.x, y: below.y + 26 }, moment.figure);
}

/** The lowest point of a piece on the stage, in the middle of it from left to right. */
function lowestPoint(piece: Piece, view: FaceView): Point {
  const corners = HANDLES.map((handle) => toStage(handlePoint(piece, piece.tilt, handle), view));
  return { x: toStage(handlePoint(piece, 0, { x: 0, y: 0 }), view).x, y: Math.max(...corners.map(({ y }) => y)) };
}
