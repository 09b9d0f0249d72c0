import { CutJobError } from '../cut/check-job.js';
import { ticks } from '../length/length.js';
import type { Bound } from '../plan/bound.js';
import { lowerBound } from '../plan/bounds.js';
import { DEFAULT_WORK } from '../plan/plan-cuts.js';
import { mayTurn, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { checkNestJob } from './check-nest-job.js';
import { fillRows, ROW_RULES } from './fill-rows.js';
import { freeDrafts } from './free-drafts.js';
import { namePlaces } from './name-places.js';
import { compareDrafts, draftBy, type NestDraft, type NestTask, sheetsOf, withinLimit } from './nest-draft.js';
import type { NestJob, NestPart, NestPlan, NestUnmade } from './nest-job.js';
import { ANY_STRAIGHT_CUT, straightDraft, straightJob } from './straight-draft.js';

export interface NestOptions {
  /**
   * Budget of work, a count and not a time: the planner's straight cuts may have all of it, stopped cuts and the free
   * search an eighth each. Default `DEFAULT_WORK`.
   */
  readonly work?: number;
}

/** Drafts that are made before the planner is asked: all the rules, and the fullest of them for each sheet. */
const QUICK_DRAFTS = 41;

/** Share of the work that stopped cuts and the free search have: they add little to what straight cuts find. */
const SHARE = 1 / 8;

/** True when the part fits on an empty sheet. */
function fitsSheet({ sheet }: NestJob, part: NestPart): boolean {
  const { margins } = sheet;
  const [width, height] = [sheet.width - margins.left - margins.right, sheet.height - margins.top - margins.bottom];
  const holds = (w: number, h: number): boolean => w <= width && h <= height;
  return holds(part.width, part.height) || (part.turn && !sheet.directional && holds(part.height, part.width));
}

/** The job as it is searched: the gap is part of every box, and of the sheet once more, since none is needed at its edge. */
function nestTask(job: NestJob): NestTask {
  const { sheet, gap } = job;
  const { margins } = sheet;
  const none = ticks(0);
  const grown = taskOf(
    {
      trimmer: ANY_STRAIGHT_CUT,
      papers: [
        {
          id: 'sheet',
          width: ticks(sheet.width - margins.left - margins.right + gap),
          height: ticks(sheet.height - margins.top - margins.bottom + gap),
          sheets: sheet.sheets,
          directional: sheet.directional,
          price: null,
          margins: { top: none, right: none, bottom: none, left: none },
        },
      ],
      blanks: job.parts
        .filter((part) => fitsSheet(job, part))
        .map(({ id, width, height, quantity, turn }) => ({
          ...{ id, quantity, turn, papers: null },
          width: ticks(width + gap),
          height: ticks(height + gap),
        })),
    },
    1,
  );
  const [stock] = grown.stocks;
  return {
    width: stock?.width ?? 0,
    height: stock?.height ?? 0,
    kinds: grown.kinds,
    turns: grown.kinds.map((kind) => stock !== undefined && mayTurn(kind, stock)),
    sheets: sheet.sheets ?? Number.POSITIVE_INFINITY,
  };
}

/**
 * The least sheets of any nesting: area and dual-feasible functions, which ask nothing of how the boxes are cut. The
 * planner's further bounds hold for straight cuts only and are not used. Infinity when the sheets at hand cannot do.
 */
function nestBound(task: NestTask): Bound {
  return lowerBound(taskOf(straightJob(task, false), 1), null);
}

/** The best draft that the work allows; it stops as soon as `least` sheets are reached. */
function bestDraft(task: NestTask, least: number, work: number, meter: Meter): NestDraft {
  const rows = ROW_RULES.map((rule) => withinLimit(task, draftBy(task, fillRows(task, rule))));
  let best = rows.reduce((one, other) => (compareDrafts(other, one) < 0 ? other : one));
  const done = (): boolean => best.missing.every((count) => count === 0) && sheetsOf(best) <= least;
  const consider = (draft: NestDraft): void => {
    const limited = withinLimit(task, draft);
    if (compareDrafts(limited, best) < 0) best = limited;
  };
  const free = freeDrafts(task, meter);
  for (let tried = 0; tried < QUICK_DRAFTS && !done() && !meter.empty; tried += 1) {
    consider(free.next().value as NestDraft);
  }
  for (const stopped of [false, true]) {
    if (done()) return best;
    const straight = straightDraft(task, stopped, stopped ? work * SHARE : work);
    meter.spend(straight.work);
    meter.grant(straight.work);
    consider(straight.draft);
  }
  while (!done() && !meter.empty) consider(free.next().value as NestDraft);
  return best;
}

function unmadeOf(job: NestJob, left: ReadonlyMap<string, number>): readonly NestUnmade[] {
  return job.parts.flatMap((part): NestUnmade[] => {
    if (part.quantity === 0) return [];
    if (!fitsSheet(job, part))
      return [{ part: part.id, quantity: part.quantity, reason: 'larger than the sheet within its margins' }];
    const quantity = left.get(part.id) ?? 0;
    return quantity > 0 ? [{ part: part.id, quantity, reason: 'out of sheets' }] : [];
  });
}

/**
 * Lays out the boxes of `job` on as few sheets as it can, not bound to straight cuts. In order of importance it leaves
 * the fewest parts unmade, needs the fewest sheets, then the fewest unlike ones. Never more sheets than rows of parts
 * need, nor than the planner's straight cuts of the same boxes with the same work. Same job and work: same plan.
 * @throws CutJobError for a job that cannot be nested.
 */
export function nestParts(job: NestJob, options: NestOptions = {}): NestPlan {
  const problems = checkNestJob(job);
  if (problems.length > 0) throw new CutJobError(problems);
  const work = options.work ?? DEFAULT_WORK;
  const task = nestTask(job);
  const bound = nestBound(task);
  const meter = new Meter(work * SHARE);
  const draft = bestDraft(task, bound.value, work, meter);
  const { layouts, left } = namePlaces(task, job, draft);
  const unmade = unmadeOf(job, left);
  const complete = unmade.length === 0;
  const sheets = sheetsOf(draft);
  return {
    ...{ complete, layouts, unmade, sheets },
    proof: complete
      ? { lowerBound: bound.value, fewestSheets: bound.value === sheets, by: bound.by }
      : { lowerBound: 0, fewestSheets: false, by: 'not everything is made' },
    work: Math.ceil(meter.spent),
  };
}
