import { expect, test } from 'vitest';
import type { CutNode, SplitNode } from '../cut/cut-tree.js';
import type { CutPlan, SheetLayout } from '../cut/plan.js';
import { inches, type Length, ticks } from '../length/length.js';
import { type StepOptions, stepList } from './step-list.js';
import type { CutAction, StepList } from './trim-step.js';

const NOTHING = ticks(0);
const OFFCUT: CutNode = { is: 'offcut' };

function blank(id: string, turned = false): CutNode {
  return { is: 'blank', blank: id, turned };
}

function cut(direction: SplitNode['direction'], at: number, first: CutNode, second: CutNode): CutNode {
  return { is: 'cut', direction, at: inches(at), first, second };
}

function sheet(tree: CutNode, { width = 12, height = 12, copies = 1, margin = 0 } = {}): SheetLayout {
  const [x, y] = [inches(margin), inches(margin)];
  const usable = { x, y, width: inches(width - 2 * margin), height: inches(height - 2 * margin) };
  return { paper: 'a', copies, width: inches(width), height: inches(height), usable, tree };
}

function stepsOf(sheets: readonly SheetLayout[], options?: StepOptions): StepList {
  const counts = { sheets: 0, layouts: sheets.length, settings: 0, cuts: 0 };
  const proof = { lowerBound: 0, fewestSheets: false, by: 'nothing', mostSets: null };
  const plan: CutPlan = { sets: 1, complete: true, sheets, unmade: [], proof, counts, largestOffcut: null, work: 0 };
  return stepList(plan, { kerf: NOTHING }, options);
}

/** A cut in a few words: what is cut where and how often, and what comes of it. */
function brief(step: StepList['steps'][number]): string {
  const told = (length: Length): number => length / inches(1);
  const copies = step.pieces / step.places.length;
  const gives = step.gives.map(
    ({ fate, places }) =>
      `${places.length * copies} ${fate.is === 'blank' ? fate.blank : fate.is === 'part' ? `part ${fate.part}` : fate.keep ? 'kept' : 'scrap'}`,
  );
  const at = step.do === 'cut' ? ` ${step.times} x ${step.direction} ${told(step.setting)}` : '';
  const flags = step.do === 'cut' ? `${step.set ? 'set ' : ''}${step.turn ? 'turn ' : ''}` : '';
  return `${flags}${step.do} ${step.pieces} in ${step.stacks}${at}: ${gives.join(', ')}`;
}

/** Three strips of 4 x 12, each three blanks of 4 x 4: nine squares from a sheet of 12 x 12. */
const row = cut('horizontal', 4, blank('square'), cut('horizontal', 4, blank('square'), blank('square')));
const nine = cut('vertical', 4, row, cut('vertical', 4, row, row));

test('like strips are said once with their number, and are cut on together in stacks', () => {
  const list = stepsOf([sheet(nine, { copies: 3 })]);
  expect(list.steps.map(brief)).toEqual([
    'set cut 3 in 2 2 x vertical 4: 9 part 0',
    'turn cut 9 in 5 2 x horizontal 4: 27 square',
  ]);
  expect(list).toMatchObject({ stack: 2, settings: 1, turns: 1 });
  expect(stepsOf([sheet(nine, { copies: 3 })], { stack: 1 }).steps.map(({ stacks }) => stacks)).toEqual([3, 9]);
  expect(stepsOf([sheet(nine)], { stack: 9 }).steps.map(({ atOnce, stacks }) => [atOnce, stacks])).toEqual([
    [1, 1],
    [3, 1],
  ]);
});

test('strips of one width that are cut up in different ways are unlike parts', () => {
  const other = cut('horizontal', 5, blank('tall'), OFFCUT);
  const list = stepsOf([sheet(cut('vertical', 4, row, cut('vertical', 4, row, other)))]);
  expect(list.steps.map(brief)).toEqual([
    'set cut 1 in 1 2 x vertical 4: 2 part 0, 1 part 1',
    'turn cut 2 in 1 2 x horizontal 4: 6 square',
    'set cut 1 in 1 1 x horizontal 5: 1 tall, 1 kept',
  ]);
});

test('strips that are cut up in different ways are not said in one number', () => {
  const tall = cut('horizontal', 5, blank('tall'), OFFCUT);
  const list = stepsOf([sheet(cut('vertical', 4, tall, cut('vertical', 4, row, row)))]);
  expect(list.steps.slice(0, 2).map(brief)).toEqual([
    'set cut 1 in 1 1 x vertical 4: 1 part 0, 1 part 1',
    'cut 1 in 1 1 x vertical 4: 2 part 2',
  ]);
});

test('at one setting all that lies one way is cut before the work is turned', () => {
  const one = (direction: SplitNode['direction']) => sheet(cut(direction, 7, blank('a'), OFFCUT));
  const list = stepsOf([one('vertical'), one('horizontal'), one('vertical')]);
  expect(list.steps.map(({ sheet: index }) => index)).toEqual([0, 2, 1]);
  expect(list.turns).toBe(1);
  // The second cut of the first sheet becomes possible only after that of the second sheet was.
  const twice = sheet(cut('vertical', 7, blank('b'), cut('vertical', 7, blank('a'), OFFCUT)), { width: 20 });
  expect(stepsOf([twice, one('horizontal')]).steps.map(({ sheet: index }) => index)).toEqual([0, 0, 1]);
});

