import { type CutJob, type CutPlan, DEFAULT_WORK, improvePlan, planCuts, QUICK_WORK } from '@trimwell/geometry';
import {
  type BatchRecipe,
  batchYield,
  cutJobs,
  gatherPlans,
  nearMisses,
  oneMoreSheet,
  type PaperPlan,
  type PlanOne,
  planJob,
  sparingCentres,
  withoutCentres,
  yieldCurve,
} from '@trimwell/sketch';
import { type PlanAnswer, type PlanQuestion, RULER_CARDS } from './plan-messages.js';

/** Plans that are remembered: a sketch of ten papers and a long drag back and forth fit easily. */
const MOST_REMEMBERED = 600;

type Answer = (answer: PlanAnswer) => void;

/**
 * Answers plan questions without a clock and without a DOM, in slices: `answer` is called with each better plan, and
 * the generator hands control back between slices so that its owner can drop it for a newer question. Plans are
 * remembered by job, so that a paper whose blanks did not change is not planned again.
 */
export class PlanDesk {
  readonly #remembered = new Map<string, CutPlan>();
  /** The plan of each paper that was shown last. */
  readonly #last = new Map<string, CutPlan>();
  /** Where the last search for the most cards ended: while dragging, the next answer is near. */
  #lastYield = 1;

  /** Plans for one question; control comes back after each slice of work. */
  *answer(question: PlanQuestion, answer: Answer): Generator<void, void> {
    const { revision, recipe, pace } = question;
    const cards = recipe.cards === 'as many as possible' ? this.#mostCards(recipe) : recipe.cards;
    yield* this.#plan(question, cards, answer);
    if (pace === 'quick') return;
    const most = batchYield(recipe, { planOne: this.#quickly, guess: this.#lastYield });
    if (most) this.#lastYield = most.cards;
    yield;
    answer({
      revision,
      kind: 'limit',
      limit: most && { cards: most.cards, proven: most.proven, runsOut: most.runsOut },
    });
    const points = yieldCurve(recipe, { upTo: RULER_CARDS, planOne: this.#quickly });
    let point = points.next();
    while (!point.done) {
      yield;
      point = points.next();
    }
    answer({ revision, kind: 'curve', curve: point.value.map(({ sheets }) => sheets) });
    if (!question.sketch) return;
    if (most)
      answer({
        revision,
        kind: 'one more',
        oneMore: yield* oneMoreSheet(recipe, most.cards, { planOne: this.#quickly, prove: true }),
      });
    const misses = nearMisses(question.sketch, { planOne: this.#quickly });
    let found = misses.next();
    while (!found.done) {
      yield;
      found = misses.next();
    }
    answer({ revision, kind: 'near misses', found: found.value });
  }

  *#plan({ revision, recipe, pace }: PlanQuestion, cards: number, answer: Answer): Generator<void, void> {
    const jobs = cutJobs(recipe, cards);
    let plans: readonly PaperPlan[] = jobs.map(({ paper, job }) => ({ paper, job, plan: this.#warmly(paper, job) }));
    answer({ revision, kind: 'plan', batch: gatherPlans(cards, plans), done: pace === 'quick' });
    yield;
    if (pace === 'quick') return;
    for (const [index, { paper, job }] of jobs.entries()) {
      const plan = yield* this.#sparingly(job);
      this.#last.set(paper, plan);
      plans = plans.map((known, at) => (at === index ? { paper, job, plan } : known));
      answer({ revision, kind: 'plan', batch: gatherPlans(cards, plans), done: index === jobs.length - 1 });
      yield;
    }
  }

  /**
   * A good plan at once, started from the last one of the same paper: what a drag shows. It depends on what was shown
   * before, so it is not remembered as the plan of its job.
   */
  #warmly(paper: string, job: CutJob): CutPlan {
    const previous = this.#last.get(paper);
    const plan = planJob(job, (each) => {
      const known = this.#remembered.get(key(each, DEFAULT_WORK)) ?? this.#remembered.get(key(each, QUICK_WORK));
      return known ?? (previous ? planCuts(each, { work: QUICK_WORK, previous }) : this.#quickly(each));
    });
    this.#last.set(paper, plan);
    return plan;
  }

  /** The thorough plan, with centres only where they save a sheet. */
  *#sparingly(job: CutJob): Generator<void, CutPlan> {
    const plan = yield* this.#thoroughly(job);
    const plain = withoutCentres(job);
    return plain === job ? plan : sparingCentres(plan, yield* this.#thoroughly(plain));
  }

  /** A good plan at once; the thorough one when that is known already. */
  readonly #quickly: PlanOne = (job) => {
    const thorough = this.#remembered.get(key(job, DEFAULT_WORK));
    if (thorough) return thorough;
    const known = this.#remembered.get(key(job, QUICK_WORK));
    if (known) return known;
    return this.#remember(key(job, QUICK_WORK), planCuts(job, { work: QUICK_WORK }));
  };

  *#thoroughly(job: CutJob): Generator<void, CutPlan> {
    const known = this.#remembered.get(key(job, DEFAULT_WORK));
    if (known) return known;
    const slices = improvePlan(job, { work: DEFAULT_WORK });
    let slice = slices.next();
    while (!slice.done) {
      yield;
      slice = slices.next();
    }
    return this.#remember(key(job, DEFAULT_WORK), slice.value);
  }

  /** The most cards the sheets give; one card when nothing is limited, since "as many" has no end then. */
  #mostCards(recipe: BatchRecipe): number {
    const most = batchYield(recipe, { planOne: this.#quickly, guess: this.#lastYield, prove: false });
    // Where not even one card can be made, the plan of one says what is missing.
    this.#lastYield = Math.max(1, most?.cards ?? 1);
    return this.#lastYield;
  }

  #remember(jobKey: string, plan: CutPlan): CutPlan {
    const oldest = this.#remembered.keys().next();
    if (this.#remembered.size >= MOST_REMEMBERED && !oldest.done) this.#remembered.delete(oldest.value);
    this.#remembered.set(jobKey, plan);
    return plan;
  }
}

function key(job: CutJob, work: number): string {
  return `${work} ${JSON.stringify(job)}`;
}
