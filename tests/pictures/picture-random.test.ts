import { type PictureSubject, writePicture } from '@trimwell/handout/picture';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { paintSvg } from '../handout/pictures.js';
import { quickPlan } from '../kit/quick-plan.js';
import { randomSketch } from '../kit/random-sketch.js';

const side = fc.integer({ min: 100, max: 1200 });

/** Every so many of the random pictures is drawn by librsvg, which is not the program that makes our PNG. */
const DRAWN = 20;

test('200 random sketches in every picture: finite numbers, and librsvg draws them at their size', () => {
  let count = 0;
  fc.assert(
    fc.property(randomSketch(16), side, side, fc.nat({ max: 60 }), (sketch, width, height, more) => {
      const plan = quickPlan(sketch);
      const subjects: PictureSubject[] = [{ of: 'card' }, { of: 'inside' }, { of: 'batch', cards: 1 + more }];
      if (plan.papers.some(({ plan: { sheets } }) => sheets.length > 0)) subjects.push({ of: 'guide', plan, sheet: 1 });
      const texts = subjects.map((subject) =>
        writePicture(sketch, subject, { size: { width, height }, title: sketch.title }),
      );
      for (const text of texts) expect(text.replaceAll(/>[^<]*</g, '><')).not.toMatch(/NaN|Infinity|undefined/);
      count += 1;
      const drawn = texts[count % texts.length];
      if (count % DRAWN !== 0 || drawn === undefined) return;
      const picture = paintSvg(drawn, 96);
      expect([picture.width, picture.height]).toEqual([width, height]);
    }),
    { numRuns: 200, seed: 20261126 },
  );
  expect(count).toBeGreaterThanOrEqual(200);
}, 300_000);
