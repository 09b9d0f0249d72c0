import { type Length, ticks } from '../length/length.js';
import {
  isRigid,
  LAID_FLAT,
  type Level,
  type LiesOver,
  levelsOf,
  reaches,
  standsOn,
  type ThickPiece,
} from '../stack/levels.js';
import { spotsOf } from '../stack/spots.js';
import { piecesUnder } from './lies-over.js';

/** How high a piece lies at its highest spot, above what its stack is glued to. */
export interface LayerHeight {
  /** Its own under side: what it rests on, and its foam where it rests on that. */
  readonly bottom: Length;
  readonly top: Length;
  /** Its foam as far as it counts: none where it rests on something that is higher than its foam beside it. */
  readonly foam: Length;
  /** The pieces that bear it there, by their places in the stack. Empty on the card itself. */
  readonly restsOn: readonly number[];
  /** All pieces under it, whether they bear it or are bridged. */
  readonly over: readonly number[];
  /** Those of them that it comes down to, or that its foam stands on; and whether it does so on what the stack is glued to. */
  readonly gluedTo: readonly number[];
  readonly gluedToGround: boolean;
}

/** The heights of a stack, and where it is highest: the lowest of the highest pieces, by its place in the stack. */
export interface StackHeights {
  readonly layers: readonly LayerHeight[];
  /** How high each piece lies on foam and boards alone. */
  readonly levels: readonly Level[];
  readonly height: Length;
  readonly highest: number | null;
  /** The pieces that lie on each other there, from the bottom up to the highest: their calipers, and what of their foam counts, are the height. */
  readonly chain: readonly number[];
}

/** A spot of a stack while that is glued. */
interface Spot {
  /** The places of the pieces over it, lowest first. */
  readonly pieces: readonly number[];
  /** How high each of them lies there, as far as they are glued. */
  readonly tops: number[];
  /** How high it is so far. */
  top: number;
}

/** How a piece is borne where it lies highest: the spot, or the piece that bears it where no spot was met. */
type Bearing = Spot | number | null;

/** What is known of a piece that has been glued. */
interface Laid {
  readonly layer: LayerHeight;
  readonly bearing: Bearing;
}

/** Which pieces lie under `over`, lowest first, that no spot shows. */
function unmetUnder(over: readonly number[], spots: readonly Spot[], count: number): readonly number[] {
  const met = new Uint8Array(count);
  for (const { pieces, tops } of spots) for (let at = 0; at < tops.length; at += 1) met[pieces[at] ?? 0] = 1;
  return over.filter((lower) => !met[lower]);
}

/** The piece that lies topmost on a spot so far; null where none does. */
function topmost({ pieces, tops }: Spot): number | null {
  return tops.length === 0 ? null : (pieces[tops.length - 1] ?? null);
}

/** Glues one piece onto `spots`, all that it lies over, and onto the pieces under it. */
function lay(
  piece: ThickPiece,
  level: Level,
  over: readonly number[],
  spots: readonly Spot[],
  laid: readonly Laid[],
  levels: readonly Level[],
): Laid {
  const { caliper, raise } = piece;
  const isGlued = raise > 0 ? standsOn : reaches;
  const gluedToGround = isGlued(level, LAID_FLAT);
  const gluedTo = over.filter((lower) => isGlued(level, levels[lower] ?? LAID_FLAT));
  const glued = new Uint8Array(laid.length);
  for (const lower of gluedTo) glued[lower] = 1;
  const isOn = (lower: number | null): boolean => (lower === null ? gluedToGround : glued[lower] === 1);
  const under = (top: number, lower: number | null): number => top + (isOn(lower) ? raise : 0);
  // What lies under it between the lines still bears it, and as high as it is anywhere: rather too high than too low.
  const unmet = unmetUnder(over, spots, laid.length);
  const topOf = (lower: number): number => laid[lower]?.layer.top ?? 0;
  let bottom = spots.length + unmet.length === 0 ? raise : 0;
  for (const spot of spots) bottom = Math.max(bottom, under(spot.top, topmost(spot)));
  for (const lower of unmet) bottom = Math.max(bottom, under(topOf(lower), lower));
  const bearing = spots.filter((spot) => under(spot.top, topmost(spot)) === bottom);
  const borne = unmet.filter((lower) => under(topOf(lower), lower) === bottom);
  const restsOn = [...new Set([...bearing.flatMap((spot) => topmost(spot) ?? []), ...borne])].sort((a, b) => a - b);
  const first = bearing[0] ? topmost(bearing[0]) : (borne[0] ?? null);
  const found = restsOn.length > 0 ? (bearing[0] ?? borne[0] ?? null) : null;
  const rigid = isRigid(piece);
  for (const spot of spots) {
    spot.top = (rigid || !isOn(topmost(spot)) ? bottom : spot.top) + caliper;
    spot.tops.push(spot.top);
  }
  return {
    layer: {
      bottom: ticks(bottom),
      top: ticks(bottom + caliper),
      foam: isOn(first) ? raise : ticks(0),
      restsOn,
      over,
      gluedTo,
      gluedToGround,
    },
    bearing: found,
  };
}

