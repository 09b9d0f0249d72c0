import { type Drawing, itemMark, type Mark, type Photos, unit } from '@trimwell/handout';

const SVG = 'http://www.w3.org/2000/svg';

function element(mark: Mark): SVGElement {
  const node = document.createElementNS(SVG, mark.tag);
  for (const [name, value] of Object.entries(mark.attributes)) node.setAttribute(name, value);
  if (mark.text !== undefined) node.textContent = mark.text;
  node.append(...(mark.children ?? []).map(element));
  return node;
}

/** What the areas of a drawing are filled with beside flat colours; none for a first look. */
export interface Fills {
  readonly patterns: readonly Mark[];
  readonly prefix: string;
  readonly photos?: Photos;
}

/** Every paper in its ground alone. */
function plainly(looks: Drawing['looks']): Drawing['looks'] {
  return Object.fromEntries(Object.entries(looks).map(([id, look]) => [id, { ...look, pattern: 'plain' }]));
}

/** A drawing as an SVG element, made node by node, so that no text of a sketch is ever read as markup. */
export function svgNode({ box, title, description, looks, items }: Drawing, fills: Fills | null): SVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', [box.x, box.y, box.width, box.height].map(unit).join(' '));
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', `${title}. ${description}`);
  if (fills) {
    const defs = document.createElementNS(SVG, 'defs');
    defs.append(...fills.patterns.map(element));
    svg.append(defs);
  }
  const context = { looks: fills ? looks : plainly(looks), prefix: '', ...fills };
  svg.append(...items.map((item) => element(itemMark(item, context))));
  return svg;
}
