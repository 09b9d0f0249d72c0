import { type Length, type Size, ticks } from '@trimwell/geometry';

/** An envelope folded from a square of paper that lies on its corner. All lengths in floating ticks but the rounded ones. */
export interface EnvelopeTemplate {
  /** The finished envelope, the longer side across. */
  readonly inside: Size;
  /** The side of the square, up to the next whole step from which the envelope is no smaller than asked. */
  readonly square: Length;
  /** Along each side of the square from its left or right corner: the middle of the notch, up to the next step. */
  readonly notch: Length;
  /** From the notch's middle to each of the two scores that meet the side there. */
  readonly scoreOff: Length;
  /** How far the flaps at the long sides reach in, and those at the short ones. */
  readonly longFlap: number;
  readonly shortFlap: number;
  /** What the two flaps at the long sides lie over each other by, at their points. */
  readonly lap: number;
  /** What a flap at a long side is longer than the envelope is high, so that its point has to be cut off; 0 where it is not. */
  readonly tooLong: number;
}

/** Where flaps lie over each other along every slanted edge: half of this each (common practice, no source). */
export interface EnvelopeTemplateOptions {
  /** How far every flap reaches beyond the middle of the seam. */
  readonly glue: Length;
  /** Steps of the ruler that lengths are rounded to. */
  readonly step: Length;
}

/**
 * The square from which an envelope of the size `inside` is folded, diagonally.
 *
 * Lay the envelope, w across and h high (w >= h), in the middle of a square that stands on its corner, of half diagonal d: the
 * square is |x| + |y| <= d. Its four triangles beyond the sides w and h are the flaps. Were the envelope's corners on the square's
 * edges, d would be w/2 + h/2, and neighbouring flaps, folded in, would meet edge to edge along the lines at 45 degrees through
 * the corners. To glue them every edge of the square is moved outwards by g, so that the flaps lie over each other by 2g:
 *
 *     d = (w + h) / 2 + g sqrt 2          side of the square   s = d sqrt 2 = (w + h) / sqrt 2 + 2g
 *
 * The score x = -w/2 meets a side at (d - w/2) sqrt 2 = h / sqrt 2 + 2g from the square's left corner, and the score y = -h/2 meets
 * it at s - (d - h/2) sqrt 2 = h / sqrt 2. Between the two lies the notch that is cut out down to the envelope's corner: its middle is
 * h / sqrt 2 + g from the left corner (and so w / sqrt 2 + g from the upper one), each score g from it. A flap reaches as far in as its
 * triangle is high: d - h/2 = w/2 + g sqrt 2 from a long side, and d - w/2 = h/2 + g sqrt 2 from a short one.
 *
 * On a ruler the notch goes up to the next step a, and the square to the next step that leaves w / sqrt 2 + g behind it. Then the scores
 * are (a - g) sqrt 2 and (s - a - g) sqrt 2 apart, so the envelope never comes out smaller than `inside`.
 */
export function envelopeTemplate(inside: Size, { glue, step }: EnvelopeTemplateOptions): EnvelopeTemplate {
  const [w, h] = inside.width >= inside.height ? [inside.width, inside.height] : [inside.height, inside.width];
  const up = (length: number): Length => ticks(Math.ceil(length / step - 1e-9) * step);
  const notch = up(h / Math.SQRT2 + glue);
  const square = up(notch + w / Math.SQRT2 + glue);
  // A flap is half the diagonal of the square high, less what lies between its side and the middle.
  const half = square / Math.SQRT2;
  const longFlap = half - ((notch - glue) * Math.SQRT2) / 2;
  const shortFlap = half - ((square - notch - glue) * Math.SQRT2) / 2;
  return {
    inside: { width: w, height: h },
    square,
    notch,
    scoreOff: glue,
    longFlap,
    shortFlap,
    lap: Math.max(0, 2 * longFlap - h),
    tooLong: Math.max(0, longFlap - h),
  };
}
