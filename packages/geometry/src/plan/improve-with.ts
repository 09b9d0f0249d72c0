import { CutJobError, checkJob, jobProblem } from '../cut/check-job.js';
import { mapParts } from '../cut/cut-tree.js';
import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { type Task, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { assemblePlan } from './assemble.js';
import type { Bound } from './bound.js';
import { canonicalJob, originalDraft } from './canonical.js';
import type { Draft } from './draft.js';
import { components, cuttable, partOf } from './parts.js';
import { type Finding, type Narrow, searchPlan } from './search.js';

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

export function requireJob(job: CutJob, sets: number): void {
  const problems = [...checkJob(job)];
  if (!Number.isSafeInteger(sets) || sets < 1)
    problems.push(jobProblem('not-a-count', 'sets', sets, 'a whole number, 1 or more'));
  if (problems.length > 0) throw new CutJobError(problems);
}

/**
 * Plans `job` in slices: the first value is a valid plan, later ones are the best plan so far, the result is the best
 * found with all the work. Whoever runs it may stop between slices. In order of importance a plan leaves least unmade,
 * needs the fewest sheets (or least money where every paper has a price), then the fewest layouts, settings and cuts,
 * then leaves the largest rectangular offcut. Same job, same work: same plan. `narrow` brings draft and bound together; with
 * null the plan is a first one, by placing and filling alone, for those who do not want to load more.
 * @throws CutJobError for a job that cannot be planned.
 */
export function* improveWith(
  narrow: Narrow | null,
  job: CutJob,
  options: PlanOptions = {},
): Generator<CutPlan, CutPlan> {
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
    const search = searchPlan(part, meter, work >= THOROUGH_WORK, previous, narrow);
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
