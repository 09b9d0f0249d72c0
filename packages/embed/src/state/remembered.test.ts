import { expect, test } from 'vitest';
import { noChoices } from './choices.js';
import { NOTHING_REMEMBERED, readRemembered, writeRemembered } from './remembered.js';

test('what is kept comes back', () => {
  const remembered = { choices: { ...noChoices('a'), cards: 3 }, done: { of: 'x1', steps: [0, 4] } } as const;
  expect(readRemembered(writeRemembered(remembered))).toEqual(remembered);
});

test.each([null, '', '{', '1', 'null', '[]', '{"choices":5,"done":{"of":1}}', '{"done":{"of":"a","steps":[-1]}}'])(
  '%j counts as nothing',
  (text) => {
    expect(readRemembered(text)).toEqual(NOTHING_REMEMBERED);
  },
);
