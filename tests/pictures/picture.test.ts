// @vitest-environment jsdom

import { inches } from '@trimwell/geometry';
import { BLADE_CAUTION } from '@trimwell/handout';
import {
  guideSheets,
  PICTURE_SIZES,
  type PictureOptions,
  type PictureSubject,
  readPictureSize,
  writePicture,
} from '@trimwell/handout/picture';
import { batchRecipe, mixPlan } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { quickPlan } from '../kit/quick-plan.js';
import { sampleSketch } from '../kit/sample-sketch.js';

const sketch = sampleSketch();
const size = PICTURE_SIZES.square;

/** Parsed as XML by a parser that is not ours. */
function parsed(subject: PictureSubject, options: Partial<PictureOptions> = {}): Document {
  const text = writePicture(sketch, subject, { size, ...options });
  const document = new DOMParser().parseFromString(text, 'image/svg+xml');
  expect(document.querySelector('parsererror')?.textContent ?? '').toBe('');
  return document;
}

function subjects(): readonly PictureSubject[] {
  return [
    { of: 'card' },
    { of: 'inside' },
    { of: 'batch', cards: 6 },
    { of: 'guide', plan: quickPlan(sketch, 6), sheet: 1 },
  ];
}

test('every picture is as large as asked for, in pixels, with a title and a description', () => {
  for (const subject of subjects())
    for (const each of [...Object.values(PICTURE_SIZES), { width: 100, height: 3000 }, { width: 3000, height: 100 }]) {
      const root = parsed(subject, { size: each, title: 'Ferns & dots' }).documentElement;
      expect([root.getAttribute('width'), root.getAttribute('height')]).toEqual([`${each.width}`, `${each.height}`]);
      expect(root.getAttribute('viewBox')).toBe(`0 0 ${each.width} ${each.height}`);
      expect(root.querySelector('title')?.textContent).not.toBe('');
      expect(root.querySelector('desc')?.textContent).not.toBe('');
      expect(root.outerHTML).not.toMatch(/NaN|Infinity|undefined/);
    }
});

