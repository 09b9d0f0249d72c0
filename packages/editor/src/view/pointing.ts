/** Which piece the pointer or the keyboard focus rests on, shared by all parts of one editor so that all light it up. */
export class Pointing {
  #piece: string | null = null;
  readonly #listeners = new Set<(piece: string | null) => void>();

  get piece(): string | null {
    return this.#piece;
  }

  set piece(piece: string | null) {
    if (piece === this.#piece) return;
    this.#piece = piece;
    for (const listener of this.#listeners) listener(piece);
  }

  /** Calls `listener` whenever another piece is pointed at; the function that comes back ends it. */
  subscribe(listener: (piece: string | null) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}
