import { type CutNode, eachNode, mapParts, usableRect } from '../cut/cut-tree.js';
import { fitsOf } from '../cut/fit.js';
import type { CutPlan, SheetLayout, Unmade, UnmadeReason } from '../cut/plan.js';
import { ticks } from '../length/length.js';
import { compareText, type Kind, mayTurn, type Task } from '../sheet/kinds.js';
import { normalise } from '../sheet/normalise.js';
import { countSettings, cutSteps } from '../steps/steps.js';
import type { Bound } from './bound.js';
import type { Draft, DraftSheet } from './draft.js';

/** Copies of each member of a kind that still wait for a leaf. */
type Waiting = Map<string, number>[];

/** Names the leaves of one tree, each for `copies` sheets at once; null when no member has that many waiting. */
function named(task: Task, node: CutNode, copies: number, waiting: Waiting): CutNode | null {
  if (node.is === 'blank') {
    const index = Number(node.blank);
    const members = waiting[index];
    if (!members) return null;
    let best: string | null = null;
    for (const [id, left] of members)
      if (left >= copies && (best === null || left > (members.get(best) ?? 0))) best = id;
    if (best === null) return null;
    members.set(best, (members.get(best) ?? 0) - copies);
    const blank = task.job.blanks.find((candidate) => candidate.id === best);
    const kind = task.kinds[index];
    const stored = blank?.width === kind?.width;
    return { is: 'blank', blank: best, turned: stored ? node.turned : !node.turned };
  }
  let short = false;
  const whole = mapParts(node, (part) => {
    const made = short ? null : named(task, part, copies, waiting);
    short ||= made === null;
    return made ?? part;
  });
  return short ? null : whole;
}

/** Deals names to a layout; when no member has enough for all its copies, to as many copies at a time as one has. */
function deal(task: Task, sheet: DraftSheet, waiting: Waiting): readonly DraftSheet[] {
  for (let copies = sheet.copies; copies >= 1; copies = Math.floor(copies / 2)) {
    const trial = waiting.map((members) => new Map(members));
    const tree = named(task, sheet.tree, copies, trial);
    if (!tree) continue;
    trial.forEach((members, index) => {
      waiting[index] = members;
    });
    const rest = sheet.copies - copies;
    return [{ ...sheet, tree, copies }, ...(rest > 0 ? deal(task, { ...sheet, copies: rest }, waiting) : [])];
  }
  throw new Error('A draft makes more of a blank than was asked for.');
}

/** Why `kind` cannot be cut even from an empty sheet; null when it can. */
function impossible(task: Task, kind: Kind): UnmadeReason | null {
  const { trimmer } = task.job;
  if (kind.papers.length === 0) return 'no paper allowed';
  const ways = kind.papers.flatMap((index) => {
    const stock = task.stocks[index];
    if (!stock) return [];
    const plain = { stock, w: kind.width, h: kind.height };
    return mayTurn(kind, stock) ? [plain, { stock, w: kind.height, h: kind.width }] : [plain];
  });
  const roomy = ways.filter(({ stock, w, h }) => w <= stock.width && h <= stock.height);
  if (roomy.length === 0) return 'larger than every sheet';
  const able = (without: Partial<typeof trimmer>): boolean =>
    roomy.some(({ stock, w, h }) => fitsOf({ ...trimmer, ...without }, stock.width, stock.height, w, h).length > 0);
  if (able({})) return null;
  // With a kerf, cuts before the strip can move it onto the ruler or make a trim thicker; not all of that is tried.
  const free = { rulerStep: null, thinnestTrim: ticks(0), narrowestStrip: ticks(0) };
  if (trimmer.kerf > 0 && able(free)) return 'not found within the work budget';
  // A cut that stops is shorter, and leaves other parts to hold: what no edge-to-edge cut makes, a pinwheel may.
  if (trimmer.stoppedCuts && trimmer.kerf === 0) return 'not found within the work budget';
  if (able({ bladeLength: null })) return 'longer than the blade';
  if (able({ rulerStep: null })) return 'off the ruler';
  if (able({ narrowestStrip: ticks(0) })) return 'narrower than can be held';
  if (able({ thinnestTrim: ticks(0) })) return 'trim too thin';
  return able({ rulerStep: null, thinnestTrim: ticks(0), narrowestStrip: ticks(0) })
    ? 'trim too thin'
    : 'longer than the blade';
}

