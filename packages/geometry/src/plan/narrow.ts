import { copiesOf, type Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { mayStop } from '../sheet/places.js';
import { correctValues, fillGreedily, MANY_POINTS, MORE_POINTS } from './greedy.js';
import { type InsertionRule, insertAll } from './insertion.js';
import { FIRST_RULES, repeats, rulesFor, shakenOrder } from './insertion-rules.js';
import type { Keeper } from './keeper.js';
import { Narrowing } from './narrowing.js';

/** Rounds at the most, however much work is left. */
const MOST_ROUNDS = 2_000;
/** Placements between two slices, and in one round; the share of the work that those of a round may take. */
const SHAKES = 6;
const MOST_SHAKES = 12;
const PLACING_SHARE = 0.05;
/** Round after which sheets are priced exactly, when nothing simpler has helped; closing comes one round later. */
const EXACT_ROUND = 1;
/** Every so many rounds after that there is a dive; in the others sheets are gathered. */
const DIVING_ROUNDS = 2;
/** Runs of taking out and putting back before anything is priced: from the best draft, and from empty sheets. */
const FIRST_RUNS = 4;
const FRESH_RUNS = 3;
/** Share of the work that one run from empty sheets may take, and those, in turn, that try to bring everything onto one sheet. */
const FRESH_SHARE = 0.04;
const ONE_SHEET_RUNS = [0.1, 0.1, 0.1, 0.4];
/** What all the latter may take, and the blanks from which on they come before anything is priced. */
const ONE_SHEET_SHARE = 0.6;
const MANY_ON_ONE = 24;
/** Sheets up to which such a run comes before the exact prices also where blanks repeat. */
const FEW_SHEETS = 7;
/** Refillings that leave alone whatever a linear plan takes whole. */
const TIGHT_ROUNDS = 3;
/** Fillings in a row that learn from each other. */
const CORRECTIONS = 6;
/** Share of the work that goes into fewer sheets before the rest goes into fewer layouts, settings and cuts. */
const NARROWING_SHARE = 0.85;

/** Narrows the gap between the best draft and the bound of one task by all means there are, in turn. */
class Rounds {
  readonly #narrowing: Narrowing;
  readonly #repeating: boolean;
  readonly #rules: readonly InsertionRule[];
  readonly #fresh: number;
  #tried = FIRST_RULES;

  constructor(
    private readonly task: Task,
    private readonly keeper: Keeper,
    private readonly random: () => number,
    private readonly meter: Meter,
  ) {
    this.#narrowing = new Narrowing(task, keeper, random, meter);
    this.#repeating = repeats(task);
    this.#rules = rulesFor(task);
    this.#fresh = FRESH_SHARE * meter.budget;
  }

  /** All rounds, until there is no gap, or the work for it is used up. */
  *run(): Generator<void, void> {
    const { keeper, meter } = this;
    // Where hardly two blanks are alike, taking out and putting back does best; where they repeat, a linear plan does.
    if (!this.#repeating) yield* this.#refillFirst();
    if (keeper.proven) return;
    if (!keeper.hopeless) yield* this.#narrowing.price('quick');
    let values = this.#narrowing.shakenValues();
    let { draft } = keeper;
    for (
      let round = 0;
      round < MOST_ROUNDS && !keeper.proven && !keeper.hopeless && meter.spent < NARROWING_SHARE * meter.budget;
      round += 1
    ) {
      yield* this.#bySheets(round);
      if (!keeper.proven) yield* this.#place();
      if (keeper.proven) return;
      if (this.#repeating || round % 4 === 3) {
        // By the prices of the linear plan, then corrected by what each filling did badly.
        values =
          round % CORRECTIONS === 0
            ? this.#narrowing.shakenValues()
            : correctValues(this.task, draft, values, this.random);
        const repeated = round % 2 === 0 ? Number.POSITIVE_INFINITY : 1;
        draft = fillGreedily(this.task, values, round % 4 === 0 ? MANY_POINTS : MORE_POINTS, meter, repeated);
        keeper.offer(draft);
        this.#narrowing.learn(draft);
      }
      yield;
    }
  }

  *#refillFirst(): Generator<void, void> {
    const { keeper, meter } = this;
    for (let run = 0; run < FIRST_RUNS && !keeper.proven; run += 1) yield* this.#narrowing.refilling.goOn();
    for (let run = 0; run < FRESH_RUNS && !keeper.proven; run += 1)
      yield* this.#narrowing.refilling.afresh(this.#fresh);
    // Many blanks that are to go onto one sheet: how sheets share them is no question then, and prices say little.
    if (copiesOf(this.task) < MANY_ON_ONE) return;
    for (let run = 0; keeper.complete && !keeper.proven && keeper.sheets === 2; run += 1) {
      const before = meter.spent;
      if (before >= ONE_SHEET_SHARE * meter.budget) return;
      const share = ONE_SHEET_RUNS[run % ONE_SHEET_RUNS.length] as number;
      yield* this.#narrowing.refilling.afresh(share * meter.budget);
      // There is nothing to try.
      if (meter.spent === before) return;
    }
  }

  /** What one round does about whole sheets; ends early when the best draft is proven. */
  *#bySheets(round: number): Generator<void, void> {
    const narrowing = this.#narrowing;
    // Prices come first where blanks repeat.
    const exact = this.#repeating ? 0 : EXACT_ROUND;
    const closing = this.#repeating ? 0 : EXACT_ROUND + 1;
    const open = (): boolean => !this.keeper.proven;
    if (round % 2 === 0) yield* narrowing.refilling.refill(true, round >= TIGHT_ROUNDS);
    else yield* narrowing.refilling.goOn();
    if (open() && this.#repeating && round === 0 && this.keeper.sheets <= FEW_SHEETS)
      yield* narrowing.refilling.afresh(this.#fresh);
    if (open() && round === exact) yield* narrowing.price('exact');
    // The groups that closing and gathering make know no pinwheels.
    if (open() && round === closing && !mayStop(this.task)) yield* narrowing.close();
    if (round <= EXACT_ROUND) return;
    if (open() && round % DIVING_ROUNDS === 0) yield* narrowing.dive();
    if (open() && round % DIVING_ROUNDS !== 0 && !mayStop(this.task)) yield* narrowing.gather();
    // Longer and longer: what short runs do not find, a long one may.
    if (open()) yield* narrowing.refilling.afresh(this.#fresh * (1 + (round - EXACT_ROUND) / 2));
  }

  /** Placing one by one costs little where blanks are few, and finds what the others do not. */
  *#place(): Generator<void, void> {
    const { task, keeper, meter } = this;
    const rules = this.#rules;
    const until = meter.spent + PLACING_SHARE * meter.budget;
    for (let shake = 0; shake < MOST_SHAKES && rules.length > 0 && !keeper.proven && meter.spent < until; shake += 1) {
      const inTurn = shake % 2 === 0;
      const rule = rules[inTurn ? this.#tried % rules.length : Math.floor(this.random() * rules.length)];
      if (inTurn) this.#tried += 1;
      if (rule)
        keeper.offer(insertAll(task, inTurn ? rule : { ...rule, order: shakenOrder(task, this.random) }, meter));
      if (shake % SHAKES === SHAKES - 1) yield;
    }
  }
}

/** Narrows the gap between the best draft and the bound until there is none, or the work for it is used up. */
export function narrow(task: Task, keeper: Keeper, random: () => number, meter: Meter): Generator<void, void> {
  return new Rounds(task, keeper, random, meter).run();
}
