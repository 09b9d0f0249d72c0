import type { Trimmer } from './job.js';

/** One way to cut a `width x height` blank out of a part: which cut comes first, and on which side the blank lies. */
export interface Fit {
  /** `vertical`: a strip of the blank's width first; `horizontal`: a strip of its height first. */
  readonly first: 'vertical' | 'horizontal';
  readonly nearX: boolean;
  readonly nearY: boolean;
  /** The two parts that are left over: beside the blank and below (or above) it; a side of 0 means none. */
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

/**
 * On which side a strip of `size` can be taken off a part `across` wide: 1 near, -1 far, 0 not at all, 2 when the part
 * has that size already.
 */
export function stripSide(trimmer: Trimmer, across: number, size: number, along: number): -1 | 0 | 1 | 2 {
  if (size === across) return 2;
  if (size > across) return 0;
  if (cutAllowed(trimmer, across, size, along)) return 1;
  const at = across - size - trimmer.kerf;
  return at > 0 && cutAllowed(trimmer, across, at, along) ? -1 : 0;
}

/** Every way to cut a `width x height` blank out of a part `w x h`, vertical cut first; at most two. */
export function fitsOf(trimmer: Trimmer, w: number, h: number, width: number, height: number): readonly Fit[] {
  if (width > w || height > h) return [];
  const fits: Fit[] = [];
  const right = Math.max(0, w - width - trimmer.kerf);
  const under = Math.max(0, h - height - trimmer.kerf);
  const vertical = stripSide(trimmer, w, width, h);
  if (vertical !== 0) {
    const then = stripSide(trimmer, h, height, width);
    if (then !== 0) {
      fits.push({
        first: 'vertical',
        nearX: vertical > 0,
        nearY: then > 0,
        beside: [right, right > 0 ? h : 0],
        below: [under > 0 ? width : 0, under],
      });
    }
  }
  if (width === w || height === h)
    return fits.length > 0 ? fits : alongFirst(trimmer, w, h, width, height, right, under);
  return [...fits, ...alongFirst(trimmer, w, h, width, height, right, under)];
}

function alongFirst(
  trimmer: Trimmer,
  w: number,
  h: number,
  width: number,
  height: number,
  right: number,
  under: number,
): readonly Fit[] {
  const horizontal = stripSide(trimmer, h, height, w);
  if (horizontal === 0) return [];
  const then = stripSide(trimmer, w, width, height);
  if (then === 0) return [];
  return [
    {
      first: 'horizontal',
      nearX: then > 0,
      nearY: horizontal > 0,
      beside: [right, right > 0 ? height : 0],
      below: [under > 0 ? w : 0, under],
    },
  ];
}