function unmadeOf(task: Task, draft: Draft, hopeless: boolean, waiting: Waiting): readonly Unmade[] {
  const used = task.stocks.map((_, stock) =>
    draft.sheets.reduce((sum, sheet) => sum + (sheet.stock === stock ? sheet.copies : 0), 0),
  );
  return task.kinds.flatMap((kind, index) => {
    if ((draft.missing[index] ?? 0) === 0) return [];
    // Either it is proven that the sheets at hand are too few, or there is none left.
    const short = hopeless || kind.papers.every((paper) => (used[paper] ?? 0) >= (task.stocks[paper]?.sheets ?? 0));
    const reason = impossible(task, kind) ?? (short ? 'out of sheets' : 'not found within the work budget');
    return [...(waiting[index] ?? [])]
      .filter(([, left]) => left > 0)
      .map(([blank, quantity]) => ({ blank, quantity, reason }));
  });
}

/** Cuts of `tree`, and how often it holds each blank, as text. */
function contentOf(tree: CutNode): { readonly cuts: number; readonly blanks: string } {
  const counts = new Map<string, number>();
  let cuts = 0;
  const visit = (node: CutNode): CutNode => {
    if (node.is === 'blank') counts.set(node.blank, (counts.get(node.blank) ?? 0) + 1);
    else if (node.is !== 'offcut') cuts += node.is === 'cut' ? 1 : 4;
    return mapParts(node, visit);
  };
  visit(tree);
  return {
    cuts,
    blanks: [...counts]
      .map(([blank, count]) => `${blank} ${count}`)
      .sort(compareText)
      .join(),
  };
}

/** Sheets of one stock that hold the same blanks are cut alike: all in the way that takes the fewest cuts. */
function alike(sheets: readonly DraftSheet[]): readonly DraftSheet[] {
  const content = sheets.map(({ stock, tree }) => {
    const { cuts, blanks } = contentOf(tree);
    return { key: `${stock} ${blanks}`, cuts, tree };
  });
  const best = new Map<string, (typeof content)[number]>();
  for (const one of content) {
    const known = best.get(one.key);
    if (!known || one.cuts < known.cuts) best.set(one.key, one);
  }
  return sheets.map((sheet, index) => ({ ...sheet, tree: best.get(content[index]?.key ?? '')?.tree ?? sheet.tree }));
}

/** Equal layouts on one paper become one with more copies. */
function merged(sheets: readonly SheetLayout[]): readonly SheetLayout[] {
  const groups = new Map<string, SheetLayout>();
  for (const sheet of sheets) {
    const key = `${sheet.paper} ${JSON.stringify(sheet.tree)}`;
    const known = groups.get(key);
    groups.set(key, known ? { ...known, copies: known.copies + sheet.copies } : sheet);
  }
  return [...groups.values()];
}

function countCuts(sheets: readonly SheetLayout[], kerf: number): number {
  let cuts = 0;
  for (const { tree, usable, copies } of sheets) {
    eachNode(tree, usable, ticks(kerf), (node) => {
      if (node.is === 'cut') cuts += copies;
      else if (node.is === 'pinwheel') cuts += 4 * copies;
    });
  }
  return cuts;
}

function largestOffcut(sheets: readonly SheetLayout[], kerf: number): CutPlan['largestOffcut'] {
  let best: CutPlan['largestOffcut'] = null;
  sheets.forEach(({ tree, usable }, sheet) => {
    eachNode(tree, usable, ticks(kerf), (node, { width, height }) => {
      if (node.is === 'offcut' && width * height > (best ? best.width * best.height : 0))
        best = { sheet, width, height };
    });
  });
  return best;
}

