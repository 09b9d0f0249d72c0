import 'fake-indexeddb/auto';
import { inches, ticks } from '@trimwell/geometry';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { closeDatabase, inDatabase } from './database.js';
import { EMPTY_DRAWER, readDrawer, writeDrawer } from './drawer-store.js';
import { describeSketch, type KeptSketch } from './kept-sketch.js';
import { clearForsakenPhotos, clearUnusedPhotos, getPhoto, listPhotos, putPhoto } from './photo-store.js';
import {
  copyKept,
  findKept,
  lastOnTable,
  listKept,
  noteOnTable,
  putBackKept,
  readKept,
  takeOffKept,
  writeKept,
} from './sketch-store.js';
import { storageUse } from './storage-use.js';

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

afterEach(() => vi.unstubAllGlobals());

const square = async () => ({ width: 30, height: 20 });

function wanted(id: string, title: string, more: Partial<KeptSketch> = {}): Omit<KeptSketch, 'revision'> {
  const sketch = { ...sampleSketch(), title };
  return { id, place: 'club', keptAt: 5, aside: false, ...describeSketch(sketch), ...more };
}

async function keep(id: string, title: string, startedFrom = 0, more: Partial<KeptSketch> = {}): Promise<KeptSketch> {
  const outcome = await writeKept(wanted(id, title, more), startedFrom);
  if (outcome.kind !== 'kept') throw new Error(`conflict with ${outcome.theirs.title}`);
  return outcome.kept;
}

/** What a kept sketch says that shows the photograph `photo`. */
function showing(photo: string) {
  const sketch = sampleSketch();
  const papers = sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo } }));
  return describeSketch({ ...sketch, papers });
}

describe('kept sketches', () => {
  test('every keeping counts its revision', async () => {
    expect((await keep('a', 'One')).revision).toBe(1);
    expect((await keep('a', 'Two', 1)).revision).toBe(2);
    expect(await readKept('a')).toMatchObject({ title: 'Two', revision: 2 });
  });

  test('what somebody else wrote meanwhile is not overwritten, and comes back', async () => {
    await keep('a', 'One');
    await keep('a', 'Theirs', 1);
    expect(await writeKept(wanted('a', 'Mine'), 1)).toMatchObject({ kind: 'conflict', theirs: { title: 'Theirs' } });
    expect(await readKept('a')).toMatchObject({ title: 'Theirs', revision: 2 });
  });

  test('of two writers at once one wins and the other hears of it', async () => {
    await keep('a', 'One');
    const outcomes = await Promise.all([writeKept(wanted('a', 'Left'), 1), writeKept(wanted('a', 'Right'), 1)]);
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['conflict', 'kept']);
  });

  test('each shelf has its own, and the last one on its table', async () => {
    await keep('a', 'One', 0, { keptAt: 9 });
    await keep('b', 'Two', 0, { place: 'other' });
    await keep('c', 'Three');
    expect((await listKept('club')).map(({ id }) => id)).toEqual(['a', 'c']);
    expect(await listKept()).toHaveLength(3);
    expect((await lastOnTable('club'))?.id).toBe('c');
    await noteOnTable('club', 'a');
    expect((await lastOnTable('club'))?.id).toBe('a');
    await noteOnTable('club', 'gone');
    expect((await lastOnTable('club'))?.id).toBe('a');
    expect(await lastOnTable('empty')).toBeNull();
  });

  test('the same document is found again', async () => {
    const one = await keep('a', 'One');
    expect((await findKept('club', one.document))?.id).toBe('a');
    expect(await findKept('other', one.document)).toBeNull();
  });

  test('a copy stands beside the first', async () => {
    const copy = await copyKept(await keep('a', 'One', 0, { aside: true }), 'b', 77);
    expect(copy).toMatchObject({ id: 'b', title: 'One', revision: 1, keptAt: 77, aside: false });
    expect((await lastOnTable('club'))?.id).toBe('a');
  });

  test('what was taken off comes back as it was, with its photographs', async () => {
    const photo = await putPhoto(new Blob(['paper']), square);
    const sketch = sampleSketch();
    const papers = sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo: photo.id } }));
    const kept = await keep('a', 'One', 0, describeSketch({ ...sketch, papers }));
    const taken = await takeOffKept('a');
    expect(await readKept('a')).toBeNull();
    await clearUnusedPhotos();
    expect(await getPhoto(photo.id)).toBeNull();
    if (!taken) throw new Error('nothing was taken off');
    expect(await putBackKept(taken)).toBe(true);
    expect(await readKept('a')).toEqual(kept);
    expect((await getPhoto(photo.id))?.width).toBe(30);
    expect(await takeOffKept('z')).toBeNull();
  });

  test('putting back never overwrites what was kept anew', async () => {
    await keep('a', 'One');
    const taken = await takeOffKept('a');
    await keep('a', 'Newer', 1);
    if (!taken) throw new Error('nothing was taken off');
    expect(await putBackKept(taken)).toBe(false);
    expect(await readKept('a')).toMatchObject({ title: 'Newer' });
  });
});

