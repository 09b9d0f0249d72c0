import { type Problem, readSketchText, type Sketch, type SketchReading } from '@trimwell/sketch';
import type { Session, SessionChange } from '../session/session.js';
import { type Binding, boundTo, KeepDesk, newBinding } from './keep-desk.js';
import { setKeeper } from './keepers.js';
import { documentText, type KeptSketch } from './kept-sketch.js';
import type { Choice, KeptState } from './kept-state.js';
import { Neighbours, type News } from './neighbours.js';
import { watchPage } from './page-moments.js';
import { clearForsakenPhotos } from './photo-store.js';
import { findKept, lastOnTable, noteOnTable, readKept, type TakenOff, takeOffKept } from './sketch-store.js';
import { recallTable, rememberTable } from './tab-memory.js';
import { TakenOffShelf } from './taken-off-shelf.js';

/** Changes within this time are kept together, in milliseconds: short enough that a killed tab loses next to nothing. */
const TOGETHER = 250;
/** Photographs that no kept sketch has ever shown are cleared after a week: until then another tab may still go back to one. */
const FORSAKEN_PHOTOS = 7 * 24 * 3_600_000;

/**
 * Keeps what is on the table of one session in the browser's database, in `place`: the last settled sketch, soon after
 * every change, never the middle of a gesture. It overwrites nothing that another tab has kept meanwhile; what cannot be
 * kept stays waiting and is tried again at the next change. It listens until `dispose`.
 */
export class Keeper {
  /** Sketches that were taken off the shelf and can be put back. */
  readonly takenOff = new TakenOffShelf();
  readonly #listeners = new Set<() => void>();
  readonly #neighbours = new Neighbours((news) => this.#hear(news));
  readonly #stop: () => void;
  readonly #stopPage: () => void;
  readonly #desk: KeepDesk;
  #binding: Binding;
  /** The document the session was opened with, and the one that needs no keeping. */
  #opened: Sketch;
  #settled: Sketch;
  #same: Sketch;
  #theirs: KeptSketch | null = null;
  #aside = false;
  #off = false;
  #keptAt: number | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #restoring = false;
  #touched = false;
  #askedToLast = false;

