import { type Length, ticks } from '@trimwell/geometry';
import { CARD_BASE } from '../batch/recipe.js';
import { caliperOf } from '../check/caliper-of.js';
import type { Sketch } from '../model/sketch.js';
import { borneBy } from './borne.js';
import type { FaceStack } from './face-stack.js';

/** One step of building a card: what is glued where, on what, with what. */
export interface BuildStep {
  /** The piece, or `CARD_BASE` for the first step. */
  readonly piece: string;
  readonly face: 'front' | 'inside';
  /** Its untilted top left corner on its face, and its tilt in degrees, clockwise about its middle. */
  readonly place: { readonly x: Length; readonly y: Length; readonly tilt: number };
  /** What bears it: the highest pieces under it, lowest first, or `CARD_BASE`. */
  readonly restsOn: readonly string[];
  /** What it lies over without touching it, lowest first, where it is not borne all over: lower pieces, or else `CARD_BASE`. */
  readonly bridges: readonly string[];
  /** `flat`: glued flat; `foam`: on foam as high as it is raised. Nothing for the base. */
  readonly adhesive: 'flat' | 'foam' | null;
  readonly foam: Length;
  /** How thick the highest spot of this leaf is after this step, the base included; without a fold both faces are on one leaf. */
  readonly height: Length;
}

/** What a piece lies over without touching it: lower pieces, or else the bare card; nothing where it is borne all over. */
function bridged(stack: FaceStack, at: number): readonly string[] {
  const { restsOn = [], over = [] } = stack.heights.layers[at] ?? {};
  if (!borneBy(stack, at, restsOn)) return [];
  const lower = over.filter((each) => !restsOn.includes(each));
  return lower.length > 0 ? lower.map((each) => stack.pieces[each]?.id ?? CARD_BASE) : [CARD_BASE];
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
    bridges: [],
    adhesive: null,
    foam: ticks(0),
    height: caliper,
  };
  const before = sketch.card.fold === 'none' ? ticks(caliper + front.heights.height) : caliper;
  return [base, ...faceSteps(front, caliper), ...faceSteps(inside, before)];
}
