import type { Point } from '@trimwell/geometry';
import { type Problem, problemAt } from '@trimwell/sketch';
import type { Item, TextFace, TextItem } from '../drawing/drawing.js';
import { estimateMeasure, type TextMeasure } from './measure.js';
import type { HandoutPages, Page, PageBlock } from './page.js';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A text as it lies on the page, and the block that it stands in. */
interface PlacedWords {
  readonly text: string;
  readonly box: Box;
  readonly path: readonly PropertyKey[];
}

/** Blocks are widened to whole ticks, so that neighbours may share two. */
const SHARED = 2;
/** Most printers leave so much of an edge white: 5 mm (common practice, no source). */
const PRINTER_EDGE = 3200;

function faceOf({ face, role }: TextItem): TextFace {
  return face ?? (role === 'art' ? 'art' : role === 'label' ? 'strong' : 'text');
}

function turned(point: Point, about: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [dx, dy] = [point.x - about.x, point.y - about.y];
  return {
    x: about.x + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: about.y + dx * Math.sin(angle) + dy * Math.cos(angle),
  };
}

function bounds(points: readonly Point[]): Box {
  const x = Math.min(...points.map((point) => point.x));
  const y = Math.min(...points.map((point) => point.y));
  const right = Math.max(...points.map((point) => point.x));
  const bottom = Math.max(...points.map((point) => point.y));
  return { x, y, width: right - x, height: bottom - y };
}

/** The letters' own area: from the height of capitals to a little below the line, which is what collides to the eye. */
function textPoints(item: TextItem, measure: TextMeasure): readonly Point[] {
  const { at, text, size, align, turn = 0 } = item;
  const width = measure.width(text, size, faceOf(item));
  const left = align === 'start' ? at.x : align === 'middle' ? at.x - width / 2 : at.x - width;
  const [top, bottom] = [at.y - 0.66 * size, at.y + 0.12 * size];
  const corners = [
    { x: left, y: top },
    { x: left + width, y: top },
    { x: left + width, y: bottom },
    { x: left, y: bottom },
  ];
  return corners.map((corner) => turned(corner, at, turn));
}

/** All points that an item reaches, those of curves by their controls; printed art belongs to its piece and counts for nothing. */
function pointsOf(item: Item, measure: TextMeasure): readonly Point[] {
  switch (item.kind) {
    case 'text':
      return item.role === 'art' ? [] : textPoints(item, measure);
    case 'line':
      return [item.from, item.to];
    case 'image':
      return [item.at, { x: item.at.x + item.width, y: item.at.y + item.height }];
    case 'path':
      return item.role === 'art' ? [] : [item.outline.start, ...item.outline.steps.map(({ to }) => to)];
    case 'group':
      return item.items.flatMap((inner) => pointsOf(inner, measure)).map((point) => onParent(point, item));
  }
}

function onParent(point: Point, { origin, move, turn }: Extract<Item, { readonly kind: 'group' }>): Point {
  return turned({ x: point.x - origin.x + move.x, y: point.y - origin.y + move.y }, move, turn);
}

function wordsIn(
  item: Item,
  measure: TextMeasure,
): readonly { readonly text: string; readonly points: readonly Point[] }[] {
  if (item.kind === 'text')
    return item.role === 'art' || item.text === '' ? [] : [{ text: item.text, points: textPoints(item, measure) }];
  if (item.kind !== 'group') return [];
  return item.items
    .flatMap((inner) => wordsIn(inner, measure))
    .map(({ text, points }) => ({ text, points: points.map((point) => onParent(point, item)) }));
}

function within(inner: Box, outer: Box, slack: number): boolean {
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  );
}

function collide(a: Box, b: Box, slack: number): boolean {
  return (
    a.x + slack < b.x + b.width &&
    b.x + slack < a.x + a.width &&
    a.y + slack < b.y + b.height &&
    b.y + slack < a.y + a.height
  );
}

function boxText({ x, y, width, height }: Box): string {
  return `${Math.round(x)}, ${Math.round(y)}, ${Math.round(width)} x ${Math.round(height)}`;
}

