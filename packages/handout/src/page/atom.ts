import { type Point, rect } from '@trimwell/geometry';
import type { Item } from '../drawing/drawing.js';
import type { BlockTag, PageBlock, PageMark } from './page.js';
import { plainSpaces } from './wrap.js';

/** Atoms of one list, table or paragraph: what of it stands on one page in one column is one block there. */
export interface AtomGroup {
  readonly tag: 'L' | 'Table' | 'P';
  /** The head of a table, drawn anew wherever the table goes on. */
  readonly head?: Atom;
}

/** What is never parted: a line, a row, a figure. Heights and places are whole ticks. */
export interface Atom {
  readonly height: number;
  /** Room above it, which is left out at the top of a page. */
  readonly before: number;
  /** Never the last of a page: a heading stays with what it heads. */
  readonly stays?: boolean;
  readonly group?: AtomGroup;
  readonly mark?: Pick<PageMark, 'title' | 'level'>;
  /** Its blocks with its upper left corner at `at`. */
  draw(at: Point): readonly PageBlock[];
}

/** A block over the rectangle at `at`, widened to whole ticks. */
export function blockAt(
  tag: BlockTag,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  items: readonly Item[],
  more: Pick<PageBlock, 'blocks' | 'alt' | 'link'> = {},
): PageBlock {
  const [x, y] = [Math.floor(box.x), Math.floor(box.y)];
  return {
    tag,
    box: rect(x, y, Math.ceil(box.x + box.width) - x, Math.ceil(box.y + box.height) - y),
    items,
    ...more,
    ...(more.alt === undefined ? {} : { alt: plainSpaces(more.alt) }),
  };
}

function around(blocks: readonly PageBlock[]) {
  const x = Math.min(...blocks.map(({ box }) => box.x));
  const y = Math.min(...blocks.map(({ box }) => box.y));
  const right = Math.max(...blocks.map(({ box }) => box.x + box.width));
  const bottom = Math.max(...blocks.map(({ box }) => box.y + box.height));
  return { x, y, width: right - x, height: bottom - y };
}

/** The blocks of neighbouring atoms of one group as one block; the lines of a paragraph melt into it. */
export function gathered(group: AtomGroup | undefined, blocks: readonly PageBlock[]): readonly PageBlock[] {
  if (!group || blocks.length === 0) return blocks;
  const box = around(blocks);
  if (group.tag === 'P')
    return [
      blockAt(
        'P',
        box,
        blocks.flatMap(({ items }) => items),
      ),
    ];
  return [blockAt(group.tag, box, [], { blocks })];
}

/** The height of atoms under each other. */
export function stackHeight(atoms: readonly Atom[]): number {
  return atoms.reduce((sum, { before, height }, index) => {
    const head = headBefore(atoms, index);
    return sum + (index === 0 ? 0 : before) + (head?.height ?? 0) + height;
  }, 0);
}

/** The head that stands before an atom, where its table begins. */
function headBefore(atoms: readonly Atom[], index: number): Atom | undefined {
  const group = atoms[index]?.group;
  return group && group !== atoms[index - 1]?.group ? group.head : undefined;
}

/** Atoms under each other on one page, from `at` down. */
export function stackBlocks(atoms: readonly Atom[], at: Point): readonly PageBlock[] {
  const all: PageBlock[] = [];
  let run: PageBlock[] = [];
  let y = at.y;
  atoms.forEach((atom, index) => {
    const last = atoms[index - 1];
    if (last && last.group !== atom.group) {
      all.push(...gathered(last.group, run));
      run = [];
    }
    if (index > 0) y += atom.before;
    const head = headBefore(atoms, index);
    if (head) {
      run.push(...head.draw({ x: at.x, y }));
      y += head.height;
    }
    const blocks = atom.draw({ x: at.x, y });
    y += atom.height;
    if (atom.group) run.push(...blocks);
    else all.push(...blocks);
  });
  return [...all, ...gathered(atoms.at(-1)?.group, run)];
}