describe('the database', () => {
  test('is opened again after the browser closed it', async () => {
    await keep('a', 'One');
    await inDatabase(async (database) => database.close());
    expect(await readKept('a')).toMatchObject({ title: 'One' });
  });

  test('a browser that refuses it is told as such, and asked again next time', async () => {
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = () => {
      throw new DOMException('not here', 'SecurityError');
    };
    try {
      await expect(readKept('a')).rejects.toMatchObject({ name: 'KeepError', trouble: 'refused' });
    } finally {
      IDBFactory.prototype.open = open;
    }
    expect(await readKept('a')).toBeNull();
  });
});

describe('photographs', () => {
  test('the same bytes are kept once, under the hash of their bytes', async () => {
    const first = await putPhoto(new Blob(['abc']), square);
    await putPhoto(new Blob(['abc']), square);
    // FIPS 180-4, the example of one block.
    expect(first.id).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await listPhotos()).toHaveLength(1);
    expect(await (await getPhoto(first.id))?.blob.text()).toBe('abc');
  });

  test('what is no image is refused and not kept', async () => {
    const refuse = () => Promise.reject(new DOMException('no image', 'InvalidStateError'));
    await expect(putPhoto(new Blob(['abc']), refuse)).rejects.toThrow('no image');
    expect(await listPhotos()).toEqual([]);
  });

  test('those that no kept sketch names are cleared when the user asks', async () => {
    const used = await putPhoto(new Blob(['used']), square);
    const idle = await putPhoto(new Blob(['idle']), square);
    await keep('a', 'One', 0, showing(used.id));
    expect((await clearUnusedPhotos()).map(({ id }) => id)).toEqual([idle.id]);
    expect((await listPhotos()).map(({ id }) => id)).toEqual([used.id]);
  });

  test('by themselves only those go that no kept sketch has ever shown, and none that is newer', async () => {
    const once = await putPhoto(new Blob(['once']), square);
    const idle = await putPhoto(new Blob(['idle']), square);
    expect([once.used, idle.used]).toEqual([false, false]);
    // A sketch that was saved as a file and taken off the shelf still shows its photograph when it comes back.
    await keep('a', 'One', 0, showing(once.id));
    await keep('a', 'Two', 1);
    await putPhoto(new Blob(['once']), square);
    const { used: _unknown, ...older } = { ...idle, id: 'f'.repeat(64) };
    await inDatabase((database) => database.put('photos', older));
    expect(await clearForsakenPhotos(idle.keptAt)).toEqual([]);
    expect((await clearForsakenPhotos(Number.POSITIVE_INFINITY)).map(({ id }) => id)).toEqual([idle.id]);
    expect(new Set((await listPhotos()).map(({ id }) => id))).toEqual(new Set([once.id, older.id]));
  });
});

test('what takes room is listed, the largest first, with who uses it', async () => {
  const photo = await putPhoto(new Blob(['x'.repeat(50_000)]), square);
  const sketch = sampleSketch();
  const papers = sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo: photo.id } }));
  const kept = await keep('a', 'One', 0, { ...describeSketch({ ...sketch, papers }), title: 'One' });
  const storage = { estimate: async () => ({ usage: 7, quota: 9 }), persisted: async () => true };
  vi.stubGlobal('navigator', { storage });
  const { things, ...room } = await storageUse();
  expect(room).toEqual({ used: 7, most: 9, lasting: true });
  expect(things).toEqual([
    { kind: 'photograph', id: photo.id, name: '30 × 20 pixels', bytes: 50_000, usedBy: ['One'] },
    { kind: 'sketch', id: 'a', name: 'One', bytes: new Blob([kept.document]).size, usedBy: [] },
  ]);
});

describe('the drawer', () => {
  const punch = {
    id: 'scallop',
    name: 'Scallop',
    profile: 'scallop',
    repeat: inches(0.5),
    depth: inches(0.25),
    bite: ticks(0),
  } as const;

  test('is empty at first, then gives back what was put in', async () => {
    expect(await readDrawer()).toEqual(EMPTY_DRAWER);
    const drawer = { radii: [inches(0.25), ticks(3201)], punches: [punch] };
    await writeDrawer(drawer);
    expect(await readDrawer()).toEqual(drawer);
  });

  test('what is no sound tool is refused, and the drawer stays', async () => {
    await writeDrawer({ radii: [inches(0.25)], punches: [] });
    await expect(writeDrawer({ radii: [ticks(0)], punches: [] })).rejects.toThrow(/drawer\.radii\[0\] is 0/);
    const nameless = { ...punch, name: '' };
    await expect(writeDrawer({ radii: [], punches: [nameless] })).rejects.toThrow(/name/);
    expect((await readDrawer()).radii).toEqual([inches(0.25)]);
  });

  test('a stored value that is no drawer is refused with its place', async () => {
    await inDatabase((database) => database.put('drawer', { radii: 'wide' }, 'own tools'));
    await expect(readDrawer()).rejects.toThrow(/drawer/);
  });
});