/** Tells of two pieces by their places whether one lies over the other. */
function meeting(under: readonly (readonly number[])[]): LiesOver {
  const count = under.length;
  const meets = new Uint8Array(count * count);
  under.forEach((lower, upper) => {
    for (const each of lower) meets[upper * count + each] = 1;
  });
  return (lower, upper) => meets[upper * count + lower] === 1;
}

/**
 * True when every two pieces of a spot do lie over each other. Curves are taken for straight on the lines, so that what only touches may
 * seem to share one.
 */
function areShared(pieces: readonly number[], meets: LiesOver): boolean {
  for (let upper = 1; upper < pieces.length; upper += 1)
    for (let lower = 0; lower < upper; lower += 1) if (!meets(pieces[lower] ?? 0, pieces[upper] ?? 0)) return false;
  return true;
}

/** The pieces that lie on each other from the bottom up to `highest`, where each is borne. */
function chainTo(highest: number, stack: readonly ThickPiece[], laid: readonly Laid[]): readonly number[] {
  const chain = [highest];
  let bearing = laid[highest]?.bearing ?? null;
  while (bearing !== null) {
    if (typeof bearing === 'number') {
      chain.unshift(bearing);
      bearing = laid[bearing]?.bearing ?? null;
      continue;
    }
    const { pieces, tops } = bearing;
    const at = pieces.indexOf(chain[0] ?? 0) - 1;
    const lower = pieces[at];
    const own = lower === undefined ? undefined : laid[lower];
    const thick = lower === undefined ? undefined : stack[lower];
    if (lower === undefined || !thick || !own) break;
    chain.unshift(lower);
    const bottom = (tops[at] ?? 0) - thick.caliper - own.layer.foam;
    // Where it bridges this spot, it is borne elsewhere.
    if (bottom !== (at > 0 ? tops[at - 1] : 0)) bearing = own.bearing;
  }
  return chain;
}

/**
 * How high each piece of a stack comes to lie, lowest first. It rests on the highest spot of all that it lies over, with its foam where that
 * stands (see `levelsOf`), and bridges what it does not reach. A paper that is glued flat comes down to all that it reaches, so that it
 * lies lower beside steps of other papers. So a stack is as high as the calipers and foam that really lie on each other at one spot, or
 * where what bridges it is borne.
 */
export function stackHeights(stack: readonly ThickPiece[]): StackHeights {
  const placed = stack.map((each) => each.placed);
  const under = piecesUnder(placed);
  const meets = meeting(under);
  const levels = levelsOf(stack, meets);
  const over = stack.map((): Spot[] => []);
  for (const pieces of spotsOf(placed)) {
    if (!areShared(pieces, meets)) continue;
    const spot: Spot = { pieces, tops: [], top: 0 };
    for (const piece of pieces) over[piece]?.push(spot);
  }
  const laid: Laid[] = [];
  let [height, highest]: [number, number | null] = [0, null];
  stack.forEach((piece, at) => {
    const each = lay(piece, levels[at] ?? LAID_FLAT, under[at] ?? [], over[at] ?? [], laid, levels);
    laid.push(each);
    if (each.layer.top > height) [height, highest] = [each.layer.top, at];
  });
  return {
    layers: laid.map(({ layer }) => layer),
    levels,
    height: ticks(height),
    highest,
    chain: highest === null ? [] : chainTo(highest, stack, laid),
  };
}
