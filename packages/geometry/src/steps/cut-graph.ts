import { type CutNode, type PinwheelNode, pinwheelParts, type SplitNode } from '../cut/cut-tree.js';
import type { SheetLayout } from '../cut/plan.js';
import type { Length } from '../length/length.js';
import { type Rect, splitRect } from '../rect/rect.js';
import { Heap } from './heap.js';

export type CutDirection = SplitNode['direction'];

/** The four cuts of a pinwheel in the order in which they turn around its centre. */
export type StoppedCut = 'y1' | 'x2' | 'y2' | 'x1';

/** What opens once `left` cuts more are made: one for a cut from edge to edge, all four of a pinwheel. */
export interface Gate {
  readonly cuts: number;
  readonly next: readonly PlannedCut[];
  left: number;
}

/** One cut of a plan, and what it needs to be put in order. */
export interface PlannedCut {
  readonly node: SplitNode | PinwheelNode;
  readonly sheet: number;
  readonly copies: number;
  readonly direction: CutDirection;
  readonly setting: Length;
  /** Which cut of a pinwheel this is; null for a cut from edge to edge. */
  readonly stopped: StoppedCut | null;
  readonly part: Rect;
  readonly gate: Gate;
  /** How long the edges beside the cut are: a longer cut comes first. */
  readonly along: Length;
  /** Cuts at this setting that need no other setting in between, this one among them. */
  readonly reach: number;
  /** Times that the guide is moved at least from this cut to the end of any branch below it. */
  readonly moves: number;
  readonly group: SettingGroup;
  made: boolean;
}

/** All cuts at one setting: those that can be made now, and how many there are in all. */
export class SettingGroup {
  readonly setting: Length;
  vertical: Heap<PlannedCut> | null = null;
  horizontal: Heap<PlannedCut> | null = null;
  /** The longest that can be made now, by direction, and the one with most moves of the guide behind it. */
  longestVertical: PlannedCut | null = null;
  longestHorizontal: PlannedCut | null = null;
  deepest: PlannedCut | null = null;
  /** Cuts not made yet. */
  remaining = 0;
  /** Those of them that can be made without another setting in between. */
  reachable = 0;
  /** True once all that remains can be made at one go: nothing is gained by putting it off. */
  finishing = false;

  constructor(setting: Length) {
    this.setting = setting;
  }

  add(cut: PlannedCut): void {
    if (cut.direction === 'vertical') {
      this.vertical ??= new Heap(earlier);
      this.vertical.add(cut);
    } else {
      this.horizontal ??= new Heap(earlier);
      this.horizontal.add(cut);
    }
  }

  longest(direction: CutDirection): PlannedCut | null {
    return direction === 'vertical' ? this.longestVertical : this.longestHorizontal;
  }

  /** From now on `cut` is the longest in its direction. */
  lead(cut: PlannedCut): void {
    if (cut.direction === 'vertical') this.longestVertical = cut;
    else this.longestHorizontal = cut;
  }

  take(direction: CutDirection): PlannedCut | undefined {
    return (direction === 'vertical' ? this.vertical : this.horizontal)?.take();
  }
}

/** Which of two cuts in one direction at one setting comes first: by sheet, the longer, from the top, from the left. */
export function earlier(a: PlannedCut, b: PlannedCut): number {
  return a.sheet - b.sheet || b.along - a.along || a.part.y - b.part.y || a.part.x - b.part.x;
}

/** `splitRect` by plain objects, which is what the planner's thousands of trials need. @throws RangeError likewise. */
function halves(part: Rect, vertical: boolean, at: Length, kerf: Length): readonly [Rect, Rect] {
  const { x, y, width, height } = part;
  const rest = (vertical ? width : height) - at - kerf;
  if (at <= 0 || rest <= 0) return splitRect(part, vertical ? 'x' : 'y', at, kerf);
  return vertical
    ? [
        { x, y, width: at, height },
        { x: (x + at + kerf) as Length, y, width: rest as Length, height },
      ]
    : [
        { x, y, width, height: at },
        { x, y: (y + at + kerf) as Length, width, height: rest as Length },
      ];
}

/** The trees of a plan as cuts that open one another. */
class Cuts {
  readonly #groups = new Map<Length, SettingGroup>();

  constructor(private readonly kerf: Length) {}

  #groupOf(setting: Length): SettingGroup {
    let group = this.#groups.get(setting);
    if (!group) {
      group = new SettingGroup(setting);
      this.#groups.set(setting, group);
    }
    return group;
  }

  /** Adds to `into` the cuts that can be made as soon as `node` lies there as `part`. */
  grow(node: CutNode, part: Rect, sheet: number, copies: number, into: PlannedCut[]): void {
    if (node.is === 'cut') {
      const { direction, at: setting } = node;
      const vertical = direction === 'vertical';
      const [near, far] = halves(part, vertical, setting, this.kerf);
      const next: PlannedCut[] = [];
      this.grow(node.first, near, sheet, copies, next);
      this.grow(node.second, far, sheet, copies, next);
      const group = this.#groupOf(setting);
      group.remaining += 1;
      let reach = 1;
      let moves = 0;
      for (const cut of next) {
        if (cut.setting === setting) reach += cut.reach;
        moves = Math.max(moves, cut.moves + (cut.setting === setting ? 0 : 1));
      }
      const gate: Gate = { cuts: 1, next, left: 1 };
      const along = vertical ? part.height : part.width;
      const made = false;
      into.push({
        node,
        sheet,
        copies,
        direction,
        setting,
        stopped: null,
        part,
        gate,
        along,
        reach,
        moves,
        group,
        made,
      });
    } else if (node.is === 'pinwheel') {
      this.#growPinwheel(node, part, sheet, copies, into);
    }
  }

  #growPinwheel(node: PinwheelNode, part: Rect, sheet: number, copies: number, into: PlannedCut[]): void {
    const next: PlannedCut[] = [];
    for (const [arm, box] of pinwheelParts(node, part)) this.grow(arm, box, sheet, copies, next);
    const gate: Gate = { cuts: 4, next, left: 4 };
    const moves = next.reduce((most, cut) => Math.max(most, cut.moves), 0);
    for (const stopped of ['y1', 'x2', 'y2', 'x1'] as const) {
      const direction = stopped.startsWith('x') ? 'vertical' : 'horizontal';
      const setting = node[stopped];
      const group = this.#groupOf(setting);
      group.remaining += 1;
      const along = direction === 'vertical' ? part.height : part.width;
      into.push({
        node,
        sheet,
        copies,
        direction,
        setting,
        stopped,
        part,
        gate,
        along,
        reach: 1,
        moves: moves + 1,
        group,
        made: false,
      });
    }
  }
}

/** The cuts of a plan's trees that can be made on whole sheets, in the order of the sheets; their gates open the rest. */
export function firstCuts(sheets: readonly SheetLayout[], kerf: Length): readonly PlannedCut[] {
  const cuts = new Cuts(kerf);
  const first: PlannedCut[] = [];
  for (const [sheet, { tree, usable, copies }] of sheets.entries()) cuts.grow(tree, usable, sheet, copies, first);
  return first;
}
