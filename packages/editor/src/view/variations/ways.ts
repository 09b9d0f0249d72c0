import {
  type BatchRecipe,
  batchRecipe,
  checkSketch,
  readyVariations,
  type Sketch,
  type Variation,
  withVariation,
} from '@trimwell/sketch';
import type { PlanPort } from '../../session/plan-messages.js';
import type { Session } from '../../session/session.js';
import { VariationPlans } from '../../session/variation-plans.js';
import { wayText } from './way-words.js';

/** A variation, or one that is ready, with what it makes of the card. */
export interface Way {
  readonly variation: Variation;
  readonly varied: Sketch;
  readonly recipe: BatchRecipe;
}

interface Seen {
  readonly document: Sketch;
  readonly base: BatchRecipe;
  readonly own: readonly Way[];
  /** Null until somebody looks at them: finding them takes as long as checking the card several times. */
  readonly ready: readonly Way[] | null;
}

function wayOf(document: Sketch, variation: Variation): Way {
  const varied = withVariation(document, variation).sketch;
  return { variation, varied, recipe: batchRecipe(varied) };
}

/** True for a varied sketch in which nothing is to be watched that was not before. */
function noNewFinding(document: Sketch): (varied: Sketch) => boolean {
  const named = (sketch: Sketch): readonly string[] => checkSketch(sketch).map(({ code, piece }) => `${code} ${piece}`);
  const before = new Set(named(document));
  return (varied) => named(varied).every((finding) => before.has(finding));
}

function whenIdle(act: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(act, { timeout: 2_000 });
  else setTimeout(act, 50);
}

/** True when the planner of the table has told all that it tells of the sketch that is shown. */
function rests({ gesture, plan }: Session): boolean {
  return gesture === null && !plan.stale && !plan.searching && (plan.offer !== null || plan.failure !== null);
}

/**
 * What every other way of making the card does: looked at when the browser is idle, planned while the table's own
 * planner rests. The ready ones are found and planned
 * only while somebody looks at them.
 */
export class Ways {
  readonly #plans: VariationPlans;
  readonly #stop: () => void;
  #seen: Seen | null = null;
  #looking = false;
  #due = false;
  #ended = false;

  constructor(
    private readonly session: Session,
    openPort: () => PlanPort,
    private readonly onChange: () => void,
  ) {
    this.#plans = new VariationPlans(openPort, onChange);
    this.#stop = session.subscribe((change) => {
      this.#plans.rest(rests(session));
      // While something is dragged there is no card to look at yet; the end of the drag is told as well.
      if ((change.document && session.gesture === null) || change.ended) this.#lookLater();
    });
    this.#plans.rest(rests(session));
    this.#lookLater();
  }

  /** The ready variations of the card as it was last looked at; null while they are not known. */
  get ready(): readonly Way[] | null {
    return this.#seen?.ready ?? null;
  }

  /** Whether the ready ones are looked at, so that they are planned as well. */
  set looking(looking: boolean) {
    this.#looking = looking;
    if (looking && this.#seen?.ready === null) this.#lookLater();
    this.#want();
  }

  /** What `variation` does, in words. */
  text(variation: Variation): string {
    const seen = this.#seen;
    const way = seen && [...seen.own, ...(seen.ready ?? [])].find((each) => each.variation === variation);
    if (!seen || !way) return '';
    return wayText(seen.document, way.varied, this.#plans.figures(seen.base), this.#plans.figures(way.recipe));
  }

  dispose(): void {
    this.#ended = true;
    this.#stop();
    this.#plans.dispose();
  }

  #lookLater(): void {
    if (this.#due) return;
    this.#due = true;
    whenIdle(() => {
      this.#due = false;
      // A drag may have begun meanwhile; its end comes back here.
      if (!this.#ended && this.session.gesture === null) this.#look();
    });
  }

  #look(): void {
    const { document } = this.session;
    const same = this.#seen?.document === document ? this.#seen : null;
    if (same && (same.ready || !this.#looking)) return;
    this.#seen = {
      document,
      base: same?.base ?? batchRecipe(document),
      own: same?.own ?? document.variations.map((variation) => wayOf(document, variation)),
      ready: this.#looking ? this.#ready(document) : null,
    };
    this.#want();
    this.onChange();
  }

  #ready(document: Sketch): readonly Way[] {
    return readyVariations(document, noNewFinding(document)).map((variation) => wayOf(document, variation));
  }

  #want(): void {
    if (!this.#seen) return;
    const { base, own, ready } = this.#seen;
    const ways = this.#looking ? [...own, ...(ready ?? [])] : own;
    this.#plans.want(ways.length === 0 ? [] : [base, ...ways.map(({ recipe }) => recipe)]);
  }
}
