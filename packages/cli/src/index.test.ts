import { parseLength } from '@trimwell/geometry';
import { writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../tests/kit/sample-sketch.js';
import { runCommand } from './index.js';

const letter = { id: 'letter', width: '8.5 in', height: '11 in' };
const base = { id: 'base', width: 5.5, height: 8.5, quantity: 9 };
const job = (more: object = {}) => JSON.stringify({ trimwellJob: 1, papers: [letter], blanks: [base], ...more });

const FILES: Readonly<Record<string, string>> = {
  'job.json': job(),
  'limited.json': job({ papers: [{ ...letter, sheets: 3 }], blanks: [{ ...base, quantity: 1 }] }),
  'short.json': job({ papers: [{ ...letter, sheets: 3 }] }),
  'bad.json': job({ blanks: [{ ...base, width: 'wide' }], glow: true }),
  'jobs.jsonl': `${job()}\nnot json\n${job({ blanks: [{ ...base, quantity: 1 }] })}\n`,
  'turning.json': job({
    trimmer: { stoppedCuts: true },
    papers: [{ id: 'square', width: 12, height: 12, price: 2 }],
    blanks: [{ id: 'card', width: 5, height: 7, quantity: 4 }],
  }),
  'metric.json': job({
    unit: 'mm',
    papers: [{ id: 'a4', width: 210, height: 297 }],
    blanks: [{ id: 'a5', width: 210, height: 148, quantity: 2 }],
  }),
  'sketch.json': writeSketchText(sampleSketch()),
};

const written = new Map<string, string>();

async function trimwell(line: string) {
  const readText = async (file: string) => {
    const text = FILES[file];
    if (text === undefined) throw Object.assign(new Error(`ENOENT: no such file: ${file}`), { code: 'ENOENT' });
    return text;
  };
  return runCommand(line.split(' '), readText, async (file, text) => {
    written.set(file, text);
  });
}

test('cut prints the plan and ends with 0 when everything is made', async () => {
  const { code, out } = await trimwell('cut job.json --json');
  expect(code).toBe(0);
  const plan = JSON.parse(out);
  expect(plan).toMatchObject({ trimwellPlan: 1, ticksPerInch: 16256, sets: 1, complete: true, unmade: [] });
  expect(plan.proof).toMatchObject({ lowerBound: 5, fewestSheets: true, mostSets: null });
  expect(plan.counts.sheets).toBe(5);
  expect(plan.sheets[0]).toMatchObject({ width: parseLength('8.5', 'in'), usable: { x: 0, y: 0 } });
});

test('cut ends with 1 when something cannot be made, and says what and why', async () => {
  const { code, out } = await trimwell('cut short.json --json');
  expect(code).toBe(1);
  expect(JSON.parse(out).unmade).toEqual([{ blank: 'base', quantity: 3, reason: 'out of sheets' }]);
  expect((await trimwell('cut short.json')).out).toContain('out of sheets');
});

test('cut ends with 2 on bad input, one line of standard error for each problem, with its path', async () => {
  const { code, out, error } = await trimwell('cut bad.json');
  expect([code, out]).toEqual([2, '']);
  expect(error.trimEnd().split('\n')).toHaveLength(2);
  expect(error).toContain('blanks[0].width');
  expect(error).toContain('glow');
});

test('sets multiply, and the most sets are found and proven', async () => {
  expect(JSON.parse((await trimwell('cut job.json --sets 2 --json')).out)).toMatchObject({
    sets: 2,
    counts: { sheets: 9 },
  });
  const most = JSON.parse((await trimwell('cut limited.json --sets most --json')).out);
  expect(most).toMatchObject({ sets: 6, complete: true, proof: { mostSets: true } });
  expect((await trimwell('cut job.json --sets most')).code).toBe(2);
});

test('a file of jobs gives one plan a line, a bad job an error in its place', async () => {
  const { code, out } = await trimwell('cut jobs.jsonl');
  const lines = out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(code).toBe(2);
  expect(lines.map((line) => line.counts?.sheets ?? line.error.length)).toEqual([5, 1, 1]);
});

test('the same job and the same work give the same text', async () => {
  const once = await trimwell('cut job.json --work 5000 --json');
  expect(await trimwell('cut job.json --work 5000 --json')).toEqual(once);
});

test('plan prints the batch as text and as JSON', async () => {
  const { code, out } = await trimwell('plan sketch.json --cards 6 --json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ trimwellBatch: 1, cards: 6, complete: true });
  const text = await trimwell('plan sketch.json --cards 6');
  expect(text.out).toContain('Moss card');
  expect((await trimwell('plan sketch.json --cards most')).error).toContain('limited');
});

test('pieces prints RFC 4180 records for the batch and for one card', async () => {
  const { code, out } = await trimwell('pieces sketch.json');
  const rows = out.split('\r\n');
  expect(code).toBe(0);
  expect(rows).toHaveLength(1 + 6 + 1);
  expect(JSON.parse((await trimwell('pieces sketch.json --cards 1 --json')).out)).toBeTypeOf('object');
});

test('guides writes one true-size SVG for each sheet layout', async () => {
  const { code, out } = await trimwell('guides sketch.json --cards 6 --into out');
  expect(code).toBe(0);
  const names = out.trimEnd().split('\n');
  expect(names).toEqual([...written.keys()]);
  expect(names.length).toBeGreaterThanOrEqual(4);
  for (const text of written.values()) expect(text).toMatch(/^<svg [^>]*width="(8\.5|12)in"/);
});

test.each([
  ['guides sketch.json', '--into'],
  ['cut', 'Name one file with a cut job'],
  ['cut job.json --speed 3', 'There is no option --speed'],
  ['cut job.json --sets many', '--sets is "many"'],
  ['cut job.json --work', '--work needs a value'],
  ['cut nowhere.json', 'nowhere.json'],
  ['plan sketch.json --cards 0', '--cards is "0"'],
  ['plan job.json', 'trimwell'],
  ['fold sketch.json', 'There is no command "fold"'],
  ['constructor x', 'There is no command'],
])('%s is refused in plain words', async (line, words) => {
  const { code, error } = await trimwell(line);
  expect(code).toBe(2);
  expect(error).toContain(words);
});

test('help names every command', async () => {
  const { out } = await trimwell('help');
  for (const name of ['plan', 'pieces', 'guides', 'cut']) expect(out).toContain(`trimwell ${name} `);
});

test('cut says where a cut stops, counts money where papers have prices, and speaks the unit of the job', async () => {
  const turning = (await trimwell('cut turning.json')).out;
  expect(turning).toContain('1 sheet (least money, proven by');
  expect(turning.match(/start at the (top|right|bottom|left) edge and stop after 7 in/g)).toHaveLength(4);
  const metric = (await trimwell('cut metric.json')).out;
  expect(metric).toContain('210 × 148 mm');
  expect(metric).not.toContain('≈');
});

test('--help after a command prints how it is used', async () => {
  expect(await trimwell('plan --help')).toMatchObject({
    code: 0,
    out: expect.stringContaining('trimwell plan SKETCH.json'),
  });
});
