import { ellipse, inches, millimetres, type Outline, type Rect, rectangle } from '@trimwell/geometry';
import { type Drawing, drawCard, type Item, type PathItem, type Role, type TextFace } from '@trimwell/handout';
import { PNG } from 'pngjs';
import type { HandoutPages, PageBlock } from '../../packages/handout/src/page/page.js';
import { sampleSketch } from '../kit/sample-sketch.js';

const MM = 640;
const POINT = 16256 / 72;

/** A4 and Letter in ticks. */
export const A4 = { width: 210 * MM, height: 297 * MM };
export const LETTER = { width: 8.5 * 16256, height: 11 * 16256 };

export function textItem(key: string, text: string, x: number, y: number, points: number, face?: TextFace): Item {
  return {
    kind: 'text',
    key,
    role: 'figure',
    at: { x: x * MM, y: y * MM },
    text,
    size: points * POINT,
    align: 'start',
    ...(face ? { face } : {}),
  };
}

/** A box from whole millimetres. */
function boxAt(x: number, y: number, width: number, height: number): Rect {
  return { x: millimetres(x), y: millimetres(y), width: millimetres(width), height: millimetres(height) };
}

export function block(tag: PageBlock['tag'], items: readonly Item[], more: Partial<PageBlock> = {}): PageBlock {
  return { tag, box: boxAt(20, 20, 100, 8), items, ...more };
}

export function pathItem(key: string, role: PathItem['role'], outline: Outline, more: Partial<PathItem> = {}): Item {
  return { kind: 'path', key, role, outline, ...more };
}

/** One page of texts: headings, a paragraph, a list, a table, a link. */
export function wordsPage(): HandoutPages['pages'][number] {
  const cell = (tag: 'TH' | 'TD', key: string, text: string, x: number, y: number) =>
    block(tag, [textItem(key, text, x, y, 10, tag === 'TH' ? 'strong' : 'text')]);
  return {
    ...A4,
    marks: [
      { title: 'Fern and Dew', level: 1, y: 20 * MM },
      { title: 'Sizes', level: 2, y: 90 * MM },
    ],
    blocks: [
      block('Artifact', [textItem('foot', 'page 1', 180, 287, 8)]),
      block('H1', [textItem('title', 'Fern & Dew: AVATAR Tøfte', 20, 28, 26, 'heading')]),
      block('P', [
        textItem('p1', 'Mats of 4 1⁄4 × 5 11⁄16 in for Zoë, Łukasz, Ștefan and Müßig.', 20, 40, 11),
        textItem('p2', 'About ≈ 10,8 cm → 4 ⅛ in, Зоя, ½ office.', 20, 46, 11, 'italic'),
      ]),
      block('L', [], {
        blocks: ['Cut the base', 'Score the fold'].map((text, index) =>
          block('LI', [textItem(`li${index}`, `${index + 1}. ${text}`, 20, 56 + 6 * index, 11)]),
        ),
      }),
      block('P', [textItem('link', 'fernhollow.example', 20, 74, 11)], {
        box: boxAt(20, 70, 40, 6),
        link: 'https://fernhollow.example/dew?a=(1)',
      }),
      block('H2', [textItem('h2', 'Sizes', 20, 90, 16, 'heading')]),
      block('Table', [pathItem('rule', 'dimension', rectangle(20 * MM, 96 * MM, 100 * MM, 0.2 * MM))], {
        blocks: [
          block('TR', [], { blocks: [cell('TH', 'th1', 'Piece', 20, 95), cell('TH', 'th2', 'Size', 60, 95)] }),
          block('TR', [], { blocks: [cell('TH', 'td1', 'Mat', 20, 101), cell('TD', 'td2', '2 3⁄8 in', 60, 101)] }),
        ],
      }),
    ],
  };
}

/** Prints of every sort: filled, lined, see-through, dotted, with fine lines over the whole tile. */
const SWATCHES = ['plain', 'stripe', 'dot', 'gingham', 'chevron', 'blossom', 'shell', 'wood grain', 'music'] as const;

const idOf = (pattern: (typeof SWATCHES)[number]) => pattern.replace(' ', '-');

