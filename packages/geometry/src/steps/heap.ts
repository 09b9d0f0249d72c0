/** A binary heap: `take` gives the least item by `compare`. Both cost the logarithm of the number of items. */
export class Heap<T> {
  readonly #items: T[] = [];

  constructor(private readonly compare: (a: T, b: T) => number) {}

  get size(): number {
    return this.#items.length;
  }

  /** The least item, left where it is. */
  get least(): T | undefined {
    return this.#items[0];
  }

  add(item: T): void {
    const items = this.#items;
    let at = items.push(item) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (this.compare(items[at] as T, items[above] as T) >= 0) return;
      [items[at], items[above]] = [items[above] as T, items[at] as T];
      at = above;
    }
  }

  take(): T | undefined {
    const items = this.#items;
    const least = items[0];
    const last = items.pop();
    if (items.length === 0 || last === undefined) return least;
    items[0] = last;
    let at = 0;
    for (;;) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      let next = at;
      if (left < items.length && this.compare(items[left] as T, items[next] as T) < 0) next = left;
      if (right < items.length && this.compare(items[right] as T, items[next] as T) < 0) next = right;
      if (next === at) return least;
      [items[at], items[next]] = [items[next] as T, items[at] as T];
      at = next;
    }
  }
}
