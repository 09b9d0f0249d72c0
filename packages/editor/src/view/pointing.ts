/** What has become another: the piece that is pointed at, or whether presses gather. */
export type PointingChange = 'piece' | 'gathering';

/** Which piece the pointer or the keyboard focus rests on, shared by all parts of one editor so that all light it up. */
export class Pointing {
  #piece: string | null = null;
  #gathering = false;
  readonly #listeners = new Set<(changed: PointingChange) => void>();

  get piece(): string | null {
    return this.#piece;
  }

  set piece(piece: string | null) {
    if (piece === this.#piece) return;
    this.#piece = piece;
    for (const listener of this.#listeners) listener('piece');
  }

  /** True while every press takes one more piece, as it does with Shift held: for those who have no Shift at hand. */
  get gathering(): boolean {
    return this.#gathering;
  }

  set gathering(gathering: boolean) {
    if (gathering === this.#gathering) return;
    this.#gathering = gathering;
    for (const listener of this.#listeners) listener('gathering');
  }

  /** Calls `listener` whenever another piece is pointed at, or gathering begins or ends; the function that comes back ends it. */
  subscribe(listener: (changed: PointingChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}
