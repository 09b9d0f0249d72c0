import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Heap } from './heap.js';

test('a heap gives what was put in, in order', () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), (items) => {
      const heap = new Heap<number>((a, b) => a - b);
      for (const item of items) heap.add(item);
      expect(heap.size).toBe(items.length);
      expect(heap.least).toBe([...items].sort((a, b) => a - b)[0]);
      expect(items.map(() => heap.take())).toEqual([...items].sort((a, b) => a - b));
      expect(heap.take()).toBeUndefined();
    }),
  );
});
