import { boxesMeet, type Length, type PlacedPiece, placedBounds, shareDisc } from '@trimwell/geometry';
import {
  CURVE_ERROR,
  inset,
  largestDisc,
  partsOf,
  type Region,
  regionArea,
  regionBounds,
  regionOf,
  unite,
  without,
} from '@trimwell/geometry/regions';
import { isOpaque } from '../../batch/hidden-centres.js';
import { fieldOf } from '../../check/check-field.js';
import { isLapped, leastOverlap } from '../../check/overlap-too-small.js';
import type { Edit, Sketch } from '../../model/sketch.js';
import { borneOf, placedAt, reachedBy, standsFree } from '../borne.js';
import type { CardCheck, CardSuspect } from '../card-finding.js';
import type { FaceStack } from '../face-stack.js';

/** How much of what shows of a piece may be hidden when it goes under what it was glued onto: more than a strip is not meant. */
const MOST_HIDDEN = 1 / 4;

/** How wide each piece is held by what is borne of it, looked at up to a width; regions are never changed. */
const widths = new WeakMap<Region, { readonly enough: Length; readonly width: number }>();

/**
 * How wide a piece is held, in ticks: as wide as the largest disc in each part of what is borne of it. No more than `enough` is looked
 * for; a curve is no nearer than its error.
 */
function heldWidth(borne: Region, enough: Length): number {
  const known = widths.get(borne);
  if (known?.enough === enough) return known.width;
  const wide = inset(borne, enough / 2 - CURVE_ERROR).rings.length > 0;
  const width = wide ? enough : partsOf(borne).reduce((sum, part) => sum + 2 * largestDisc(part), 0);
  widths.set(borne, { enough, width });
  return width;
}

/** What of `region`, a part of `own`, shows below the opaque pieces from one place of the stack up to another, that one left out. */
function shownBelow(
  sketch: Sketch,
  { pieces, placed }: FaceStack,
  own: PlacedPiece,
  region: Region,
  [from, to]: readonly [number, number],
): Region {
  const covers = placed.slice(from, to).filter((cover, at) => {
    const piece = pieces[from + at];
    return piece && isOpaque(sketch, piece) && boxesMeet(placedBounds(cover), placedBounds(own));
  });
  return without(region, unite(covers.map(regionOf)));
}

/** The piece at `at` glued before all that hold it, of which `lowest` is the first; nothing where too much of it would be hidden. */
function gluedBefore(sketch: Sketch, stack: FaceStack, at: number, lowest: number): readonly Edit[][] {
  const [piece, own, first] = [stack.pieces[at], stack.placed[at], stack.pieces[lowest]];
  if (!piece || !own || !first) return [];
  const shown = shownBelow(sketch, stack, own, regionOf(own), [at + 1, stack.pieces.length]);
  const still = shownBelow(sketch, stack, own, shown, [lowest, at]);
  if (regionArea(still) < regionArea(shown) * (1 - MOST_HIDDEN)) return [];
  return [[{ do: 'order', piece: piece.id, to: sketch.pieces.indexOf(first) }]];
}

function heldTooLittleOn(sketch: Sketch, stack: FaceStack, least: Length): readonly CardSuspect[] {
  return stack.pieces.flatMap((piece, at): readonly CardSuspect[] => {
    if (!standsFree(stack, at)) return [];
    const own = stack.placed[at];
    const holding = reachedBy(stack, at);
    if (!own || placedAt(stack, holding).some((bearing) => shareDisc(bearing, own, least / 2))) return [];
    const borne = borneOf(stack, at);
    if (!borne) return [];
    // Nothing is held wider than it is itself.
    const narrow = Math.min(own.shape.width, own.shape.height) < 2 * least;
    const needed = narrow ? Math.min(least, 2 * largestDisc(regionOf(own))) : least;
    const width = heldWidth(borne, least);
    // Where the edge of a paper that holds it is told to go too little under it, that is mended.
    if (width >= needed - 4 * CURVE_ERROR || isLapped(fieldOf(sketch), piece)) return [];
    const box = regionBounds(borne);
    return [
      {
        code: 'held-too-little',
        severity: 'looks wrong',
        piece: piece.id,
        place: box ? { face: stack.face, ...box } : null,
        amount: Math.round(width),
        // Asked for only where it is told, not each time that another way to mend something is tried.
        get fixes() {
          return gluedBefore(sketch, stack, at, Math.min(...holding));
        },
      },
    ];
  });
}

/**
 * A piece on others that stand on foam, by less than glue needs, while the rest of it is in the air, which its own foam, if any, is too
 * low to fill; mended by gluing it before them, so that it goes under them. Held by several of them, it is held by all together.
 */
export const heldTooLittle: CardCheck = ({ sketch, front, inside }) => {
  const least = leastOverlap(sketch.unit);
  return [...heldTooLittleOn(sketch, front, least), ...heldTooLittleOn(sketch, inside, least)];
};
