import { ticks, type Unit } from '@trimwell/geometry';
import type { BatchPlan, Sketch } from '@trimwell/sketch';
import { letterLimits } from '@trimwell/sketch/assembly';
import type { Drawing } from '../drawing/drawing.js';
import { builtGluing } from './built-gluing.js';
import { setSteps } from './checklist.js';
import { type CardsGiven, type HandoutContext, handoutContext } from './context.js';
import { foot } from './foot.js';
import { setGuides } from './guides.js';
import { rememberAscents, type TextMeasure } from './measure.js';
import { setOpening } from './opening.js';
import type { HandoutPages, PageBlock } from './page.js';
import { Pager } from './pager.js';
import { printRulers, RULERS_HEIGHT } from './print-rulers.js';
import { PAGE_PAPERS, type PageFrame, type PagePaper, pageFrame } from './sheet-of-paper.js';
import { LANGUAGES, type Language, speechIn } from './speech.js';
import { setTemplates } from './templates.js';

export interface HandoutOptions {
  readonly paper: PagePaper;
  readonly language: Language;
  /** Default the sketch's own. */
  readonly unit?: Unit;
  /** Whether every piece follows at true size. */
  readonly templates: boolean;
  readonly measure: TextMeasure;
  /** The day that the handout is of, as YYYY-MM-DD. */
  readonly date: string;
  /** The country whose post takes the cards (ISO 3166-1, two letters). Default the one where the handout is most likely read. */
  readonly post?: string;
  /** What the sheets at hand give, from `batchYield`; the handout says nothing of it when it is not there. */
  readonly most?: CardsGiven | null;
}

function requireKnown(name: string, value: string, allowed: readonly string[]): void {
  if (!allowed.includes(value))
    throw new RangeError(`${name} is ${JSON.stringify(value)}; allowed: ${allowed.join(', ')}.`);
}

/** The pages of the templates have rulers above their foot. */
function templateFrame(frame: PageFrame): PageFrame {
  return { ...frame, bottom: ticks(frame.bottom - RULERS_HEIGHT) };
}

function templatePages(context: HandoutContext): Pager {
  const frame = templateFrame(context.frame);
  const pager = new Pager(frame);
  setTemplates(pager, frame, context);
  return pager;
}

/**
 * The handout of a sketch and a plan of its batch, laid out on pages of `options.paper`: the card with its sizes and what
 * it takes, the cutting guide of every layout, the steps as a checklist and, when asked for, all pieces at true size. The
 * same input gives the same pages.
 * @throws RangeError for a paper, a language, a country or a date that there is not.
 */
export function layOutHandout(sketch: Sketch, batch: BatchPlan, options: HandoutOptions): HandoutPages {
  requireKnown('paper', options.paper, PAGE_PAPERS);
  requireKnown('language', options.language, LANGUAGES);
  const { language, most = null, post = null } = options;
  if (post !== null)
    requireKnown(
      'post',
      post,
      letterLimits().countries.map(({ code }) => code),
    );
  const measure = rememberAscents(options.measure);
  const frame = pageFrame(options.paper);
  const speech = speechIn(language, options.unit ?? sketch.unit);
  const context = handoutContext({ sketch, batch, most, frame, speech, measure, post, gluing: builtGluing(sketch) });
  const pager = new Pager(frame);
  const figures = setOpening(pager, context, options.date);
  const guides = setGuides(pager, context);
  setSteps(pager, context);
  const templates = options.templates ? templatePages(context) : null;
  const count = pager.count + (templates?.count ?? 0);
  const footed = (index: number): readonly PageBlock[] => [foot(index + 1, count, context)];
  const rulers = printRulers({ x: frame.left, y: frame.bottom }, frame.right - frame.left, speech, measure);
  const pages = [
    ...pager.finish(footed),
    ...(templates?.finish((index) => [...rulers, ...footed(pager.count + index)]) ?? []),
  ];
  const looks: Drawing['looks'] = Object.assign({}, ...figures.map((figure) => figure.looks), ...guides);
  return { title: sketch.title, author: sketch.credit ?? '', language, pages, looks };
}
