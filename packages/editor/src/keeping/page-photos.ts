import { inTransaction } from './database.js';
import { type KeptPhoto, type MeasurePhoto, photoOf, photosIn } from './photo-store.js';

const PHOTOS = new Map<string, KeptPhoto>();

/**
 * Holds a photograph for the life of the page, of a table that is not kept, and gives its record back.
 * @throws DOMException when it is no image that this browser reads
 */
export async function putPagePhoto(blob: Blob, measure?: MeasurePhoto): Promise<KeptPhoto> {
  const photo = await photoOf(blob, measure);
  PHOTOS.set(photo.id, photo);
  return photo;
}

/** The photograph of the page with this id, or null. */
export function getPagePhoto(id: string): KeptPhoto | null {
  return PHOTOS.get(id) ?? null;
}

/** Keeps the photographs of the page that `document` names, since it is going to be kept itself. @throws KeepError */
export async function keepPagePhotos(document: string): Promise<void> {
  if (PHOTOS.size === 0) return;
  const named = [...photosIn(document)].flatMap((id) => PHOTOS.get(id) ?? []);
  if (named.length === 0) return;
  await inTransaction(['photos'], async (work) => {
    for (const photo of named) await work.objectStore('photos').put({ ...photo, used: true });
  });
  for (const { id } of named) PHOTOS.delete(id);
}
