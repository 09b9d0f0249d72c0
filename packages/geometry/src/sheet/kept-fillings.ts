/** One way to fill a part: a blank, or two fillings side by side or below each other. */
export interface Filling {
  /** Counts of the kinds, packed by `Packing`. */
  readonly packed: Int32Array;
  readonly worth: number;
  /** Equal counts have equal keys; unequal ones nearly always do not. */
  readonly key: number;
  readonly way: number;
  readonly vertical: boolean;
  readonly first: Filling | null;
  readonly second: Filling | null;
}

/** The fillings of one part that are worth most, one for the same numbers of the kinds. */
export class KeptFillings {
  readonly #found = new Map<number, Filling>();
  /** Fillings that are worth less are of no use. */
  floor: number;
  /** True once a filling was left out that could have been of use. */
  short = false;

  constructor(
    least: number,
    private readonly most: number,
  ) {
    this.floor = least;
  }

  /** True when the sum of `a` and `b` is kept, or something else under the same key. */
  knows(key: number, a: Int32Array, b: Int32Array | null): boolean {
    const known = this.#found.get(key);
    if (!known) return false;
    if (known.packed.some((word, at) => word !== (a[at] as number) + (b?.[at] ?? 0))) this.short = true;
    return true;
  }

  keep(filling: Filling): void {
    this.#found.set(filling.key, filling);
    if (this.#found.size < 2 * this.most) return;
    const best = this.#sorted();
    for (const { key } of best.splice(this.most)) this.#found.delete(key);
    this.floor = best.at(-1)?.worth ?? this.floor;
    this.short = true;
  }

  #sorted(): Filling[] {
    return [...this.#found.values()].sort((a, b) => b.worth - a.worth);
  }

  /** Those worth most first. */
  all(): readonly Filling[] {
    const all = this.#sorted();
    if (all.length > this.most) this.short = true;
    return all.slice(0, this.most);
  }
}
