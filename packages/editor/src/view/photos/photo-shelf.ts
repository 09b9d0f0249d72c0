import type { Drawing, Photos } from '@trimwell/handout';
import { KeepError } from '../../keeping/keep-error.js';
import { isPageKept, whenKept } from '../../keeping/keepers.js';

/** Brings a photograph's bytes by its hash, or null when it is not on this machine. */
export type BringPhoto = (id: string) => Promise<Blob | null>;

/** Where no table of the page is kept nothing is looked for: opening the browser's database would already store something. */
const fromKeeping: BringPhoto = async (id) => {
  if (!isPageKept()) return null;
  const { getPhoto } = await import('../../keeping/photo-store.js');
  return (await getPhoto(id))?.blob ?? null;
};

/** Hashes of the photographs that looks name. */
export function photosNamed(looks: Drawing['looks']): readonly string[] {
  return Object.values(looks).flatMap(({ photo }) => (photo === undefined ? [] : [photo]));
}

/**
 * The users' own photographs of sheets that this page has at hand, as object URLs by hash. They are kept by the browser
 * and brought when a drawing wants them; an object URL lives as long as the page.
 */
export class PhotoShelf {
  #photos: Photos = new Map();
  readonly #blobs = new Map<string, Blob>();
  readonly #missing = new Set<string>();
  readonly #coming = new Map<string, Promise<void>>();
  readonly #listeners = new Set<() => void>();

  constructor(private readonly fetchPhoto: BringPhoto = fromKeeping) {
    whenKept(() => void this.bring([...this.#missing]));
  }

  /** Addresses of what is at hand, for a drawing; another map after every change. */
  get photos(): Photos {
    return this.#photos;
  }

  /** The photograph itself, if it is at hand. */
  photo(id: string): Blob | null {
    return this.#blobs.get(id) ?? null;
  }

  /** True when a photograph was looked for and is not on this machine. */
  isMissing(id: string): boolean {
    return this.#missing.has(id);
  }

  /** Calls `listener` whenever a photograph has come, or was found missing; the function that comes back ends it. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Puts a photograph at hand that has just been taken. */
  put(id: string, photo: Blob): void {
    if (this.#photos.has(id)) return;
    this.#missing.delete(id);
    this.#blobs.set(id, photo);
    this.#photos = new Map(this.#photos).set(id, URL.createObjectURL(photo));
    this.#tell();
  }

  /** Brings what is not at hand yet; what was missing before is looked for again. */
  async bring(ids: readonly string[]): Promise<void> {
    await Promise.all(ids.filter((id) => !this.#photos.has(id)).map((id) => this.#bringOne(id)));
  }

  #bringOne(id: string): Promise<void> {
    const coming = this.#coming.get(id) ?? this.#look(id).finally(() => this.#coming.delete(id));
    this.#coming.set(id, coming);
    return coming;
  }

  async #look(id: string): Promise<void> {
    let photo: Blob | null = null;
    try {
      photo = await this.fetchPhoto(id);
    } catch (error) {
      // A browser that keeps nothing for this page has no photograph either: the stand-in is shown and the tray says so.
      if (!(error instanceof KeepError)) throw error;
    } finally {
      if (photo) this.put(id, photo);
      else this.#miss(id);
    }
  }

  #miss(id: string): void {
    if (this.#missing.has(id) || this.#photos.has(id)) return;
    this.#missing.add(id);
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** One shelf for all tables of a page, since photographs are kept by the browser and not by a table. */
export const photoShelf = new PhotoShelf();
