import { expect, test } from 'vitest';
import { type Atom, type AtomGroup, blockAt } from './atom.js';
import type { Page, PageBlock } from './page.js';
import { Pager } from './pager.js';
import { type PageFrame, pageFrame } from './sheet-of-paper.js';

const frame: PageFrame = { ...pageFrame('a4'), top: 100, bottom: 1100 };

function atom(name: string, height: number, more: Partial<Atom> = {}): Atom {
  const draw: Atom['draw'] = ({ x, y }) => [blockAt('P', { x, y, width: 50, height }, [], { alt: name })];
  return { height, before: 10, draw, ...more };
}

function names(page: Page | undefined): readonly string[] {
  const named = (block: PageBlock): readonly string[] =>
    block.blocks ? [block.tag, ...block.blocks.flatMap(named)] : [block.alt ?? block.tag];
  return page?.blocks.flatMap(named) ?? [];
}

function set(atoms: readonly Atom[]): readonly Page[] {
  const pager = new Pager(frame);
  pager.set({ x: 0, atoms });
  return pager.finish(() => []);
}

test('what does not fit goes to the next page, without the room above it', () => {
  const pages = set([atom('a', 600), atom('b', 390), atom('c', 400)]);
  expect(pages.map(names)).toEqual([['a', 'b'], ['c']]);
  expect(pages[0]?.blocks.map(({ box }) => box.y)).toEqual([100, 710]);
  expect(pages[1]?.blocks[0]?.box.y).toBe(100);
});

test('a heading goes with what it heads', () => {
  const pages = set([atom('a', 800), atom('heading', 50, { stays: true }), atom('b', 200)]);
  expect(pages.map(names)).toEqual([['a'], ['heading', 'b']]);
});

test('a table that goes on has its head again', () => {
  const group: AtomGroup = { tag: 'Table', head: atom('head', 100) };
  const rows = ['1', '2', '3', '4'].map((name) => atom(name, 400, { group, before: 0 }));
  expect(set(rows).map(names)).toEqual([
    ['Table', 'head', '1', '2'],
    ['Table', 'head', '3', '4'],
  ]);
});

test('columns begin side by side, and what follows stands below the longer', () => {
  const pager = new Pager(frame);
  pager.set({ x: 0, atoms: [atom('left', 300), atom('more', 900)] }, { x: 500, atoms: [atom('right', 200)] });
  pager.set({ x: 0, atoms: [atom('below', 50)] });
  const pages = pager.finish((index) => [
    blockAt('Artifact', { x: 0, y: 1200, width: 5, height: 5 }, [], { alt: `foot ${index}` }),
  ]);
  expect(pages.map(names)).toEqual([
    ['left', 'right', 'foot 0'],
    ['more', 'below', 'foot 1'],
  ]);
  expect(pages[0]?.blocks.slice(0, 2).map(({ box }) => [box.x, box.y])).toEqual([
    [0, 100],
    [500, 100],
  ]);
});

test('marks say where on the page they are, from the top down', () => {
  const pages = set([
    atom('a', 100, { mark: { title: 'First', level: 1 } }),
    atom('b', 100, { mark: { title: 'Second', level: 2 } }),
  ]);
  expect(pages[0]?.marks).toEqual([
    { title: 'First', level: 1, y: 100 },
    { title: 'Second', level: 2, y: 210 },
  ]);
});
