import { expect, test } from 'vitest';
import { noChoices } from '../../state/choices.js';
import { withoutScrap } from './scraps.js';

const scrap = (name: string) => ({ name, like: 'ivory', width: 1, height: 1, sheets: 1 });

test('those behind a scrap that is taken away move up, and what was cut from it goes back to its paper', () => {
  const choices = {
    ...noChoices('a'),
    scraps: [scrap('one'), scrap('two'), scrap('three')],
    from: [
      { piece: 'p', from: 'scrap:1' },
      { piece: 'q', from: 'scrap:2' },
      { piece: 'r', from: 'scrap:3' },
      { piece: 's', from: 'moss' },
    ],
  };
  expect(withoutScrap(choices, 1)).toEqual({
    scraps: [scrap('one'), scrap('three')],
    from: [
      { piece: 'p', from: 'scrap:1' },
      { piece: 'r', from: 'scrap:2' },
      { piece: 's', from: 'moss' },
    ],
  });
});
