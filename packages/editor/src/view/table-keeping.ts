import type { Sketch } from '@trimwell/sketch';
import type { Keeper } from '../keeping/keeper.js';
import type { Session } from '../session/session.js';

/** The table as what is kept of it sees it. */
export interface KeptTable {
  /** Opens a sketch in the session; nobody is told that the user did. */
  open(session: Session, sketch: Sketch): void;
  /** Called when there is another keeper, or trouble. */
  keepingChanged(): void;
}

/**
 * Keeps what is on the table of one editor in the place that it names. What does the keeping is loaded when there is a
 * place. The sketch that lay there last comes back, unless something else was laid on the table meanwhile: a sketch that
 * the page set anew, one from a link, or the user's own changes.
 */
export class TableKeeping {
  #keeper: Keeper | null = null;
  #trouble: string | null = null;
  #session: Session | null = null;
  #place: string | null = null;
  /** Something is on the table that is not to be changed for what lay there last. */
  #begun = false;
  #ready: Promise<void> = Promise.resolve();

  constructor(private readonly table: KeptTable) {}

  get keeper(): Keeper | null {
    return this.#keeper;
  }

  /** Why nothing is kept: what keeps could not be loaded. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** Keeps `session` in `place` from now on; null keeps nothing. `begun` tells that its sketch is to stay as it is. */
  follow(session: Session | null, place: string | null, begun = false): void {
    if (this.#session === session && this.#place === place) return;
    this.#keeper?.dispose();
    this.#keeper = null;
    this.#session = session;
    this.#place = place;
    this.#begun = begun;
    if (session && place !== null) this.#ready = this.#begin(session, place);
  }

  /** Lays `sketch` on the table of `session`, whatever is there; what lay there is kept first. */
  lay(session: Session, sketch: Sketch): void {
    this.#begun = true;
    if (this.#keeper) this.#keeper.lay(sketch);
    else this.table.open(session, sketch);
  }

  /** Lays a sketch that the user brought on the table, and keeps it at once. */
  async adopt(session: Session, sketch: Sketch): Promise<void> {
    this.#begun = true;
    await this.#ready;
    if (this.#keeper) this.#keeper.adopt(sketch);
    else this.table.open(session, sketch);
  }

  dispose(): void {
    this.follow(null, null);
  }

  async #begin(session: Session, place: string): Promise<void> {
    try {
      const { Keeper } = await import('./define-keeping.js');
      if (this.#session !== session || this.#place !== place) return;
      const keeper = new Keeper(session, place);
      this.#keeper = keeper;
      this.#trouble = null;
      this.table.keepingChanged();
      if (session.state.history.past.length > 0) await keeper.keepTable();
      else if (this.#begun) keeper.recognise();
      else await keeper.restore((sketch) => this.table.open(session, sketch));
    } catch (error) {
      this.#trouble = error instanceof Error ? error.message : String(error);
      this.table.keepingChanged();
    }
  }
}
