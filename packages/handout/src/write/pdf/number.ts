/** A number of points in a content stream: to a ten-thousandth, a fortieth of a tick. */
export function points(value: number): string {
  const rounded = Math.round(value * 1e4) / 1e4;
  return String(rounded === 0 ? 0 : rounded);
}

/** Several numbers, with spaces between. */
export function allPoints(...values: readonly number[]): string {
  return values.map(points).join(' ');
}
