import type { Length, Unit } from '@trimwell/geometry';
import { type Punch, samePunch, USUAL_RADII } from '@trimwell/sketch';
import type { Drawer } from '../../keeping/drawer-store.js';
import { isPageKept, whenKept } from '../../keeping/keepers.js';

/** Where the designer's own tools are kept. */
export interface DrawerStore {
  readonly readDrawer: () => Promise<Drawer>;
  readonly writeDrawer: (drawer: Drawer) => Promise<void>;
}

/** Whether anything of the page is kept, and when that begins. */
export interface PageKeeping {
  readonly isKept: () => boolean;
  readonly whenKept: (listener: () => void) => unknown;
}

const ALWAYS: PageKeeping = { isKept: () => true, whenKept: () => undefined };

/** Most radii and punches that a drawer holds, as its store says. */
export const MOST_TOOLS = 48;

/**
 * The designer's own hand tools as all tables of a page know them: read once, when the first part of a table asks for
 * them. Where nothing can be kept they last as long as the page, and `trouble` says why. As long as no table of the page is
 * kept, nothing of them is read or stored; what was put in by then is kept when the first one is.
 */
export class OwnTools {
  #drawer: Drawer = { radii: [], punches: [] };
  #trouble: string | null = null;
  #reading: Promise<void> | null = null;
  #asked = false;
  #writing: Promise<void> = Promise.resolve();
  readonly #listeners = new Set<() => void>();

  constructor(
    private readonly store: () => Promise<DrawerStore>,
    private readonly page: PageKeeping = ALWAYS,
  ) {
    page.whenKept(() => {
      if (this.#asked) void this.load();
    });
  }

  /** Radii of the corner rounders, smallest first; empty before anything was said of them. */
  get radii(): readonly Length[] {
    return this.#drawer.radii;
  }

  get punches(): readonly Punch[] {
    return this.#drawer.punches;
  }

  /** Why the tools are not kept on this machine, in the browser's words; null while they are. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** False while the tools are held for this page only, since no table of it is kept. */
  get kept(): boolean {
    return this.page.isKept();
  }

  /** Calls `listener` after every change; the function that comes back ends it. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Reads what is kept, once, as soon as something of the page is; comes back when it is there. */
  load(): Promise<void> {
    this.#asked = true;
    if (!this.kept) return Promise.resolve();
    this.#reading ??= this.#read();
    return this.#reading;
  }

  /** True when there is a rounder of this radius. */
  hasRadius(radius: Length): boolean {
    return this.radii.includes(radius);
  }

  /** Puts a rounder of `radius` into the drawer, or takes it out. */
  setRadius(radius: Length, owned: boolean): Promise<void> {
    if (radius <= 0 || this.hasRadius(radius) === owned) return Promise.resolve();
    const others = this.radii.filter((other) => other !== radius);
    if (owned && others.length >= MOST_TOOLS) return Promise.resolve();
    return this.#change({ ...this.#drawer, radii: owned ? [...others, radius].sort((a, b) => a - b) : others });
  }

  /** The punch of the drawer that leaves the same edge. */
  samePunch(punch: Omit<Punch, 'id'>): Punch | null {
    return this.punches.find((other) => samePunch(other, punch)) ?? null;
  }

  /** Puts a punch into the drawer in place of the one with its id, or of the same kind; or takes it out. */
  setPunch(punch: Punch, owned: boolean): Promise<void> {
    const others = this.punches.filter((other) => other.id !== punch.id && !samePunch(other, punch));
    if (owned && others.length >= MOST_TOOLS) return Promise.resolve();
    return this.#change({ ...this.#drawer, punches: owned ? [...others, punch] : others });
  }

  async #read(): Promise<void> {
    try {
      const { readDrawer } = await this.store();
      const kept = await readDrawer();
      await this.#join(kept);
    } catch (error) {
      this.#fail(error);
    }
    this.#tell();
  }

  /** What is kept, with what was put in before anything of the page was. */
  async #join(kept: Drawer): Promise<void> {
    const radii = [...new Set([...kept.radii, ...this.radii])].sort((a, b) => a - b).slice(0, MOST_TOOLS);
    const fresh = this.punches.filter((punch) => !kept.punches.some((other) => samePunch(other, punch)));
    const punches = [...kept.punches, ...fresh].slice(0, MOST_TOOLS);
    this.#drawer = { radii, punches };
    if (radii.length > kept.radii.length || punches.length > kept.punches.length) await this.#change(this.#drawer);
  }

  /** Shown at once, then kept; writings come one after the other, the newest last. */
  #change(next: Drawer): Promise<void> {
    this.#drawer = next;
    this.#tell();
    if (!this.kept) return Promise.resolve();
    this.#writing = this.#writing.then(async () => {
      try {
        const { writeDrawer } = await this.store();
        await writeDrawer(next);
      } catch (error) {
        this.#fail(error);
        this.#tell();
      }
    });
    return this.#writing;
  }

  #fail(error: unknown): void {
    this.#trouble = error instanceof Error ? error.message : String(error);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** The tools of this machine's designer, the same for every table of the page. */
export const ownTools = new OwnTools(() => import('../../keeping/drawer-store.js'), {
  isKept: isPageKept,
  whenKept,
});

/** The radii that corners are offered first: those of the designer's own rounders; before any are named the usual ones. */
export function roundersFor(unit: Unit, tools: OwnTools = ownTools): readonly Length[] {
  return tools.radii.length > 0 ? tools.radii : USUAL_RADII[unit];
}
