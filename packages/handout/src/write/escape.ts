/** Characters that XML 1.0 does not allow, written or escaped (section 2.2, Char); lone surrogates among them. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** `text` for the content or a quoted attribute of XML; what XML forbids becomes U+FFFD, so that nothing vanishes unseen. */
export function escapeXml(text: string): string {
  return text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}
