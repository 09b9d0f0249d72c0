import { CutJobError, checkJob, jobProblem } from '../cut/check-job.js';
import { mapParts } from '../cut/cut-tree.js';
import { fitsOf } from '../cut/fit.js';
import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { mayTurn, type Task, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { assemblePlan } from './assemble.js';
import type { Bound } from './bound.js';
import { lowerBound } from './bounds.js';
import { canonicalJob, originalDraft } from './canonical.js';
import { generateColumns } from './column-generation.js';
import type { Draft } from './draft.js';
import { type Finding, searchPlan } from './search.js';

/** Work for a plan while something is dragged: a few milliseconds at usual sizes. */
export const QUICK_WORK = 40_000;
/** Work for a plan that is kept: a tenth of a second at usual sizes, a second where it is not proven sooner. */
export const DEFAULT_WORK = 4_000_000;
/** From here on the bounds that need a table, and the rounds after them, are worth their price. */
const THOROUGH_WORK = 100_000;

/** Share of its work that a part may use before the others have had their turn. */
const FIRST_TURN = 0.5;

export interface PlanOptions {
  /** Budget of work, in the planner's own steps, a count and not a time. Default `DEFAULT_WORK`. */
  readonly work?: number;
  /** Every quantity is multiplied by this. Default 1. */
  readonly sets?: number;
  /**
   * The plan of a job that was nearly the same, with the same ids: where to start from. The answer may depend on it; leave
   * it out where the same job must give the same plan.
   */
  readonly previous?: CutPlan;
}

/** Kinds that share a paper, directly or through others, and are therefore planned together. */
function components(task: Task, among: readonly number[]): readonly (readonly number[])[] {
  const group = task.kinds.map((_, index) => index);
  const first = new Map<number, number>();
  const root = (index: number): number => {
    let at = index;
    while ((group[at] ?? at) !== at) at = group[at] ?? at;
    return at;
  };
  for (const index of among) {
    for (const paper of task.kinds[index]?.papers ?? []) {
      const other = first.get(paper);
      if (other === undefined) first.set(paper, index);
      else group[root(index)] = root(other);
    }
  }
  const found = new Map<number, number[]>();
  for (const index of among) {
    found.set(root(index), [...(found.get(root(index)) ?? []), index]);
  }
  return [...found.values()];
}

/**
 * The task of some kinds alone. Papers that none of them may come from stay, so that numbers of stocks mean the same;
 * they are never used.
 */
function partOf(task: Task, kinds: readonly number[]): Task {
  return { ...task, kinds: kinds.flatMap((index) => task.kinds[index] ?? []) };
}

/** True when some sheet that a kind may come from is large enough for it. */
function roomy(task: Task, index: number): boolean {
  const kind = task.kinds[index];
  return (kind?.papers ?? []).some((paper) => {
    const stock = task.stocks[paper];
    if (!kind || !stock || stock.sheets === 0) return false;
    const holds = (w: number, h: number): boolean => w <= stock.width && h <= stock.height;
    return holds(kind.width, kind.height) || (mayTurn(kind, stock) && holds(kind.height, kind.width));
  });
}

/** True when some paper that a kind may come from is large enough, and the trimmer can cut the kind out of it. */
function cuttable(task: Task, index: number): boolean {
  const kind = task.kinds[index];
  return (kind?.papers ?? []).some((paper) => {
    const stock = task.stocks[paper];
    if (!kind || !stock || stock.sheets === 0) return false;
    const fits = (w: number, h: number): boolean =>
      fitsOf(task.job.trimmer, stock.width, stock.height, w, h).length > 0;
    return fits(kind.width, kind.height) || (mayTurn(kind, stock) && fits(kind.height, kind.width));
  });
}

interface Component {
  readonly kinds: readonly number[];
  readonly search: Generator<Finding, Finding>;
  readonly meter: Meter;
  finding: Finding;
  done: boolean;
}

/**
 * The parts in the order in which they are to go on, the ones with few blanks first. At first each only until it is proven or has
 * used up much of its share, so that all proofs that are to be had soon come soon; then the proven ones to their end, then the
 * others, each with what all before it left over.
 */
function* byTurns(task: Task, parts: readonly Component[]): Generator<Component, void> {
  const copies = ({ kinds }: Component): number =>
    kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.demand ?? 0), 0);
  const inOrder = [...parts].sort((a, b) => copies(a) - copies(b));
  for (const part of inOrder)
    while (!part.done && !part.finding.proven && part.meter.spent < FIRST_TURN * part.meter.budget) yield part;
  const [proven, open] = [
    inOrder.filter(({ finding }) => finding.proven),
    inOrder.filter(({ finding }) => !finding.proven),
  ];
  const later = [...proven, ...open];
  let spare = 0;
  for (const [index, part] of later.entries()) {
    const given = Math.floor(spare / (later.length - index));
    part.meter.grant(given);
    spare -= given;
    while (!part.done) yield part;
    spare += Math.max(0, part.meter.budget - part.meter.spent);
  }
}

