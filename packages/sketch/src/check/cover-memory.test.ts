import { ticks } from '@trimwell/geometry';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { type Finding, SEVERITIES } from './finding.js';
import { checkSketch } from './findings.js';

const MARK = 1_016;

/** Pieces of every shape over each other, so many that a good part of them is hidden by several others. */
const strewn: fc.Arbitrary<Sketch> = fc
  .array(
    fc.record({
      shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
      x: fc.integer({ min: 2, max: 24 }),
      y: fc.integer({ min: 2, max: 30 }),
      width: fc.integer({ min: 8, max: 40 }),
      height: fc.integer({ min: 8, max: 50 }),
      tilt: fc.constantFrom(0, 0, 12, -7),
      radius: fc.constantFrom(0, 2),
    }),
    { minLength: 14, maxLength: 22, size: 'max' },
  )
  .map((wishes) => {
    const sketch = sampleSketch();
    const strip = sketch.pieces.find(({ id }) => id === 'strip') as Piece;
    const pieces = wishes.map(({ radius, x, y, width, height, ...rest }, at): Piece => {
      const r = ticks(radius * MARK);
      return {
        ...strip,
        ...rest,
        id: `strewn-${at}`,
        punched: {},
        x: ticks(x * MARK),
        y: ticks(y * MARK),
        width: ticks(width * MARK),
        height: ticks(height * MARK),
        corners: { tl: r, tr: r, br: r, bl: r },
      };
    });
    return { ...sketch, pieces, variations: [], batch: { ...sketch.batch, contrast: [] } };
  });

const key = ({ code, piece, edge }: Finding): string => `${code} ${piece} ${edge ?? ''}`;
const rank = ({ severity }: Finding): number => SEVERITIES.indexOf(severity);

test('what is remembered while fixes are tried changes no answer: a fix holds when all is looked at anew', () => {
  let hidden = 0;
  fc.assert(
    fc.property(strewn, (sketch) => {
      const findings = checkSketch(sketch);
      expect(checkSketch(structuredClone(sketch))).toEqual(findings);
      const before = new Set(findings.map(key));
      for (const finding of findings) {
        if (finding.code !== 'hidden' || finding.fix.length === 0) continue;
        hidden += 1;
        const after = checkSketch(structuredClone(applyEdits(sketch, finding.fix)));
        expect(after.map(key)).not.toContain(key(finding));
        expect(after.filter((other) => !before.has(key(other)) && rank(other) <= rank(finding))).toEqual([]);
      }
    }),
    { numRuns: 12, seed: 31 },
  );
  expect(hidden).toBeGreaterThan(10);
});
