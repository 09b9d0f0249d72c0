import { staticSnippet } from '@trimwell/handout/embed';
import { readSketchText, type SketchReading } from '@trimwell/sketch';
import { readShareCode } from '@trimwell/sketch/share-code';
import { expect, test } from 'vitest';
import { type Hostile, hostileCorpus } from './hostile-corpus.js';

const corpus = hostileCorpus();

/** Most problems that a reading tells, and most characters of one: however large the document, what is said stays short. */
const MOST_PROBLEMS = 24;
const LONGEST_MESSAGE = 1_000;

function read({ by, text }: Hostile): SketchReading {
  return by === 'json' ? readSketchText(text) : readShareCode(text);
}

test('there are at least 300, all different, and the same each time', () => {
  expect(corpus.length).toBeGreaterThanOrEqual(300);
  expect(new Set(corpus.map(({ name, by }) => `${by} ${name}`)).size).toBe(corpus.length);
  expect(hostileCorpus()).toEqual(corpus);
});

test.each(corpus.map((each) => [`${each.by}: ${each.name}`, each] as const))('%s', (_, hostile) => {
  const reading = read(hostile);
  if (hostile.ends !== null) expect(reading.ok ? 'read' : 'refused').toBe(hostile.ends);
  expect(Reflect.get({}, 'polluted')).toBeUndefined();
  if (reading.ok) {
    // All text is text in what is handed on as well; sketches as large as can be are not drawn here.
    if (!hostile.large) expect(staticSnippet(reading.sketch)).not.toMatch(/<(script|img|style|iframe|!--)/i);
    return;
  }
  expect(reading.problems.length).toBeGreaterThan(0);
  expect(reading.problems.length).toBeLessThanOrEqual(MOST_PROBLEMS);
  for (const { message } of reading.problems) expect(message.length).toBeLessThanOrEqual(LONGEST_MESSAGE);
});
