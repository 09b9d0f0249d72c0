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
import { FOLLOWED } from '../../check/levels.js';
import { isLapped, leastOverlap } from '../../check/overlap-too-small.js';
import type { Edit, Sketch } from '../../model/sketch.js';
import { borneOf, reachedBy } from '../borne.js';
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

/** What of `region` shows below the opaque pieces at `over`. */
function below(sketch: Sketch, { pieces, placed }: FaceStack, region: Region, over: readonly number[]): Region {
  const covers = over.flatMap((each) => {
    const [piece, cover] = [pieces[each], placed[each]];
    return piece && cover && isOpaque(sketch, piece) ? [regionOf(cover)] : [];
  });
  return without(region, unite(covers));
}

/** The piece at `at` glued before all that hold it; nothing where too much of it would be hidden. */
function gluedBefore(sketch: Sketch, stack: FaceStack, at: number, holding: readonly number[]): readonly Edit[][] {
  const [piece, own, lowest] = [stack.pieces[at], stack.placed[at], Math.min(...holding)];
  const first = stack.pieces[lowest];
  if (!piece || !own || !first) return [];
  const meeting = [...stack.pieces.keys()].filter((each) => each !== at && boxesMeetAt(stack, each, own));
  const shown = below(
    sketch,
    stack,
    regionOf(own),
    meeting.filter((each) => each > at),
  );
  const still = below(
    sketch,
    stack,
    shown,
    meeting.filter((each) => each >= lowest && each < at),
  );
  if (regionArea(still) < regionArea(shown) * (1 - MOST_HIDDEN)) return [];
  return [[{ do: 'order', piece: piece.id, to: sketch.pieces.indexOf(first) }]];
}

function boxesMeetAt({ placed }: FaceStack, at: number, piece: PlacedPiece): boolean {
  const other = placed[at];
  return other !== undefined && boxesMeet(placedBounds(other), placedBounds(piece));
}

/** True when the piece at `lower` surely holds `piece` by a disc of that radius. */
function sharesDisc({ placed }: FaceStack, lower: number, piece: PlacedPiece, radius: number): boolean {
  const bearing = placed[lower];
  return bearing !== undefined && shareDisc(bearing, piece, radius);
}

function heldTooLittleOn(sketch: Sketch, stack: FaceStack, least: Length): readonly CardSuspect[] {
  return stack.pieces.flatMap((piece, at): readonly CardSuspect[] => {
    // What stands on foam has it wherever something lies below it, as high as that is deep.
    if (piece.raise > FOLLOWED) return [];
    const own = stack.placed[at];
    if (!own || reachedBy(stack, at).some((lower) => sharesDisc(stack, lower, own, least / 2))) return [];
    const borne = borneOf(stack, at);
    if (!borne) return [];
    // Nothing is held wider than it is itself.
    const narrow = Math.min(own.shape.width, own.shape.height) < 2 * least;
    const needed = narrow ? Math.min(least, 2 * largestDisc(regionOf(own))) : least;
    const width = heldWidth(borne, least);
    // Where the edge of a paper that holds it is told to go too little under it, that is mended.
    if (width >= needed - 4 * CURVE_ERROR || isLapped(fieldOf(sketch), piece)) return [];
    const holding = reachedBy(stack, at);
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
          return holding.length > 0 ? gluedBefore(sketch, stack, at, holding) : [];
        },
      },
    ];
  });
}

/**
 * A piece glued flat onto others that stand on foam, by less than glue needs, while the rest of it is in the air; mended by gluing it
 * before them, so that it goes under them. Held by several of them, it is held by all together.
 */
export const heldTooLittle: CardCheck = ({ sketch, front, inside }) => {
  const least = leastOverlap(sketch.unit);
  return [...heldTooLittleOn(sketch, front, least), ...heldTooLittleOn(sketch, inside, least)];
};
