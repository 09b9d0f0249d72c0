import { type PDFContext, PDFHexString, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import type { Rect } from '@trimwell/geometry';
import type { Item } from '../../drawing/drawing.js';
import type { BlockTag, PageBlock } from '../../page/page.js';
import { itemOperators } from './draw-item.js';
import { type Matrix, place } from './matrix.js';
import type { Resources } from './resources.js';
import type { Structure, StructureElement } from './structure.js';

/** Where the blocks of one page go. */
export interface PageTarget {
  readonly index: number;
  readonly ref: PDFRef;
  readonly matrix: Matrix;
  readonly context: PDFContext;
  readonly resources: Resources;
  readonly structure: Structure;
  /** Content operators so far. */
  readonly content: string[];
  readonly annotations: PDFRef[];
}

/** Tags that hold other elements only; what is drawn of them, such as the lines of a table, is decoration. */
const HOLDERS: ReadonlySet<BlockTag> = new Set(['L', 'Table', 'TR']);

function boxOf({ x, y, width, height }: Rect, matrix: Matrix): number[] {
  const [low, high] = [place(matrix, { x, y: y + height }), place(matrix, { x: x + width, y })];
  return [low.x, low.y, high.x, high.y].map((value) => Math.round(value * 1e4) / 1e4);
}

/** Texts that follow each other are words of one: a space stands between them for those who listen or copy. */
function draw(items: readonly Item[], { matrix, resources }: PageTarget): string {
  const last = items.findLastIndex(({ kind }) => kind === 'text' || kind === 'group');
  return items
    .map((item, index) => itemOperators(item, matrix, resources, index < last ? ' ' : ''))
    .filter((part) => part !== '')
    .join('\n');
}

function drawArtifact(items: readonly Item[], target: PageTarget): void {
  const drawn = draw(items, target);
  if (drawn !== '') target.content.push(`/Artifact BMC\n${drawn}\nEMC`);
}

function drawContent(items: readonly Item[], element: StructureElement, target: PageTarget): void {
  const drawn = draw(items, target);
  if (drawn === '') return;
  const id = target.structure.mark(element);
  target.content.push(`/${element.type} << /MCID ${id} >> BDC\n${drawn}\nEMC`);
}

function textsOf(block: PageBlock): readonly string[] {
  const within = (items: readonly Item[]): readonly string[] =>
    items.flatMap((item) => (item.kind === 'text' ? [item.text] : item.kind === 'group' ? within(item.items) : []));
  return [...within(block.items), ...(block.blocks ?? []).flatMap(textsOf)];
}

/** The address of a link as it is written. @throws Error for anything but https */
function addressOf(link: string): string {
  const address = URL.canParse(link) ? new URL(link) : null;
  if (address?.protocol !== 'https:')
    throw new Error(`A link goes to ${JSON.stringify(link)}; allowed: an address that begins with https://.`);
  return address.href;
}

/** A link over the block's box; returns the element that its content belongs to. */
function addLink(block: PageBlock, link: string, parent: StructureElement, target: PageTarget): StructureElement {
  const { context, structure, matrix, index } = target;
  const element: StructureElement = { type: 'Link', page: index, kids: [] };
  parent.kids.push(element);
  const ref = context.nextRef();
  const address = addressOf(link);
  context.assign(
    ref,
    context.obj({
      Type: 'Annot',
      Subtype: 'Link',
      P: target.ref,
      Rect: boxOf(block.box, matrix),
      Border: [0, 0, 0],
      F: 4,
      A: { Type: 'Action', S: 'URI', URI: PDFString.of(address) },
      Contents: PDFHexString.fromText(textsOf(block).join(' ') || address),
      StructParent: structure.annotate(element, ref),
    }),
  );
  target.annotations.push(ref);
  return element;
}

/** A heading of a row stands among data, one of a column among its like (ISO 32000-2, table 384, Scope). */
function scopeOf(row: PageBlock | undefined): 'Row' | 'Column' {
  return (row?.blocks ?? []).some(({ tag }) => tag === 'TD') ? 'Row' : 'Column';
}

function elementOf(block: PageBlock, above: PageBlock | undefined, target: PageTarget): StructureElement {
  const { tag, alt, items } = block;
  const type = tag === 'P' && items.length === 0 && block.blocks ? 'Div' : tag;
  const element = { type, page: target.index, kids: [] };
  if (tag === 'TH') return { ...element, attributes: { O: 'Table', Scope: scopeOf(above) } };
  if (tag !== 'Figure') return alt === undefined ? element : { ...element, alt };
  if (alt === undefined || alt === '')
    throw new Error(`A figure on page ${target.index + 1} has no text that says what it shows.`);
  const attributes = { O: 'Layout', Placement: 'Block', BBox: boxOf(block.box, target.matrix) };
  return { ...element, alt, attributes };
}

/** Draws a block and its parts in reading order, each as marked content of its structure element under `parent`. */
export function writeBlock(
  block: PageBlock,
  parent: StructureElement | null,
  target: PageTarget,
  above?: PageBlock,
): void {
  if (parent === null || block.tag === 'Artifact') {
    drawArtifact(block.items, target);
    for (const part of block.blocks ?? []) writeBlock(part, null, target, block);
    return;
  }
  const element = elementOf(block, above, target);
  parent.kids.push(element);
  let holder = element;
  if (block.tag === 'LI') {
    holder = { type: 'LBody', page: target.index, kids: [] };
    element.kids.push(holder);
  }
  if (block.link !== undefined) holder = addLink(block, block.link, holder, target);
  if (HOLDERS.has(block.tag)) drawArtifact(block.items, target);
  else drawContent(block.items, holder, target);
  for (const part of block.blocks ?? []) writeBlock(part, holder, target, block);
}
