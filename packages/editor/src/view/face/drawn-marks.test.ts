import { expect, test } from 'vitest';
import { DrawnMarks } from './drawn-marks.js';

function room() {
  const group = document.createElementNS('http://www.w3.org/2000/svg', 'g');
  const marks = new DrawnMarks(group);
  const draw = (...all: readonly (readonly [string, Record<string, string>, string?])[]) => {
    marks.begin();
    for (const [tag, attributes, text] of all) marks.draw(tag, attributes, text);
    marks.end();
    return [...group.children];
  };
  return { group, draw };
}

test('what is drawn again is the same element with other attributes', () => {
  const { draw } = room();
  const before = draw(['path', { d: 'M0 0', class: 'a' }], ['text', { x: '1' }, 'one']);
  const after = draw(['path', { d: 'M1 1' }], ['text', { x: '2' }, 'two']);
  expect(after).toEqual(before);
  expect(after.map((node) => node.outerHTML)).toEqual(['<path d="M1 1"></path>', '<text x="2">two</text>']);
});

test('what is no longer drawn goes away, what is new comes in its order', () => {
  const { draw } = room();
  const [path] = draw(['path', { d: 'M0 0' }], ['text', { x: '1' }, 'one']);
  const tags = (nodes: readonly Element[]) => nodes.map(({ tagName }) => tagName);
  const more = draw(['path', { d: 'M0 0' }], ['rect', { x: '0' }], ['path', { d: 'M2 2' }], ['text', {}, 'two']);
  expect(tags(more)).toEqual(['path', 'rect', 'path', 'text']);
  expect(more[0]).toBe(path);
  expect(tags(draw(['text', {}, 'three']))).toEqual(['text']);
  expect(draw()).toEqual([]);
});
