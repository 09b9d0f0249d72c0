import type { SheetLayout } from '../cut/plan.js';
import type { Length } from '../length/length.js';
import { type CutDirection, earlier, firstCuts, type PlannedCut } from './cut-graph.js';
import { Heap } from './heap.js';

/** Where a setting is finished: the longer cut, then the wider setting. */
function longer(a: PlannedCut, b: PlannedCut): number {
  return b.along - a.along || b.setting - a.setting || earlier(a, b);
}

/** Where a setting will be wanted again: the cut with most moves of the guide behind it, then the wider setting. */
function deeper(a: PlannedCut, b: PlannedCut): number {
  return b.moves - a.moves || b.setting - a.setting || longer(a, b);
}

/** Whether `cut` comes before `first`, the first so far of those that wait. */
function leads(cut: PlannedCut, first: PlannedCut | null, compare: (a: PlannedCut, b: PlannedCut) => number): boolean {
  return first === null || first.made || compare(cut, first) < 0;
}

/** The cuts that can be made now. */
class OpenCuts {
  /** Cuts at settings that can be done with, by direction. */
  readonly #vertical = new Heap(longer);
  readonly #horizontal = new Heap(longer);
  /** Cuts at settings that will be wanted again. */
  readonly #others = new Heap(deeper);

  /** A group is emptied once it is begun, so that only the first of its cuts has to stand in each heap. */
  add(cut: PlannedCut): void {
    const { group } = cut;
    group.add(cut);
    group.reachable += cut.reach;
    if (leads(cut, group.longest(cut.direction), longer)) {
      group.lead(cut);
      if (group.finishing) this.#finishing(cut.direction).add(cut);
    }
    if (group.finishing) return;
    if (group.reachable === group.remaining) {
      group.finishing = true;
      for (const first of [group.longestVertical, group.longestHorizontal])
        if (first && !first.made) this.#finishing(first.direction).add(first);
    } else if (leads(cut, group.deepest, deeper)) {
      group.deepest = cut;
      this.#others.add(cut);
    }
  }

  #finishing(direction: CutDirection): Heap<PlannedCut> {
    return direction === 'vertical' ? this.#vertical : this.#horizontal;
  }

  #made(cut: PlannedCut): PlannedCut {
    cut.made = true;
    cut.group.remaining -= 1;
    cut.group.reachable -= cut.reach;
    return cut;
  }

  /**
   * The next cut after `last`: at its setting while there is one, in its direction first. Then a setting that is done
   * with once it is set, without a turn where that can be, the longest cut first; else the setting with most behind it.
   */
  take(last: PlannedCut | undefined): PlannedCut | undefined {
    const way = last?.direction ?? 'vertical';
    const across = way === 'vertical' ? 'horizontal' : 'vertical';
    const here = last && (last.group.take(way) ?? last.group.take(across));
    if (here) return this.#made(here);
    for (const direction of last ? ([way, across] as const) : this.#longestFirst()) {
      const next = waiting(this.#finishing(direction))?.group.take(direction);
      if (next) return this.#made(next);
    }
    const deepest = waiting(this.#others);
    if (!deepest) return undefined;
    const next = (last && deepest.group.take(way)) ?? deepest.group.take(deepest.direction);
    return next && this.#made(next);
  }

  #longestFirst(): readonly [CutDirection, CutDirection] {
    const level = this.#horizontal.least?.along ?? 0;
    return level > (this.#vertical.least?.along ?? 0) ? ['horizontal', 'vertical'] : ['vertical', 'horizontal'];
  }
}

/** The first of `heap` that is not made yet. */
function waiting(heap: Heap<PlannedCut>): PlannedCut | undefined {
  while (heap.least?.made) heap.take();
  return heap.least;
}

/**
 * All cuts of a plan in an order for a person at a trimmer, with few moves of the guide. All that can be done at the
 * setting that stands is done first. Then a setting that is done with for good is set (that never costs a move: those
 * cuts need one at least, and may as well come now), without a turn of the sheet if that can be, longest cut first.
 * When every setting will be wanted again, the one with most moves of the guide behind it comes first. A part is cut
 * only after the cut that made it; the parts of a pinwheel after its four cuts. Time: cuts times their logarithm.
 */
export function orderCuts(sheets: readonly SheetLayout[], kerf: Length): readonly PlannedCut[] {
  const open = new OpenCuts();
  for (const cut of firstCuts(sheets, kerf)) open.add(cut);
  const order: PlannedCut[] = [];
  for (let cut = open.take(undefined); cut; cut = open.take(cut)) {
    order.push(cut);
    cut.gate.left -= 1;
    if (cut.gate.left === 0) for (const next of cut.gate.next) open.add(next);
  }
  return order;
}
