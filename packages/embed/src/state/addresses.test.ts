import { expect, test } from 'vitest';
import { linkWithChoices } from './choices-link.js';
import { choicesInFragment } from './fragment.js';
import { frameCode, parentOrigin } from './frame-address.js';

test('choices stand behind other parts of a fragment, and are found again', () => {
  expect(choicesInFragment('#part&trimwell=cABC')).toBe('cABC');
  expect(choicesInFragment('#part')).toBeNull();
  expect(linkWithChoices('https://example.org/a?b#part&trimwell=old', 'new')).toBe(
    'https://example.org/a?b#part&trimwell=new',
  );
  expect(choicesInFragment(new URL(linkWithChoices('https://example.org/', 'cX')).hash)).toBe('cX');
});

test('a frame’s code ends where choices begin', () => {
  expect(frameCode('#aBC_-1&trimwell=c1')).toBe('aBC_-1');
  expect(frameCode('')).toBe('');
});

test('heights are told to a web origin and never to everybody', () => {
  expect(parentOrigin('https://example.org/page?x', 'https://other.example/')).toBe('https://example.org');
  expect(parentOrigin(null, 'https://other.example/page')).toBe('https://other.example');
  for (const asked of ['*', 'null', 'javascript:alert(1)', 'data:text/html,x', ''])
    expect(parentOrigin(asked, 'https://other.example/')).toBeNull();
  expect(parentOrigin(null, '')).toBeNull();
});
