import { type Length, ticks } from '../length/length.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { spotsOf } from '../stack/spots.js';
import { piecesUnder } from './lies-over.js';

/** A piece of a stack with what it adds to it. */
export interface ThickPiece {
  readonly placed: PlacedPiece;
  /** How thick its paper is. */
  readonly caliper: Length;
  /** Height of the foam under it; 0 when it is glued flat. */
  readonly raise: Length;
  /** How high the steps are that it follows, glued flat as it is; 0 for what stays flat: a board, or what lies on foam. */
  readonly follows: Length;
}

/** How high a piece lies at its highest spot, above what its stack is glued to. */
export interface LayerHeight {
  /** Its own under side: what it rests on, and its foam. */
  readonly bottom: Length;
  readonly top: Length;
  /** Where it lies lower, it is lower by this at most; what is deeper below it is bridged. */
  readonly follows: Length;
  /** The pieces that bear it, by their places in the stack: the highest ones under it. Empty on the card itself. */
  readonly restsOn: readonly number[];
  /** All pieces under it, whether they bear it or are bridged. */
  readonly over: readonly number[];
}

/** The heights of a stack, and where it is highest: the lowest of the highest pieces, by its place in the stack. */
export interface StackHeights {
  readonly layers: readonly LayerHeight[];
  readonly height: Length;
  readonly highest: number | null;
  /** The pieces that lie on each other there, from the bottom up to the highest: their calipers and their foam are the height. */
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

/** Those of `over` that none of `spots` shows, and how high each of them lies. */
function unmetUnder(over: readonly number[], spots: readonly Spot[], laid: readonly Laid[]) {
  const met = new Uint8Array(laid.length);
  for (const { pieces, tops } of spots) for (let at = 0; at < tops.length; at += 1) met[pieces[at] ?? 0] = 1;
  return over.filter((lower) => !met[lower]).map((lower) => ({ lower, top: laid[lower]?.layer.top ?? 0 }));
}

/** Glues one piece onto `spots`, all that it lies over, and onto the pieces under it. */
function lay(
  { caliper, raise, follows }: ThickPiece,
  over: readonly number[],
  spots: readonly Spot[],
  laid: readonly Laid[],
): Laid {
  // What lies under it between the lines still bears it, and as high as it is anywhere: rather too high than too low.
  const unmet = unmetUnder(over, spots, laid);
  let ground = 0;
  for (const { top } of spots) ground = Math.max(ground, top);
  for (const { top } of unmet) ground = Math.max(ground, top);
  const bearing = spots.filter(({ top }) => top === ground);
  const borne = unmet.flatMap(({ top, lower }) => (top === ground ? [lower] : []));
  const highest = [...bearing.map(({ pieces, tops }) => pieces[tops.length - 1] ?? 0), ...borne];
  const restsOn = ground > 0 ? [...new Set(highest)].sort((a, b) => a - b) : [];
  const found = ground > 0 ? (bearing[0] ?? borne[0] ?? null) : null;
  const top = ticks(ground + raise + caliper);
  for (const spot of spots) {
    spot.top = (ground - spot.top > follows ? ground : spot.top) + raise + caliper;
    spot.tops.push(spot.top);
  }
  return { layer: { bottom: ticks(ground + raise), top, follows, restsOn, over }, bearing: found };
}

/**
 * Tells whether every two pieces of a spot do lie over each other. Curves are taken for straight on the lines, so that what only touches
 * may seem to share one.
 */
function sharing(under: readonly (readonly number[])[]): (pieces: readonly number[]) => boolean {
  const count = under.length;
  const meets = new Uint8Array(count * count);
  under.forEach((lower, upper) => {
    for (const each of lower) meets[upper * count + each] = 1;
  });
  return (pieces) => {
    for (let upper = 1; upper < pieces.length; upper += 1)
      for (let lower = 0; lower < upper; lower += 1)
        if (!meets[(pieces[upper] ?? 0) * count + (pieces[lower] ?? 0)]) return false;
    return true;
  };
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
    const thick = lower === undefined ? undefined : stack[lower];
    if (lower === undefined || !thick) break;
    chain.unshift(lower);
    const bottom = (tops[at] ?? 0) - thick.caliper - thick.raise;
    // Where it bridges this spot, it is borne elsewhere.
    if (bottom !== (at > 0 ? tops[at - 1] : 0)) bearing = laid[lower]?.bearing ?? null;
  }
  return chain;
}

/**
 * How high each piece of a stack comes to lie, lowest first. It rests on the highest spot of all that it lies over, and bridges what is
 * lower: its top there is the highest top under it, and its foam and caliper. What is glued flat and follows low steps lies lower beside
 * them: only what is lower by more than `follows` is bridged. So a stack is as high as the calipers and foam that really lie on each
 * other at one spot, or where what bridges it is borne.
 */
export function stackHeights(stack: readonly ThickPiece[]): StackHeights {
  const placed = stack.map((each) => each.placed);
  const under = piecesUnder(placed);
  const sharedBy = sharing(under);
  const over = stack.map((): Spot[] => []);
  for (const pieces of spotsOf(placed)) {
    if (!sharedBy(pieces)) continue;
    const spot: Spot = { pieces, tops: [], top: 0 };
    for (const piece of pieces) over[piece]?.push(spot);
  }
  const laid: Laid[] = [];
  let [height, highest]: [number, number | null] = [0, null];
  stack.forEach((piece, at) => {
    const each = lay(piece, under[at] ?? [], over[at] ?? [], laid);
    laid.push(each);
    if (each.layer.top > height) [height, highest] = [each.layer.top, at];
  });
  return {
    layers: laid.map(({ layer }) => layer),
    height: ticks(height),
    highest,
    chain: highest === null ? [] : chainTo(highest, stack, laid),
  };
}
