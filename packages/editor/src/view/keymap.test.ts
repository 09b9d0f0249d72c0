import { expect, test } from 'vitest';
import { bindingOf, KEYMAP, keyName } from './keymap.js';

const bare = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };

test('a key names itself with its modifiers, once', () => {
  expect(keyName({ ...bare, key: 'ArrowLeft', shiftKey: true, ctrlKey: true })).toBe('Mod+Shift+ArrowLeft');
  expect(keyName({ ...bare, key: 'Z', shiftKey: true, metaKey: true })).toBe('Mod+Shift+z');
  expect(keyName({ ...bare, key: '{', shiftKey: true })).toBe('{');
  expect(keyName({ ...bare, key: 'Shift', shiftKey: true })).toBe('');
});

test('a bracket that is typed with AltGr is a bracket; a letter with Control and Alt is none', () => {
  const altGraph = { getModifierState: (modifier: string) => modifier === 'AltGraph' };
  expect(bindingOf({ ...bare, ...altGraph, key: '[' })?.label).toBe('Tilt to the left by one degree');
  for (const key of ['[', ']', '{', '}']) expect(keyName({ ...bare, key, ctrlKey: true, altKey: true })).toBe(key);
  expect(keyName({ ...bare, key: 'AltGraph', ctrlKey: true, altKey: true })).toBe('');
  expect(keyName({ ...bare, key: 'm', ctrlKey: true, altKey: true })).toBe('Mod+Alt+m');
  expect(keyName({ ...bare, key: '[', altKey: true })).toBe('Alt+[');
});

test('no key does two things, and each row is found by its keys', () => {
  const keys = KEYMAP.flatMap((row) => row.keys);
  expect(new Set(keys).size).toBe(keys.length);
  expect(bindingOf({ ...bare, key: 'd', ctrlKey: true })?.label).toBe('Cut the same piece again');
  expect(bindingOf({ ...bare, key: 'd', altKey: true })).toBeNull();
  expect(bindingOf({ ...bare, key: ']' })?.held).toBe(true);
});
