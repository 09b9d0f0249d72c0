import { inDatabase, inTransaction } from './database.js';
import { decideKeep } from './decide-keep.js';
import { KeepError } from './keep-error.js';
import type { KeptSketch } from './kept-sketch.js';
import { type KeptPhoto, photosIn } from './photo-store.js';

/** How keeping ended: `kept` with what is in the database now, or the newer one of somebody else that was left alone. */
export type KeepOutcome =
  | { readonly kind: 'kept'; readonly kept: KeptSketch }
  | { readonly kind: 'conflict'; readonly theirs: KeptSketch };

/** A sketch taken off its shelf, with the photographs it showed: enough to put it back. */
export interface TakenOff {
  readonly kept: KeptSketch;
  readonly photos: readonly KeptPhoto[];
}

/**
 * Keeps a sketch that was worked out from revision `startedFrom`, in one transaction that looks at the revision stored
 * first; `onTable` notes it as what lies on the table of its place. The photographs that it shows are noted as used.
 * @throws KeepError
 */
export function writeKept(
  wanted: Omit<KeptSketch, 'revision'>,
  startedFrom: number,
  onTable = true,
): Promise<KeepOutcome> {
  return inTransaction(['sketches', 'tables', 'photos'], async (work): Promise<KeepOutcome> => {
    const sketches = work.objectStore('sketches');
    const stored = await sketches.get(wanted.id);
    const decision = decideKeep(startedFrom, stored, wanted.document);
    if (stored && decision === 'conflict') return { kind: 'conflict', theirs: stored };
    const kept = stored && decision === 'same' ? stored : { ...wanted, revision: startedFrom + 1 };
    if (kept !== stored) await sketches.put(kept);
    const photos = work.objectStore('photos');
    for (const id of photosIn(kept.document)) {
      const photo = await photos.get(id);
      if (photo && photo.used === false) await photos.put({ ...photo, used: true });
    }
    if (onTable) await work.objectStore('tables').put(kept.id, kept.place);
    return { kind: 'kept', kept };
  });
}

/** The kept sketch with this id, or null. @throws KeepError */
export function readKept(id: string): Promise<KeptSketch | null> {
  return inDatabase(async (database) => (await database.get('sketches', id)) ?? null);
}

/** All sketches on the shelf of `place`, or on all shelves, in the order of their ids. @throws KeepError */
export function listKept(place?: string): Promise<readonly KeptSketch[]> {
  return inDatabase((database) =>
    place === undefined ? database.getAll('sketches') : database.getAllFromIndex('sketches', 'place', place),
  );
}

/** The newest sketch of `place` with exactly this document, or null. @throws KeepError */
export async function findKept(place: string, document: string): Promise<KeptSketch | null> {
  const same = (await listKept(place)).filter((kept) => kept.document === document);
  return same.sort((a, b) => b.keptAt - a.keptAt)[0] ?? null;
}

/** The kept sketch that lay on the table of `place` last; when that is gone, the newest of its shelf; or null. @throws KeepError */
export async function lastOnTable(place: string): Promise<KeptSketch | null> {
  const id = await inDatabase((database) => database.get('tables', place));
  const last = id === undefined ? null : await readKept(id);
  if (last) return last;
  return (await listKept(place)).reduce<KeptSketch | null>(
    (newest, kept) => (newest && newest.keptAt >= kept.keptAt ? newest : kept),
    null,
  );
}

/** Notes which kept sketch lies on the table of `place`. @throws KeepError */
export async function noteOnTable(place: string, id: string): Promise<void> {
  await inDatabase((database) => database.put('tables', id, place));
}

/** Takes a sketch off its shelf; null when it is not there any more. @throws KeepError */
export function takeOffKept(id: string): Promise<TakenOff | null> {
  return inTransaction(['sketches', 'photos'], async (work) => {
    const kept = await work.objectStore('sketches').get(id);
    if (!kept) return null;
    const shown = photosIn(kept.document);
    const photos = (await work.objectStore('photos').getAll()).filter((photo) => shown.has(photo.id));
    await work.objectStore('sketches').delete(id);
    return { kept, photos };
  });
}

/**
 * Puts back what was taken off, with photographs that have been cleared since. When the sketch has been kept again in the
 * meantime, that one stays. True when something was put back.
 * @throws KeepError
 */
export function putBackKept({ kept, photos }: TakenOff): Promise<boolean> {
  return inTransaction(['sketches', 'photos'], async (work) => {
    for (const photo of photos) await work.objectStore('photos').put(photo);
    if (await work.objectStore('sketches').get(kept.id)) return false;
    await work.objectStore('sketches').put(kept);
    return true;
  });
}

/** A copy of a kept sketch on the same shelf, unread: what this version cannot read is copied as it is. @throws KeepError */
export async function copyKept(kept: KeptSketch, id: string, keptAt: number): Promise<KeptSketch> {
  const outcome = await writeKept({ ...kept, id, keptAt, aside: false }, 0, false);
  if (outcome.kind === 'conflict') throw new KeepError('failed', `there is already a kept sketch ${id}`);
  return outcome.kept;
}
