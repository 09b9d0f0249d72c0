import type { Meter } from '../sheet/meter.js';
import { seededRandom } from '../sheet/random.js';
import { type FillRule, fillFreely, PLACE_RULES } from './fill-freely.js';
import { draftBy, type FillSheet, filledArea, type NestDraft, type NestTask } from './nest-draft.js';

/** Orders of the kinds: by area, longer side, shorter side, width and height, the largest first. */
function ordersOf(task: NestTask): readonly (readonly number[])[] {
  const all = task.kinds.map((_, index) => index);
  const by = (of: (width: number, height: number) => number): readonly number[] => {
    const value = task.kinds.map(({ width, height }) => of(width, height));
    return [...all].sort((a, b) => (value[b] ?? 0) - (value[a] ?? 0) || a - b);
  };
  return [
    by((width, height) => width * height),
    by(Math.max),
    by(Math.min),
    by((width) => width),
    by((_, height) => height),
  ];
}

function rulesOf(task: NestTask): readonly FillRule[] {
  return ordersOf(task).flatMap((order) =>
    [false, true].flatMap((mixed) => PLACE_RULES.map((choose): FillRule => ({ order, choose, mixed }))),
  );
}

/** The fullest of several ways to fill the next sheet; the first among equals. */
function fullestOf(task: NestTask, fills: readonly FillSheet[]): FillSheet {
  return (wanted) => {
    const filled = fills.map((fill) => fill(wanted));
    const areas = filled.map((places) => filledArea(task, places));
    return filled[areas.indexOf(Math.max(...areas))] ?? [];
  };
}

/** Ways that are tried for each sheet of a shaken draft. */
const SHAKEN_WAYS = 6;

/** A way to fill one sheet by chance: sizes are weighed up to a third wrong, and now and then fewer of a kind are taken. */
function shakenFill(task: NestTask, random: () => number, meter: Meter): FillSheet {
  return (wanted) => {
    const weight = task.kinds.map(({ width, height }) => width * height * (0.67 + 0.66 * random()));
    const order = task.kinds.map((_, index) => index).sort((a, b) => (weight[b] ?? 0) - (weight[a] ?? 0) || a - b);
    const choose = PLACE_RULES[Math.floor(random() * PLACE_RULES.length)] ?? 'lowest top';
    const mixed = random() < 0.5;
    const most = wanted.map((count) => (random() < 0.25 ? Math.ceil(count * random()) : count));
    const sheet = fillFreely(task, { order, choose, mixed, most }, meter)(wanted);
    // Where chance left nothing to place, the whole is placed as usual.
    return sheet.length > 0 ? sheet : fillFreely(task, { order, choose, mixed }, meter)(wanted);
  };
}

/**
 * Nestings without straight cuts, the most promising first: one for each rule, one that takes the fullest way for each
 * sheet, then others by chance without end. The meter counts the work; the same task gives the same row of drafts.
 */
export function* freeDrafts(task: NestTask, meter: Meter): Generator<NestDraft> {
  const rules = rulesOf(task).map((rule) => fillFreely(task, rule, meter));
  for (const fill of rules) yield draftBy(task, fill);
  yield draftBy(task, fullestOf(task, rules));
  const random = seededRandom(20260101);
  for (;;) {
    const fills = Array.from({ length: SHAKEN_WAYS }, () => shakenFill(task, random, meter));
    yield draftBy(task, fullestOf(task, fills));
  }
}
