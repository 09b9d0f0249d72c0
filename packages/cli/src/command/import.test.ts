import { expectSketch, writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { runCommand } from '../index.js';

const FILES: Readonly<Record<string, string>> = {
  'card.json': writeSketchText(sampleSketch()),
  'list.csv': 'name;width;height;shade\nPanel;3 3/4 in;5 in;green\n',
  'wrong.csv': 'name,width,height\nPanel,wide,5 in\n"Tag",1 in,none\n',
};

async function trimwell(...args: readonly string[]) {
  const written = new Map<string, string>();
  const outcome = await runCommand(
    args,
    async (file) => FILES[file] ?? expect.fail(`${file} was read`),
    async (file, text) => {
      written.set(file, text);
    },
  );
  return { ...outcome, written };
}

test('a piece list becomes a sketch, on standard output or in a file', async () => {
  const { code, out, error } = await trimwell(
    'import',
    'list.csv',
    '--card',
    '4 1/4x5 1/2 in',
    '--title',
    'From a list',
  );
  expect(code).toBe(0);
  expect(expectSketch(JSON.parse(out))).toMatchObject({ title: 'From a list', pieces: [{ name: 'Panel' }] });
  expect(error.split('\n')).toEqual([
    'list.csv: The list is separated by semicolons.',
    'list.csv: Left out, because they mean nothing here: the columns "shade".',
    '',
  ]);
  const saved = await trimwell(
    'import',
    'list.csv',
    '--card',
    '6 x 4',
    '--unit',
    'in',
    '--fold',
    'none',
    '--out',
    'a.json',
  );
  expect(saved.out).toBe('a.json\n');
  expect(JSON.parse(saved.written.get('a.json') ?? '')).toMatchObject({ card: { width: '6 in', fold: 'none' } });
});

test('every mistake stands on a line of its own, with its row and column', async () => {
  const { code, out, error } = await trimwell('import', 'wrong.csv', '--card', '4 x 5 in');
  expect([code, out]).toEqual([2, '']);
  expect(error.trimEnd().split('\n')).toEqual([
    expect.stringMatching(/^wrong.csv: Row 2, column "width" is "wide"; allowed: a length/),
    expect.stringMatching(/^wrong.csv: Row 3, column "height" is "none"; allowed: a length/),
  ]);
  expect((await trimwell('import', 'list.csv', '--fold', 'right')).error).toContain(
    '--fold is "right"; allowed: left, top, none.',
  );
  expect((await trimwell('import', 'list.csv')).error).toContain('The size of the card is nothing');
});

test('piece lists in every format and arrangement', async () => {
  const heads = new Map([
    ['csv', /^(label|paper|number),/],
    ['json', /^\{\n {2}"trimwell(Pieces|Papers|Settings)": 1,/],
    ['markdown', /^# Fern sampler: /],
    ['text', /^Fern sampler: /],
  ]);
  for (const arrange of ['card', 'batch', 'paper', 'setting'])
    for (const [format, head] of heads) {
      const { code, out } = await trimwell('pieces', 'card.json', '--arrange', arrange, '--format', format);
      expect(code).toBe(0);
      expect(out).toMatch(head);
    }
  const { out } = await trimwell('pieces', 'card.json', '--arrange', 'paper', '--cards', '2', '--json');
  expect(JSON.parse(out)).toMatchObject({ trimwellPapers: 1, cards: 2, papers: [{ sheetsNeeded: 2 }, {}, {}, {}] });
  const refused = await trimwell('pieces', 'card.json', '--json', '--format', 'csv');
  expect([refused.code, refused.error.split('\n')[0]]).toEqual([
    2,
    '--json and --format csv ask for two formats; name one.',
  ]);
  expect((await trimwell('pieces', 'card.json', '--arrange', 'pile')).error).toContain(
    '--arrange is "pile"; allowed: card, batch, paper, setting.',
  );
});

test('what is exported for one card is imported as the same pieces', async () => {
  const { out } = await trimwell('pieces', 'card.json', '--arrange', 'card');
  const reading = await runCommand(
    ['import', '-'],
    async () => out,
    async () => undefined,
  );
  const back = expectSketch(JSON.parse(reading.out));
  const names = (of: typeof back) => of.pieces.map(({ name }) => name).sort();
  expect(names(back)).toEqual(names(sampleSketch()));
});
