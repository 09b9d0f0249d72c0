import { ticks } from '@trimwell/geometry';
import {
  applyEdit,
  CARD_BASE,
  type Edit,
  EditError,
  type Paper,
  readyVariations,
  type Sketch,
  type Variation,
  withVariation,
} from '@trimwell/sketch';
import type { Choices, PaperChoice, Scrap } from './choices.js';

/** A variation that a reader can switch on, by the name that choices have for it. */
export interface OfferedVariation {
  readonly key: string;
  readonly variation: Variation;
}

/** A sketch as a reader has it, and what of their choices could not be done, in words. */
export interface Chosen {
  readonly sketch: Sketch;
  readonly problems: readonly string[];
}

const READY = 'ready:';
const SCRAP = 'scrap:';
const NO_MARGIN = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) } as const;

/** The variations that `document` offers: its own, then the ready ones that change something on it. */
export function offeredVariations(document: Sketch): readonly OfferedVariation[] {
  return [
    ...document.variations.map((variation) => ({ key: variation.id, variation })),
    ...readyVariations(document).map((variation) => ({ key: `${READY}${variation.id}`, variation })),
  ];
}

/** The id, in the sketch, of what choices call `source`: a scrap's own, else the name itself. */
function sourceId(source: string): string {
  return source.startsWith(SCRAP) ? `readers-scrap-${source.slice(SCRAP.length)}` : source;
}

/** How choices call the scrap that stands at `index`, from 0. */
export function scrapName(index: number): string {
  return `${SCRAP}${index + 1}`;
}

function ownSheet(
  paper: Paper,
  { width, height, sheets, ground }: Partial<PaperChoice>,
  photo: string | undefined,
): Paper {
  const { sheets: there, ...rest } = paper;
  const count = sheets === undefined ? there : sheets;
  const look =
    ground === undefined ? paper.look : { ...paper.look, pattern: 'plain' as const, ground, photo: undefined };
  const { photo: known, ...plain } = look;
  const shown = photo ?? known;
  return {
    ...rest,
    width: ticks(width ?? paper.width),
    height: ticks(height ?? paper.height),
    // The designer's margins are those of their sheet.
    margins: width === undefined && height === undefined ? paper.margins : NO_MARGIN,
    ...(typeof count === 'number' ? { sheets: count } : {}),
    look: shown === undefined ? plain : { ...plain, photo: shown },
  };
}

function scrapPaper({ papers }: Sketch, { name, like, width, height, sheets }: Scrap, index: number): Paper | null {
  const model = papers.find(({ id }) => id === like);
  if (!model) return null;
  return {
    ...model,
    id: sourceId(scrapName(index)),
    name,
    width: ticks(width),
    height: ticks(height),
    sheets,
    margins: NO_MARGIN,
  };
}

function cutFrom(sketch: Sketch, piece: string, source: string): Edit {
  const from = sourceId(source);
  return piece === CARD_BASE ? { do: 'card', card: { ...sketch.card, base: from } } : { do: 'cut-from', piece, from };
}

/**
 * `document` with `choices`: variations first, the sketch's own in its order and then the ready ones, then one's own
 * sheets, scraps and what is cut from them, then the number of cards. `photos` names a photograph for some papers. What
 * does not fit the sketch is left out and told of. Without any choice the sketch is the same object.
 */
export function applyChoices(
  document: Sketch,
  choices: Choices,
  photos: ReadonlyMap<string, string> = new Map(),
): Chosen {
  const problems: string[] = [];
  let sketch = document;
  const edit = (wished: Edit): void => {
    try {
      sketch = applyEdit(sketch, wished);
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      problems.push(...error.problems.map(({ message }) => message));
    }
  };
  const { on = [], papers = [], scraps = [], from = [], cards } = choices;
  if (on.length > 0) {
    const offered = offeredVariations(document);
    for (const { key, variation } of offered) {
      if (!on.includes(key)) continue;
      const varied = withVariation(sketch, variation);
      sketch = varied.sketch;
      problems.push(...varied.problems.map(({ message }) => message));
    }
    for (const key of on)
      if (!offered.some((each) => each.key === key)) problems.push(`This sketch has no variation ${key}.`);
  }
  const known = new Map(sketch.papers.map((paper) => [paper.id, paper]));
  const own = new Map(papers.map((each) => [each.paper, each]));
  for (const id of new Set([...own.keys(), ...photos.keys()])) {
    const paper = known.get(id);
    if (paper) edit({ do: 'set-paper', paper: ownSheet(paper, own.get(id) ?? {}, photos.get(id)) });
    else problems.push(`This sketch has no paper ${id}.`);
  }
  scraps.forEach((scrap, index) => {
    const paper = scrapPaper(sketch, scrap, index);
    if (paper && !known.has(paper.id)) edit({ do: 'set-paper', paper });
    else problems.push(`This sketch has no paper ${scrap.like}.`);
  });
  for (const { piece, from: source } of from) edit(cutFrom(sketch, piece, source));
  if (cards !== undefined) edit({ do: 'batch', batch: { ...sketch.batch, cards } });
  return { sketch, problems };
}
