/**
 * Ticks in one SVG user unit: a unit is 0.1 mm, so that whole ticks have at most six decimals and are exact, while text
 * sizes stay in the range that browsers draw well.
 */
export const TICKS_PER_UNIT = 64;

/** A length for an SVG attribute: whole ticks exactly, parts of curves to a ten-thousandth of a unit (10 nm). */
export function unit(ticks: number): string {
  const value = ticks / TICKS_PER_UNIT;
  const exact = Number.isInteger(ticks) ? value : Math.round(value * 1e4) / 1e4;
  return String(exact === 0 ? 0 : exact);
}
