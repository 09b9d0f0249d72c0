import { type Drawing, itemMark, lookPattern, type Mark, patternId, unit } from '@trimwell/handout';

const SVG = 'http://www.w3.org/2000/svg';

function element(mark: Mark): SVGElement {
  const node = document.createElementNS(SVG, mark.tag);
  for (const [name, value] of Object.entries(mark.attributes)) node.setAttribute(name, value);
  if (mark.text !== undefined) node.textContent = mark.text;
  node.append(...(mark.children ?? []).map(element));
  return node;
}

/** A drawing as an SVG element, made node by node, so that no text of a sketch is ever read as markup. */
export function svgNode(drawing: Drawing, prefix: string): SVGSVGElement {
  const svg = document.createElementNS(SVG, 'svg');
  const { x, y, width, height } = drawing.box;
  svg.setAttribute('viewBox', [x, y, width, height].map(unit).join(' '));
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', `${drawing.title}. ${drawing.description}`);
  const defs = document.createElementNS(SVG, 'defs');
  for (const [paper, look] of Object.entries(drawing.looks)) {
    if (look.pattern !== 'plain') defs.append(element(lookPattern(look, patternId(prefix, paper))));
  }
  const context = { looks: drawing.looks, prefix };
  svg.append(defs, ...drawing.items.map((item) => element(itemMark(item, context))));
  return svg;
}
