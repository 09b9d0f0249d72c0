import type { Trimmer } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { inches, type Length } from '../length/length.js';
import type { PlannedCut } from './cut-graph.js';
import { orderCuts } from './cut-order.js';
import { StepWriter } from './step-writer.js';
import type { StepList } from './trim-step.js';

export interface StepOptions {
  /** The most sheets or parts that are cut at once. Default 2 (common practice, no source). */
  readonly stack?: number;
  /** An offcut is kept when neither of its sides is shorter. Default 1 in (common practice, no source). */
  readonly keep?: Length;
}

/** Cuts in order, parted where the guide is moved. */
function runsOf(order: readonly PlannedCut[]): readonly (readonly PlannedCut[])[] {
  const runs: PlannedCut[][] = [];
  for (const cut of order) {
    const run = runs.at(-1);
    if (run && run[0]?.setting === cut.setting) run.push(cut);
    else runs.push([cut]);
  }
  return runs;
}

/** The cuts of one run that can be one step, by key, in the order in which they became possible. */
class OpenSteps {
  readonly #byKey = new Map<string, PlannedCut[]>();

  constructor(private readonly writer: StepWriter) {}

  add(cut: PlannedCut): void {
    const key = this.writer.key(cut);
    const known = this.#byKey.get(key);
    if (known) known.push(cut);
    else this.#byKey.set(key, [cut]);
  }

  /** Without a turn where that can be, then the longest cut, then the one that was possible first. */
  take(): readonly PlannedCut[] {
    let best: readonly [key: string, head: PlannedCut] | null = null;
    for (const [key, [head]] of this.#byKey) {
      if (!head) continue;
      const stays = head.direction === this.writer.direction;
      const known = best?.[1];
      const knownStays = known?.direction === this.writer.direction;
      if (!known || (stays === knownStays ? head.along > known.along : stays)) best = [key, head];
    }
    if (!best) return [];
    const [known, head] = best;
    const cuts = this.#byKey.get(known) ?? [];
    this.#byKey.delete(known);
    // Pinwheels that were alike may differ by a cut made since.
    const key = this.writer.key(head);
    const like = cuts.filter((cut) => this.writer.key(cut) === key);
    if (like.length < cuts.length) for (const cut of cuts) if (!like.includes(cut)) this.add(cut);
    return like;
  }
}

/**
 * The steps of `plan` for a person at a trimmer, in the order of `cutSteps`, as data. At one setting, like parts of one
 * layout are cut in one step, on one another up to `stack`, and strips of one kind off one part are said once with
 * their number; the order within a setting saves turns of the work, then takes the longest cut first.
 * @throws RangeError when `stack` is no whole number of 1 or more.
 */
export function stepList(
  plan: CutPlan,
  trimmer: Pick<Trimmer, 'kerf'>,
  { stack = 2, keep = inches(1) }: StepOptions = {},
): StepList {
  if (!Number.isSafeInteger(stack) || stack < 1)
    throw new RangeError(`stack is ${stack}; allowed: a whole number of 1 or more.`);
  const writer = new StepWriter({ kerf: trimmer.kerf, stack, keep });
  for (const [sheet, layout] of plan.sheets.entries()) writer.whole(sheet, layout);
  for (const run of runsOf(orderCuts(plan.sheets, trimmer.kerf))) {
    const members = new Set(run);
    const later = new Set(run.flatMap(({ gate }) => gate.next));
    const open = new OpenSteps(writer);
    for (const cut of run) if (!later.has(cut)) open.add(cut);
    for (let cuts = open.take(); cuts[0]; cuts = open.take()) {
      const { sheet, part } = cuts[0];
      const layout = plan.sheets[sheet];
      const whole = layout !== undefined && layout.width === part.width && layout.height === part.height;
      const chains = cuts.map((cut) => writer.chain(cut));
      for (const next of writer.cut(chains, cuts[0], whole)) if (members.has(next)) open.add(next);
    }
  }
  const { settings, turns, steps } = writer;
  return { stack, settings, turns, steps };
}
