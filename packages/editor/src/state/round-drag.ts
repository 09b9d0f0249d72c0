import { type Length, nearestStep, type Point, ticks, type Unit } from '@trimwell/geometry';
import { type Corners, isConcentric, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { turned } from './resize.js';
import { evenUnder } from './tool-commands.js';

export type CornerName = keyof Corners;

/** Which way is inside from each corner, in the piece's own frame. */
export const INWARD: Readonly<Record<CornerName, { readonly x: 1 | -1; readonly y: 1 | -1 }>> = {
  tl: { x: 1, y: 1 },
  tr: { x: -1, y: 1 },
  br: { x: -1, y: -1 },
  bl: { x: 1, y: -1 },
};

export const CORNERS = Object.keys(INWARD) as readonly CornerName[];
const BESIDE: Readonly<Record<CornerName, { readonly across: CornerName; readonly along: CornerName }>> = {
  tl: { across: 'tr', along: 'bl' },
  tr: { across: 'tl', along: 'br' },
  br: { across: 'bl', along: 'tr' },
  bl: { across: 'br', along: 'tl' },
};

/** A radius at which a dragged corner comes to rest, and why. */
export interface RestingRadius {
  readonly radius: Length;
  readonly why: 'owned' | 'concentric' | 'square';
}

/** Radii concentric with what `corner` of `piece` lies on evenly, with what it mats, and with what mats it. */
function concentricRadii(sketch: Sketch, piece: Piece, corner: CornerName): readonly Length[] {
  const under = evenUnder(sketch, piece);
  const within = under ? [under.piece.corners[corner] - under.reveal] : [];
  const inner = sketch.pieces.find(({ id }) => id === piece.mats?.piece);
  const around = inner && piece.mats ? [inner.corners[corner] + piece.mats.reveal] : [];
  return [...within, ...around].filter((radius) => radius > 0).map(ticks);
}

/** Where a drag of `corner` may come to rest; concentric goes before an equal radius of a rounder, since it says more. */
export function restingRadii(
  sketch: Sketch,
  piece: Piece,
  corner: CornerName,
  owned: readonly Length[],
): readonly RestingRadius[] {
  // What follows would run away from the drag: a concentric mat's piece is rounded with it.
  const parallel = isConcentric(piece) ? [] : concentricRadii(sketch, piece, corner);
  return [
    { radius: ticks(0), why: 'square' },
    ...parallel.map((radius): RestingRadius => ({ radius, why: 'concentric' })),
    ...owned.map((radius): RestingRadius => ({ radius, why: 'owned' })),
  ];
}

/** The corners that a drag of `corner` rounds: with `alone` only it, else all that are as round as it. */
function dragged({ corners }: Piece, corner: CornerName, alone: boolean): readonly CornerName[] {
  return alone ? [corner] : CORNERS.filter((other) => corners[other] === corners[corner]);
}

/** The largest radius that `moving` corners can have together beside those that stay. */
function mostRadius({ width, height, corners }: Piece, moving: readonly CornerName[]): number {
  const room = (side: number, other: CornerName): number =>
    moving.includes(other) ? Math.floor(side / 2) : side - corners[other];
  return Math.max(
    0,
    Math.min(...moving.flatMap((corner) => [room(width, BESIDE[corner].across), room(height, BESIDE[corner].along)])),
  );
}

/** How a corner is dragged: `tolerance` is in ticks, `snaps` false leaves it between the marks, `alone` takes no other corner along. */
export interface RoundRules {
  readonly resting: readonly RestingRadius[];
  readonly tolerance: number;
  readonly snaps: boolean;
  readonly alone: boolean;
  readonly unit: Unit;
}

/** A drag of a corner: the corners after it, its radius, and why it rests there. */
export interface RoundedCorners {
  readonly corners: Corners;
  readonly radius: Length;
  readonly why: RestingRadius['why'] | null;
}

/** Where there is nothing to rest at a radius goes by marks of the ruler, and without snapping by the finest ones. */
function markFor(unit: Unit, snaps: boolean): Length {
  if (snaps) return rulerStep(unit);
  return unit === 'in' ? ticks(254) : ticks(64);
}

function restAt(loose: number, most: number, { resting, tolerance, snaps, unit }: RoundRules): RestingRadius | Length {
  const near = resting
    .filter(({ radius }) => snaps && radius <= most && Math.abs(radius - loose) <= tolerance)
    .reduce<RestingRadius | null>(
      (best, one) => (best && Math.abs(best.radius - loose) <= Math.abs(one.radius - loose) ? best : one),
      null,
    );
  return near ?? ticks(Math.min(most, nearestStep(loose, markFor(unit, snaps))));
}

/**
 * The corners of `piece` when one was pulled by `pull` ticks on the card; `gain` is how much its radius grows when it
 * is pulled inwards by one tick along each side. Corners that were as round as it go along. A concentric mat has no radius up
 * to its reveal: it is square there.
 */
export function roundBy(
  piece: Piece,
  corner: CornerName,
  pull: Point,
  gain: number,
  rules: RoundRules,
): RoundedCorners {
  const own = turned(pull, -piece.tilt);
  const inward = (own.x * INWARD[corner].x + own.y * INWARD[corner].y) / 2;
  const moving = dragged(piece, corner, rules.alone);
  const most = mostRadius(piece, moving);
  const loose = Math.max(0, Math.min(most, piece.corners[corner] + inward * gain));
  const rest = restAt(loose, most, rules);
  const found = typeof rest === 'number' ? { radius: rest, why: null } : rest;
  const none = isConcentric(piece) && found.radius <= (piece.mats?.reveal ?? 0);
  const { radius, why } = none ? ({ radius: ticks(0), why: 'square' } as const) : found;
  const corners = { ...piece.corners, ...Object.fromEntries(moving.map((one) => [one, radius])) };
  return { corners, radius, why };
}
