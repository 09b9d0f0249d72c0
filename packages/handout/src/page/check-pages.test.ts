import { expect, test } from 'vitest';
import type { TextItem } from '../drawing/drawing.js';
import { blockAt } from './atom.js';
import { checkPages } from './check-pages.js';
import type { HandoutPages, PageBlock } from './page.js';
import { pageFrame } from './sheet-of-paper.js';

function text(words: string, x: number, y: number, more: Partial<TextItem> = {}): TextItem {
  return { kind: 'text', key: words, role: 'figure', at: { x, y }, text: words, size: 2_000, align: 'start', ...more };
}

function pagesOf(...blocks: readonly PageBlock[]): HandoutPages {
  const { width, height } = pageFrame('a4');
  return { title: 'T', author: '', language: 'en', looks: {}, pages: [{ width, height, blocks, marks: [] }] };
}

function codes(...blocks: readonly PageBlock[]): readonly string[] {
  return checkPages(pagesOf(...blocks)).map(({ code }) => code);
}

const area = { x: 20_000, y: 20_000, width: 40_000, height: 10_000 };

test('a page in order has nothing to be said of', () => {
  expect(codes(blockAt('P', area, [text('Panel', 21_000, 23_000), text('mat', 21_000, 26_000)]))).toEqual([]);
});

test('blocks on each other are found, and blocks off the page', () => {
  expect(codes(blockAt('P', area, []), blockAt('P', { ...area, y: 29_000 }, []))).toEqual(['boxes-collide']);
  expect(codes(blockAt('P', { ...area, x: 120_000 }, []))).toEqual(['off-the-page']);
});

test('a text that is clipped by its box, or turned out of it, is found', () => {
  expect(codes(blockAt('P', area, [text('far too long for this', 50_000, 25_000)]))).toEqual(['outside-its-box']);
  expect(codes(blockAt('P', area, [text('upright words', 30_000, 29_000, { turn: -90 })]))).toEqual([
    'outside-its-box',
  ]);
});

test('texts on each other are found, also inside groups that are moved and turned', () => {
  const inside = {
    kind: 'group',
    key: 'group',
    role: 'outline',
    origin: { x: 0, y: 0 },
    move: { x: 21_000, y: 23_000 },
    turn: 0,
    items: [text('B', 0, 0)],
  } as const;
  expect(codes(blockAt('Figure', area, [inside, text('A', 21_000, 23_500)]))).toEqual(['texts-collide']);
  const turned = { ...inside, turn: 180, move: { x: 30_000, y: 23_000 } };
  expect(codes(blockAt('Figure', area, [turned, text('A', 28_800, 24_000)]))).toEqual(['texts-collide']);
});

test('a block within a block must lie in it', () => {
  const inner = blockAt('TD', { ...area, width: 50_000 }, []);
  expect(codes(blockAt('TR', area, [], { blocks: [inner] }))).toEqual(['outside-its-box']);
});
