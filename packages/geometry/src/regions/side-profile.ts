import { type Length, ticks } from '../length/length.js';
import type { ThickPiece } from '../stack/levels.js';
import { placedBounds } from '../stack/placed-bounds.js';
import type { StackHeights } from './stack-heights.js';

/** A stretch of a stack seen from its side, from the left (or from the top), and the highest piece over it. */
export interface ProfileStretch {
  readonly from: number;
  readonly to: number;
  readonly height: Length;
  /** Place in the stack; null where only the card is. */
  readonly piece: number | null;
}

/**
 * The outline of a stack seen along `axis`: seen along y, from the lower edge, over the stretch from 0 to `length` of x. What hangs
 * over the edge of the card is part of it. A piece counts as being everywhere as high as at its highest spot, so that what follows low
 * steps is told too high rather than too low. Of equally high pieces the lower one is told.
 */
export function sideProfile(
  stack: readonly ThickPiece[],
  { layers }: StackHeights,
  axis: 'x' | 'y',
  length: Length,
): readonly ProfileStretch[] {
  const spans = stack.map(({ placed }) => {
    const { left, right, top, bottom } = placedBounds(placed);
    return axis === 'y' ? { from: left, to: right } : { from: top, to: bottom };
  });
  const ends = [...new Set([0, length, ...spans.flatMap(({ from, to }) => [from, to])])].sort((a, b) => a - b);
  const found: ProfileStretch[] = [];
  for (let at = 0; at + 1 < ends.length; at += 1) {
    const [from, to] = [ends[at] ?? 0, ends[at + 1] ?? 0];
    const middle = (from + to) / 2;
    let [height, piece]: [number, number | null] = [0, null];
    spans.forEach((span, index) => {
      const top = layers[index]?.top ?? 0;
      if (span.from < middle && middle < span.to && top > height) [height, piece] = [top, index];
    });
    const last = found.at(-1);
    if (last && last.piece === piece && last.to === from) found[found.length - 1] = { ...last, to };
    else found.push({ from, to, height: ticks(height), piece });
  }
  return found;
}
