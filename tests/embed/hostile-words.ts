/** What a script of the corpus would leave behind, had it run: a property of the window. */
export const RAN = 'trimwellRan';

const RUN = `window.${RAN}=1`;

/**
 * Texts that some program somewhere has taken for more than text: markup, handlers, templates, ends of the places that a
 * text may be written in, letters that turn the writing round or are not seen, and such as no encoding has.
 */
export const HOSTILE_TEXTS: Readonly<Record<string, string>> = {
  script: `<script>${RUN}</script>`,
  handler: `<img src=x onerror="${RUN}">`,
  'drawing handler': `"><svg onload=${RUN}>`,
  'quote and handler': `' autofocus onfocus='${RUN}`,
  'end of a script': `</script><script>${RUN}//`,
  'end of an element': `</trimwell-sketch></noscript><script>${RUN}</script>`,
  'end of CDATA': `]]><script>${RUN}</script>`,
  comment: `<!--><script>${RUN}</script>-->`,
  address: `javascript:${RUN}`,
  'data address': `data:text/html,<script>${RUN}</script>`,
  style: `</style><style>*{display:none}`,
  'style address': 'url(https://example.invalid/seen)',
  'picture from elsewhere': '<img src="https://example.invalid/seen">',
  template: `{{constructor.constructor("${RUN}")()}}`,
  'other template': `\${${RUN}}`,
  entity: `&lt;script&gt;${RUN}&lt;/script&gt;`,
  'turned round': '\u202egnp.eman\u202c\u2067\u2066',
  'not seen': '\u200b\u200d\u2060\ufeff\u00ad',
  controls: 'a\u0000b\u0007c\u001b[31md\r\n\u2028\u2029e',
  'half a letter': 'a\ud800b\udc00c',
  'stacked marks': `a${'\u0301\u0489'.repeat(38)}`,
  'no place to break': 'M'.repeat(80),
  formula: '=HYPERLINK("https://example.invalid/seen")',
  format: '%s%n%x../../../etc/passwd\\..\\',
  key: '__proto__',
};
