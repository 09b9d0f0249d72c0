import { type Length, TICKS_PER_INCH, TICKS_PER_MM, ticks, type Unit } from './length.js';

/** How a length is shown to a person: inches to the nearest mark of a ruler, or millimetres to a tenth. */
export interface LengthStyle {
  readonly unit: Unit;
  /** Marks to the inch on the chosen ruler: 8, 16, 32 or 64. Default 16; larger when the length needs no more than 64. */
  readonly marks?: 8 | 16 | 32 | 64;
  /** `fraction` (default) writes 4 1/4 in, `decimal` writes 4.25 in; millimetres are always decimal. */
  readonly form?: 'fraction' | 'decimal';
  /** Leave the unit out, for a figure on a drawing whose unit is named once. */
  readonly bare?: boolean;
}

/** U+2044, which fonts with numerators turn into a real fraction. */
const FRACTION_SLASH = '⁄';

/** Every mark of a coarser ruler is one of the finest as well. */
const FINEST_MARKS = 64;
const FINEST_MARK = TICKS_PER_INCH / FINEST_MARKS;

/** 0.05 mm, half of a shown tenth: no other hundredths of a millimetre but those of five are whole ticks. */
const LEAST_HUNDREDTHS = TICKS_PER_MM / 20;

/** `n` with at most `places` decimals, no trailing zeros, never in exponent form. */
function trimmed(n: number, places: number): string {
  return n.toFixed(places).replace(/\.?0+$/, '');
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** A whole number of `1/denominator` as "4 1/4", with `slash` between numerator and denominator. */
function mixedNumber(count: number, denominator: number, slash: string): string {
  const whole = Math.floor(count / denominator);
  const rest = count - whole * denominator;
  if (rest === 0) return String(whole);
  const divisor = greatestCommonDivisor(rest, denominator);
  const part = `${rest / divisor}${slash}${denominator / divisor}`;
  return whole === 0 ? part : `${whole} ${part}`;
}

/**
 * `length` for a person's eyes. A fraction or a tenth of a millimetre is written only when exact; a finer mark of up to
 * 1/64 in is used when it makes the figure exact; else the nearest mark of the ruler is written behind `≈`, with the
 * difference, so that no figure is ever silently rounded: `≈ 3 3/16 in − 0.3 mm` would be cut short by 0.3 mm less.
 * What is nearer to 0 than to any mark is a plain decimal.
 */
export function formatLength(length: Length, style: LengthStyle): string {
  const sign = length < 0 ? '−' : '';
  const size = Math.abs(length);
  const suffix = style.bare ? '' : ` ${style.unit}`;
  if (style.unit === 'mm') {
    if (size % LEAST_HUNDREDTHS === 0) return `${sign}${trimmed(size / TICKS_PER_MM, 2)}${suffix}`;
    return `≈ ${sign}${trimmed(size / TICKS_PER_MM, size < LEAST_HUNDREDTHS ? 3 : 1)}${suffix}`;
  }
  if (style.form !== 'decimal') {
    if (size % FINEST_MARK === 0)
      return `${sign}${mixedNumber(size / FINEST_MARK, FINEST_MARKS, FRACTION_SLASH)}${suffix}`;
    const marks = style.marks ?? 16;
    const mark = TICKS_PER_INCH / marks;
    const nearest = Math.round(size / mark);
    if (nearest > 0) {
      const difference = size - nearest * mark;
      const amount = trimmed(Math.abs(difference) / TICKS_PER_INCH, 4);
      const shown = mixedNumber(nearest, marks, FRACTION_SLASH);
      return `≈ ${sign}${shown} ${difference < 0 ? '−' : '+'} ${amount}${suffix}`;
    }
  }
  const text = trimmed(size / TICKS_PER_INCH, 4);
  const exact = Math.abs(Number(text) * TICKS_PER_INCH - size) < 1e-6;
  return `${exact ? '' : '≈ '}${sign}${text}${suffix}`;
}

/**
 * The shortest plain text that `parseLength` reads back as exactly `length`: a ruler fraction (`4 1/4 in`) where there
 * is one, else the decimals that were most likely typed, else a plain fraction such as 1/3. Five decimals of an inch or
 * three of a millimetre always suffice, since half a tick is larger than half the step between them.
 */
export function writeLength(length: Length, unit: Unit): string {
  const sign = length < 0 ? '-' : '';
  const size = Math.abs(length);
  if (unit === 'in' && size % 127 === 0) return `${sign}${mixedNumber(size / 127, 128, '/')} in`;
  const perUnit = unit === 'in' ? TICKS_PER_INCH : TICKS_PER_MM;
  const readsBack = (value: string): boolean => Math.round(Number(value) * perUnit) === size;
  for (let places = 0; places <= 3; places += 1) {
    const text = (size / perUnit).toFixed(places);
    if (readsBack(text)) return `${sign}${text} ${unit}`;
  }
  if (unit === 'in') {
    for (const denominator of [3, 6, 7, 9, 11, 12]) {
      const count = Math.round((size / TICKS_PER_INCH) * denominator);
      if (Math.round((count * TICKS_PER_INCH) / denominator) === size) {
        return `${sign}${mixedNumber(count, denominator, '/')} in`;
      }
    }
  }
  const longest = [4, 5].map((places) => (size / perUnit).toFixed(places)).find(readsBack);
  return `${sign}${longest ?? size / perUnit} ${unit}`;
}

/** `width x height` for a label, the unit named once at the end unless `bare`. */
export function formatSize(size: { readonly width: number; readonly height: number }, style: LengthStyle): string {
  const width = formatLength(ticks(size.width), { ...style, bare: true });
  return `${width} × ${formatLength(ticks(size.height), style)}`;
}

/** `formatSize` for a narrow column: a line may break behind the cross, and nowhere else. */
export function breakableSize(size: { readonly width: number; readonly height: number }, style: LengthStyle): string {
  return formatSize(size, style).replaceAll(' ', '\u00a0').replace('×\u00a0', '× ');
}
