import { cutSlice, GROUP, leafSlice, type Slice } from './slice.js';

/** How a blank may lie; sides with the kerf. */
export interface Lie {
  readonly turned: boolean;
  readonly w: number;
  readonly h: number;
}

/** A place for one more blank in a group: where it joins, and what that wastes. */
export interface Spot {
  /** The part at each level that leads to the place, from the top; joined as a new part of the last, or paired with it. */
  readonly path: readonly number[];
  readonly pairs: boolean;
  readonly vertical: boolean;
  readonly lie: Lie;
  /** Growth of what the groups need as a rectangle beyond the blank's own area; 0 or less fills what was wasted. */
  readonly waste: number;
}

/** Looks for the place that wastes least; keeps the best of all groups it is shown. */
export class SpotSearch {
  #stack: Slice[] = [];
  #path: number[] = [];
  #width = 0;
  #height = 0;
  #least = Number.POSITIVE_INFINITY;
  #found: Omit<Spot, 'waste'> | null = null;
  /** Places looked at, over the life of the search. */
  looked = 0;

  /** `blink` is the share of places that are overlooked, by `random`, so that repeated searches differ. */
  constructor(
    private readonly blink: number,
    private readonly random: () => number,
  ) {}

  /** Forgets the best place and accepts only what wastes less than `below`. */
  start(below: number): void {
    this.#least = below;
    this.#found = null;
  }

  /** Shows `root`, in a sheet `width x height`; true when it has a better place for one of `lies` than any before. */
  look(root: Slice, width: number, height: number, lies: readonly Lie[]): boolean {
    this.#width = width;
    this.#height = height;
    const before = this.#found;
    for (const lie of lies) this.#visit(root, 0, lie);
    return this.#found !== before;
  }

  get best(): Spot | null {
    return this.#found && { ...this.#found, waste: this.#least };
  }

  #visit(node: Slice, depth: number, lie: Lie): void {
    this.#stack[depth] = node;
    const { w, h } = lie;
    if (node.kind === GROUP) {
      if (node.vertical) this.#consider(depth, node.w + w, Math.max(node.h, h), lie, false, true);
      else this.#consider(depth, Math.max(node.w, w), node.h + h, lie, false, false);
    }
    if (node.kind !== GROUP || depth === 0) {
      // Pairing along the direction of the group around, or of the group itself, would be the same as joining that.
      const taken = depth > 0 ? this.#stack[depth - 1]?.vertical : node.kind === GROUP ? node.vertical : undefined;
      if (taken !== true) this.#consider(depth, node.w + w, Math.max(node.h, h), lie, true, true);
      if (taken !== false) this.#consider(depth, Math.max(node.w, w), node.h + h, lie, true, false);
    }
    // The arms of a pinwheel stay as they are.
    if (node.kind !== GROUP) return;
    const { parts } = node;
    for (let at = 0; at < parts.length; at += 1) {
      const part = parts[at] as Slice;
      // Equal neighbours offer equal places.
      if (at > 0 && part.kind >= 0 && part.kind === parts[at - 1]?.kind && part.w === parts[at - 1]?.w) continue;
      this.#path[depth] = at;
      this.#visit(part, depth + 1, lie);
    }
  }

  #consider(depth: number, width: number, height: number, lie: Lie, pairs: boolean, vertical: boolean): void {
    this.looked += 1;
    if (width > this.#width || height > this.#height) return;
    let node = this.#stack[depth] as Slice;
    let [w, h] = [width, height];
    let growth = w * h - node.w * node.h;
    for (let level = depth - 1; level >= 0; level -= 1) {
      const around = this.#stack[level] as Slice;
      const wider = around.vertical ? around.w - node.w + w : Math.max(around.w, w);
      const higher = around.vertical ? Math.max(around.h, h) : around.h - node.h + h;
      if (wider === around.w && higher === around.h) break;
      if (wider > this.#width || higher > this.#height) return;
      growth = wider * higher - around.w * around.h;
      node = around;
      w = wider;
      h = higher;
    }
    const waste = growth - lie.w * lie.h;
    if (waste >= this.#least) return;
    if (this.blink > 0 && this.random() < this.blink) return;
    this.#least = waste;
    this.#found = { path: this.#path.slice(0, depth), pairs, vertical, lie };
  }
}

/** `root` with a blank of `kind` at `spot`. */
export function insertAt(root: Slice, spot: Spot, kind: number, level = 0): Slice {
  const at = spot.path[level];
  if (at !== undefined) {
    const parts = root.parts.map((part, index) => (index === at ? insertAt(part, spot, kind, level + 1) : part));
    return cutSlice(root.vertical, parts);
  }
  const leaf = leafSlice(kind, spot.lie.turned, spot.lie.w, spot.lie.h);
  return cutSlice(spot.vertical, spot.pairs ? [root, leaf] : [...root.parts, leaf]);
}
