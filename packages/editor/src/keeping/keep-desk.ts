import type { Sketch } from '@trimwell/sketch';
import { asKeepError, type KeepError } from './keep-error.js';
import { describeSketch, type KeptSketch, newKeptId } from './kept-sketch.js';
import { keepPagePhotos } from './page-photos.js';
import { writeKept } from './sketch-store.js';

/** What a sketch on the table is in the database: a kept one and the revision it was worked out from, or (0) a new one. */
export interface Binding {
  id: string;
  revision: number;
  readonly aside: boolean;
}

/** The binding of a sketch that is none of the kept yet. */
export function newBinding(aside = false): Binding {
  return { id: newKeptId(), revision: 0, aside };
}

/** The binding of a kept sketch that was just read. */
export function boundTo({ id, revision, aside }: KeptSketch): Binding {
  return { id, revision, aside };
}

/** Those who hear what became of what waited. */
export interface DeskOwner {
  /** Whether this is what lies on the table now. */
  onTable(binding: Binding): boolean;
  /** `document` is in the database. */
  kept(binding: Binding, document: Sketch, kept: KeptSketch): void;
  /** Another tab was first: `theirs` was left alone, and `copy` goes on in place of `binding`. */
  parted(binding: Binding, copy: Binding, theirs: KeptSketch): void;
  /** Something failed, or is well again. */
  changed(): void;
}

/**
 * Where documents wait until they are in the database. They are written one after another, so that each starts from the
 * revision that the one before made; what fails stays here and is tried again the next time.
 */
export class KeepDesk {
  readonly #waiting = new Map<Binding, Sketch>();
  #queue: Promise<void> = Promise.resolve();
  #error: KeepError | null = null;

  constructor(
    private readonly place: string,
    private readonly owner: DeskOwner,
  ) {}

  /** Documents that wait, of the sketch on the table and of those that lay there before. */
  get waiting(): readonly Sketch[] {
    return [...this.#waiting.values()];
  }

  /** Why nothing could be written the last time, while something waits for it; else null. */
  get trouble(): KeepError | null {
    return this.#waiting.size > 0 ? this.#error : null;
  }

  waitsFor(binding: Binding): boolean {
    return this.#waiting.has(binding);
  }

  put(binding: Binding, document: Sketch): void {
    this.#waiting.set(binding, document);
  }

  withdraw(binding: Binding): void {
    this.#waiting.delete(binding);
  }

  /** Does `work` after all that was asked for before; a failure is told, not thrown. */
  inTurn(work: () => Promise<void>): Promise<void> {
    this.#queue = this.#queue.then(work).catch((error: unknown) => {
      this.#error = asKeepError(error);
      this.owner.changed();
    });
    return this.#queue;
  }

  /** Writes all that waits; settles when it is done or has failed. */
  writeAll(): Promise<void> {
    for (const binding of this.#waiting.keys()) void this.inTurn(() => this.#write(binding));
    return this.#queue;
  }

  /** Writes `document` for `binding` now, in a turn of its own; the newer one of another tab comes back when it was left alone. */
  async write(binding: Binding, document: Sketch): Promise<KeptSketch | null> {
    const { id, aside, revision } = binding;
    const wanted = { id, place: this.place, keptAt: Date.now(), aside, ...describeSketch(document) };
    await keepPagePhotos(wanted.document);
    const outcome = await writeKept(wanted, revision, this.owner.onTable(binding));
    if (outcome.kind === 'conflict') return outcome.theirs;
    binding.revision = outcome.kept.revision;
    this.#error = null;
    // A newer one may have come to wait while this one was written.
    if (this.#waiting.get(binding) === document) this.#waiting.delete(binding);
    this.owner.kept(binding, document, outcome.kept);
    return null;
  }

  async #write(binding: Binding): Promise<void> {
    const document = this.#waiting.get(binding);
    if (!document) return;
    const theirs = await this.write(binding, document);
    if (!theirs) return;
    // Nothing is overwritten and nothing lost: what waits is kept beside theirs until the user has chosen.
    const copy = newBinding(true);
    this.#waiting.set(copy, this.#waiting.get(binding) ?? document);
    this.#waiting.delete(binding);
    this.owner.parted(binding, copy, theirs);
    await this.#write(copy);
  }
}
