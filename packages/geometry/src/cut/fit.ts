import type { Trimmer } from './job.js';

/** One cut towards a strip: `at` from the near edge, after which the `near` or the far part goes on. */
export interface StripCut {
  readonly at: number;
  readonly near: boolean;
}

/** One way to cut a `width x height` blank out of a part: the direction that comes first, and the cuts in each. */
export interface Fit {
  /** `vertical`: a strip of the blank's width first; `horizontal`: a strip of its height first. */
  readonly first: 'vertical' | 'horizontal';
  readonly vertical: readonly StripCut[];
  readonly horizontal: readonly StripCut[];
  /** What is left over beside the blank and below (or above) it, but for kerfs; a side of 0 means none. */
  readonly beside: readonly [width: number, height: number];
  readonly below: readonly [width: number, height: number];
}

/** Whether the trimmer can make one cut: `at` from the near edge of a part `across` wide, `along` long. */
export function cutAllowed(trimmer: Trimmer, across: number, at: number, along: number): boolean {
  const rest = across - at - trimmer.kerf;
  if (at <= 0 || rest < 0 || at >= across) return false;
  if (trimmer.bladeLength !== null && along > trimmer.bladeLength) return false;
  if (Math.max(at, rest) < trimmer.narrowestStrip) return false;
  const thin = Math.min(at, rest);
  if (thin > 0 && thin < trimmer.thinnestTrim) return false;
  return trimmer.rulerStep === null || at % trimmer.rulerStep === 0;
}

/** Multiples of the ruler's step that are tried for what a first cut takes away before the strip itself. */
const FIRST_TRIMS = 8;

/** The width that goes on after `cut`. */
function goesOn(trimmer: Trimmer, across: number, { at, near }: StripCut): number {
  return near ? at : across - at - trimmer.kerf;
}

/** The single cut that takes a strip of `size` off a part: at its near side, or else at its far side. */
function oneCut(trimmer: Trimmer, across: number, size: number, along: number): StripCut | null {
  if (cutAllowed(trimmer, across, size, along)) return { at: size, near: true };
  const at = across - size - trimmer.kerf;
  return at > 0 && cutAllowed(trimmer, across, at, along) ? { at, near: false } : null;
}

/**
 * The cuts that take a strip of `size` off a part `across` wide, all `along` long; none when the part has that size
 * already, null when no way is known. One cut where that can be. With a kerf two can do what one cannot: a first one
 * leaves the strip and a kerf, which the second eats up; or it takes off some marks of the ruler, so that the strip
 * comes to lie on one.
 */
export function stripCuts(trimmer: Trimmer, across: number, size: number, along: number): readonly StripCut[] | null {
  if (size === across) return [];
  if (size > across) return null;
  const single = oneCut(trimmer, across, size, along);
  if (single) return [single];
  if (trimmer.kerf === 0) return null;
  const step = trimmer.rulerStep ?? Math.max(1, trimmer.thinnestTrim);
  const away = Array.from({ length: FIRST_TRIMS }, (_, index): StripCut => ({ at: step * (index + 1), near: false }));
  const snug = size + trimmer.kerf;
  const firsts: readonly StripCut[] = [
    { at: snug, near: true },
    { at: across - snug - trimmer.kerf, near: false },
    ...away,
  ];
  for (const first of firsts) {
    if (!cutAllowed(trimmer, across, first.at, along)) continue;
    const rest = goesOn(trimmer, across, first);
    if (rest === size) return [first];
    const second = rest > size ? oneCut(trimmer, rest, size, along) : null;
    if (second) return [first, second];
  }
  return null;
}

/** Every way to cut a `width x height` blank out of a part `w x h`, vertical cuts first; at most two. */
export function fitsOf(trimmer: Trimmer, w: number, h: number, width: number, height: number): readonly Fit[] {
  if (width > w || height > h) return [];
  const right = Math.max(0, w - width - trimmer.kerf);
  const under = Math.max(0, h - height - trimmer.kerf);
  const fits: Fit[] = [];
  const upright = stripCuts(trimmer, w, width, h);
  const thenLevel = upright && stripCuts(trimmer, h, height, width);
  if (upright && thenLevel) {
    const beside = [right, right > 0 ? h : 0] as const;
    fits.push({
      first: 'vertical',
      vertical: upright,
      horizontal: thenLevel,
      beside,
      below: [under > 0 ? width : 0, under],
    });
  }
  // Where one direction needs no cut, both orders are the same.
  if (fits.length > 0 && (width === w || height === h)) return fits;
  const level = stripCuts(trimmer, h, height, w);
  const thenUpright = level && stripCuts(trimmer, w, width, height);
  if (level && thenUpright) {
    const below = [under > 0 ? w : 0, under] as const;
    fits.push({
      first: 'horizontal',
      vertical: thenUpright,
      horizontal: level,
      beside: [right, right > 0 ? height : 0],
      below,
    });
  }
  return fits;
}