/**
 * The plan of a draft: trees normalised, leaves named, equal sheets joined, reasons for what stays unmade, totals.
 * Sheets stand in the order of the job's papers, most copies first, then by tree text, so that the order is always the same.
 */
export function assemblePlan(task: Task, draft: Draft, bound: Bound, sets: number, work: number): CutPlan {
  const { trimmer } = task.job;
  const waiting: Waiting = task.kinds.map((kind) => new Map(kind.members.map(({ id, quantity }) => [id, quantity])));
  const trimmed = draft.sheets.map((sheet) => {
    const stock = task.stocks[sheet.stock];
    if (!stock) throw new Error('A draft uses a paper that the task does not have.');
    return { ...sheet, tree: normalise(trimmer, sheet.tree, stock.width, stock.height) };
  });
  const drafts = new Map<string, DraftSheet>();
  for (const sheet of alike(trimmed)) {
    const key = `${sheet.stock} ${JSON.stringify(sheet.tree)}`;
    drafts.set(key, { ...sheet, copies: sheet.copies + (drafts.get(key)?.copies ?? 0) });
  }
  const ordered = [...drafts.entries()].sort(
    ([a, left], [b, right]) => left.stock - right.stock || right.copies - left.copies || compareText(a, b),
  );
  const sheets = merged(
    ordered
      .flatMap(([, sheet]) => deal(task, sheet, waiting))
      .map((sheet): SheetLayout => {
        const paper = task.job.papers[sheet.stock];
        if (!paper) throw new Error('A draft uses a paper that the job does not have.');
        return {
          paper: paper.id,
          copies: sheet.copies,
          width: paper.width,
          height: paper.height,
          usable: usableRect(paper),
          tree: sheet.tree,
        };
      }),
  );
  const unmade = unmadeOf(task, draft, bound.value === Number.POSITIVE_INFINITY, waiting);
  const count = sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
  const cost = draft.sheets.reduce((sum, sheet) => sum + sheet.copies * (task.stocks[sheet.stock]?.cost ?? 0), 0);
  const complete = unmade.length === 0;
  // A plan that leaves something out may stay below what a whole one needs; then nothing is claimed about it.
  const lowerBound = complete ? Math.min(bound.value, cost) : 0;
  return {
    sets,
    complete,
    sheets,
    unmade,
    proof: {
      lowerBound,
      fewestSheets: complete && bound.value >= cost,
      by: complete ? bound.by : 'nothing: some blanks are unmade',
      mostSets: null,
    },
    counts: {
      sheets: count,
      layouts: sheets.length,
      settings: countSettings(cutSteps(sheets, trimmer.kerf)),
      cuts: countCuts(sheets, trimmer.kerf),
    },
    largestOffcut: largestOffcut(sheets, trimmer.kerf),
    work,
  };
}

/** What a plan is worth, most important first; smaller is better in each. */
export function planScore(task: Task, plan: CutPlan): readonly number[] {
  const unmade = plan.unmade.reduce((sum, { quantity }) => sum + quantity, 0);
  const cost = plan.sheets.reduce(
    (sum, { paper, copies }) =>
      sum + copies * (task.stocks[task.job.papers.findIndex(({ id }) => id === paper)]?.cost ?? 0),
    0,
  );
  const { sheets, layouts, settings, cuts } = plan.counts;
  const offcut = plan.largestOffcut ? plan.largestOffcut.width * plan.largestOffcut.height : 0;
  return [unmade, cost, sheets, layouts, settings, cuts, -offcut];
}

/** Negative when `a` is better, by the first figure that differs. */
export function compareScores(a: readonly number[], b: readonly number[]): number {
  for (let index = 0; index < a.length; index += 1) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
