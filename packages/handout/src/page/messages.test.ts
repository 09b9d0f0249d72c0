import { expect, test } from 'vitest';
import { MESSAGES } from './messages.js';

/** Every message by its path: a text, or a function by how many things it is told. */
function paths(record: object, at = ''): readonly (readonly [path: string, value: unknown])[] {
  return Object.entries(record).flatMap(([key, value]) =>
    typeof value === 'object' && value !== null ? paths(value, `${at}${key}.`) : [[`${at}${key}`, value] as const],
  );
}

test('both languages have the same messages, each told as much', () => {
  const [english, german] = [paths(MESSAGES.en), paths(MESSAGES.de)];
  expect(german.map(([path]) => path)).toEqual(english.map(([path]) => path));
  const told = (value: unknown): number => (typeof value === 'function' ? value.length : -1);
  expect(german.map(([, value]) => told(value))).toEqual(english.map(([, value]) => told(value)));
});

test('nothing is left in English', () => {
  const german = new Map(paths(MESSAGES.de));
  const same = paths(MESSAGES.en).filter(([path, value]) => typeof value === 'string' && german.get(path) === value);
  // Millimetres are the same everywhere.
  expect(same.map(([path]) => path)).toEqual(['templates.fiftyMillimetres']);
});
