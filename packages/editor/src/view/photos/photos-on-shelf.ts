import type { Sketch } from '@trimwell/sketch';
import { photoShelf } from './photo-shelf.js';

/** The photographs of a sketch's papers that are on this machine, by their hashes. */
export async function photosOnShelf({ papers }: Sketch): Promise<ReadonlyMap<string, Blob>> {
  const ids = papers.flatMap(({ look }) => (look.photo === undefined ? [] : [look.photo]));
  await photoShelf.bring(ids);
  const found = new Map<string, Blob>();
  for (const id of ids) {
    const photo = photoShelf.photo(id);
    if (photo) found.set(id, photo);
  }
  return found;
}