test('layouts share a setting, and an offcut is kept from an inch up unless another length is asked for', () => {
  const sheets = [
    sheet(cut('vertical', 11, cut('horizontal', 11.5, blank('big'), OFFCUT), OFFCUT)),
    sheet(cut('vertical', 11, blank('long'), OFFCUT)),
  ];
  expect(stepsOf(sheets).steps.map(brief)).toEqual([
    'set cut 1 in 1 1 x vertical 11: 1 part 0, 1 kept',
    'cut 1 in 1 1 x vertical 11: 1 long, 1 kept',
    'set turn cut 1 in 1 1 x horizontal 11.5: 1 big, 1 scrap',
  ]);
  const kept = stepsOf(sheets, { keep: inches(0.5) });
  expect(kept.steps.map(brief).at(-1)).toBe('set turn cut 1 in 1 1 x horizontal 11.5: 1 big, 1 kept');
});

test('margins come off before anything else; a sheet that is a blank is taken as it is', () => {
  const list = stepsOf([sheet(cut('vertical', 5, blank('a'), blank('b')), { margin: 1 }), sheet(blank('whole'))]);
  expect(list.steps.map(brief)).toEqual([
    'margins 1 in 1: 1 part 0',
    'take 1 in 1: 1 whole',
    'set cut 1 in 1 1 x vertical 5: 1 a, 1 b',
  ]);
  expect(list.steps[0]).toMatchObject({ margins: { top: inches(1), left: inches(1) }, part: null });
  expect(list.steps[2]).toMatchObject({ part: 0, places: [{ x: inches(1), y: inches(1) }] });
});

/** Four blanks of 5 x 7 in around a centre of 2 x 2 in: the pinwheel on a 12 x 12 in sheet (common practice, no source). */
const pinwheel = (hand: 'clockwise' | 'counterclockwise'): CutNode => ({
  is: 'pinwheel',
  hand,
  x1: inches(5),
  x2: inches(7),
  y1: inches(5),
  y2: inches(7),
  top: blank('photo', true),
  right: blank('photo'),
  bottom: blank('photo', true),
  left: blank('photo'),
  centre: OFFCUT,
});

test('the cuts of a pinwheel say where they start and stop, and nothing comes off before the fourth', () => {
  const list = stepsOf([sheet(pinwheel('clockwise'))]);
  const cuts = list.steps.filter((step): step is CutAction => step.do === 'cut');
  const stops = cuts.map(({ direction, from, setting, stop }) => [
    direction,
    from,
    setting / inches(1),
    stop?.start,
    (stop?.length ?? 0) / inches(1),
  ]);
  expect(stops).toHaveLength(4);
  expect(stops).toContainEqual(['horizontal', 'top', 5, 'left', 7]);
  expect(stops).toContainEqual(['vertical', 'left', 7, 'top', 7]);
  expect(stops).toContainEqual(['horizontal', 'top', 7, 'right', 7]);
  expect(stops).toContainEqual(['vertical', 'left', 5, 'bottom', 7]);
  expect(cuts.map(({ gives }) => gives.length)).toEqual([0, 0, 0, expect.any(Number)]);
  const fates = cuts[3]?.gives.map(({ fate, places }) => [fate.is, places.length]);
  expect(fates).toEqual([
    ['blank', 2],
    ['blank', 2],
    ['offcut', 1],
  ]);
  expect(list).toMatchObject({ settings: 2 });
});

test('a counterclockwise pinwheel is set from the right', () => {
  const cuts = stepsOf([sheet(pinwheel('counterclockwise'))]).steps;
  expect(cuts).toContainEqual(
    expect.objectContaining({ from: 'right', setting: inches(7), stop: { start: 'top', length: inches(7) } }),
  );
  expect(cuts).toContainEqual(
    expect.objectContaining({ from: 'top', setting: inches(5), stop: { start: 'right', length: inches(7) } }),
  );
});

test('pinwheels that are alike are not stacked while one of them has a cut more', () => {
  const [x1, x2, y1, y2] = [inches(2), inches(8), inches(1), inches(9)];
  const arms = { top: OFFCUT, right: OFFCUT, bottom: OFFCUT, left: OFFCUT, centre: OFFCUT };
  const turned: CutNode = { is: 'pinwheel', hand: 'clockwise', x1, x2, y1, y2, ...arms };
  // The second comes to light after a cut at 9 and one at 7; the first is cut at 9 along with the former.
  const later = cut('vertical', 9, OFFCUT, cut('vertical', 7, OFFCUT, turned));
  const list = stepsOf([sheet(cut('vertical', 12, turned, later), { width: 40 })]);
  const right = list.steps.filter((step) => step.do === 'cut' && step.setting === x2);
  expect(right.map(({ pieces }) => pieces)).toEqual([1, 1]);
});

test('a stack is a whole number of sheets', () => {
  expect(() => stepsOf([sheet(nine)], { stack: 0 })).toThrow('stack is 0');
  expect(() => stepsOf([sheet(nine)], { stack: 1.5 })).toThrow('allowed: a whole number');
});
