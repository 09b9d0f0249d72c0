/** Characters that XML 1.0 allows, written or escaped (section 2.2, Char): no other controls, no lone surrogates. */
function isAllowed(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || code > 0xffff;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** `text` for the content or a quoted attribute of XML; what XML forbids becomes U+FFFD, so that nothing vanishes unseen. */
export function escapeXml(text: string): string {
  return [...text]
    .map((character) => ENTITIES[character] ?? (isAllowed(character.codePointAt(0) ?? 0) ? character : '\ufffd'))
    .join('');
}
