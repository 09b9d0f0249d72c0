/**
 * One key held down: its repeats belong to one gesture, which ends when the key goes up, another one goes down, or the
 * focus leaves. Calls `settle` with the gesture's id at the end.
 */
export class HeldKey {
  #code: string | null = null;
  #count = 0;

  constructor(private readonly settle: (gesture: string) => void) {}

  /** The gesture that pressing `code` belongs to: a new one unless it is a repeat of the key that is held. */
  press(code: string, repeat: boolean): string {
    if (!repeat || code !== this.#code) {
      this.end();
      this.#code = code;
      this.#count += 1;
    }
    return this.#id;
  }

  /** The key `code` goes up. */
  release(code: string): void {
    if (code === this.#code) this.end();
  }

  end(): void {
    if (this.#code === null) return;
    this.#code = null;
    this.settle(this.#id);
  }

  get #id(): string {
    return `keys-${this.#count}`;
  }
}
