const WORD = 30;

/**
 * Counts of kinds, each at most its demand, in a few whole numbers: adding two is adding the numbers, and a guard bit at
 * each kind shows where the sum is more than the demand.
 */
export class Packing {
  readonly words: number;
  readonly #places: readonly { readonly word: number; readonly shift: number; readonly mask: number }[];
  readonly #spare: Int32Array;
  readonly #guards: Int32Array;

  constructor(demands: readonly number[]) {
    let word = 0;
    let used = 0;
    this.#places = demands.map((demand) => {
      const bits = Math.ceil(Math.log2(demand + 1)) + 1;
      if (used + bits > WORD) {
        word += 1;
        used = 0;
      }
      const place = { word, shift: used, mask: 2 ** bits - 1 };
      used += bits;
      return place;
    });
    this.words = word + 1;
    this.#spare = new Int32Array(this.words);
    this.#guards = new Int32Array(this.words);
    demands.forEach((demand, kind) => {
      const { word: at, shift, mask } = this.#places[kind] as { word: number; shift: number; mask: number };
      const guard = (mask + 1) / 2;
      this.#spare[at] = (this.#spare[at] as number) + (guard - 1 - demand) * 2 ** shift;
      this.#guards[at] = (this.#guards[at] as number) + guard * 2 ** shift;
    });
  }

  /** One blank of `kind`. */
  single(kind: number): Int32Array {
    const packed = new Int32Array(this.words);
    const { word, shift } = this.#places[kind] as { word: number; shift: number };
    packed[word] = 2 ** shift;
    return packed;
  }

  pack(counts: readonly number[]): Int32Array {
    const packed = new Int32Array(this.words);
    counts.forEach((count, kind) => {
      const { word, shift } = this.#places[kind] as { word: number; shift: number };
      packed[word] = (packed[word] as number) + count * 2 ** shift;
    });
    return packed;
  }

  count(packed: Int32Array, kind: number): number {
    const { word, shift, mask } = this.#places[kind] as { word: number; shift: number; mask: number };
    return ((packed[word] as number) >> shift) & mask;
  }

  /** True when the two together are within the demand. */
  fits(a: Int32Array, b: Int32Array): boolean {
    for (let word = 0; word < this.words; word += 1) {
      const sum = (a[word] as number) + (b[word] as number) + (this.#spare[word] as number);
      if ((sum & (this.#guards[word] as number)) !== 0) return false;
    }
    return true;
  }

  add(a: Int32Array, b: Int32Array): Int32Array {
    const sum = new Int32Array(this.words);
    for (let word = 0; word < this.words; word += 1) sum[word] = (a[word] as number) + (b[word] as number);
    return sum;
  }
}
