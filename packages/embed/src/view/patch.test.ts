import { expect, test } from 'vitest';
import { make, part } from './part.js';
import { patch } from './patch.js';

test('what is there already and alike stays, with its focus', () => {
  const place = document.createElement('div');
  document.body.append(place);
  patch(place, [part('p', {}, 'one'), part('input', { key: 'field', value: 'a' })]);
  const field = place.querySelector('input');
  field?.focus();
  patch(place, [part('p', {}, 'two'), part('p', { key: 'new' }, 'more'), part('input', { key: 'field', value: 'b' })]);
  expect(place.querySelector('input')).toBe(field);
  expect(document.activeElement).toBe(field);
  expect(place.innerHTML).toBe('<p>two</p><p>more</p><input value="b">');
});

test('parts with keys keep their elements where their places change', () => {
  const place = document.createElement('ul');
  patch(
    place,
    ['a', 'b', 'c'].map((key) => part('li', { key }, key)),
  );
  const [a, b, c] = place.children;
  patch(
    place,
    ['c', 'a'].map((key) => part('li', { key }, key)),
  );
  expect([...place.children]).toEqual([c, a]);
  expect(b?.parentNode).toBeNull();
});

test('text is text', () => {
  const place = document.createElement('div');
  patch(place, ['<img src=x onerror=alert(1)>', part('b', { title: '"><script>' }, '<script>')]);
  expect(place.querySelector('img, script')).toBeNull();
  const made = document.createElement('div');
  made.append(...make([part('b', { title: '"><script>' }, '<script>')]));
  expect(made.querySelector('script')).toBeNull();
  expect(made.textContent).toBe('<script>');
});

test('a listener is the newest one, once; attributes and properties go and come', () => {
  const place = document.createElement('div');
  const heard: number[] = [];
  for (const number of [1, 2, 3])
    patch(place, [part('button', { onclick: () => heard.push(number), disabled: number < 3 })]);
  place.querySelector('button')?.click();
  expect(heard).toEqual([3]);
  patch(place, [part('button', { 'aria-label': 'x' })]);
  place.querySelector('button')?.click();
  expect(heard).toEqual([3]);
  patch(place, [part('button', { 'aria-label': null }), part('input', { type: 'checkbox', '.checked': true })]);
  expect(place.querySelector('button')?.hasAttribute('aria-label')).toBe(false);
  expect(place.querySelector('input')?.checked).toBe(true);
});

test('an element stands there as it is', () => {
  const place = document.createElement('div');
  const picture = document.createElement('img');
  patch(place, [null, false, [picture], 'text']);
  patch(place, ['before', picture]);
  expect([...place.childNodes].at(-1)).toBe(picture);
});
