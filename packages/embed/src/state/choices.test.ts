import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Choices,
  isUnchosen,
  LONGEST_CHOICES,
  noChoices,
  readChoicesCode,
  styleOf,
  writeChoicesCode,
} from './choices.js';

const id = fc.stringMatching(/^[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,4})?$/);
const side = fc.integer({ min: 1, max: 1_280_000 });
const choices = fc.record(
  {
    trimwellChoices: fc.constant(1 as const),
    sketch: id,
    unit: fc.constantFrom('in' as const, 'mm' as const),
    form: fc.constantFrom('fraction' as const, 'decimal' as const),
    cards: fc.oneof(fc.integer({ min: 1, max: 500 }), fc.constant('as many as possible' as const)),
    on: fc.array(id, { maxLength: 4 }),
    papers: fc.array(
      fc.record({ paper: id, width: side, sheets: fc.option(fc.nat({ max: 999 })) }, { requiredKeys: ['paper'] }),
      { maxLength: 4 },
    ),
    scraps: fc.array(
      fc.record({
        name: fc.string({ minLength: 1, maxLength: 80, unit: 'grapheme' }).filter((name) => name.length <= 80),
        like: id,
        width: side,
        height: side,
        sheets: fc.integer({ min: 1, max: 9 }),
      }),
      { maxLength: 3 },
    ),
    from: fc.array(fc.record({ piece: id, from: id }), { maxLength: 3 }),
  },
  { requiredKeys: ['trimwellChoices', 'sketch'] },
);

test('what was chosen comes back from its code as it was', () => {
  fc.assert(
    fc.property(choices, (each) => {
      const reading = readChoicesCode(writeChoicesCode(each as Choices));
      expect(reading).toEqual({ ok: true, choices: each });
    }),
    { seed: 11, numRuns: 300 },
  );
});

test('any text is read or refused, and never thrown on', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.stringMatching(/^c[A-Za-z0-9_-]{0,80}$/)), (text) => {
      const reading = readChoicesCode(text);
      if (!reading.ok) expect(reading.problems[0]?.message).toMatch(/allowed/);
    }),
    { seed: 12, numRuns: 500 },
  );
});

test('a code that is too long is refused before it is unfolded', () => {
  const reading = readChoicesCode(`c${'A'.repeat(LONGEST_CHOICES)}`);
  expect(reading).toMatchObject({ ok: false, problems: [{ code: 'too-large' }] });
});

test.each([
  [{ trimwellChoices: 2, sketch: 'a' }],
  [{ trimwellChoices: 1, sketch: 'a', more: 1 }],
  [{ trimwellChoices: 1, sketch: 'a', cards: 501 }],
  [{ trimwellChoices: 1, sketch: 'a', cards: 1.5 }],
  [{ trimwellChoices: 1, sketch: 'a', papers: [{ paper: 'b', ground: 'red' }] }],
  [{ trimwellChoices: 1, sketch: 'a', papers: [{ paper: 'b', width: 1_280_001 }] }],
  [{ trimwellChoices: 1, sketch: 'a', scraps: [{ name: '', like: 'b', width: 1, height: 1, sheets: 1 }] }],
])('%j is refused', (value) => {
  expect(readChoicesCode(writeChoicesCode(value as Choices)).ok).toBe(false);
});

test('nothing chosen is told from something', () => {
  expect(isUnchosen(noChoices('a'))).toBe(true);
  expect(isUnchosen({ ...noChoices('a'), unit: 'mm' })).toBe(false);
});

test('sizes are in the unit that was chosen, else in the one of the sketch', () => {
  expect(styleOf(noChoices('a'), 'mm')).toEqual({ unit: 'mm', form: 'fraction' });
  expect(styleOf({ ...noChoices('a'), unit: 'in', form: 'decimal' }, 'mm')).toEqual({ unit: 'in', form: 'decimal' });
});
