import { writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { steps } from './steps.js';

const readText = async (): Promise<string> => writeSketchText(sampleSketch());
const run = (line: string) => steps(line.split(' '), readText);

test('steps prints the cuts in order as text, with the caution', async () => {
  const { code, out, error } = await run('sketch.json --cards 6');
  expect([code, error]).toEqual([0, '']);
  expect(out).toContain('steps at the trimmer for 6 cards');
  expect(out).toContain('Blades:');
  expect(out).toMatch(/ {2}1\. Set the guide to .* in\. Cut sheet 1/);
});

test('steps prints a document with --json, the same for the same work', async () => {
  const { code, out } = await run('sketch.json --cards 4 --stack 3 --work 5000 --json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ trimwellSteps: 1, cards: 4, stack: 3, complete: true });
  expect(await run('sketch.json --cards 4 --stack 3 --work 5000 --json')).toMatchObject({ out });
});

test.each([
  ['sketch.json --stack 0', '--stack is "0"'],
  ['sketch.json --stack 21', 'from 1 to 20'],
  ['sketch.json --cards most', 'No paper of this sketch is limited'],
  ['sketch.json --cards 501', '--cards is "501"'],
  ['sketch.json other.json', 'Name one sketch'],
])('%s is refused in plain words', async (line, words) => {
  await expect(run(line)).rejects.toThrow(words);
});

test('a broken sketch ends with 2 and says where', async () => {
  const outcome = await steps(['sketch.json'], async () => '{"trimwell": 1}');
  expect(outcome).toMatchObject({ code: 2, out: '' });
  expect(outcome.error).toContain('sketch.json: ');
});
