import { checkPlan, mostSets, parseLength, planCuts, type Unit } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import data from '../data/cutting/worked-examples.json';
import { plainJob } from './plain-job.js';

/**
 * Published worked examples of "one sheet gives N pieces", collected as numbers (see the file's own note).
 * `bestEdgeToEdge` is the exact best with straight edge-to-edge cuts; what needs stopped cuts is not reached by those.
 */
const singles = data.examples.flatMap((example) =>
  typeof example.bestEdgeToEdge === 'number' && example.pieces[0]
    ? [{ ...example, best: example.bestEdgeToEdge, piece: example.pieces[0] }]
    : [],
);
const sets = data.examples.filter((example) => 'feasibleEdgeToEdge' in example);

function lengthIn(unit: string) {
  return (n: number) => parseLength(String(n), unit as Unit);
}

test.each(singles.map((example) => [example.id, example] as const))(
  '%s: one sheet gives the exact best number, and it is proven',
  (_id, { unit, sheet, piece, best, publishedCount, bestWithStoppedCuts }) => {
    const [w = 0, h = 0] = sheet;
    const job = plainJob({ w, h, sheets: 1 }, [{ ...piece, count: 1 }], true, lengthIn(unit));
    const plan = mostSets(job, { work: 200_000 });
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.sets).toBe(best);
    expect(plan.proof.mostSets).toBe(true);
    if ((publishedCount ?? 0) > best) expect(bestWithStoppedCuts).toBeGreaterThan(best);
  },
);

test.each(sets.map((example) => [example.id, example] as const))(
  '%s: a set fits its sheet, or does not',
  (_id, { unit, sheet, pieces, feasibleEdgeToEdge }) => {
    const [w = 0, h = 0] = sheet;
    const blanks = pieces.map((piece) => ({ ...piece, count: 'count' in piece ? Number(piece.count) : 1 }));
    const job = plainJob({ w, h, sheets: 1 }, blanks, true, lengthIn(unit));
    const plan = planCuts(job, { work: 200_000 });
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.complete).toBe(feasibleEdgeToEdge);
  },
);

/** `bestWithStoppedCuts` is the best that was found when a cut may stop inside the sheet; more would be new. */
test.each(singles.map((example) => [example.id, example] as const))(
  '%s: with stopped cuts one sheet gives at least as many as were found',
  (_id, { unit, sheet, piece, bestWithStoppedCuts }) => {
    const [w = 0, h = 0] = sheet;
    const plain = plainJob({ w, h, sheets: 1 }, [{ ...piece, count: 1 }], true, lengthIn(unit));
    const job = { ...plain, trimmer: { ...plain.trimmer, stoppedCuts: true } };
    const plan = mostSets(job, { work: 200_000 });
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.sets).toBe(bestWithStoppedCuts);
  },
);

test('the examples are all there', () => {
  expect([singles.length, sets.length]).toEqual([15, 3]);
});