  constructor(
    readonly session: Session,
    readonly place: string,
  ) {
    this.#opened = this.#settled = this.#same = session.document;
    this.#binding = newBinding();
    this.#desk = new KeepDesk(place, {
      onTable: (binding) => binding === this.#binding,
      kept: (binding, document, kept) => this.#kept(binding, document, kept),
      parted: (binding, copy, theirs) => this.#parted(binding, copy, theirs),
      changed: () => this.#tell(),
    });
    this.#stop = session.subscribe((change) => this.#changed(change));
    setKeeper(session, this);
    this.#stopPage = watchPage({
      left: () => void this.keepNow(),
      seen: () => void this.#desk.inTurn(() => this.#look()),
      mayLose: () => this.state.kind === 'not kept',
    });
  }

  /** How it stands with the sketch on the table. */
  get state(): KeptState {
    const { trouble } = this.#desk;
    if (trouble) return { kind: 'not kept', trouble: trouble.trouble, reason: trouble.message };
    if (this.#theirs) return { kind: this.#aside ? 'kept aside' : 'newer elsewhere', theirs: this.#theirs };
    if (this.#desk.waiting.length > 0) return { kind: 'keeping' };
    if (this.#off) return { kind: 'off the shelf' };
    return this.#keptAt === null ? { kind: 'as it came' } : { kind: 'kept', at: this.#keptAt };
  }

  /** Id of the kept sketch on the table, or null when it is none of the kept. */
  get keptId(): string | null {
    return this.#binding.revision > 0 && !this.#off ? this.#binding.id : null;
  }

  /** True while the sketch that lay here last is being looked for. */
  get restoring(): boolean {
    return this.#restoring;
  }

  /** Sketches whose changes are not in the database yet, to be saved as files when they cannot be kept. */
  get waiting(): readonly Sketch[] {
    return this.#desk.waiting;
  }

  /** Calls `listener` whenever the state, or what the shelf holds, may be another; the function that comes back ends it. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Lays the sketch on the table that lay there last, in this tab if it is known, unless the user has begun on another.
   * When the kept one cannot be read, the table stays as it is and the reading comes back with its problems; null when
   * nothing is kept or the database cannot be used, which the state then tells. `open` puts it into the session, for
   * owners who want to know that this was not the user's doing.
   */
  async restore(open = (sketch: Sketch): void => this.session.open(sketch)): Promise<SketchReading | null> {
    this.#restoring = true;
    try {
      const recalled = recallTable(this.place);
      const kept = (recalled === null ? null : await readKept(recalled)) ?? (await lastOnTable(this.place));
      if (!kept || this.#touched) return null;
      const reading = readSketchText(kept.document);
      if (reading.ok) this.#lay(reading.sketch, kept, open);
      return reading;
    } catch (error) {
      await this.#desk.inTurn(() => Promise.reject(error));
      return null;
    } finally {
      this.#restoring = false;
      // What stays over from earlier is no reason to keep anybody waiting.
      void this.#desk.inTurn(async () => {
        await clearForsakenPhotos(Date.now() - FORSAKEN_PHOTOS);
      });
    }
  }

  /** What is on the table goes on being the kept sketch with the very same document, if the shelf holds one. */
  recognise(): void {
    this.#touched = true;
    this.#bind(this.session.document, this.#lookedFor(this.session.document));
  }

  /**
   * Opens `sketch` on the table. With `kept` it goes on being that one; without, the shelf is searched for the very same
   * document, and only changes make it a kept one. Whatever lay there before is kept first.
   */
  lay(sketch: Sketch, kept: KeptSketch | null = null): void {
    if (!this.#restoring) this.#touched = true;
    this.#lay(sketch, kept, () => this.session.open(sketch));
  }

  #lay(sketch: Sketch, kept: KeptSketch | null, open: (sketch: Sketch) => void): void {
    void this.keepNow();
    this.#bind(sketch, kept ? boundTo(kept) : this.#lookedFor(sketch));
    this.#keptAt = kept?.keptAt ?? null;
    if (kept) this.#note(kept.id);
    open(sketch);
    this.#tell();
  }

  /** Opens a sketch that the user brought, from a file or a link, and keeps it at once unless the shelf holds it already. */
  adopt(sketch: Sketch): void {
    this.#touched = true;
    this.lay(sketch);
    this.#wait();
  }

  /** Puts what is on the table on the shelf as it is, though nothing of it was changed. */
  keepTable(): Promise<void> {
    this.#touched = true;
    if (this.keptId === null) this.#desk.put(this.#binding, this.#settled);
    return this.keepNow();
  }

  /** Keeps what is waiting, now; settles when it is done or has failed, which the state tells. */
  keepNow(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    return this.#desk.writeAll();
  }

  /**
   * What is to become of two versions of the sketch on the table; nothing when there are none. When the other tab's cannot
   * be read, both stay as they are, and its problems come back.
   */
  async choose(choice: Choice): Promise<readonly Problem[]> {
    await this.keepNow();
    let problems: readonly Problem[] = [];
    await this.#desk.inTurn(async () => {
      if (!this.#theirs) return;
      if (choice === 'theirs') problems = await this.#takeTheirs(this.#theirs);
      else if (choice === 'both' && this.#aside) this.#theirs = null;
      else await this.#keepMine(this.#theirs, choice);
      this.#tell();
    });
    return problems;
  }

  /** Takes a sketch off the shelf, so that it can be put back. @throws KeepError */
  async takeOff(id: string): Promise<TakenOff | null> {
    await this.keepNow();
    const taken = await takeOffKept(id);
    if (!taken) return null;
    this.takenOff.add(taken);
    this.#hear({ kind: 'taken off', id });
    this.#neighbours.tell({ kind: 'taken off', id });
    // There is room now for what could not be kept.
    await this.keepNow();
    this.#tell();
    return taken;
  }

  /** Puts back what was taken off; false when the sketch has been kept anew meanwhile. @throws KeepError */
  async putBack(taken: TakenOff): Promise<boolean> {
    const back = await this.takenOff.putBack(taken);
    const { id } = taken.kept;
    this.#hear({ kind: 'put back', id });
    this.#neighbours.tell({ kind: 'put back', id });
    this.#tell();
    return back;
  }

  /** Stops listening; what is waiting is still kept. */
  dispose(): void {
    this.#stop();
    this.#touched = true;
    setKeeper(this.session, null);
    this.#stopPage();
    this.#listeners.clear();
    void this.keepNow().then(() => this.#neighbours.close());
  }

  #changed(change: SessionChange): void {
    const { session } = this;
    const { past, future } = session.state.history;
    const fresh = past.length === 0 && future.length === 0;
    if (fresh && (session.document !== this.#opened || session.document !== this.#settled)) {
      // Somebody else opened another sketch in the session: the user brought it.
      void this.keepNow();
      this.#touched = true;
      this.#bind(session.document, this.#lookedFor(session.document));
      this.#keptAt = null;
      this.#wait();
      return;
    }
    if (!change.document && !change.ended) return;
    if (past.length > 0) this.#touched = true;
    // In the middle of a gesture the last settled document is the one to keep, and what waits of it is kept at once.
    if (session.gesture !== null) {
      if (this.#timer !== null) void this.keepNow();
      return;
    }
    if (this.#settled === session.document) return;
    this.#settled = session.document;
    this.#wait();
  }

  /** Has the settled document kept soon; the time runs from the first change, so that a long row of changes is kept too. */
  #wait(): void {
    if (this.#settled === this.#same && this.#keptAt !== null && !this.#desk.waitsFor(this.#binding)) return;
    this.#desk.put(this.#binding, this.#settled);
    this.#timer ??= setTimeout(() => void this.keepNow(), TOGETHER);
    this.#tell();
  }

  /** A new binding that becomes the kept one if the shelf holds the same document; when that cannot be found out, it is new. */
  #lookedFor(sketch: Sketch): Binding {
    const binding = newBinding();
    const text = documentText(sketch);
    void this.#desk.inTurn(async () => {
      const found = await findKept(this.place, text);
      if (!found) return;
      binding.id = found.id;
      binding.revision = found.revision;
      if (this.#binding !== binding) return;
      this.#keptAt = found.keptAt;
      this.#note(found.id);
      this.#tell();
    });
    return binding;
  }

  #bind(sketch: Sketch, binding: Binding): void {
    this.#binding = binding;
    this.#opened = this.#settled = this.#same = sketch;
    this.#theirs = null;
    this.#aside = this.#off = false;
  }

  #note(id: string): void {
    rememberTable(this.place, id);
    void this.#desk.inTurn(() => noteOnTable(this.place, id));
  }

  #kept(binding: Binding, document: Sketch, kept: KeptSketch): void {
    if (binding === this.#binding) {
      this.#same = document;
      this.#keptAt = kept.keptAt;
      this.#off = false;
      rememberTable(this.place, kept.id);
    }
    this.#neighbours.tell({ kind: 'kept', id: kept.id, revision: kept.revision });
    this.#askToLast();
    this.#tell();
  }

  #parted(binding: Binding, copy: Binding, theirs: KeptSketch): void {
    if (binding !== this.#binding) return;
    this.#binding = copy;
    this.#theirs = theirs;
    this.#aside = true;
  }

  async #takeTheirs(theirs: KeptSketch): Promise<readonly Problem[]> {
    const newest = (await readKept(theirs.id)) ?? theirs;
    const reading = readSketchText(newest.document);
    if (!reading.ok) return reading.problems;
    if (this.#aside) await this.#withdraw(this.#binding);
    this.lay(reading.sketch, newest);
    return [];
  }

  /** Keeps what is on the table as a copy of its own, or in the place of theirs. */
  async #keepMine(theirs: KeptSketch, choice: 'both' | 'mine'): Promise<void> {
    const before = this.#binding;
    const document = this.#settled;
    const binding = choice === 'both' ? newBinding(true) : boundTo(theirs);
    const newer = await this.#desk.write(binding, document);
    if (newer) {
      // They went on in the meantime: what the user chose against is not what is there now.
      this.#theirs = newer;
      return;
    }
    if (this.#aside) await this.#withdraw(before);
    this.#binding = binding;
    this.#theirs = null;
    this.#aside = false;
    this.#same = document;
    this.#keptAt = Date.now();
    this.#note(binding.id);
    this.#wait();
  }

  /** Takes the copy away that was kept aside; it can be put back from the shelf. */
  async #withdraw(copy: Binding): Promise<void> {
    this.#desk.withdraw(copy);
    const taken = await takeOffKept(copy.id);
    if (taken) this.takenOff.add(taken);
    this.#neighbours.tell({ kind: 'taken off', id: copy.id });
  }

  #hear(news: News): void {
    if (news.id === this.#binding.id) {
      if (news.kind === 'taken off') this.#off = true;
      else void this.#desk.inTurn(() => this.#look());
    }
    this.#tell();
  }

  /** Looks whether another tab has kept a newer one than what is on this table. */
  async #look(): Promise<void> {
    const binding = this.#binding;
    if (binding.revision === 0) return;
    const stored = await readKept(binding.id);
    // Another sketch may have been laid on the table meanwhile.
    if (binding !== this.#binding) return;
    this.#off = stored === null;
    if (stored && stored.revision > binding.revision) {
      if (stored.document === documentText(this.#settled)) this.#agree(binding, stored);
      else this.#theirs = stored;
    }
    this.#tell();
  }

  /** The other tab has come to the very same sketch: there is nothing to choose, and work goes on from theirs. */
  #agree(binding: Binding, stored: KeptSketch): void {
    binding.revision = stored.revision;
    this.#theirs = null;
    this.#same = this.#settled;
    this.#keptAt = stored.keptAt;
  }

  /** Asked of the browser once, after something of the user's own was kept: that it does not clear it when the disk gets full. */
  #askToLast(): void {
    if (this.#askedToLast) return;
    this.#askedToLast = true;
    const storage: StorageManager | undefined = globalThis.navigator?.storage;
    // A browser that will not be asked clears what it clears; the shelf says whether what is kept will last.
    storage?.persist?.().catch(() => undefined);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
