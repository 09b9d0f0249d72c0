/** Marks a test whose outcome hangs neither on the width of the page nor on what points: the phone need not act it again. */
export const DESK = '@desk';

/** Night changes colours alone, on a phone as at the desk: by day both are looked at, by night the desk. */
export function deskByNight(colorScheme: 'light' | 'dark'): string[] {
  return colorScheme === 'dark' ? [DESK] : [];
}
