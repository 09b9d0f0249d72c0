import { readFileSync } from 'node:fs';
import { inches } from '@trimwell/geometry';
import { type Sketch, writeSketchText } from '@trimwell/sketch';
import { PNG } from 'pngjs';
import { runCommand } from 'trimwell';
import { beforeAll, expect, test } from 'vitest';
import { difference, type Picture, paintSvg, shrink } from '../handout/pictures.js';
import { sampleSketch } from '../kit/sample-sketch.js';

const demo = (name: string): string =>
  readFileSync(new URL(`../../demo/sketches/${name}.json`, import.meta.url), 'utf8');

const FILES = new Map([
  ['card.json', writeSketchText(sampleSketch())],
  ['wreath.json', demo('hedgerow-wreath')],
  ['tide.json', demo('tide-line')],
  ['star.json', demo('star-window')],
  ['bad.json', '{}'],
]);

async function trimwell(args: readonly string[]) {
  const written = new Map<string, string | Uint8Array>();
  const save = async (file: string, content: string | Uint8Array) => {
    written.set(file, content);
  };
  const readText = async (file: string) => {
    const text = FILES.get(file);
    if (text === undefined) throw Object.assign(new Error(`ENOENT: no such file: ${file}`), { code: 'ENOENT' });
    return text;
  };
  return { ...(await runCommand(args, readText, save, save)), written };
}

/** The PNG that a command writes, decoded by pngjs. */
async function painted(...args: readonly string[]): Promise<Picture> {
  const { code, error, written } = await trimwell(['picture', ...args]);
  expect([code, error]).toEqual([0, '']);
  const [bytes] = written.values();
  if (!(bytes instanceof Uint8Array)) throw new Error('No PNG was written.');
  return PNG.sync.read(Buffer.from(bytes));
}

function dot({ width, data }: Picture, x: number, y: number): readonly number[] {
  return [...data.subarray((y * width + x) * 4, (y * width + x) * 4 + 4)];
}

/** How many different colours there are in a rectangle. */
function colours(picture: Picture, left: number, top: number, right: number, bottom: number): number {
  const found = new Set<string>();
  for (let y = top; y < bottom; y += 1) for (let x = left; x < right; x += 1) found.add(dot(picture, x, y).join());
  return found.size;
}

const GROUND = [0xd9, 0xdd, 0xd5, 255];

let post: Picture;
beforeAll(async () => {
  post = await painted('wreath.json');
});

test('a PNG is of the size asked for, with ground at its rim and ink where the card is', async () => {
  expect([post.width, post.height]).toEqual([1200, 800]);
  for (const [x, y] of [
    [0, 0],
    [1199, 0],
    [0, 799],
    [1199, 799],
    [600, 20],
    [600, 780],
    [100, 400],
    [1100, 400],
  ] as const)
    expect(dot(post, x, y)).toEqual(GROUND);
  expect(colours(post, 450, 100, 750, 700)).toBeGreaterThan(50);
  const [tall, own] = [
    await painted('star.json', '--size', 'tall-screen', '--of', 'inside'),
    await painted('tide.json', '--size', '301x199', '--title', 'Tide line'),
  ];
  expect([tall.width, tall.height, own.width, own.height]).toEqual([1080, 1920, 301, 199]);
});

test('a batch has cards where its rows are and ground between them; a guide has the sheet and its words', async () => {
  const batch = await painted('wreath.json', '--of', 'batch', '--cards', '9', '--size', 'square');
  expect(colours(batch, 0, 0, 1080, 60)).toBe(1);
  // Three rows of three: the middle of the picture is the middle of a card, a gap lies at a sixth to either side of it.
  expect(colours(batch, 500, 500, 580, 580)).toBeGreaterThan(5);
  const guide = await painted('wreath.json', '--of', 'guide', '--sheet', '2', '--cards', '6', '--size', 'wide');
  expect(colours(guide, 780, 250, 1100, 400)).toBeGreaterThan(20);
  expect(colours(guide, 200, 60, 560, 560)).toBeGreaterThan(20);
});

