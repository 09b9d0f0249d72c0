import { inDatabase, inTransaction } from './database.js';

/** A photograph of the user's own, under the hash of its bytes; sizes in its pixels. */
export interface KeptPhoto {
  readonly id: string;
  readonly blob: Blob;
  readonly width: number;
  readonly height: number;
  /** When it was put here, in milliseconds since 1970. */
  readonly keptAt: number;
  /** False until a kept sketch has shown it. Of photographs from before this was noted nobody knows. */
  readonly used?: boolean;
}

/** Width and height of an image in its pixels. @throws DOMException when the browser cannot read it as one. */
export type MeasurePhoto = (blob: Blob) => Promise<{ readonly width: number; readonly height: number }>;

const measureBitmap: MeasurePhoto = async (blob) => {
  const bitmap = await createImageBitmap(blob);
  const { width, height } = bitmap;
  bitmap.close();
  return { width, height };
};

function hex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** SHA-256 of the bytes. A page that was not loaded securely has no hash: there a random name stands in, and equal photographs are kept twice. */
async function photoId(blob: Blob): Promise<string> {
  const { subtle } = crypto;
  if (!subtle) return hex(crypto.getRandomValues(new Uint8Array(32)));
  return hex(new Uint8Array(await subtle.digest('SHA-256', await blob.arrayBuffer())));
}

/** The record of a photograph, which is kept nowhere yet. @throws DOMException when it is no image that this browser reads. */
export async function photoOf(blob: Blob, measure: MeasurePhoto = measureBitmap): Promise<KeptPhoto> {
  const size = await measure(blob);
  return { id: await photoId(blob), blob, ...size, keptAt: Date.now(), used: false };
}

/**
 * Keeps a photograph and gives its record back; the same bytes again are the same photograph, kept once.
 * @throws DOMException when it is no image that this browser reads. @throws KeepError
 */
export async function putPhoto(blob: Blob, measure: MeasurePhoto = measureBitmap): Promise<KeptPhoto> {
  const photo = await photoOf(blob, measure);
  return inTransaction(['photos'], async (work) => {
    const photos = work.objectStore('photos');
    const before = await photos.get(photo.id);
    const kept = before ? { ...before, keptAt: photo.keptAt } : photo;
    await photos.put(kept);
    return kept;
  });
}

/** The photograph with this id, or null. @throws KeepError */
export function getPhoto(id: string): Promise<KeptPhoto | null> {
  return inDatabase(async (database) => (await database.get('photos', id)) ?? null);
}

/** All photographs, the newest first. @throws KeepError */
export async function listPhotos(): Promise<readonly KeptPhoto[]> {
  const photos = await inDatabase((database) => database.getAll('photos'));
  return photos.sort((a, b) => b.keptAt - a.keptAt || (a.id < b.id ? -1 : 1));
}

/**
 * Ids of photographs that a document's text names. They are looked for by their form and not by their place in the
 * document, so that a photograph in use is never taken for unused by a version that does not know that place.
 */
export function photosIn(document: string): ReadonlySet<string> {
  return new Set(document.match(/(?<=")[0-9a-f]{16,64}(?=")/g) ?? []);
}

interface AllKept {
  readonly documents: readonly string[];
  readonly photos: readonly KeptPhoto[];
}

function unused({ documents, photos }: AllKept): readonly KeptPhoto[] {
  const used = new Set(documents.flatMap((document) => [...photosIn(document)]));
  return photos.filter(({ id }) => !used.has(id));
}

function clear(which: (photo: KeptPhoto) => boolean): Promise<readonly KeptPhoto[]> {
  return inTransaction(['sketches', 'photos'], async (work) => {
    const documents = (await work.objectStore('sketches').getAll()).map(({ document }) => document);
    const cleared = unused({ documents, photos: await work.objectStore('photos').getAll() }).filter(which);
    for (const { id } of cleared) await work.objectStore('photos').delete(id);
    return cleared;
  });
}

/**
 * Clears every photograph that no kept sketch names, for a user who asks for it: a sketch that was saved as a file and taken
 * off the shelf may name one of them. The cleared ones come back.
 * @throws KeepError
 */
export function clearUnusedPhotos(): Promise<readonly KeptPhoto[]> {
  return clear(() => true);
}

/**
 * Clears photographs that no kept sketch has ever shown and that were put here before `before` (milliseconds since 1970): they
 * were tried and left again. What a kept sketch has once shown may be in a file, and stays. The cleared ones come back.
 * @throws KeepError
 */
export function clearForsakenPhotos(before: number): Promise<readonly KeptPhoto[]> {
  return clear(({ used, keptAt }) => used === false && keptAt < before);
}
