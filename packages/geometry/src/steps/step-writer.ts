import { type CutNode, pinwheelParts } from '../cut/cut-tree.js';
import type { SheetLayout } from '../cut/plan.js';
import type { Length } from '../length/length.js';
import { type Rect, rect } from '../rect/rect.js';
import type { CutDirection, Gate, PlannedCut } from './cut-graph.js';
import { LikeParts } from './like-parts.js';
import type { Fate, Given, Handled, Stop, TrimStep } from './trim-step.js';

/** Cuts that take like strips off one part, one after the other; one cut where there is no such row. */
export type Chain = readonly PlannedCut[];

/** What a step list is written with. */
export interface StepRules {
  readonly kerf: Length;
  readonly stack: number;
  readonly keep: Length;
}

/** A part that lies there after a step, and the node that says what becomes of it. */
type Left = readonly [node: CutNode, place: Rect];

/** Where a pinwheel's cut starts, and how long it is; see `PinwheelNode` for its arms. */
function stopOf({ node, part, stopped }: PlannedCut): Stop | null {
  if (node.is !== 'pinwheel') return null;
  const { x1, x2, y1, y2, hand } = node;
  const [near, far] = hand === 'clockwise' ? (['left', 'right'] as const) : (['right', 'left'] as const);
  if (stopped === 'y1') return { start: near, length: x2 };
  if (stopped === 'x2') return { start: 'top', length: y2 };
  if (stopped === 'y2') return { start: far, length: (part.width - x1) as Length };
  return { start: 'bottom', length: (part.height - y1) as Length };
}

/** The two parts that a cut from edge to edge leaves; the far one without width where the blade eats it. */
function halves({ direction, setting, part }: PlannedCut, kerf: Length): readonly [Rect, Rect] {
  const { x, y, width, height } = part;
  const gone = setting + kerf;
  return direction === 'vertical'
    ? [rect(x, y, setting, height), rect(x + gone, y, width - gone, height)]
    : [rect(x, y, width, setting), rect(x, y + gone, width, height - gone)];
}

/** Writes the steps of one plan; remembers how the guide stands, how the work lies and which cuts are made. */
export class StepWriter {
  readonly steps: TrimStep[] = [];
  settings = 0;
  turns = 0;
  direction: CutDirection | null = null;
  readonly #like = new LikeParts();
  readonly #made = new Map<Gate, PlannedCut[]>();
  readonly #rules: StepRules;
  #setting: Length | null = null;

  constructor(rules: StepRules) {
    this.#rules = rules;
  }

