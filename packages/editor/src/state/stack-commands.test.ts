import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { glueOver, markPiece } from './stack-commands.js';
import { openState } from './state.js';

const state = openState(sampleSketch());
const order = (after: typeof state): string => after.sketch.pieces.map(({ id }) => id).join(' ');

test('a piece is glued right over another, or first of all', () => {
  expect(order(expectTransaction(state, glueOver(['panel'], 'strip')))).toBe('panel-mat strip panel greeting liner');
  expect(order(expectTransaction(state, glueOver(['greeting'], null)))).toBe('greeting panel-mat panel strip liner');
  expect(order(expectTransaction(state, glueOver(['greeting'], 'panel')))).toBe('panel-mat panel greeting strip liner');
});

test('several keep their order among each other, and are taken', () => {
  const after = expectTransaction(state, glueOver(['strip', 'panel-mat'], 'greeting'));
  expect(order(after)).toBe('panel greeting panel-mat strip liner');
  expect(after.selection).toEqual(['panel-mat', 'strip']);
  expect(order(expectTransaction(state, glueOver(['greeting', 'panel'], null)))).toBe(
    'panel greeting panel-mat strip liner',
  );
});

test('what lies there already, lies on another face, or is locked stays', () => {
  expectRefused(state, glueOver(['strip'], 'panel'));
  expectRefused(state, glueOver(['panel-mat'], null));
  expectRefused(state, glueOver(['strip'], 'strip'));
  expectRefused(state, glueOver(['strip'], 'liner'));
  expectRefused(state, glueOver(['strip', 'liner'], null));
  expectRefused(state, glueOver(['nothing'], null));
  const locked = expectTransaction(state, markPiece('strip', 'locked', true));
  expectRefused(locked, glueOver(['strip'], 'greeting'));
  expect(order(expectTransaction(locked, glueOver(['panel'], 'strip')))).toBe('panel-mat strip panel greeting liner');
});

test('what is glued over another is taken on its own face, which is then shown', () => {
  const inside = { ...state, face: 'inside' } as const;
  const after = expectTransaction(inside, glueOver(['panel'], 'strip'));
  expect([after.face, after.selection]).toEqual(['front', ['panel']]);
});

test('a piece is locked and freed, hidden and shown, alone', () => {
  const locked = expectTransaction(state, markPiece('strip', 'locked', true));
  expect(locked.sketch.pieces.filter((piece) => piece.locked).map(({ id }) => id)).toEqual(['strip']);
  expectRefused(locked, markPiece('strip', 'locked', true));
  expect(expectTransaction(locked, markPiece('strip', 'locked', false)).sketch.pieces[2]?.locked).toBe(false);
  expect(expectTransaction(state, markPiece('panel', 'hidden', true)).sketch.pieces[1]?.hidden).toBe(true);
  expectRefused(state, markPiece('panel', 'hidden', false));
});

test('whatever is glued over whatever, it comes to lie right over it, and nothing else changes its order', () => {
  const front = ['panel-mat', 'panel', 'strip', 'greeting'];
  fc.assert(
    fc.property(fc.subarray(front, { minLength: 1 }), fc.constantFrom(null, ...front), (ids, over) => {
      const made: { order: string } = { order: order(state) };
      const applies = glueOver(ids, over)(state, () => {});
      if (applies) made.order = order(expectTransaction(state, glueOver(ids, over)));
      const after = made.order.split(' ');
      expect(after.filter((id) => !ids.includes(id))).toEqual(
        order(state)
          .split(' ')
          .filter((id) => !ids.includes(id)),
      );
      if (over === null || !ids.includes(over)) {
        const start = over === null ? 0 : after.indexOf(over) + 1;
        expect(after.slice(start, start + ids.length)).toEqual(front.filter((id) => ids.includes(id)));
      }
    }),
  );
});
