import { type Point, type Rect, ticks } from '@trimwell/geometry';
import { type Edit, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { asTilt } from '../../state/commands.js';
import { type Handle, leastSide, type Place, resizePiece } from '../../state/resize.js';
import { type SnapField, type SnapMark, snapEdge, snapMove } from '../../state/snap.js';
import { snapFieldOf, snapRect } from '../../state/snap-field.js';
import { faceMessages } from './face-messages.js';

/** What a drag does. */
export type GestureKind =
  | { readonly do: 'move' }
  | { readonly do: 'resize'; readonly handle: Handle }
  | { readonly do: 'tilt' };

/** Modifier keys during a drag: Alt suspends snapping, Shift keeps the direction, the proportion, or fifteen degrees. */
export interface GestureKeys {
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** One moment of a drag: what to dispatch, and what to show beside it. */
export interface GestureMoment {
  readonly event: string;
  readonly edit: Edit;
  readonly marks: readonly SnapMark[];
  readonly figure: string;
}

/** What was there when a drag began. All moments are counted from it, so that nothing adds up. */
export interface GestureStart {
  readonly sketch: Sketch;
  readonly piece: Piece;
  /** Where the pointer went down, in ticks of the card. */
  readonly at: Point;
  readonly ticksPerPixel: number;
}

function centre(place: Place): Point {
  return { x: place.x + place.width / 2, y: place.y + place.height / 2 };
}

function move(start: GestureStart, pull: Point, keys: GestureKeys, field: SnapField): GestureMoment {
  const { piece, sketch } = start;
  const alongX = Math.abs(pull.x) >= Math.abs(pull.y);
  const [dx, dy] = keys.shiftKey ? (alongX ? [pull.x, 0] : [0, pull.y]) : [pull.x, pull.y];
  const loose = { ...snapRect(piece), x: ticks(Math.round(piece.x + dx)), y: ticks(Math.round(piece.y + dy)) };
  const { rect, marks } = keys.altKey ? { rect: loose, marks: [] } : snapMove(loose, field);
  const x = keys.shiftKey && !alongX ? piece.x : rect.x;
  const y = keys.shiftKey && alongX ? piece.y : rect.y;
  return {
    event: 'piece.move',
    edit: { do: 'place', piece: piece.id, x, y },
    marks,
    figure: faceMessages.placeFigure({ x, y }, sketch.unit),
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
  const snaps = piece.tilt === 0 && !keys.altKey && !keys.shiftKey;
  const loose = resizePiece(piece, piece.tilt, handle, pull, { ...rules, step: snaps || keys.altKey ? null : step });
  const snapped = snaps ? snapEdges(piece, handle, loose, field) : { place: loose, marks: [] };
  const fits = snapped.place.width >= least && snapped.place.height >= least;
  const { x, y, width, height } = fits ? snapped.place : loose;
  return {
    event: 'piece.resize',
    edit: { do: 'resize', piece: piece.id, x, y, width, height },
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
    edit: { do: 'tilt', piece: target, tilt: degrees },
    marks: [],
    figure: faceMessages.tiltFigure(degrees),
  };
}

/** The innermost piece of a set of mats: the one that is tilted. */
function tilted(sketch: Sketch, piece: Piece): string {
  const inner = piece.mats && sketch.pieces.find((other) => other.id === piece.mats?.piece);
  return inner ? tilted(sketch, inner) : piece.id;
}

/** The moments of one drag as a function of how far it was pulled (ticks) and of the keys held. */
export function momentsOf(kind: GestureKind, start: GestureStart): (pull: Point, keys: GestureKeys) => GestureMoment {
  const field = snapFieldOf(start.sketch, start.piece, start.ticksPerPixel);
  switch (kind.do) {
    case 'move':
      return (pull, keys) => move(start, pull, keys, field);
    case 'resize':
      return (pull, keys) => resize(start, kind.handle, pull, keys, field);
    case 'tilt': {
      const target = tilted(start.sketch, start.piece);
      return (pull, keys) => tilt(start, pull, keys, target);
    }
  }
}
