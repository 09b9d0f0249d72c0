/** A fraction of big integers, its denominator positive: nothing that is typed is lost before the end. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

/**
 * What a part of a sum is worth. A `number` may still become a length in the sketch's own unit; a `length` is in ticks; a
 * `ratio` is how many times one length goes into another, and is no length ever.
 */
export interface ExactValue {
  readonly kind: 'number' | 'length' | 'ratio';
  readonly value: Fraction;
}

/** Thrown within this folder: what is wrong with a sum, as a sentence. */
export class SumError extends Error {
  override readonly name = 'SumError';
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b);
}

/** `top / bottom` in lowest terms. @throws SumError when `bottom` is 0. */
export function fraction(top: bigint, bottom = 1n): Fraction {
  if (bottom === 0n) throw new SumError('There is no dividing by 0.');
  const sign = bottom < 0n ? -1n : 1n;
  const shared = greatestCommonDivisor(top < 0n ? -top : top, bottom * sign);
  const by = shared === 0n ? sign : shared * sign;
  return { top: top / by, bottom: bottom / by };
}

function timesFraction(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.top, a.bottom * b.bottom);
}

/** `value` as a length: a number takes the unit that holds `perUnit` ticks. @throws SumError for a ratio. */
export function asLength({ kind, value }: ExactValue, perUnit: bigint): Fraction {
  if (kind === 'ratio') throw new SumError('A length divided by a length is a number, and no length.');
  return kind === 'length' ? value : fraction(value.top * perUnit, value.bottom);
}

/** `a + sign * b`; as soon as one of them is a length, a number beside it is one too. */
export function plus(a: ExactValue, b: ExactValue, sign: 1n | -1n, perUnit: bigint): ExactValue {
  const kind = a.kind === b.kind ? a.kind : 'length';
  const [one, other] = kind === 'length' ? [asLength(a, perUnit), asLength(b, perUnit)] : [a.value, b.value];
  return { kind, value: fraction(one.top * other.bottom + sign * other.top * one.bottom, one.bottom * other.bottom) };
}

/** `a * b`. @throws SumError for two lengths. */
export function times(a: ExactValue, b: ExactValue): ExactValue {
  const value = timesFraction(a.value, b.value);
  if (a.kind === 'length' && b.kind === 'length')
    throw new SumError('A length times a length is an area. Multiply a length by a number: 2*1/8 in.');
  if (a.kind === 'length' || b.kind === 'length') return { kind: 'length', value };
  return { kind: a.kind === 'number' || b.kind === 'number' ? 'number' : 'ratio', value };
}

/** `a / b`; a length through a length is a ratio. @throws SumError for a number through a length, and for 0. */
export function through(a: ExactValue, b: ExactValue): ExactValue {
  if (b.kind === 'length' && a.kind !== 'length')
    throw new SumError('A number cannot be divided by a length. A fraction has no spaces: 1/2 in.');
  const value = timesFraction(a.value, fraction(b.value.bottom, b.value.top));
  if (b.kind === 'length') return { kind: 'ratio', value };
  return { kind: a.kind === 'ratio' && b.kind === 'number' ? 'number' : a.kind, value };
}
