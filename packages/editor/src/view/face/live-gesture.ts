import { type Length, type Point, type Rect, ticks } from '@trimwell/geometry';
import { type Edit, movedBy, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { asTilt, innermost } from '../../state/commands.js';
import { type Body, bodiesOf } from '../../state/group.js';
import { type Handle, leastSide, type Place, resizePiece } from '../../state/resize.js';
import type { CornerName } from '../../state/round-drag.js';
import { type SnapField, type SnapMark, snapEdge, snapMove } from '../../state/snap.js';
import { groupRect, snapFieldOf } from '../../state/snap-field.js';
import { roundMoment } from './corner-grips.js';
import { faceMessages } from './face-messages.js';

/** What a drag does. */
export type GestureKind =
  | { readonly do: 'move' }
  | { readonly do: 'resize'; readonly handle: Handle }
  | { readonly do: 'tilt' }
  | { readonly do: 'round'; readonly corner: CornerName; readonly rounders: () => readonly Length[] };

/** Modifier keys during a drag: Alt suspends snapping, Shift keeps the direction, the proportion, or fifteen degrees. */
export interface GestureKeys {
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** One moment of a drag: what to dispatch, and what to show beside it. */
export interface GestureMoment {
  readonly event: string;
  readonly edits: readonly Edit[];
  readonly marks: readonly SnapMark[];
  readonly figure: string;
}

/** What was there when a drag began. All moments are counted from it, so that nothing adds up. */
export interface GestureStart {
  readonly sketch: Sketch;
  /** The piece that is dragged. */
  readonly piece: Piece;
  /** All that moves with it, its own body among them; a resize or a tilt is of `piece` alone. */
  readonly bodies: readonly Body[];
  /** Where the pointer went down, in ticks of the card. */
  readonly at: Point;
  readonly ticksPerPixel: number;
}

function centre(place: Place): Point {
  return { x: place.x + place.width / 2, y: place.y + place.height / 2 };
}

/** The body that `piece` is of; what is dragged may be the inner piece of a mat that is selected with it. */
function leadOf({ sketch, piece, bodies }: GestureStart): Body {
  const [own] = bodiesOf(sketch, [piece]);
  const lead = bodies.find(({ tied }) => tied.has(piece.id)) ?? own;
  if (!lead) throw new Error('A piece is a body.');
  return lead;
}

/** All bodies keep their places to each other: they move by what the box around them moves. */
function move(start: GestureStart, pull: Point, keys: GestureKeys, field: SnapField): GestureMoment {
  const { sketch, bodies } = start;
  const { handle } = leadOf(start);
  const box = groupRect(bodies, leadOf(start));
  const alongX = Math.abs(pull.x) >= Math.abs(pull.y);
  const [dx, dy] = keys.shiftKey ? (alongX ? [pull.x, 0] : [0, pull.y]) : [pull.x, pull.y];
  const loose = { ...box, x: ticks(Math.round(box.x + dx)), y: ticks(Math.round(box.y + dy)) };
  const ruled = { x: handle.x - box.x, y: handle.y - box.y };
  const { rect, marks } = keys.altKey ? { rect: loose, marks: [] } : snapMove(loose, field, ruled);
  const shift = {
    x: keys.shiftKey && !alongX ? 0 : rect.x - box.x,
    y: keys.shiftKey && alongX ? 0 : rect.y - box.y,
  };
  return {
    event: 'piece.move',
    edits: bodies.map((body) => movedBy(body.handle, shift.x, shift.y)),
    marks: keys.shiftKey ? marks.filter(({ axis }) => (axis === 'x') === alongX) : marks,
    figure: faceMessages.placeFigure({ x: ticks(handle.x + shift.x), y: ticks(handle.y + shift.y) }, sketch.unit),
  };
}

/** The pulled edges of an untilted piece, brought to rest one after the other. */
function snapEdges(
  piece: Piece,
  handle: Handle,
  loose: Place,
  field: SnapField,
): { readonly place: Place; readonly marks: readonly SnapMark[] } {
  let rect: Rect = { x: piece.x, y: piece.y, width: piece.width, height: piece.height };
  const marks: SnapMark[] = [];
  for (const [axis, size, way] of [['x', 'width', handle.x] as const, ['y', 'height', handle.y] as const]) {
    if (way === 0) continue;
    const to = way > 0 ? loose[axis] + loose[size] : loose[axis];
    const snapped = snapEdge(rect, axis, way > 0 ? 'far' : 'near', to, field);
    rect = snapped.rect;
    marks.push(...snapped.marks);
  }
  return { place: rect, marks };
}

function resize(start: GestureStart, handle: Handle, pull: Point, keys: GestureKeys, field: SnapField): GestureMoment {
  const { piece, sketch } = start;
  const step = rulerStep(sketch.unit);
  const least = leastSide(sketch, piece, step);
  const rules = { least, proportion: keys.shiftKey };
  const pulled = (to: Length | null): Place => resizePiece(piece, piece.tilt, handle, pull, { ...rules, step: to });
  const snaps = piece.tilt === 0 && !keys.altKey && !keys.shiftKey;
  const snapped = snaps ? snapEdges(piece, handle, pulled(null), field) : null;
  const fits = snapped !== null && snapped.place.width >= least && snapped.place.height >= least;
  const { x, y, width, height } = fits ? snapped.place : pulled(keys.altKey ? null : step);
  return {
    event: 'piece.resize',
    edits: [{ do: 'resize', piece: piece.id, x, y, width, height }],
    marks: fits ? snapped.marks : [],
    figure: faceMessages.sizeFigure({ width, height }, sketch.unit),
  };
}

/** Degrees come to rest on whole ones, and on every fifteenth within two; Shift takes fifteenths only, Alt tenths. */
function restingTilt(degrees: number, { altKey, shiftKey }: GestureKeys): number {
  if (altKey) return asTilt(Math.round(degrees * 10) / 10);
  const fifteenth = Math.round(degrees / 15) * 15;
  return asTilt(shiftKey || Math.abs(degrees - fifteenth) <= 2 ? fifteenth : Math.round(degrees));
}

function tilt(start: GestureStart, pull: Point, keys: GestureKeys, target: string): GestureMoment {
  const about = centre(start.piece);
  const angle = (x: number, y: number): number => (Math.atan2(y - about.y, x - about.x) * 180) / Math.PI;
  const swept = angle(start.at.x + pull.x, start.at.y + pull.y) - angle(start.at.x, start.at.y);
  const degrees = restingTilt(start.piece.tilt + swept, keys);
  return {
    event: 'piece.tilt',
    edits: [{ do: 'tilt', piece: target, tilt: degrees }],
    marks: [],
    figure: faceMessages.tiltFigure(degrees),
  };
}

/** The moments of one drag as a function of how far it was pulled (ticks) and of the keys held. */
export function momentsOf(kind: GestureKind, start: GestureStart): (pull: Point, keys: GestureKeys) => GestureMoment {
  const own = bodiesOf(start.sketch, [start.piece]);
  const bodies = kind.do === 'move' ? start.bodies : own;
  const field = snapFieldOf(start.sketch, start.piece, bodies, start.ticksPerPixel);
  switch (kind.do) {
    case 'move':
      return (pull, keys) => move(start, pull, keys, field);
    case 'resize':
      return (pull, keys) => resize(start, kind.handle, pull, keys, field);
    case 'tilt': {
      const target = innermost(start.sketch, start.piece).id;
      return (pull, keys) => tilt(start, pull, keys, target);
    }
    case 'round':
      return (pull, keys) => roundMoment(start, kind.corner, kind.rounders(), pull, keys);
  }
}
