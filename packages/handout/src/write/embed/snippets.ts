import type { Sketch } from '@trimwell/sketch';
import { htmlElement } from './html.js';
import { checkCode, filesFolder, type LiveOptions, type StaticOptions } from './snippet-options.js';
import { staticPart } from './static-part.js';

/** Names of the files that a live sketch is loaded from, in their folder. */
const SCRIPT = 'trimwell-sketch.js';
const FRAME = 'frame.html';

/** Height of a frame in pixels where the page does not listen to what the frame tells: the card and what is below it, on a desk. */
const FRAME_HEIGHT = 760;

/**
 * What a frame may do. Scripts and its own storage, for the checklist; downloads, printing, and links in a tab of their
 * own. It may never lead the page away. (Where the frame's files lie at the page's own origin this keeps nothing from a
 * script that means ill; from another origin it does.)
 */
const FRAME_MAY =
  'allow-scripts allow-same-origin allow-downloads allow-modals allow-popups allow-popups-to-escape-sandbox';

/**
 * A live sketch by its element: the script, and the element with the static part inside it, which stands until the
 * script has run and wherever it does not. The part without scripts is the same as that of the other ways.
 * @throws SnippetError for an option that cannot be used
 */
export function elementSnippet(sketch: Sketch, options: LiveOptions): string {
  checkCode(options.code);
  const script = { type: 'module', src: `${filesFolder(options.files)}${SCRIPT}` };
  return [
    htmlElement('script', script),
    htmlElement('trimwell-sketch', { code: options.code }, '\n', staticPart(sketch, options), '\n'),
    '',
  ].join('\n');
}

/**
 * A live sketch in a frame, for pages that take no scripts of others; without scripts the static part stands in its
 * place. It says to the frame only from which site it is looked at, not from which page.
 * @throws SnippetError for an option that cannot be used
 */
export function frameSnippet(sketch: Sketch, options: LiveOptions): string {
  checkCode(options.code);
  const frame = htmlElement('iframe', {
    src: `${filesFolder(options.files)}${FRAME}#${options.code}`,
    title: `${sketch.title}: the card, its sizes and its cutting guides`,
    loading: 'lazy',
    width: '100%',
    height: String(FRAME_HEIGHT),
    sandbox: FRAME_MAY,
    allow: 'clipboard-write',
    referrerpolicy: 'strict-origin',
    // Strict pages refuse style attributes; this old attribute is all that takes the border away without one.
    frameborder: '0',
  });
  return [frame, htmlElement('noscript', {}, '\n', staticPart(sketch, options), '\n'), ''].join('\n');
}

/**
 * The sketch as plain HTML with its drawing, for mail, feeds and pages without scripts. Programs for mail may leave the
 * drawing out; the table stands.
 * @throws SnippetError for an option that cannot be used
 */
export function staticSnippet(sketch: Sketch, options: StaticOptions = {}): string {
  return `${staticPart(sketch, options)}\n`;
}
