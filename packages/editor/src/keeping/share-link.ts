import type { Sketch } from '@trimwell/sketch';

const FRAGMENT = '#sketch=';
/** Links longer than this are cut by some mail programs and message boards (common practice, no source). */
export const LONG_LINK = 8_000;

/** A link to the page at `address` whose fragment carries the whole sketch; the fragment is never sent to a server. */
export async function shareLink(sketch: Sketch, address: string): Promise<string> {
  const { writeShareCode } = await import('@trimwell/sketch/share-code');
  return `${address.replace(/#.*$/s, '')}${FRAGMENT}${writeShareCode(sketch)}`;
}

/** The share code in a page's `location.hash`, or null. */
export function sharedCode(hash: string): string | null {
  return hash.startsWith(FRAGMENT) ? hash.slice(FRAGMENT.length) : null;
}
