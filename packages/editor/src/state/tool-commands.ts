import { type Length, repeatsAlong, ticks } from '@trimwell/geometry';
import {
  cornersWithin,
  EDGES,
  type Edge,
  type Edit,
  freeId,
  type Piece,
  type Punch,
  type Sketch,
  sameCorners,
  samePunch,
  type UsualPunch,
} from '@trimwell/sketch';
import { onSelected } from './on-selected.js';
import { leastSide } from './resize.js';
import { type Command, selectedPiece } from './state.js';

/** Most punches that a sketch may hold, as its schema says. */
export const MOST_PUNCHES = 24;

/** Lets the selected mat's corners follow those of the piece that it mats, or lets them be its own. */
export function setConcentric(concentric: boolean): Command {
  return onSelected((piece) => {
    if (!piece.mats || piece.shape !== 'rectangle' || (piece.mats.concentric ?? false) === concentric) return null;
    return { event: 'piece.concentric', edits: [{ do: 'mat', piece: piece.id, mats: { ...piece.mats, concentric } }] };
  });
}

/** What a piece lies on, and how much of it shows all round. */
export interface Under {
  readonly piece: Piece;
  readonly reveal: Length;
}

/**
 * The rectangle right under `piece` that shows as an even border all round it; null where there is none. Of several the
 * one that shows least. A mat lies on no other one: its own border is its reveal.
 */
export function evenUnder(sketch: Sketch, piece: Piece): Under | null {
  const below = sketch.pieces.slice(0, sketch.pieces.indexOf(piece));
  return below
    .filter(({ face, shape, tilt }) => face === piece.face && shape === 'rectangle' && tilt === piece.tilt)
    .map((other): Under => ({ piece: other, reveal: evenBorder(other, piece) }))
    .filter(({ reveal }) => reveal > 0)
    .reduce<Under | null>((best, one) => (best && best.reveal <= one.reveal ? best : one), null);
}

/** The border of `outer` around `inner` when all four sides are alike, else 0. Tilted pieces turn about one middle then. */
function evenBorder(outer: Piece, inner: Piece): Length {
  const border = ticks(inner.x - outer.x);
  const even =
    inner.y - outer.y === border &&
    outer.width - inner.width === 2 * border &&
    outer.height - inner.height === 2 * border;
  return even ? border : ticks(0);
}

/**
 * Rounds the selected piece concentric with what it lies on: each radius less the border. Does not apply where the
 * border is not even, or where the corners are concentric already.
 */
export const roundWithin: Command = onSelected((piece, sketch) => {
  const under = piece.shape === 'rectangle' ? evenUnder(sketch, piece) : null;
  if (!under) return null;
  const corners = cornersWithin(under.piece.corners, under.reveal);
  return sameCorners(corners, piece.corners)
    ? null
    : { event: 'piece.round', edits: [{ do: 'round', piece: piece.id, corners }] };
});

/** An edge of a piece that a punch is used on. */
export interface PunchUse {
  readonly piece: Piece;
  readonly edge: Edge;
}

/** Every edge that `punch` is used on, in gluing order and clockwise. */
export function usesOf(sketch: Pick<Sketch, 'pieces'>, punch: string): readonly PunchUse[] {
  return sketch.pieces.flatMap((piece) =>
    EDGES.filter((edge) => piece.punched[edge] === punch).map((edge): PunchUse => ({ piece, edge })),
  );
}

/** The punch of the sketch that leaves the same edge as `wanted`, or `wanted` with an id of its own. */
export function punchFor({ punches }: Pick<Sketch, 'punches'>, wanted: UsualPunch): Punch {
  const known = punches.find((punch) => samePunch(punch, wanted));
  const { name, profile, repeat, depth, bite } = wanted;
  return known ?? { id: freeId(profile.replaceAll(' ', '-'), punches), name, profile, repeat, depth, bite };
}

