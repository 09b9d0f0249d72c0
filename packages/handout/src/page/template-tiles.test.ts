import { millimetres } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tile } from './template-tiles.js';

const overlap = millimetres(10);
const side = fc.integer({ min: 1, max: 2000 }).map((mm) => millimetres(mm));
const room = fc.integer({ min: 150, max: 260 }).map((mm) => millimetres(mm));

test('tiles cover the whole, neighbours share 10 mm, and none is larger than its page', () => {
  fc.assert(
    fc.property(side, side, room, room, (width, height, across, down) => {
      const { boxes, columns, rows } = tile({ width, height }, { width: across, height: down });
      expect(boxes).toHaveLength(columns * rows);
      for (const box of boxes) {
        expect(box.width).toBeLessThanOrEqual(across);
        expect(box.height).toBeLessThanOrEqual(down);
        const right = boxes.find(({ row, column }) => row === box.row && column === box.column + 1);
        expect(right ? box.x + box.width - right.x : overlap).toBe(overlap);
        const below = boxes.find(({ row, column }) => row === box.row + 1 && column === box.column);
        expect(below ? box.y + box.height - below.y : overlap).toBe(overlap);
      }
      expect(Math.max(...boxes.map((box) => box.x + box.width))).toBe(width);
      expect(Math.max(...boxes.map((box) => box.y + box.height))).toBe(height);
      expect(boxes[0]).toMatchObject({ x: 0, y: 0 });
    }),
  );
});

test('every cross lies in at least two tiles, so that one can be laid on the other', () => {
  fc.assert(
    fc.property(side, side, (width, height) => {
      const { boxes, crosses } = tile({ width, height }, { width: millimetres(170), height: millimetres(230) });
      expect(crosses.length > 0).toBe(boxes.length > 1);
      for (const { x, y } of crosses) {
        const seen = boxes.filter(
          (box) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height,
        );
        expect(seen.length).toBeGreaterThan(1);
      }
    }),
  );
});
