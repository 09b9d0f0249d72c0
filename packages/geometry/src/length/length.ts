/**
 * A length in ticks, always a whole number. 1 tick = 1/640 mm = 1/16256 in (1 in = 25.4 mm exactly), so 1/64 in is
 * 254 ticks, 0.1 mm is 64 ticks, and half of either is whole too: every mark of an inch or metric ruler is exact.
 */
export type Length = number & { readonly __unit: 'tick' };

/** The unit that a bare number is in, and that lengths are shown in. */
export type Unit = 'in' | 'mm';

export const TICKS_PER_INCH = 16256;
export const TICKS_PER_MM = 640;

/**
 * Vouches for `n` as a length.
 * @throws RangeError when `n` is not a safe integer.
 */
export function ticks(n: number): Length {
  if (!Number.isSafeInteger(n)) throw new RangeError(`A length must be a whole number of ticks, got ${n}.`);
  return (n === 0 ? 0 : n) as Length;
}

/**
 * `n` inches as a length, for constants on a ruler mark (`inches(4.25)`).
 * @throws RangeError when it is no whole number of ticks; read typed text with `parseLength` instead.
 */
export function inches(n: number): Length {
  return ticks(n * TICKS_PER_INCH);
}

/**
 * `n` millimetres as a length, for constants on a ruler mark (`millimetres(148.5)`). Tenths are exact: the product is
 * taken after scaling by ten, so that 0.1 mm never becomes 63.99 ticks.
 * @throws RangeError when it is no whole number of tenths of a millimetre.
 */
export function millimetres(n: number): Length {
  const tenths = Math.round(n * 10);
  if (Math.abs(tenths - n * 10) > 1e-6) throw new RangeError(`Not a whole number of tenths of a millimetre: ${n}.`);
  return ticks(tenths * (TICKS_PER_MM / 10));
}

/** Length in inches as a floating number, for drawing and export only, never for deciding a cut. */
export function toInches(length: number): number {
  return length / TICKS_PER_INCH;
}

/** Length in millimetres as a floating number, for drawing and export only, never for deciding a cut. */
export function toMillimetres(length: number): number {
  return length / TICKS_PER_MM;
}

/** The nearest multiple of `step` to `length`; a tie goes up. `step` must be positive. */
export function nearestStep(length: number, step: Length): Length {
  return ticks(Math.floor(length / step + 0.5) * step);
}
