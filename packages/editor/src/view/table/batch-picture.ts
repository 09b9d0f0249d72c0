import {
  type Drawing,
  dealtSketch,
  drawCard,
  type Item,
  itemMark,
  lookPatterns,
  looksOf,
  type Mark,
  type MarkContext,
} from '@trimwell/handout';
import type { Face, MixPlan, Sketch } from '@trimwell/sketch';
import { photoShelf, photosNamed } from '../photos/photo-shelf.js';

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';
const PREFIX = 'batch';

/** One shape of a card: a template, used by every card that has this piece in this paper. */
export interface CardPart {
  /** The piece, or null for the card base. */
  readonly piece: string | null;
  readonly template: string;
}

/** One face of every card. */
export interface BatchFace {
  readonly face: Face;
  readonly viewBox: readonly [number, number, number, number];
  /** The parts of every card, lowest first. */
  readonly cards: readonly (readonly CardPart[])[];
}

/** The cards of a batch, each piece drawn once for each of its papers. */
export interface BatchPicture {
  /** The templates and the patterns of the papers. */
  readonly templates: SVGDefsElement;
  /** The faces on which cards differ: the front, the inside, or both. */
  readonly faces: readonly BatchFace[];
  /** For every card the first one that looks like it, counted from 0: itself when there is none before. */
  readonly first: readonly number[];
}

function markElement({ tag, attributes, text, children = [] }: Mark): SVGElement {
  const element = document.createElementNS(SVG_NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  if (text !== undefined) element.textContent = text;
  element.append(...children.map(markElement));
  return element;
}

/** Templates by id, made when they are first asked for. */
class Templates {
  readonly element = document.createElementNS(SVG_NAMESPACE, 'defs');
  readonly #known = new Set<string>();
  readonly #context: MarkContext;

  constructor(looks: Drawing['looks']) {
    const photos = photosNamed(looks);
    if (photos.length > 0) void photoShelf.bring(photos);
    this.#context = { looks, prefix: PREFIX, photos: photoShelf.photos };
    this.element.append(...lookPatterns(this.#context).map(markElement));
  }

  /** The id of the template of `item`, which depends on nothing but its key, its face and its paper. */
  of(item: Item, face: Face, paper: string): string {
    const id = [PREFIX, face, ...item.key.split(':'), paper].join('-');
    if (this.#known.has(id)) return id;
    this.#known.add(id);
    const group = document.createElementNS(SVG_NAMESPACE, 'g');
    group.id = id;
    group.append(markElement(itemMark(item, this.#context)));
    this.element.append(group);
    return id;
  }
}

/** The picture of the first `most` cards of `plan`. Cards that are alike share one list of parts. */
export function drawBatch(sketch: Sketch, plan: MixPlan, most: number): BatchPicture {
  const looks = plan.deal.slice(0, most).map((papers) => JSON.stringify(papers));
  const dealt = new Map(looks.map((look, card) => [look, dealtSketch(sketch, plan, card)]));
  const templates = new Templates(looksOf(sketch));
  const mixed = new Set(plan.roles.map(({ piece }) => piece));
  const faces = (['front', 'inside'] as const)
    .filter((face) => sketch.pieces.some((piece) => piece.face === face && mixed.has(piece.id)))
    .map((face): BatchFace => {
      const draw = (shown: Sketch) => drawCard(shown, { face, style: { unit: sketch.unit }, dimensions: false });
      const { x, y, width, height } = draw(sketch).box;
      const parts = new Map(
        [...dealt].map(([look, card]) => [
          look,
          draw(card).items.map((item): CardPart => {
            const piece = card.pieces.find(({ id }) => id === item.piece);
            return { piece: piece?.id ?? null, template: templates.of(item, face, piece?.from ?? card.card.base) };
          }),
        ]),
      );
      return { face, viewBox: [x, y, width, height], cards: looks.map((look) => parts.get(look) ?? []) };
    });
  return { templates: templates.element, faces, first: looks.map((look) => looks.indexOf(look)) };
}
