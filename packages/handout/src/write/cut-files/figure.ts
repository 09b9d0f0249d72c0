import { toInches, toMillimetres, type Unit } from '@trimwell/geometry';

/** A length in `unit`, as a floating number. */
export function inUnit(ticks: number, unit: Unit): number {
  return unit === 'in' ? toInches(ticks) : toMillimetres(ticks);
}

/**
 * `value` with at most `places` decimals, no zeros at the end, never in exponent form, which not every machine reads. A
 * whole number of ticks has seven decimals in millimetres and is exact then; in inches eight are within a millionth of a
 * tick. Never "-0".
 */
export function figure(value: number, places = 8): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no figure for a drawing.`);
  const text = value.toFixed(places).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