function renamed(node: Draft['sheets'][number]['tree'], kinds: readonly number[]): Draft['sheets'][number]['tree'] {
  if (node.is === 'blank') return { ...node, blank: String(kinds[Number(node.blank)]) };
  return mapParts(node, (part) => renamed(part, kinds));
}

/** The drafts of all components as one, and their bounds added up. */
function joined(task: Task, parts: readonly Component[]): { readonly draft: Draft; readonly bound: Bound } {
  const missing = task.kinds.map(({ demand }) => demand);
  const sheets = parts.flatMap(({ kinds, finding }) => {
    finding.draft.missing.forEach((count, index) => {
      missing[kinds[index] ?? -1] = count;
    });
    return finding.draft.sheets.map((sheet) => ({ ...sheet, tree: renamed(sheet.tree, kinds) }));
  });
  const by = [...new Set(parts.map(({ finding }) => finding.bound.by))].join(', ');
  return {
    draft: { sheets, missing },
    bound: { value: parts.reduce((sum, { finding }) => sum + finding.bound.value, 0), by: by || 'nothing to cut' },
  };
}

function requireJob(job: CutJob, sets: number): void {
  const problems = [...checkJob(job)];
  if (!Number.isSafeInteger(sets) || sets < 1)
    problems.push(jobProblem('not-a-count', 'sets', sets, 'a whole number, 1 or more'));
  if (problems.length > 0) throw new CutJobError(problems);
}

/**
 * Plans `job` in slices: the first value is a valid plan, later ones are the best plan so far, the result is the best
 * found with all the work. Whoever runs it may stop between slices. In order of importance a plan leaves least unmade,
 * needs the fewest sheets (or least money where every paper has a price), then the fewest layouts, settings and cuts,
 * then leaves the largest rectangular offcut. Same job, same work: same plan.
 * @throws CutJobError for a job that cannot be planned.
 */
export function* improvePlan(job: CutJob, options: PlanOptions = {}): Generator<CutPlan, CutPlan> {
  const sets = options.sets ?? 1;
  const work = options.work ?? DEFAULT_WORK;
  requireJob(job, sets);
  const original = taskOf(job, sets);
  const canonical = canonicalJob(job);
  const task = taskOf(canonical.job, sets);
  const previous = options.previous ? { plan: options.previous, transposed: canonical.transposed } : null;
  const able = task.kinds.map((_, index) => index).filter((index) => cuttable(task, index));
  const groups = components(task, able);
  const share = Math.ceil(work / Math.max(1, groups.length));
  const parts: Component[] = groups.map((kinds) => {
    const part = partOf(task, kinds);
    const meter = new Meter(share);
    const search = searchPlan(part, meter, work >= THOROUGH_WORK, previous);
    const { value, done } = search.next();
    return { kinds, search, meter, finding: value, done: done === true };
  });
  const plan = (): CutPlan => {
    const { draft, bound } = joined(task, parts);
    return assemblePlan(
      original,
      originalDraft(canonical, task, original, draft),
      bound,
      sets,
      parts.reduce((sum, part) => sum + part.finding.work, 0),
    );
  };
  let best = plan();
  yield best;
  for (const part of byTurns(task, parts)) {
    const { value, done } = part.search.next();
    part.done = done === true;
    const better = value.draft !== part.finding.draft || value.bound !== part.finding.bound;
    part.finding = value;
    if (better) best = plan();
    if (!part.done) yield best;
  }
  return plan();
}

/** `improvePlan` to its end. @throws CutJobError for a job that cannot be planned. */
export function planCuts(job: CutJob, options: PlanOptions = {}): CutPlan {
  const slices = improvePlan(job, options);
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return slice.value;
}

/** The best bound for `task` that so much work gives. */
function provenLeast(task: Task, work: number): Bound {
  const quick = lowerBound(task, Number.POSITIVE_INFINITY);
  if (quick.value === Number.POSITIVE_INFINITY) return quick;
  const pricing = generateColumns(task, [], Number.POSITIVE_INFINITY, quick.value, 'exact', new Meter(work));
  let step = pricing.next();
  while (!step.done) step = pricing.next();
  return step.value.bound && step.value.bound.value > quick.value ? step.value.bound : quick;
}

/**
 * The least sheets (or money) that any plan for all of `job` needs, and by which argument; Infinity when the sheets at
 * hand cannot do. @throws CutJobError for a job that cannot be planned.
 */
export function leastSheets(job: CutJob, sets = 1, work = DEFAULT_WORK): Bound {
  requireJob(job, sets);
  const task = taskOf(canonicalJob(job).job, sets);
  const all = task.kinds.map((_, index) => index);
  // With a kerf, and with cuts that may stop, not every way to cut a blank is tried; then no way found proves nothing.
  const certain = job.trimmer.kerf === 0 && !job.trimmer.stoppedCuts;
  if (all.some((index) => !roomy(task, index) || (certain && !cuttable(task, index))))
    return { value: Number.POSITIVE_INFINITY, by: 'a blank that cannot be cut' };
  const bounds = components(task, all).map((kinds) => provenLeast(partOf(task, kinds), work));
  return {
    value: bounds.reduce((sum, bound) => sum + bound.value, 0),
    by: [...new Set(bounds.map(({ by }) => by))].join(', '),
  };
}
