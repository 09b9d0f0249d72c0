const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Bytes as base64url without padding (RFC 4648 section 5). `btoa` belongs to the DOM, which this package has not. */
export function writeBase64url(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [first = 0, second = 0, third = 0] = bytes.subarray(at, at + 3);
    const group = (first << 16) | (second << 8) | third;
    const used = Math.min(3, bytes.length - at) + 1;
    for (let letter = 0; letter < used; letter += 1) text += LETTERS[(group >> (18 - 6 * letter)) & 63];
  }
  return text;
}

/** The bytes of a base64url text without padding; null for a text that `writeBase64url` cannot have written. */
export function readBase64url(text: string): Uint8Array | null {
  if (text.length % 4 === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const letter of text) {
    const value = LETTERS.indexOf(letter);
    if (value < 0) return null;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at] = (held >> bits) & 255;
    at += 1;
  }
  // Left-over bits are nought in what was written; others are a mistyped last letter.
  return (held & ((1 << bits) - 1)) === 0 ? bytes : null;
}
