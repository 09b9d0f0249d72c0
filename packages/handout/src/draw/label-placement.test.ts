import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placedBox, placeFarLabels, placeLabel, spreadApart } from './label-placement.js';

const places = fc
  .array(fc.integer({ min: -200, max: 1200 }), { minLength: 1, maxLength: 40 })
  .map((all) => all.sort((a, b) => a - b));

test('places are spread apart in their order, inside their room where there is room for all', () => {
  fc.assert(
    fc.property(places, fc.integer({ min: 1, max: 60 }), (wanted, pitch) => {
      const spread = spreadApart(wanted, pitch, 0, 1000);
      expect(spread).toHaveLength(wanted.length);
      for (let index = 1; index < spread.length; index += 1) {
        expect((spread[index] ?? 0) - (spread[index - 1] ?? 0)).toBeGreaterThanOrEqual(pitch - 1e-6);
      }
      expect(spread[0]).toBeGreaterThanOrEqual(0);
      if ((wanted.length - 1) * pitch <= 1000) expect(spread.at(-1)).toBeLessThanOrEqual(1000 + 1e-6);
    }),
  );
});

test('places that are far enough apart stay where they are; two in one place share the way', () => {
  expect(spreadApart([100, 300, 900], 50, 0, 1000)).toEqual([100, 300, 900]);
  expect(spreadApart([500, 500], 50, 0, 1000)).toEqual([475, 525]);
  expect(spreadApart([0, 0, 990], 50, 0, 1000)).toEqual([0, 50, 990]);
});

test('labels outside are clear of the sheet and of each other, with a leader to their part', () => {
  const part = fc.record({
    x: fc.integer({ min: 0, max: 990 }),
    y: fc.integer({ min: 0, max: 990 }),
    width: fc.integer({ min: 1, max: 10 }),
    height: fc.integer({ min: 1, max: 10 }),
  });
  const sheet = { x: 0, y: 0, width: 1000, height: 1000 };
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 40 }), (boxes) => {
      const parts = boxes.map((box, index) => ({ key: `part${index}`, text: `A  ${index} × 12`, box }));
      const labels = placeFarLabels(parts, sheet, 30);
      const drawn = labels.map(({ text }) => placedBox(text)).sort((a, b) => a.y - b.y);
      expect(drawn).toHaveLength(boxes.length);
      for (const [index, box] of drawn.entries()) {
        expect(box.x).toBeGreaterThan(sheet.width);
        const next = drawn[index + 1];
        if (next) expect(next.y).toBeGreaterThanOrEqual(box.y + box.height - 1e-6);
      }
      for (const { key, to } of labels) {
        const own = parts.find((each) => each.key === key)?.box;
        expect(own && to.x >= own.x && to.x <= own.x + own.width && to.y >= own.y && to.y <= own.y + own.height).toBe(
          true,
        );
      }
    }),
  );
});

test('a leader ends where no text of the sheet is in its way', () => {
  const box = { x: 100, y: 0, width: 4, height: 1000 };
  const taken = [{ x: 400, y: 380, width: 200, height: 240 }];
  const [label] = placeFarLabels(
    [{ key: 'strip', text: 'E', box }],
    { x: 0, y: 0, width: 1000, height: 1000 },
    30,
    taken,
  );
  expect(label?.to.y).toBe(300);
});

test('a letter is no smaller than the least share, else it goes outside', () => {
  const label = { letter: 'A', figure: '1 × 12' };
  const box = { x: 0, y: 0, width: 60, height: 1000 };
  expect(placeLabel(label, { ...box, width: 40, height: 40 }, 100)).toHaveLength(1);
  expect(placeLabel(label, { ...box, width: 40, height: 40 }, 100, 0.65)).toEqual([]);
});
