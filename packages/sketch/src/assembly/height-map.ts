import type { Length, Point } from '@trimwell/geometry';
import { regionArea, regionRings, visibleRegions } from '@trimwell/geometry/regions';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Sketch } from '../model/sketch.js';
import type { FaceStack } from './face-stack.js';

/** A part of a face where one piece lies topmost. */
export interface HeightArea {
  readonly piece: string;
  /** Above the card, at its highest spot: a paper that comes down beside a step is lower there. */
  readonly height: Length;
  /** In square ticks. */
  readonly area: number;
  /** Its edge, in floating ticks: outer rings and holes, to be filled by even and odd. */
  readonly rings: readonly (readonly Point[])[];
}

/**
 * The height map of a face: the areas of the pieces that lie topmost somewhere, in gluing order. Vellum is as high as any other paper,
 * so that here it covers. Where no area is there is only the card.
 */
export function heightMap(sketch: Sketch, { pieces, heights }: FaceStack): readonly HeightArea[] {
  const topmost = visibleRegions(pieces.map((piece) => ({ placed: placedPiece(sketch, piece), opaque: true })));
  return pieces.flatMap(({ id }, at): readonly HeightArea[] => {
    const [shown, layer] = [topmost[at], heights.layers[at]];
    if (!shown || !layer || shown.visible.rings.length === 0) return [];
    return [{ piece: id, height: layer.top, area: regionArea(shown.visible), rings: regionRings(shown.visible) }];
  });
}
