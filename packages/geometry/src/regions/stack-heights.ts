import { type Length, ticks } from '../length/length.js';
import { placedBounds } from '../stack/placed-bounds.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { piecesUnder } from './lies-over.js';

/** A piece of a stack with what it adds to it. */
export interface ThickPiece {
  readonly placed: PlacedPiece;
  /** How thick its paper is. */
  readonly caliper: Length;
  /** Height of the foam under it; 0 when it is glued flat. */
  readonly raise: Length;
}

/** How high a piece lies, above what its stack is glued to. */
export interface LayerHeight {
  /** Its own under side: what it rests on, and its foam. */
  readonly bottom: Length;
  readonly top: Length;
  /** The pieces that bear it, by their places in the stack: the highest ones under it. Empty on the card itself. */
  readonly restsOn: readonly number[];
  /** All pieces under it, whether they bear it or are bridged. */
  readonly over: readonly number[];
}

/** The heights of a stack, and where it is highest: the lowest of the highest pieces, by its place in the stack. */
export interface StackHeights {
  readonly layers: readonly LayerHeight[];
  readonly height: Length;
  readonly highest: number | null;
}

/**
 * How high each piece of a stack comes to lie, lowest first. A piece stays flat: it rests on the highest of all that it lies over,
 * and bridges what is lower. So its top is the highest top under it, and its foam and caliper. That is never less than
 * the papers and foam that really lie on each other at one spot, and more where a piece reaches over a gap.
 */
export function stackHeights(stack: readonly ThickPiece[]): StackHeights {
  const under = piecesUnder(stack.map(({ placed }) => placed));
  const layers: LayerHeight[] = [];
  let [height, highest]: [number, number | null] = [0, null];
  stack.forEach(({ caliper, raise }, at) => {
    const over = under[at] ?? [];
    const topOf = (lower: number): number => layers[lower]?.top ?? 0;
    const ground = Math.max(0, ...over.map(topOf));
    const top = ticks(ground + raise + caliper);
    const restsOn = over.filter((lower) => topOf(lower) === ground);
    layers.push({ bottom: ticks(ground + raise), top, restsOn, over });
    if (top > height) [height, highest] = [top, at];
  });
  return { layers, height: ticks(height), highest };
}

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
 * over the edge of the card is part of it. Of equally high pieces the lower one is told.
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
