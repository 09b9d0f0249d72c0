import { readSketch, type Sketch, writeSketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { applyChoices } from '../../packages/embed/src/state/apply-choices.js';
import { readChoicesCode } from '../../packages/embed/src/state/choices.js';
import { sampleSketch } from '../kit/sample-sketch.js';
import { hostileChoices } from './hostile-choices.js';

const codes = hostileChoices();

/** True for a sketch that the one door into the program lets in. */
function isSound(sketch: Sketch): boolean {
  return readSketch(JSON.parse(JSON.stringify(writeSketch(sketch)))).ok;
}

test('there are at least a hundred, and the same each time', () => {
  expect(codes.length).toBeGreaterThanOrEqual(100);
  expect(hostileChoices()).toEqual(codes);
});

test.each(codes.map((each) => [each.name, each] as const))('%s', (_, { code, ends }) => {
  const reading = readChoicesCode(code);
  if (ends !== null) expect(reading.ok ? 'read' : 'refused').toBe(ends);
  expect(Reflect.get({}, 'polluted')).toBeUndefined();
  if (!reading.ok) {
    for (const { message } of reading.problems) expect(message.length).toBeLessThan(1_000);
    return;
  }
  const before = sampleSketch();
  const { sketch } = applyChoices(before, reading.choices);
  // Whatever was chosen, what comes out is a sketch, and the designer's own has not changed.
  expect(isSound(sketch)).toBe(true);
  expect(before).toEqual(sampleSketch());
});
