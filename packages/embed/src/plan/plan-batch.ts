import { type CutJob, type CutPlan, firstPlan } from '@trimwell/geometry';
import {
  type BatchPlan,
  type BatchRecipe,
  dealtJobs,
  gatherPlans,
  isLimited,
  type JobsOf,
  MOST_CARDS,
  mixesPapers,
  mostCards,
  type PlanOne,
  plainRecipe,
  planPapers,
  rememberPlans,
  type Sketch,
} from '@trimwell/sketch';

/** What is loaded when a sketch needs it; a test hands in its own. */
export interface PlanParts {
  readonly centres: () => Promise<typeof import('./centres-part.js')>;
  readonly mixes: () => Promise<typeof import('./mixes-part.js')>;
  readonly thorough: () => Promise<typeof import('./thorough-part.js')>;
}

export const PLAN_PARTS: PlanParts = {
  centres: () => import('./centres-part.js'),
  mixes: () => import('./mixes-part.js'),
  thorough: () => import('./thorough-part.js'),
};

export interface PlanShown {
  readonly batch: BatchPlan;
  readonly done: boolean;
  readonly most: boolean;
}

/** Work for a plan that is there at once, as the planner's own quick plan has. */
const FIRST_WORK = 40_000;

const withoutMixes: JobsOf = (recipe, cards) => dealtJobs(recipe, cards, []);

/** How many cards are planned: those wished for, or the most that `planOne` makes of the sheets at hand, one at least. */
function cardsOf(recipe: BatchRecipe, planOne: PlanOne, jobsOf: JobsOf): number {
  if (recipe.cards !== 'as many as possible') return recipe.cards;
  // Where nothing is limited "as many" has no end, and where not even one card comes out its plan says what is missing.
  if (!isLimited(recipe)) return 1;
  return Math.max(1, mostCards(recipe, { planOne, jobsOf, guess: 1, upTo: MOST_CARDS }));
}

/**
 * The plans of `sketch`, each better than the last: a first one by little code, then, paper by paper, the very plan that
 * the editor and the command line make. Null between them is a moment to do something else. `known` are plans by job
 * that were made before and are added to.
 * @throws CutJobError for a sketch that cannot be planned.
 */
export async function* planSketch(
  sketch: Sketch,
  known: Map<string, CutPlan>,
  parts: PlanParts = PLAN_PARTS,
): AsyncGenerator<PlanShown | null, void> {
  const recipe = sketch.batch.hiddenCentres ? (await parts.centres()).batchRecipe(sketch) : plainRecipe(sketch);
  const jobsOf = mixesPapers(recipe) ? (await parts.mixes()).cutJobs : withoutMixes;
  const most = recipe.cards === 'as many as possible';
  const first = rememberPlans((job) => known.get(JSON.stringify(job)) ?? firstPlan(job, { work: FIRST_WORK }));
  const begun = cardsOf(recipe, first, jobsOf);
  yield { batch: gatherPlans(begun, planPapers(jobsOf(recipe, begun), first)), done: false, most };
  const { DEFAULT_WORK, improvePlan, planCuts, QUICK_WORK, sparingCentres, withoutCentres } = await parts.thorough();
  const quick = rememberPlans((job) => known.get(JSON.stringify(job)) ?? planCuts(job, { work: QUICK_WORK }));
  const cards = most ? cardsOf(recipe, quick, jobsOf) : begun;
  yield null;

  async function* thoroughly(job: CutJob): AsyncGenerator<null, CutPlan> {
    const key = JSON.stringify(job);
    const there = known.get(key);
    if (there) return there;
    const slices = improvePlan(job, { work: DEFAULT_WORK });
    let slice = slices.next();
    while (!slice.done) {
      yield null;
      slice = slices.next();
    }
    known.set(key, slice.value);
    return slice.value;
  }

  async function* sparingly(job: CutJob): AsyncGenerator<null, CutPlan> {
    const plan = yield* thoroughly(job);
    const plain = withoutCentres(job);
    return plain === job ? plan : sparingCentres(plan, yield* thoroughly(plain));
  }

  let plans = planPapers(jobsOf(recipe, cards), quick);
  for (const [index, { paper, job }] of plans.entries()) {
    const plan = yield* sparingly(job);
    plans = plans.map((each, at) => (at === index ? { paper, job, plan } : each));
    if (index < plans.length - 1) yield { batch: gatherPlans(cards, plans), done: false, most };
  }
  yield { batch: gatherPlans(cards, plans), done: true, most };
}