function isFull({ punches }: Sketch, punch: Punch): boolean {
  return punches.length >= MOST_PUNCHES && !punches.some(({ id }) => id === punch.id);
}

/** Puts a punch into the sketch. Does not apply when one that leaves the same edge is there, or when the sketch is full. */
export function addPunch(wanted: UsualPunch): Command {
  return ({ sketch }, dispatch, at = 0) => {
    const punch = punchFor(sketch, wanted);
    if (sketch.punches.some(({ id }) => id === punch.id) || isFull(sketch, punch)) return false;
    dispatch?.({ event: 'punch.add', edits: [{ do: 'set-punch', punch }], at });
    return true;
  };
}

/** Changes a punch of the sketch; every edge that it is used on follows. */
export function changePunch(punch: Punch): Command {
  return ({ sketch }, dispatch, at = 0) => {
    const before = sketch.punches.find(({ id }) => id === punch.id);
    if (!before || (samePunch(before, punch) && before.name === punch.name)) return false;
    dispatch?.({ event: 'punch.change', edits: [{ do: 'set-punch', punch }], at });
    return true;
  };
}

/** Takes a punch out of the sketch; the edges that it was used on become plain, in the same step. */
export function removePunch(punch: string): Command {
  return ({ sketch }, dispatch, at = 0) => {
    if (!sketch.punches.some(({ id }) => id === punch)) return false;
    const plain = usesOf(sketch, punch).map(
      ({ piece, edge }): Edit => ({ do: 'punch', piece: piece.id, edge, punch: null }),
    );
    dispatch?.({ event: 'punch.remove', edits: [...plain, { do: 'remove-punch', punch }], at });
    return true;
  };
}

/** Punches an edge of the selected piece with a punch that need not be in the sketch yet. */
export function punchWith(edge: Edge, wanted: UsualPunch): Command {
  return (state, dispatch, at = 0) => {
    const piece = selectedPiece(state);
    const punch = punchFor(state.sketch, wanted);
    if (piece?.shape !== 'rectangle' || piece.punched[edge] === punch.id || isFull(state.sketch, punch)) return false;
    const known = state.sketch.punches.some(({ id }) => id === punch.id);
    const use: Edit = { do: 'punch', piece: piece.id, edge, punch: punch.id };
    dispatch?.({ event: 'piece.punch', edits: known ? [use] : [{ do: 'set-punch', punch }, use], at });
    return true;
  };
}

/** Along which side of the piece an edge runs. */
export function sideOf(edge: Edge): 'width' | 'height' {
  return edge === 'top' || edge === 'bottom' ? 'width' : 'height';
}

/** The nearest length to that of `edge` that holds whole repeats of `punch`, or null when it does already. */
export function wholeRepeats(
  piece: Piece,
  edge: Edge,
  punch: Pick<Punch, 'profile' | 'repeat' | 'depth'>,
): Length | null {
  const length = piece[sideOf(edge)];
  if (repeatsAlong(length, punch).rest === 0) return null;
  return ticks(Math.max(1, Math.round(length / punch.repeat)) * punch.repeat);
}

/** Makes the selected piece so long that whole repeats of the punch on `edge` fill it; its middle stays. */
export function fitRepeats(edge: Edge): Command {
  return onSelected((piece, sketch) => {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]);
    const whole = punch && !piece.locked ? wholeRepeats(piece, edge, punch) : null;
    if (whole === null || whole === undefined || whole < leastSide(sketch, piece, ticks(1))) return null;
    const side = sideOf(edge);
    const axis = side === 'width' ? 'x' : 'y';
    const { x, y, width, height } = piece;
    const start = ticks(Math.round(piece[axis] + (piece[side] - whole) / 2));
    const place = { x, y, width, height, [axis]: start, [side]: whole };
    return { event: 'piece.resize', edits: [{ do: 'resize', piece: piece.id, ...place }] };
  });
}