test.each(['wreath.json', 'tide.json', 'star.json'])(
  '%s looks the same to librsvg, but for the fonts',
  async (file) => {
    const { written } = await trimwell(['picture', file, '--format', 'svg', '--out', 'x.svg']);
    const text = written.get('x.svg');
    if (typeof text !== 'string') throw new Error('No SVG was written.');
    const [ours, theirs] = [await painted(file), paintSvg(text, 96)];
    // The mean of squares of 8 dots, so that only what really differs is left; 255 would be black against white.
    expect(difference(shrink(ours, 8), shrink(theirs, 8))).toBeLessThan(1);
  },
);

test('there are no seams between the tiles of a print', async () => {
  // Printed in the colour of its ground on dark paper, a panel is of one colour, unless the dark shines through a seam.
  const [ground, dark] = ['#f4efe2', '#102030'];
  const { pieces, papers, ...rest } = sampleSketch();
  const printed: Sketch = {
    ...rest,
    variations: [],
    batch: { ...rest.batch, contrast: [] },
    pieces: pieces.filter(({ id }) => id === 'panel').map((piece) => ({ ...piece, from: 'dots' })),
    papers: papers.map((paper) => ({
      ...paper,
      look: { ...paper.look, ...(paper.id === 'dots' ? { pattern: 'dot', ground, inks: [ground] } : { ground: dark }) },
    })),
  };
  for (const repeat of [inches(1 / 2), inches(7 / 16)]) {
    const tiled = printed.papers.map((paper) => ({ ...paper, look: { ...paper.look, repeat } }));
    FILES.set('printed.json', writeSketchText({ ...printed, papers: tiled }));
    const picture = await painted('printed.json');
    for (let y = 150; y < 650; y += 1)
      for (let x = 450; x < 750; x += 1)
        [0xf4, 0xef, 0xe2].forEach((colour, at) => {
          // One in 255 is rounding.
          expect(Math.abs((dot(picture, x, y)[at] ?? 0) - colour)).toBeLessThanOrEqual(1);
        });
  }
});

test('a card casts its shadow to the right and down', () => {
  const light = ([red = 0, green = 0, blue = 0]: readonly number[]): number => red + green + blue;
  // The card of 4 1/4 x 5 1/2 in stands from 56 to 744 of 800 and, in the middle, from 334 to 866 of 1200.
  const [left, right, below] = [dot(post, 330, 400), dot(post, 868, 400), dot(post, 600, 746)].map(light);
  expect(left).toBe(light(GROUND));
  expect(right).toBeLessThan(light(GROUND));
  expect(below).toBeLessThan(light(GROUND));
});

test('the same sketch gives the same bytes', async () => {
  const [one, other] = [await painted('card.json'), await painted('card.json')];
  expect(Buffer.compare(one.data, other.data)).toBe(0);
});

test('letters of extended Latin are set in the hand of their word', async () => {
  const title = async (words: string) => painted('card.json', '--title', words, '--size', '600x600');
  const [with_, without] = [await title('Łąka'), await title('Laka')];
  const inked = ({ data }: Picture): number => {
    let dark = 0;
    for (let at = 560 * 600 * 4 - 60 * 600 * 4; at < data.length; at += 4) if ((data[at] ?? 255) < 120) dark += 1;
    return dark;
  };
  // Semibold and with its two strokes it has more ink; in the light hand of the sans it would have less.
  expect(inked(with_)).toBeGreaterThan(inked(without));
});

test.each([
  [
    ['picture', 'card.json', '--size', 'huge'],
    '--size is "huge"; allowed: post, square, tall, wide, tall screen, or pixels',
  ],
  [['picture', 'card.json', '--of', 'back'], '--of is "back"; allowed: card, inside, batch, guide.'],
  [['picture', 'card.json', '--of', 'guide', '--sheet', '99'], '--sheet is "99"; allowed: a whole number from 1 to'],
  [['picture', 'card.json', '--format', 'gif'], '--format is "gif"; allowed: png, svg.'],
  [['picture', 'bad.json'], 'bad.json: '],
])('%j is refused in words', async (args, words) => {
  const { code, error, written } = await trimwell(args);
  expect(code).toBe(2);
  expect(error).toContain(words);
  expect(written.size).toBe(0);
});
