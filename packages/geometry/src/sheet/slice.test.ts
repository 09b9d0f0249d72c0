import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CutNode, eachLeaf } from '../cut/cut-tree.js';
import type { Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { rect } from '../rect/rect.js';
import { insertAt, SpotSearch } from './insert-slice.js';
import { realise } from './realise.js';
import { countLeaves, countsOf, cutSlice, leafSlice, pinwheelSlice, type Slice, without } from './slice.js';

const FREE: Trimmer = {
  bladeLength: null,
  narrowestStrip: ticks(0),
  thinnestTrim: ticks(0),
  kerf: ticks(0),
  rulerStep: null,
  stoppedCuts: true,
};

const side = fc.integer({ min: 1, max: 9 });
const { slice } = fc.letrec<{ slice: Slice; leaf: Slice; group: Slice; pinwheel: Slice }>((tie) => ({
  leaf: fc.tuple(fc.nat({ max: 3 }), side, side).map(([kind, w, h]) => leafSlice(kind, false, w, h)),
  group: fc
    .tuple(fc.boolean(), fc.array(tie('slice'), { minLength: 1, maxLength: 4 }))
    .map(([vertical, parts]) => cutSlice(vertical, parts)),
  pinwheel: fc
    .tuple(fc.array(fc.option(tie('slice'), { freq: 4, nil: null }), { minLength: 5, maxLength: 5 }), tie('leaf'))
    .map(([arms, spare]) => pinwheelSlice(arms) ?? spare),
  slice: fc.oneof({ depthSize: 'small', withCrossShrink: true }, tie('leaf'), tie('group'), tie('pinwheel')),
}));

/** Leaves of a tree, as `kind w h`, in order of text. */
function leavesOf(node: CutNode, width: number, height: number): string[] {
  const found: string[] = [];
  eachLeaf(node, rect(ticks(0), ticks(0), ticks(width), ticks(height)), ticks(0), (leaf, box) => {
    if (leaf.is === 'blank') found.push(`${leaf.blank} ${box.width} ${box.height}`);
  });
  return found.sort();
}

function blanksOf(group: Slice): string[] {
  return group.kind >= 0 ? [`${group.kind} ${group.w} ${group.h}`] : group.parts.flatMap(blanksOf).sort();
}

test('a group is cut out of its least size, and of anything larger, blank for blank', () => {
  fc.assert(
    fc.property(slice, fc.nat({ max: 5 }), fc.nat({ max: 5 }), (group, more, higher) => {
      const tree = realise(FREE, group, group.w + more, group.h + higher);
      expect(tree).not.toBeNull();
      if (tree) expect(leavesOf(tree, group.w + more, group.h + higher)).toEqual(blanksOf(group).sort());
      expect(realise(FREE, group, group.w - 1, group.h)).toBeNull();
      expect(realise(FREE, group, group.w, group.h - 1)).toBeNull();
    }),
    { numRuns: 1_000 },
  );
});

test('a group never needs more than its parts, and covers what they cover', () => {
  fc.assert(
    fc.property(slice, fc.nat(), (group, which) => {
      expect(group.area).toBe(
        blanksOf(group).reduce((sum, text) => sum + Number(text.split(' ')[1]) * Number(text.split(' ')[2]), 0),
      );
      const all = countLeaves(group);
      let at = 0;
      const less = without(group, () => at++ !== which % all);
      expect(less === null).toBe(all === 1);
      if (!less) return;
      expect(countLeaves(less)).toBe(all - 1);
      expect([less.w <= group.w, less.h <= group.h]).toEqual([true, true]);
      expect(without(group, () => true)).toBe(group);
    }),
    { numRuns: 1_000 },
  );
});

test('a blank is joined where it fits the sheet, and the least waste is what the sheet then wastes more', () => {
  fc.assert(
    fc.property(slice, side, side, fc.nat({ max: 8 }), fc.nat({ max: 8 }), (group, w, h, wide, high) => {
      const [width, height] = [group.w + wide, group.h + high];
      const search = new SpotSearch(0, () => 0.5);
      search.start(Number.POSITIVE_INFINITY);
      const found = search.look(group, width, height, [{ turned: false, w, h }]);
      const spot = search.best;
      expect(found).toBe(spot !== null);
      // Beside or below all of it there is room: then a place is found.
      if ((w <= wide && h <= height) || (h <= high && w <= width)) expect(found).toBe(true);
      if (!spot) return;
      const joined = insertAt(group, spot, 3);
      expect([joined.w <= width, joined.h <= height]).toEqual([true, true]);
      const before = countsOf(group, 4);
      expect(countsOf(joined, 4)).toEqual(before.map((count, kind) => (kind === 3 ? count + 1 : count)));
      expect(joined.area).toBe(group.area + w * h);
      if (joined.w !== group.w || joined.h !== group.h)
        expect(spot.waste).toBe(joined.w * joined.h - group.w * group.h - w * h);
    }),
    { numRuns: 1_000 },
  );
});

/** The cuts of a tree that a trimmer cannot make, each as text; see `PinwheelNode` for the four of a pinwheel. */
function brokenRules(rules: Trimmer, node: CutNode, w: number, h: number): string[] {
  const cut = (across: number, at: number, along: number): string[] => {
    const thin = Math.min(at, across - at);
    const allowed =
      thin > 0 &&
      along <= (rules.bladeLength ?? along) &&
      Math.max(at, across - at) >= rules.narrowestStrip &&
      thin >= rules.thinnestTrim &&
      at % (rules.rulerStep ?? 1) === 0;
    return allowed ? [] : [`${at} of ${across}, ${along} long`];
  };
  if (node.is === 'cut') {
    const vertical = node.direction === 'vertical';
    return vertical
      ? [
          ...cut(w, node.at, h),
          ...brokenRules(rules, node.first, node.at, h),
          ...brokenRules(rules, node.second, w - node.at, h),
        ]
      : [
          ...cut(h, node.at, w),
          ...brokenRules(rules, node.first, w, node.at),
          ...brokenRules(rules, node.second, w, h - node.at),
        ];
  }
  if (node.is !== 'pinwheel') return [];
  const { x1, x2, y1, y2, top, right, bottom, left, centre } = node;
  return [
    ...[...cut(h, y1, x2), ...cut(w, x2, y2), ...cut(h, y2, w - x1), ...cut(w, x1, h - y1)],
    ...brokenRules(rules, top, x2, y1),
    ...brokenRules(rules, right, w - x2, y2),
    ...brokenRules(rules, bottom, w - x1, h - y2),
    ...brokenRules(rules, left, x1, h - y1),
    ...brokenRules(rules, centre, x2 - x1, y2 - y1),
  ];
}

test('what is realised obeys every rule of the trimmer, pinwheels too', () => {
  const rules = fc.record({
    bladeLength: fc.option(fc.integer({ min: 4, max: 24 }).map(ticks), { nil: null }),
    narrowestStrip: fc.integer({ min: 0, max: 5 }).map(ticks),
    thinnestTrim: fc.integer({ min: 0, max: 2 }).map(ticks),
    rulerStep: fc.option(fc.integer({ min: 1, max: 2 }).map(ticks), { nil: null }),
  });
  const kinds = { realised: 0, pinwheels: 0 };
  fc.assert(
    fc.property(slice, rules, fc.nat({ max: 3 }), fc.nat({ max: 3 }), (group, some, more, higher) => {
      const trimmer: Trimmer = { ...FREE, ...some };
      const tree = realise(trimmer, group, group.w + more, group.h + higher);
      if (!tree) return;
      kinds.realised += 1;
      if (JSON.stringify(tree).includes('pinwheel')) kinds.pinwheels += 1;
      expect(brokenRules(trimmer, tree, group.w + more, group.h + higher)).toEqual([]);
    }),
    { numRuns: 4_000 },
  );
  expect(kinds.realised).toBeGreaterThan(500);
  expect(kinds.pinwheels).toBeGreaterThan(30);
});