  /** Cuts that can be one step have equal keys: same layout, like parts in the same state, the same cut. */
  key(cut: PlannedCut): string {
    const slits = cut.stopped ? (this.#made.get(cut.gate) ?? []).map(({ stopped }) => stopped).sort() : [];
    return [cut.sheet, this.#like.kind(cut.node, cut.part), cut.direction, cut.stopped, ...slits].join(' ');
  }

  /** `cut`, and the like cuts that follow on what is left of its part. */
  chain(cut: PlannedCut): Chain {
    const chain = [cut];
    for (let last: PlannedCut | undefined = cut; last; ) {
      const { node }: PlannedCut = last;
      if (node.is !== 'cut') break;
      const rest: Rect = halves(last, this.#rules.kerf)[1];
      const next: PlannedCut | undefined = last.gate.next.find(({ part }) => part.x === rest.x && part.y === rest.y);
      if (next?.node.is !== 'cut' || next.direction !== cut.direction || next.setting !== cut.setting) break;
      if (this.#like.shape(next.node.first) !== this.#like.shape(node.first)) break;
      chain.push(next);
      last = next;
    }
    return chain;
  }

  /** A whole sheet: its margins come off, or it is taken as it is, or there is nothing to say. */
  whole(sheet: number, { width, height, usable, tree, copies }: SheetLayout): void {
    const handled = this.#handled(sheet, copies, null, [rect(0, 0, width, height)]);
    if (usable.width < width || usable.height < height) {
      const right = (width - usable.x - usable.width) as Length;
      const bottom = (height - usable.y - usable.height) as Length;
      const margins = { top: usable.y, right, bottom, left: usable.x };
      this.steps.push({ do: 'margins', ...handled, margins, gives: this.#gives(sheet, [[tree, usable]]) });
    } else if (tree.is === 'blank' || tree.is === 'offcut') {
      this.steps.push({ do: 'take', ...handled, gives: this.#gives(sheet, [[tree, usable]]) });
    }
  }

  /** One step for like parts, each cut by one of `chains`. Gives the cuts that it opens. */
  cut(chains: readonly Chain[], first: PlannedCut, whole: boolean): readonly PlannedCut[] {
    const { sheet, copies, direction, setting, node } = first;
    const set = setting !== this.#setting;
    const turn = this.direction !== null && direction !== this.direction;
    if (set) this.settings += 1;
    if (turn) this.turns += 1;
    this.#setting = setting;
    this.direction = direction;
    const opened = chains.flatMap((chain) => this.#make(chain));
    const mirrored = node.is === 'pinwheel' && node.hand === 'counterclockwise';
    const places = chains.flatMap(([head]) => (head ? [head.part] : []));
    this.steps.push({
      do: 'cut',
      ...this.#handled(sheet, copies, whole ? null : this.#like.number(sheet, node, first.part), places),
      direction,
      setting,
      from: direction === 'horizontal' ? 'top' : mirrored ? 'right' : 'left',
      times: chains[0]?.length ?? 0,
      stop: stopOf(first),
      set,
      turn,
      gives: this.#gives(
        sheet,
        chains.flatMap((chain) => this.#left(chain)),
      ),
    });
    return opened;
  }

  #make(chain: Chain): readonly PlannedCut[] {
    return chain.flatMap((cut) => {
      const made = [...(this.#made.get(cut.gate) ?? []), cut];
      this.#made.set(cut.gate, made);
      return made.length === cut.gate.cuts ? cut.gate.next.filter((next) => !chain.includes(next)) : [];
    });
  }

  /** The parts that lie there after `chain` is made; none before a pinwheel's fourth cut. */
  #left(chain: Chain): readonly Left[] {
    return chain.flatMap((cut, index): readonly Left[] => {
      const { node, part, gate } = cut;
      if (node.is === 'pinwheel') return this.#made.get(gate)?.length === gate.cuts ? pinwheelParts(node, part) : [];
      const [near, far] = halves(cut, this.#rules.kerf);
      const strip: Left = [node.first, near];
      return index === chain.length - 1 ? [strip, [node.second, far]] : [strip];
    });
  }

  #handled(sheet: number, copies: number, part: number | null, places: readonly Rect[]): Handled {
    const pieces = places.length * copies;
    const { width, height } = places[0] ?? rect(0, 0, 0, 0);
    const atOnce = Math.min(this.#rules.stack, pieces);
    return { sheet, part, width, height, places, pieces, atOnce, stacks: Math.ceil(pieces / atOnce) };
  }

  #fate(node: CutNode, place: Rect, sheet: number): Fate {
    if (node.is === 'blank') return { is: 'blank', blank: node.blank, turned: node.turned };
    if (node.is === 'offcut') return { is: 'offcut', keep: Math.min(place.width, place.height) >= this.#rules.keep };
    return { is: 'part', part: this.#like.number(sheet, node, place) };
  }

  /** Like parts said once; what the blade ate whole is not there. */
  #gives(sheet: number, left: readonly Left[]): readonly Given[] {
    const found = new Map<string, { readonly fate: Fate; readonly places: Rect[] }>();
    for (const [node, place] of left) {
      if (place.width === 0 || place.height === 0) continue;
      const kind = this.#like.kind(node, place);
      const known = found.get(kind);
      if (known) known.places.push(place);
      else found.set(kind, { fate: this.#fate(node, place, sheet), places: [place] });
    }
    return [...found.values()].map(({ fate, places }) => {
      const { width, height } = places[0] ?? rect(0, 0, 0, 0);
      return { fate, width, height, places };
    });
  }
}
