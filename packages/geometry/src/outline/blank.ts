import { type Length, ticks } from '../length/length.js';
import type { Size } from '../rect/rect.js';

/** What a piece's blank depends on; `bites` are what a punch takes off each edge, 0 on a plain one. */
export interface BlankSpec extends Size {
  readonly shape: 'rectangle' | 'ellipse' | 'banner' | 'tag';
  readonly bites: { readonly top: Length; readonly right: Length; readonly bottom: Length; readonly left: Length };
}

/**
 * The rectangle that has to be cut to make a piece: its untilted size plus the bite of the punch on each punched edge;
 * an ellipse, banner or tag is cut from its bounding rectangle, and its edges are never punched.
 */
export function blankSize({ shape, width, height, bites }: BlankSpec): Size {
  if (shape !== 'rectangle') return { width, height };
  return {
    width: ticks(width + bites.left + bites.right),
    height: ticks(height + bites.top + bites.bottom),
  };
}

/** A card base opened flat, and the line to score: across the width at x, or across the height at y; null without a fold. */
export interface FlatCardBase extends Size {
  readonly score: { readonly axis: 'x' | 'y'; readonly at: Length } | null;
}

/**
 * The sheet that a folded card opens to: fold left 2w x h, scored at x = w; fold top w x 2h, scored at y = h; without a
 * fold the card itself.
 */
export function flatCardBase(card: Size & { readonly fold: 'left' | 'top' | 'none' }): FlatCardBase {
  const { width, height, fold } = card;
  if (fold === 'left') return { width: ticks(2 * width), height, score: { axis: 'x', at: width } };
  if (fold === 'top') return { width, height: ticks(2 * height), score: { axis: 'y', at: height } };
  return { width, height, score: null };
}
