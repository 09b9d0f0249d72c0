import { type Fit, fitsOf } from '../cut/fit.js';
import { finish, freePart, type Part, placeInto } from '../sheet/growing.js';
import { type Kind, mayTurn, type Stock, type Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import type { Draft, DraftSheet } from './draft.js';

/** Sheets, the last ones opened, that a blank is tried on; more would cost much and gain little. */
const MOST_OPEN = 12;

/** How one run of the insertion heuristic decides; every field is a plain number so that runs are repeatable. */
export interface InsertionRule {
  /** Order in which kinds are placed: indices into the task's kinds. */
  readonly order: readonly number[];
  /** Which free part a blank goes into. */
  readonly choose: 'least area left' | 'least short side left' | 'least long side left' | 'first';
  /** Which of the two ways to split is taken when both can be. */
  readonly split: 'largest rest' | 'shorter side first' | 'longer side first' | 'vertical' | 'horizontal';
}

interface OpenSheet {
  readonly stock: number;
  readonly root: Part;
  readonly free: Part[];
}

interface Candidate {
  readonly sheet: OpenSheet;
  readonly at: number;
  readonly fit: Fit;
  readonly turned: boolean;
  readonly score: number;
}

function area([width, height]: readonly [number, number]): number {
  return width * height;
}

/** Smaller is better. */
function splitScore(rule: InsertionRule, fit: Fit, part: Part, width: number, height: number): number {
  switch (rule.split) {
    case 'largest rest':
      return -Math.max(area(fit.beside), area(fit.below));
    case 'shorter side first':
      return part.width - width < part.height - height === (fit.first === 'horizontal') ? 0 : 1;
    case 'longer side first':
      return part.width - width < part.height - height === (fit.first === 'horizontal') ? 1 : 0;
    case 'vertical':
      return fit.first === 'vertical' ? 0 : 1;
    case 'horizontal':
      return fit.first === 'horizontal' ? 0 : 1;
  }
}

function chooseScore(rule: InsertionRule, part: Part, width: number, height: number): number {
  const restX = part.width - width;
  const restY = part.height - height;
  switch (rule.choose) {
    case 'least area left':
      return part.width * part.height - width * height;
    case 'least short side left':
      return Math.min(restX, restY);
    case 'least long side left':
      return Math.max(restX, restY);
    case 'first':
      return 0;
  }
}

function bestFit(task: Task, rule: InsertionRule, part: Part, width: number, height: number): Fit | null {
  const fits = fitsOf(task.job.trimmer, part.width, part.height, width, height);
  let best: Fit | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const fit of fits) {
    const score = splitScore(rule, fit, part, width, height);
    if (score < least) {
      best = fit;
      least = score;
    }
  }
  return best;
}

function bestIn(
  task: Task,
  rule: InsertionRule,
  sheets: readonly OpenSheet[],
  kind: Kind,
  meter: Meter,
): Candidate | null {
  let best: Candidate | null = null;
  for (let index = Math.max(0, sheets.length - MOST_OPEN); index < sheets.length; index += 1) {
    const sheet = sheets[index] as OpenSheet;
    const stock = task.stocks[sheet.stock] as Stock;
    if (!kind.papers.includes(sheet.stock)) continue;
    const ways = mayTurn(kind, stock) ? [false, true] : [false];
    for (let at = 0; at < sheet.free.length; at += 1) {
      const part = sheet.free[at] as Part;
      for (const turned of ways) {
        meter.spend(1);
        const [width, height] = turned ? [kind.height, kind.width] : [kind.width, kind.height];
        if (width > part.width || height > part.height) continue;
        const score = chooseScore(rule, part, width, height);
        if (best && score >= best.score) continue;
        const fit = bestFit(task, rule, part, width, height);
        if (fit) best = { sheet, at, fit, turned, score };
      }
    }
    if (best && rule.choose === 'first') return best;
  }
  return best;
}

/** A new sheet that the kind fits on: the cheapest, then the smallest, then the first. */
function openFor(task: Task, used: readonly number[], kind: Kind, rule: InsertionRule): OpenSheet | null {
  const able = kind.papers.filter((index) => {
    const stock = task.stocks[index] as Stock;
    if ((used[index] ?? 0) >= stock.sheets) return false;
    const whole = freePart(stock.width, stock.height);
    if (bestFit(task, rule, whole, kind.width, kind.height)) return true;
    return mayTurn(kind, stock) && bestFit(task, rule, whole, kind.height, kind.width) !== null;
  });
  able.sort((a, b) => {
    const [left, right] = [task.stocks[a] as Stock, task.stocks[b] as Stock];
    return left.cost - right.cost || left.width * left.height - right.width * right.height || a - b;
  });
  const [stock] = able;
  if (stock === undefined) return null;
  const { width, height } = task.stocks[stock] as Stock;
  const root = freePart(width, height);
  return { stock, root, free: [root] };
}

/**
 * Places copy after copy into the free part that suits best, opening a sheet where none does. Every tree it builds is
 * valid by construction. Cost: copies x free parts of the sheets opened last.
 */
export function insertAll(task: Task, rule: InsertionRule, meter: Meter): Draft {
  const sheets: OpenSheet[] = [];
  const used = task.stocks.map(() => 0);
  const missing = task.kinds.map(() => 0);
  for (const index of rule.order) {
    const kind = task.kinds[index] as Kind;
    for (let copy = 0; copy < kind.demand; copy += 1) {
      let best = bestIn(task, rule, sheets, kind, meter);
      if (!best) {
        const opened = openFor(task, used, kind, rule);
        if (!opened) {
          missing[index] = kind.demand - copy;
          break;
        }
        used[opened.stock] = (used[opened.stock] ?? 0) + 1;
        sheets.push(opened);
        best = bestIn(task, rule, [opened], kind, meter);
      }
      if (!best) throw new Error('A sheet was opened for a blank that does not fit on it.');
      const { sheet, at, fit, turned } = best;
      const [part] = sheet.free.splice(at, 1) as [Part];
      sheet.free.push(...placeInto(part, fit, index, turned, task.job.trimmer.kerf));
    }
  }
  const done = sheets.map((sheet): DraftSheet => ({ stock: sheet.stock, tree: finish(sheet.root), copies: 1 }));
  return { sheets: done, missing };
}