export const LOOKS: Drawing['looks'] = Object.fromEntries(
  SWATCHES.map((pattern) => [
    idOf(pattern),
    { pattern, ground: '#f4ead6', inks: ['#2f6f5e', '#c2573a', '#d9a441', '#7a4f8a'], repeat: inches(1 / 2) },
  ]),
);

/** A sketch's card with its letters and figures, a swatch of each print upright and turned, and every sort of line. */
export function drawingOf(box: Drawing['box']): Drawing {
  const card = drawCard(sampleSketch(), { face: 'front', style: { unit: 'in', marks: 16 }, labels: true });
  const at = (key: string, x: number, y: number, items: readonly Item[], turn = 0): Item => ({
    ...{ kind: 'group', key, role: 'outline', origin: { x: 0, y: 0 }, move: { x: x * MM, y: y * MM }, turn, items },
  });
  const line = (role: Role, y: number): Item => ({
    ...{ kind: 'line', key: role, role, from: { x: 0, y: y * MM }, to: { x: 30 * MM, y: y * MM } },
  });
  const swatches = SWATCHES.map(idOf).map((paper, index) =>
    at(paper, 20 + (index % 5) * 36, 190 + Math.floor(index / 5) * 40, [
      pathItem(paper, 'outline', ellipse(0, 0, 30 * MM, 34 * MM), { fill: { paper } }),
    ]),
  );
  const lines: readonly Role[] = ['cut', 'fold', 'margin', 'dimension', 'hidden'];
  const turned = at(
    'turned',
    170,
    230,
    [
      pathItem('turned', 'blank', rectangle(0, 0, 24 * MM, 16 * MM), { fill: { paper: 'gingham' } }),
      ...lines.map((role, index) => line(role, 20 + 3 * index)),
    ],
    20,
  );
  return {
    title: 'Fern & Dew',
    description: 'The card from the front, and its papers.',
    box,
    items: [at('card', 30, 16, card.items), ...swatches, turned],
    looks: { ...card.looks, ...LOOKS },
  };
}

/** One page with a drawing only. */
export function drawingHandout(): HandoutPages {
  const { title, description, items, looks } = drawingOf({ x: 0, y: 0, ...LETTER });
  const blocks = [block('Figure', items, { alt: description })];
  const page = { ...LETTER, marks: [{ title: 'Drawing', level: 1 as const, y: 0 }], blocks };
  return { title, author: 'Fernhollow paper club', language: 'en', looks, pages: [page] };
}

export function wordsHandout(): HandoutPages {
  return {
    title: 'Fern & Dew (Tøfte)',
    author: 'Fernhollow paper club',
    language: 'en',
    looks: {},
    pages: [wordsPage()],
  };
}

/** A handout of one A4 page with one block. */
export function onePage(only: PageBlock): HandoutPages {
  return {
    ...{ title: 'One', author: '', language: 'de', looks: {} },
    pages: [{ ...A4, marks: [], blocks: [only] }],
  };
}

/** Two areas of a paper of 4 x 4 in whose photograph, 8 x 4 dots, is red above and blue below. */
export function photoHandout(): { readonly pages: HandoutPages; readonly photos: ReadonlyMap<string, Uint8Array> } {
  const hash = 'aa'.repeat(8);
  const picture = new PNG({ width: 8, height: 4 });
  for (let dot = 0; dot < 32; dot += 1) picture.data.set(dot < 16 ? [200, 0, 0, 255] : [0, 0, 200, 255], dot * 4);
  const inch = 16256;
  const sheet = { width: 4 * inch, height: 4 * inch } as NonNullable<Drawing['looks'][string]['sheet']>;
  const looks = { own: { ...LOOKS['dot'], photo: hash, sheet } as Drawing['looks'][string] };
  const areas = [1, 2.5].map((left) =>
    pathItem(`area${left}`, 'paper', rectangle(left * inch, inch, 1.5 * inch, 3 * inch), { fill: { paper: 'own' } }),
  );
  const pages = { ...onePage(block('Figure', areas, { alt: 'Two areas.' })), looks };
  return { pages, photos: new Map([[hash, PNG.sync.write(picture)]]) };
}