function siblingProblems(blocks: readonly PageBlock[], path: readonly PropertyKey[]): readonly Problem[] {
  return blocks.flatMap((block, index) =>
    blocks.slice(index + 1).flatMap((other, after): readonly Problem[] => {
      if (!collide(block.box, other.box, SHARED)) return [];
      const where = [...path, index + 1 + after];
      return [
        problemAt(
          'boxes-collide',
          where,
          boxText(other.box),
          `a box clear of that of ${block.tag} ${index}, ${boxText(block.box)}`,
        ),
      ];
    }),
  );
}

function blockProblems(block: PageBlock, path: readonly PropertyKey[], measure: TextMeasure): readonly Problem[] {
  const inner = block.blocks ?? [];
  const own = block.items.flatMap((item): readonly Problem[] => {
    const points = pointsOf(item, measure);
    if (points.length === 0) return [];
    const box = bounds(points);
    const shown = item.kind === 'text' ? `${item.text} at ${boxText(box)}` : `${item.key} at ${boxText(box)}`;
    return within(box, block.box, SHARED)
      ? []
      : [problemAt('outside-its-box', path, shown, `within ${boxText(block.box)}`)];
  });
  const children = inner.flatMap((child, index): readonly Problem[] => {
    const where = [...path, 'blocks', index];
    const outside = within(child.box, block.box, SHARED)
      ? []
      : [problemAt('outside-its-box', where, boxText(child.box), `within ${boxText(block.box)}`)];
    return [...outside, ...blockProblems(child, where, measure)];
  });
  return [...own, ...siblingProblems(inner, [...path, 'blocks']), ...children];
}

function placedWords(block: PageBlock, path: readonly PropertyKey[], measure: TextMeasure): readonly PlacedWords[] {
  const own = block.items
    .flatMap((item) => wordsIn(item, measure))
    .map(({ text, points }) => ({ text, box: bounds(points), path }));
  const inner = (block.blocks ?? []).flatMap((child, index) => placedWords(child, [...path, 'blocks', index], measure));
  return [...own, ...inner];
}

function pageProblems(page: Page, index: number, measure: TextMeasure): readonly Problem[] {
  const path = ['pages', index, 'blocks'];
  const printed = {
    x: PRINTER_EDGE,
    y: PRINTER_EDGE,
    width: page.width - 2 * PRINTER_EDGE,
    height: page.height - 2 * PRINTER_EDGE,
  };
  const blocks = page.blocks.flatMap((block, at) => {
    const where = [...path, at];
    const off = within(block.box, printed, 0)
      ? []
      : [problemAt('off-the-page', where, boxText(block.box), `within ${boxText(printed)}`)];
    return [...off, ...blockProblems(block, where, measure)];
  });
  const words = page.blocks
    .flatMap((block, at) => placedWords(block, [...path, at], measure))
    .sort((a, b) => a.box.y - b.box.y);
  const touching = words.flatMap((one, at): readonly Problem[] => {
    const found: Problem[] = [];
    for (let next = at + 1; next < words.length; next += 1) {
      const other = words[next];
      if (!other || other.box.y >= one.box.y + one.box.height) break;
      if (collide(one.box, other.box, SHARED))
        found.push(
          problemAt(
            'texts-collide',
            other.path,
            `${other.text} at ${boxText(other.box)}`,
            `clear of ${one.text} at ${boxText(one.box)}`,
          ),
        );
    }
    return found;
  });
  return [...blocks, ...siblingProblems(page.blocks, path), ...touching];
}

/**
 * Everything that is wrong with a layout, empty when it holds: a block or text off the page or outside its own box, blocks
 * or texts on each other. `measure` is the one that the pages were laid out with; without it texts count as a little wide.
 */
export function checkPages(pages: HandoutPages, measure: TextMeasure = estimateMeasure): readonly Problem[] {
  return pages.pages.flatMap((page, index) => pageProblems(page, index, measure));
}
