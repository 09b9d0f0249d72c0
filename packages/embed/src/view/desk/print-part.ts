import { counted } from '@trimwell/sketch';
import { fineCard } from '../fine-picture.js';
import { apart, firstLook, letterSize } from '../first-look.js';
import { FIRST_STYLES } from '../first-styles.js';
import { LIVE_STYLES } from '../live-styles.js';
import { type Child, type Part, part } from '../part.js';
import { patch } from '../patch.js';
import type { DeskState } from './desk-state.js';
import { DESK_STYLES } from './desk-styles.js';
import { resultText, unmadeTexts, DESK_WORDS as WORDS } from './desk-words.js';
import { everyCard } from './every-part.js';
import { guideSheets } from './guide-part.js';
import { workList } from './steps-part.js';

/** Most sheets and cards on paper. */
const MOST_ON_PAPER = 60;

const PAPER =
  '@page{margin:14mm}.sheet{border:0;padding:0;color-scheme:light}.look{grid-template-columns:5fr 6fr}section,li{break-inside:avoid}.sheets{grid-template-columns:1fr 1fr}';

/** Pictures in `child` as copies: those on the page stay there. */
function copied(child: Child): Child {
  if (child instanceof Element) return child.cloneNode(true) as Element;
  if (Array.isArray(child)) return child.map(copied);
  return child !== null && typeof child === 'object' && 'tag' in child
    ? ({ ...child, children: child.children.map(copied) } as Part)
    : child;
}

function printed(state: DeskState): HTMLElement {
  const { style, photos, plan } = state;
  const sketch = plan.made?.sketch ?? state.sketch;
  const batch = plan.made?.batch ?? null;
  const sheet = document.createElement('div');
  sheet.className = 'sheet';
  const look = firstLook(sketch, style, fineCard(sketch, 'front', style, letterSize(sketch), photos));
  const work = batch
    ? workList(sketch, batch, { language: 'en', unit: style.unit, form: style.form ?? 'fraction' })
    : null;
  patch(sheet, [
    ...look,
    part('p', { class: 'tally' }, resultText(plan)),
    batch ? unmadeTexts(batch, sketch).map((text) => part('p', {}, text)) : null,
    batch ? guideSheets(sketch, batch, style, photos, MOST_ON_PAPER).parts.map(copied) : null,
    work
      ? work.parts.map(({ title, note, tasks }) =>
          part(
            'section',
            {},
            part('p', {}, part('b', {}, apart(title)), ` ${note}`),
            part(
              'ol',
              {},
              tasks.map(({ setting, text }) => part('li', {}, part('b', {}, setting), ` ${text}`)),
            ),
          ),
        )
      : null,
    work ? work.cautions.map((text) => part('p', { class: 'caution' }, text)) : null,
    batch
      ? [
          part('p', {}, part('b', {}, `${WORDS.every}: ${counted(batch.cards, 'card')}`)),
          part('div', { class: 'cards' }, everyCard(sketch, batch.cards, style, photos, MOST_ON_PAPER).map(copied)),
        ]
      : null,
    sketch.credit ? part('p', {}, apart(sketch.credit)) : null,
  ]);
  return sheet;
}

/** Prints the reader's version by itself, from a frame of its own, so that nothing of the page is printed with it. */
export function printVersion(state: DeskState, beside: Node): void {
  const frame = document.createElement('iframe');
  frame.style.cssText = 'position:fixed;width:0;height:0;border:0;visibility:hidden';
  frame.title = WORDS.print;
  beside.appendChild(frame);
  const page = frame.contentWindow as (Window & typeof globalThis) | null;
  if (!page) {
    frame.remove();
    return;
  }
  const sheet = new page.CSSStyleSheet();
  sheet.replaceSync(`${FIRST_STYLES}${LIVE_STYLES}${DESK_STYLES}${PAPER}`);
  page.document.adoptedStyleSheets = [sheet];
  page.document.title = state.sketch.title;
  page.document.body.append(printed(state));
  page.addEventListener('afterprint', () => frame.remove());
  page.print();
}
