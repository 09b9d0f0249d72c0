import type { Length } from '../length/length.js';
import { ticks } from '../length/length.js';
import type { Rect } from '../rect/rect.js';
import { splitRect } from '../rect/rect.js';
import { type CutNode, pinwheelParts } from './cut-tree.js';
import { Heap } from './heap.js';
import type { CutPlan, SheetLayout } from './plan.js';

/** One cut of a plan, as a person makes it: the guide is set to `setting`, and `part` of layout `sheet` is cut there. */
export interface CutStep {
  readonly sheet: number;
  /** Sheets cut alike: the same cut is made on each, or on a stack of them. */
  readonly copies: number;
  readonly direction: 'vertical' | 'horizontal';
  readonly setting: Length;
  /** The part that is cut, in the sheet's own coordinates. */
  readonly part: Rect;
}

interface Open {
  readonly step: CutStep;
  readonly after: readonly (readonly [CutNode, Rect])[];
}

function cutsAt(node: CutNode, box: Rect, sheet: number, copies: number, kerf: Length): readonly Open[] {
  if (node.is === 'cut') {
    const { direction, at, first, second } = node;
    const [near, far] = splitRect(box, direction === 'vertical' ? 'x' : 'y', at, kerf);
    const step: CutStep = { sheet, copies, direction, setting: at, part: box };
    return [
      {
        step,
        after: [
          [first, near],
          [second, far],
        ],
      },
    ];
  }
  if (node.is !== 'pinwheel') return [];
  const { x1, x2, y1, y2 } = node;
  const stopped: readonly (readonly ['vertical' | 'horizontal', Length])[] = [
    ['horizontal', y1],
    ['vertical', x2],
    ['horizontal', y2],
    ['vertical', x1],
  ];
  const steps = stopped.map(
    ([direction, setting]): Open => ({ step: { sheet, copies, direction, setting, part: box }, after: [] }),
  );
  const last = steps.pop();
  return last ? [...steps, { ...last, after: pinwheelParts(node, box) }] : steps;
}

/** Which of two cuts at one setting comes first: by sheet, then from the top, then from the left. */
function earlier({ step: a }: Open, { step: b }: Open): number {
  return a.sheet - b.sheet || a.part.y - b.part.y || a.part.x - b.part.x;
}

/** Open cuts by setting, the widest setting at hand. */
class OpenCuts {
  readonly #bySetting = new Map<Length, Heap<Open>>();
  readonly #settings = new Heap<Length>((a, b) => b - a);

  add(open: Open): void {
    const { setting } = open.step;
    const known = this.#bySetting.get(setting);
    const waiting = known ?? new Heap(earlier);
    if (!known) this.#bySetting.set(setting, waiting);
    if (waiting.size === 0) this.#settings.add(setting);
    waiting.add(open);
  }

  /** The next cut at `setting` if there is one, else at the widest setting; undefined when all is cut. */
  take(setting: Length): Open | undefined {
    const here = this.#bySetting.get(setting);
    if (here && here.size > 0) return here.take();
    for (let widest = this.#settings.take(); widest !== undefined; widest = this.#settings.take()) {
      const waiting = this.#bySetting.get(widest);
      if (waiting && waiting.size > 0) return waiting.take();
    }
    return undefined;
  }
}

/**
 * The cuts of a plan in an order for a person at a trimmer: all that can be done at the setting that stands is done,
 * then the widest setting that is wanted next; a part is cut only after the cut that made it. Layouts share settings.
 */
export function cutSteps(sheets: readonly SheetLayout[], kerf: Length): readonly CutStep[] {
  const open = new OpenCuts();
  for (const [sheet, layout] of sheets.entries()) {
    for (const cut of cutsAt(layout.tree, layout.usable, sheet, layout.copies, kerf)) open.add(cut);
  }
  const steps: CutStep[] = [];
  let setting = ticks(0);
  for (let next = open.take(setting); next; next = open.take(setting)) {
    setting = next.step.setting;
    steps.push(next.step);
    const { sheet, copies } = next.step;
    for (const [node, box] of next.after) for (const cut of cutsAt(node, box, sheet, copies, kerf)) open.add(cut);
  }
  return steps;
}

/** Runs of consecutive steps at one setting. */
export function countSettings(steps: readonly CutStep[]): number {
  return steps.filter((step, index) => index === 0 || step.setting !== steps[index - 1]?.setting).length;
}

/** The steps of a whole plan. */
export function planSteps(plan: CutPlan, kerf: Length): readonly CutStep[] {
  return cutSteps(plan.sheets, kerf);
}
