import { type Length, millimetres } from '@trimwell/geometry';
import { inset, largestDisc, regionBounds } from '@trimwell/geometry/regions';
import { suspectsIn } from '../../check/findings.js';
import { leastOverlap } from '../../check/overlap-too-small.js';
import type { Sketch } from '../../model/sketch.js';
import { borneBy } from '../borne.js';
import type { CardCheck, CardSuspect } from '../card-finding.js';
import type { FaceStack } from '../face-stack.js';

/** A paper follows steps of a few papers, so that it is glued to what lies no further below it: 1 mm (common practice, no source). */
const FOLLOWS = millimetres(1);

function heldTooLittleOn(sketch: Sketch, stack: FaceStack, least: Length): readonly CardSuspect[] {
  return stack.heights.layers.flatMap(({ bottom, over }, at): readonly CardSuspect[] => {
    const piece = stack.pieces[at];
    // What stands on foam has it wherever something lies below it.
    if (!piece || piece.raise > 0 || bottom <= FOLLOWS) return [];
    const holding = over.filter((lower) => (stack.heights.layers[lower]?.top ?? 0) >= bottom - FOLLOWS);
    const borne = borneBy(stack, at, holding);
    if (!borne || inset(borne, least / 2).rings.length > 0) return [];
    const box = regionBounds(borne);
    const first = stack.pieces[Math.min(...holding)];
    return [
      {
        code: 'held-too-little',
        severity: 'looks wrong',
        piece: piece.id,
        place: box ? { face: stack.face, ...box } : null,
        amount: Math.round(2 * largestDisc(borne)),
        fixes: first ? [[{ do: 'order', piece: piece.id, to: sketch.pieces.indexOf(first) }]] : [],
      },
    ];
  });
}

/** True when the edge of another paper is told to go too little under `piece`: then that is mended. */
function toldAsLap(sketch: Sketch, piece: string): boolean {
  return suspectsIn(sketch).some(({ code, other }) => code === 'overlap-too-small' && other === piece);
}

/**
 * A piece glued flat onto others that stand on foam, by less than glue needs, while the rest of it is in the air; mended by gluing it
 * before them, so that it goes under them.
 */
export const heldTooLittle: CardCheck = ({ sketch, front, inside }) => {
  const least = leastOverlap(sketch.unit);
  const found = [...heldTooLittleOn(sketch, front, least), ...heldTooLittleOn(sketch, inside, least)];
  return found.filter(({ piece }) => !toldAsLap(sketch, piece));
};
