import { listPhotos, photosIn } from './photo-store.js';
import { listKept } from './sketch-store.js';

/** Something that takes room in the browser's storage. */
export interface StoredThing {
  readonly kind: 'sketch' | 'photograph';
  readonly id: string;
  /** Title of the sketch; of a photograph, its size in pixels. */
  readonly name: string;
  readonly bytes: number;
  /** Titles of the sketches that show a photograph. */
  readonly usedBy: readonly string[];
}

/** What the browser's storage holds for this site. */
export interface StorageUse {
  /** Bytes in use and at most, as the browser estimates them; null when it does not say. */
  readonly used: number | null;
  readonly most: number | null;
  /** The browser has promised not to clear it by itself when the disk gets full. */
  readonly lasting: boolean;
  /** The largest first. */
  readonly things: readonly StoredThing[];
}

/** What takes room, of all shelves. @throws KeepError */
export async function storageUse(): Promise<StorageUse> {
  const [sketches, photos] = [await listKept(), await listPhotos()];
  const things: StoredThing[] = [
    ...sketches.map(
      ({ id, title, document }): StoredThing => ({
        kind: 'sketch',
        id,
        name: title,
        bytes: new Blob([document]).size,
        usedBy: [],
      }),
    ),
    ...photos.map(({ id, blob, width, height }): StoredThing => {
      const usedBy = sketches.filter(({ document }) => photosIn(document).has(id)).map(({ title }) => title);
      return { kind: 'photograph', id, name: `${width} × ${height} pixels`, bytes: blob.size, usedBy };
    }),
  ];
  // Absent in pages that were not loaded securely.
  const storage: StorageManager | undefined = globalThis.navigator?.storage;
  const { usage = null, quota = null } = (await storage?.estimate()) ?? {};
  const lasting = (await storage?.persisted()) ?? false;
  return { used: usage, most: quota, lasting, things: things.sort((a, b) => b.bytes - a.bytes) };
}
