import { type Length, toInches } from '@trimwell/geometry';

/** The style of a button that is a little corner of paper, rounded as much as `radius`; for the property, not the attribute. */
export function cornerStyle(radius: Length, pixelsPerInch = 36): string {
  return `border-top-left-radius: ${Math.round(toInches(radius) * pixelsPerInch)}px`;
}
