/** The share code in the fragment of the frame's page: its first part, up to `&`. */
export function frameCode(fragment: string): string {
  return fragment.replace(/^#/, '').split('&', 1)[0] ?? '';
}

/** The origin of an http or https address, or null for anything else, `*` too. */
function webOrigin(address: string | null): string | null {
  if (address === null || !URL.canParse(address)) return null;
  const { origin, protocol } = new URL(address);
  return protocol === 'https:' || protocol === 'http:' ? origin : null;
}

/** The origin that heights are told to: the one that is asked for, else the one that the frame was opened from; null for none. */
export function parentOrigin(asked: string | null, referrer: string): string | null {
  return asked === null ? webOrigin(referrer) : webOrigin(asked);
}
