import type { Point } from '@trimwell/geometry';

/** Where the card lies on the stage: pixels of the stage per tick, and the pixel of the card's top left corner. */
export interface FaceView {
  readonly zoom: number;
  readonly left: number;
  readonly top: number;
}

/** A width and a height in one unit: of the stage in pixels, of a card in ticks. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Height of the figures on the stage, in pixels. */
export const FIGURE = 13;

/**
 * Room for the overall dimensions at the left and below, and for those of what is selected at the other sides, in pixels;
 * above the card also for the pin that tilts a piece.
 */
const ROOM = { left: 46, top: 62, right: 46, bottom: 46 };

/** The largest true-proportion view of `card` on a stage of `width` x `height` pixels, in the middle of what is left. */
export function fitCard(card: Extent, { width, height }: Extent): FaceView {
  const free = {
    width: Math.max(80, width - ROOM.left - ROOM.right),
    height: Math.max(80, height - ROOM.top - ROOM.bottom),
  };
  const zoom = Math.min(free.width / card.width, free.height / card.height);
  return {
    zoom,
    left: Math.round(ROOM.left + (free.width - card.width * zoom) / 2),
    top: Math.round(ROOM.top + (free.height - card.height * zoom) / 2),
  };
}

/** A point of the card in pixels of the stage. */
export function toStage({ x, y }: Point, { zoom, left, top }: FaceView): Point {
  return { x: left + x * zoom, y: top + y * zoom };
}

/** A point of the stage in floating ticks of the card. */
export function toCard({ x, y }: Point, { zoom, left, top }: FaceView): Point {
  return { x: (x - left) / zoom, y: (y - top) / zoom };
}
