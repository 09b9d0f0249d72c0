import { flattenOutline } from '../outline/flatten.js';
import { pieceOutline } from '../outline/shapes.js';
import type { Point } from '../rect/rect.js';
import { intoFrame, type PlacedPiece } from './placed-piece.js';
import { isConvex, pointTest } from './point-in-piece.js';

/** Places on each side of a piece at which it is looked whether it shows, the outermost first: there most pieces show. */
const PLACES = [-1, 1, -0.97, 0.97, -0.6, 0.6, -0.3, 0.3, 0] as const;
/** How far from its own edge a point has to be to tell, in ticks and as a share of the piece's height (see `coveringOf`). */
export const WITHIN = 80;
const MARGIN_SHARE = 1 / 48;

/** Points well within a piece, on its face, as far as they were asked for. */
interface Marks {
  readonly found: Point[];
  tried: number;
}

const marks = new WeakMap<PlacedPiece, Marks>();

/** The first point of the face, of those that lie `WITHIN` or more within `piece`, the outermost first, that `fits`; null when none does. */
export function markWithin(piece: PlacedPiece, fits: (point: Point) => boolean): Point | null {
  const known = marks.get(piece) ?? { found: [], tried: 0 };
  marks.set(piece, known);
  const first = known.found.find(fits);
  if (first) return first;
  const { width, height } = piece.shape;
  const place = toFace(piece);
  const margin = WITHIN + height * MARGIN_SHARE;
  const within = pointTest(piece);
  const [halfWidth, halfHeight] = [width / 2 - margin - 1, height / 2 - margin - 1];
  while (known.tried < PLACES.length ** 2) {
    const [across, down] = [
      PLACES[known.tried % PLACES.length] ?? 0,
      PLACES[Math.floor(known.tried / PLACES.length)] ?? 0,
    ];
    known.tried += 1;
    const point = place({ x: width / 2 + across * halfWidth, y: height / 2 + down * halfHeight });
    if (!within(point.x, point.y, margin)) continue;
    known.found.push(point);
    if (fits(point)) return point;
  }
  return null;
}

/** All of those points. */
function marksWithin(piece: PlacedPiece): readonly Point[] {
  markWithin(piece, () => false);
  return marks.get(piece)?.found ?? [];
}

/** Corners of each piece, on its face. */
const corners = new WeakMap<PlacedPiece, readonly Point[]>();

function cornersOf(piece: PlacedPiece): readonly Point[] {
  const found = corners.get(piece) ?? flattenOutline(pieceOutline(piece.shape).outline).map(toFace(piece));
  corners.set(piece, found);
  return found;
}

/** Where a point of `piece`, from its own untilted top left corner, lies on the face. */
export function toFace(piece: PlacedPiece): (point: Point) => Point {
  const { x, y, tilt } = piece;
  // The frame of a piece that is not tilted is the face, but for its corner.
  const place = intoFrame({ ...piece, tilt: 0 }, { ...piece, tilt });
  return (point) => {
    const placed = place(point);
    return { x: placed.x + x, y: placed.y + y };
  };
}

/** The largest first: they hold most, so that the others are seldom asked. Of equal ones in their order. */
function largestFirst(covers: readonly PlacedPiece[]): readonly PlacedPiece[] {
  return [...covers].sort((a, b) => b.shape.width * b.shape.height - a.shape.width * a.shape.height);
}

/** The first point well within `piece` that surely shows, of those that are tried; null when none of them does. */
export function shownPoint(piece: PlacedPiece, covers: readonly PlacedPiece[]): Point | null {
  const tests = largestFirst(covers).map(pointTest);
  return markWithin(piece, ({ x, y }) => !tests.some((holds) => holds(x, y)));
}

/** True when `cover`, a rectangle or an ellipse, holds every corner of `piece`, and so all of it. False for any other cover. */
export function holdsPiece(cover: PlacedPiece, piece: PlacedPiece): boolean {
  const holds = pointTest(cover);
  return isConvex(cover) && cornersOf(piece).every(({ x, y }) => holds(x, y));
}

/** The largest of `covers` that alone holds all of `piece`, of those of which that is told at once. */
export function coveredByOne(piece: PlacedPiece, covers: readonly PlacedPiece[]): PlacedPiece | undefined {
  return largestFirst(covers).find((cover) => holdsPiece(cover, piece));
}

/**
 * Few of `covers` that hold all that is tried of `piece` between them, corners and points within: each time the largest that holds the
 * first of what is left. Points that none holds are left out.
 */
export function fewThatMayCover(piece: PlacedPiece, covers: readonly PlacedPiece[]): readonly PlacedPiece[] {
  // Every third corner of a curve is enough: what they miss is asked for afterwards.
  let left = [...marksWithin(piece), ...cornersOf(piece).filter((_, at) => at % 3 === 0)];
  const largest = largestFirst(covers).map((cover) => ({ cover, holds: pointTest(cover) }));
  const few: PlacedPiece[] = [];
  for (let [first] = left; first; [first] = left) {
    const { x, y } = first;
    const chosen = largest.find(({ holds }) => holds(x, y));
    if (chosen) few.push(chosen.cover);
    left = left.slice(1).filter((point) => !chosen?.holds(point.x, point.y));
  }
  return few;
}