test('nothing leads out of a picture, and every reference in it has its target', () => {
  for (const subject of subjects()) {
    const document = parsed(subject);
    const ids = new Set([...document.querySelectorAll('[id]')].map((element) => element.id));
    const text = document.documentElement.outerHTML;
    const named = [...text.matchAll(/(?:href="#|url\(#)([^")]+)/g)].map((found) => found[1]);
    expect(named.filter((id) => !ids.has(id ?? ''))).toEqual([]);
    expect([...text.matchAll(/href="(?!#|data:)/g)]).toEqual([]);
    expect(text.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|@import/);
  }
});

test('a batch shows as many cards as it has, each in the papers that are dealt to it', () => {
  const grounds: Readonly<Record<string, string>> = { sprig: '#112233', dots: '#445566' };
  const papers = sketch.papers.map((paper) => ({
    ...paper,
    look: { ...paper.look, ground: grounds[paper.id] ?? '#ffffff' },
  }));
  const text = writePicture({ ...sketch, papers }, { of: 'batch', cards: 6 }, { size });
  const document = new DOMParser().parseFromString(text, 'image/svg+xml');
  const { deal, different } = mixPlan(batchRecipe(sketch), 6);
  expect(document.querySelectorAll('defs > g')).toHaveLength(different);
  const shown = [...document.querySelectorAll('use')].map((use) => {
    const card = document.getElementById(use.getAttribute('href')?.slice(1) ?? '');
    return [...(card?.querySelectorAll('path') ?? [])]
      .map((path) => path.getAttribute('fill'))
      .filter((fill) => Object.values(grounds).includes(fill ?? ''));
  });
  expect(shown).toEqual(deal.map((dealt) => dealt.map((paper) => grounds[paper])));
  expect(parsed({ of: 'batch', cards: 1 }).querySelectorAll('use')).toHaveLength(0);
});

test('a guide names its sheet, its letters and the care that a blade needs', () => {
  const plan = quickPlan(sketch, 6);
  guideSheets(plan).forEach((_, index) => {
    const texts = [...parsed({ of: 'guide', plan, sheet: index + 1 }).querySelectorAll('text')];
    const words = texts.map(({ textContent }) => textContent).join(' ');
    expect(words).toContain(BLADE_CAUTION);
    expect(words).toContain('Sizes in inches.');
  });
  const first = parsed({ of: 'guide', plan, sheet: 1 }).documentElement.textContent;
  for (const word of ['Ivory card', 'A Card base']) expect(first).toContain(word);
  const small = writePicture(sketch, { of: 'guide', plan, sheet: 1 }, { size: { width: 100, height: 120 } });
  expect(small).toContain('change a dull');
});

test('however long its legend, the words of a guide stay in the picture', () => {
  const [piece] = sketch.pieces.slice(-1);
  if (!piece) throw new Error('The sample has no piece.');
  const name = 'A strip with a very long name that goes on and on until nobody reads it';
  const pieces = Array.from({ length: 40 }, (_, index) => ({
    ...piece,
    id: `strip-${index}`,
    name,
    width: inches(1),
    height: inches(1),
  }));
  const many = { ...sketch, pieces, variations: [], batch: { ...sketch.batch, contrast: [] } };
  const plan = quickPlan(many, 1);
  for (const each of [
    { width: 400, height: 400 },
    { width: 1200, height: 630 },
    { width: 600, height: 800 },
  ]) {
    const text = writePicture(many, { of: 'guide', plan, sheet: 1 }, { size: each });
    const document = new DOMParser().parseFromString(text, 'image/svg+xml');
    const words = [...document.querySelectorAll('svg > text')];
    expect(words.length).toBeGreaterThan(3);
    for (const line of words) {
      expect(Number(line.getAttribute('y'))).toBeGreaterThan(0);
      expect(Number(line.getAttribute('y'))).toBeLessThan(each.height);
    }
    expect(words.map(({ textContent }) => textContent).join(' ')).toContain('Letters as in the piece list.');
  }
});

test('photographs and fonts are carried along as data, and nothing else is', () => {
  const photo = 'abcdef0123456789';
  const shot = { ...sketch, papers: sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo } })) };
  const href = 'data:image/png;base64,iVBORw0KGgo=';
  const text = writePicture(shot, { of: 'card' }, { size, photos: new Map([[photo, href]]) });
  expect(text).toContain(`href="${href}"`);
  expect(writePicture(shot, { of: 'card' }, { size })).not.toContain('<image');
  const wrong = new Map([[photo, 'blob:somewhere']]);
  expect(() => writePicture(shot, { of: 'card' }, { size, photos: wrong })).toThrow('allowed: a data URL of an image');
  const font = {
    family: 'Source Sans 3',
    weight: '400',
    style: 'normal',
    letters: 'U+0000-00FF',
    file: 'text',
  } as const;
  const fonts = [{ ...font, href: 'data:font/woff;base64,d09GRg==' }];
  const carried = parsed({ of: 'card' }, { fonts }).querySelector('style')?.textContent;
  expect(carried).toContain("@font-face{font-family:'Source Sans 3'");
  expect(() => parsed({ of: 'card' }, { fonts: [{ ...font, href: 'x.woff' }] })).toThrow('a data URL of a font');
});

test('what is not allowed is refused in words', () => {
  const refused = (subject: PictureSubject, options: Partial<PictureOptions>) => () => parsed(subject, options);
  expect(refused({ of: 'card' }, { size: { width: 99, height: 800 } })).toThrow(
    'size.width is 99; allowed: a whole number of pixels from 100 to 8000.',
  );
  expect(refused({ of: 'card' }, { size: { width: 800, height: 0.5 } })).toThrow('size.height is 0.5');
  expect(refused({ of: 'card' }, { ground: 'red' })).toThrow('ground is "red"; allowed: a colour as #rrggbb.');
  expect(refused({ of: 'batch', cards: 0 }, {})).toThrow('cards is 0; allowed: a whole number from 1 to 500.');
  expect(refused({ of: 'guide', plan: quickPlan(sketch, 1), sheet: 99 }, {})).toThrow('sheet is 99; allowed:');
});

test('sizes by name and in pixels', () => {
  expect(['post', 'Tall screen', 'tall-screen', ' 640 x 480 ', '100×8000'].map(readPictureSize)).toEqual([
    { width: 1200, height: 800 },
    { width: 1080, height: 1920 },
    { width: 1080, height: 1920 },
    { width: 640, height: 480 },
    { width: 100, height: 8000 },
  ]);
  expect(['', 'huge', '99x100', '100x8001', '100', 'constructor', '1e3x1e3'].map(readPictureSize)).toEqual(
    Array.from({ length: 7 }, () => null),
  );
});
