import { putBackKept, type TakenOff } from './sketch-store.js';

/** How long what was taken off can be put back at least, in milliseconds. */
const AT_LEAST = 10_000;

/**
 * What was taken off the shelf while it was looked at, newest first. It can be put back as long as somebody looks at the
 * shelf, and for ten seconds at least.
 */
export class TakenOffShelf {
  #taken: readonly { readonly taken: TakenOff; readonly since: number }[] = [];
  #lookers = 0;

  get all(): readonly TakenOff[] {
    return this.#taken.map(({ taken }) => taken);
  }

  add(taken: TakenOff): void {
    this.#taken = [{ taken, since: Date.now() }, ...this.#taken];
  }

  /** Puts it back; false when the sketch has been kept anew meanwhile. @throws KeepError, and it can still be put back */
  async putBack(taken: TakenOff): Promise<boolean> {
    const back = await putBackKept(taken);
    this.#taken = this.#taken.filter((other) => other.taken !== taken);
    return back;
  }

  /** The shelf is looked at from now until the function that comes back is called. */
  look(): () => void {
    if (this.#lookers === 0) this.#forget();
    this.#lookers += 1;
    return () => {
      this.#lookers -= 1;
    };
  }

  /** What was taken off when nobody looks any more, ten seconds ago or longer, is gone for good. */
  #forget(): void {
    this.#taken = this.#taken.filter(({ since }) => Date.now() - since < AT_LEAST);
  }
}
