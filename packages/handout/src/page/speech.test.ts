import { inches, millimetres, rect } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { speechIn } from './speech.js';
import { plainSpaces } from './wrap.js';

test('lengths are inches in fractions or millimetres, with the decimal sign of the language', () => {
  const said = (
    language: 'en' | 'de',
    unit: 'in' | 'mm',
    length: Parameters<ReturnType<typeof speechIn>['length']>[0],
  ) => plainSpaces(speechIn(language, unit).length(length));
  expect(said('en', 'in', inches(4.25))).toBe('4 1⁄4 in');
  expect(said('de', 'in', inches(4.25))).toBe('4 1⁄4 Zoll');
  expect(said('en', 'mm', millimetres(148.5))).toBe('148.5 mm');
  expect(said('de', 'mm', millimetres(148.5))).toBe('148,5 mm');
  const size = rect(0, 0, inches(3.75), inches(5));
  expect(plainSpaces(speechIn('de', 'in').size(size))).toBe('3 3⁄4 × 5 Zoll');
  expect(speechIn('de', 'mm').bareSize(size)).toBe('95,25 × 127');
});

test('days and lists are those of the language', () => {
  expect(speechIn('en', 'in').day('2026-11-26')).toBe('November 26, 2026');
  expect(speechIn('de', 'mm').day('2026-03-01')).toBe('1. März 2026');
  expect(speechIn('en', 'in').list(['A', 'B', 'C'])).toBe('A, B, and C');
  expect(speechIn('de', 'in').list(['A', 'B', 'C'])).toBe('A, B und C');
});

test.each(['2026-02-30', '26.11.2026', '', '2026-1-1'])('%s is no day', (day) => {
  expect(() => speechIn('en', 'in').day(day)).toThrow('allowed: a day as YYYY-MM-DD');
});
