import { keeperOf } from '../../keeping/keepers.js';
import { putPagePhoto } from '../../keeping/page-photos.js';
import { putPhoto } from '../../keeping/photo-store.js';
import type { Session } from '../../session/session.js';
import { photoShelf } from './photo-shelf.js';

/**
 * Puts a photograph at hand, and keeps it in this browser where the table is kept, else for the life of the page. Its id comes
 * back.
 * @throws KeepError @throws DOMException when it is no image that this browser reads
 */
export async function holdPhoto(session: Session, photo: Blob): Promise<string> {
  const { id } = await (keeperOf(session) ? putPhoto(photo) : putPagePhoto(photo));
  photoShelf.put(id, photo);
  return id;
}
