import type { Length } from '@trimwell/geometry';
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
import { suspectsIn } from '../../check/findings.js';
import { FOLLOWED } from '../../check/levels.js';
import { leastOverlap } from '../../check/overlap-too-small.js';
import type { Edit, Sketch } from '../../model/sketch.js';
import { borneOf, reachedBy } from '../borne.js';
import type { CardCheck, CardSuspect } from '../card-finding.js';
import type { FaceStack } from '../face-stack.js';

/** How much of what shows of a piece may be hidden when it goes under what it was glued onto: more than a strip is not meant. */
const MOST_HIDDEN = 1 / 4;

/** How wide a piece is held, in ticks: as wide as the largest disc in each part of what is borne of it. */
function heldWidth(borne: Region): number {
  return partsOf(borne).reduce((sum, part) => sum + 2 * largestDisc(part), 0);
}

/** The area of the piece at `at` that shows below opaque pieces at `over`, in square ticks. */
function shownBelow(sketch: Sketch, { pieces, placed }: FaceStack, at: number, over: readonly number[]): number {
  const own = placed[at];
  if (!own) return 0;
  const covers = over.flatMap((each) => {
    const [piece, cover] = [pieces[each], placed[each]];
    return piece && cover && isOpaque(sketch, piece) ? [regionOf(cover)] : [];
  });
  return regionArea(without(regionOf(own), unite(covers)));
}

/** The piece at `at` glued before all that hold it; nothing where too much of it would be hidden. */
function gluedBefore(sketch: Sketch, stack: FaceStack, at: number, holding: readonly number[]): readonly Edit[][] {
  const [piece, lowest] = [stack.pieces[at], Math.min(...holding)];
  const first = stack.pieces[lowest];
  if (!piece || !first) return [];
  const later = [...stack.pieces.keys()].filter((each) => each > at);
  const between = [...stack.pieces.keys()].filter((each) => each >= lowest && each < at);
  const shown = shownBelow(sketch, stack, at, later);
  if (shownBelow(sketch, stack, at, [...between, ...later]) < shown * (1 - MOST_HIDDEN)) return [];
  return [[{ do: 'order', piece: piece.id, to: sketch.pieces.indexOf(first) }]];
}

/** True when the edge of one that holds `piece` is told to go too little under it: then that is mended. */
function toldAsLap(sketch: Sketch, piece: string, holding: ReadonlySet<string>): boolean {
  return suspectsIn(sketch).some(
    ({ code, piece: lower, other }) => code === 'overlap-too-small' && other === piece && holding.has(lower),
  );
}

function heldTooLittleOn(sketch: Sketch, stack: FaceStack, least: Length): readonly CardSuspect[] {
  return stack.pieces.flatMap((piece, at): readonly CardSuspect[] => {
    // What stands on foam has it wherever something lies below it, as high as that is deep.
    if (piece.raise > FOLLOWED) return [];
    const borne = borneOf(stack, at);
    const own = stack.placed[at];
    if (!borne || !own) return [];
    // Nothing is held wider than it is itself; a curve is no nearer than its error.
    const enough = (width: number): boolean => inset(borne, width / 2 - CURVE_ERROR).rings.length > 0;
    if (enough(least)) return [];
    const width = heldWidth(borne);
    const needed = Math.min(least, 2 * largestDisc(regionOf(own)));
    if (width >= needed - 4 * CURVE_ERROR) return [];
    const holding = reachedBy(stack, at);
    if (toldAsLap(sketch, piece.id, new Set(holding.flatMap((each) => stack.pieces[each]?.id ?? [])))) return [];
    const box = regionBounds(borne);
    return [
      {
        code: 'held-too-little',
        severity: 'looks wrong',
        piece: piece.id,
        place: box ? { face: stack.face, ...box } : null,
        amount: Math.round(width),
        fixes: holding.length > 0 ? gluedBefore(sketch, stack, at, holding) : [],
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
