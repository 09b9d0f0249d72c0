import { type Length, ticks } from '@trimwell/geometry';
import { regionArea, regionOf, without } from '@trimwell/geometry/regions';
import { CARD_BASE } from '../batch/recipe.js';
import { caliperOf } from '../check/caliper-of.js';
import type { Sketch } from '../model/sketch.js';
import { borneOf, reachedBy } from './borne.js';
import type { FaceStack } from './face-stack.js';

/** What is less than this share of a gap is not told to be seen through it. */
const SEEN = 0.02;

/** One step of building a card: what is glued where, on what, with what. */
export interface BuildStep {
  /** The piece, or `CARD_BASE` for the first step. */
  readonly piece: string;
  readonly face: 'front' | 'inside';
  /** Its untilted top left corner on its face, and its tilt in degrees, clockwise about its middle. */
  readonly place: { readonly x: Length; readonly y: Length; readonly tilt: number };
  /** What bears it: the highest pieces under it, lowest first, or `CARD_BASE`. */
  readonly restsOn: readonly string[];
  /** All that it comes down to, or that its foam stands on, lowest first, `CARD_BASE` where that is among it. */
  readonly gluedTo: readonly string[];
  /**
   * What is seen below it through a gap of more than what a paper follows, lowest first: `CARD_BASE` where nothing else is. Nothing where
   * all of it reaches what is below it.
   */
  readonly bridges: readonly string[];
  /** `flat`: glued flat; `foam`: on foam as high as it is raised. Nothing for the base. */
  readonly adhesive: 'flat' | 'foam' | null;
  readonly foam: Length;
  /** How thick the highest spot of this leaf is after this step, the base included; without a fold both faces are on one leaf. */
  readonly height: Length;
}

/** What a piece lies over without reaching it: the pieces that are seen through the gap, or the bare card. */
function bridged(stack: FaceStack, at: number): readonly string[] {
  const borne = borneOf(stack, at);
  const piece = stack.placed[at];
  if (!borne || !piece) return [];
  const reached = new Set(reachedBy(stack, at));
  let gap = without(regionOf(piece), borne);
  const least = regionArea(gap) * SEEN;
  const found: string[] = [];
  // From the top down, each hides what lies below it.
  for (const lower of [...(stack.heights.layers[at]?.over ?? [])].reverse()) {
    const [below, named] = [stack.placed[lower], stack.pieces[lower]];
    if (!below || !named || reached.has(lower)) continue;
    const rest = without(gap, regionOf(below));
    if (regionArea(gap) - regionArea(rest) > least) found.unshift(named.id);
    gap = rest;
    if (regionArea(gap) <= least) return found;
  }
  return [CARD_BASE, ...found];
}

function faceSteps(stack: FaceStack, base: Length): readonly BuildStep[] {
  const { face, pieces, heights } = stack;
  let height = 0;
  return pieces.map((piece, at) => {
    const layer = heights.layers[at];
    const named = (places: readonly number[]): readonly string[] => places.map((each) => pieces[each]?.id ?? CARD_BASE);
    height = Math.max(height, layer?.top ?? 0);
    const bearing = layer?.restsOn ?? [];
    return {
      piece: piece.id,
      face,
      place: { x: piece.x, y: piece.y, tilt: piece.tilt },
      restsOn: bearing.length > 0 ? named(bearing) : [CARD_BASE],
      gluedTo: [...(layer?.gluedToGround ? [CARD_BASE] : []), ...named(layer?.gluedTo ?? [])],
      bridges: bridged(stack, at),
      adhesive: piece.raise > 0 ? 'foam' : 'flat',
      foam: piece.raise,
      height: ticks(base + height),
    };
  });
}

/** The card in the order in which it is built: the base, all of its front, then all of its inside. */
export function buildSteps(sketch: Sketch, front: FaceStack, inside: FaceStack): readonly BuildStep[] {
  const { caliper } = caliperOf(sketch, sketch.card.base);
  const base: BuildStep = {
    piece: CARD_BASE,
    face: 'front',
    place: { x: ticks(0), y: ticks(0), tilt: 0 },
    restsOn: [],
    gluedTo: [],
    bridges: [],
    adhesive: null,
    foam: ticks(0),
    height: caliper,
  };
  const before = sketch.card.fold === 'none' ? ticks(caliper + front.heights.height) : caliper;
  return [base, ...faceSteps(front, caliper), ...faceSteps(inside, before)];
}
