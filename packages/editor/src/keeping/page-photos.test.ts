import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { Session } from '../session/session.js';
import { closeDatabase } from './database.js';
import { Keeper } from './keeper.js';
import { isPageKept, keeperOf, whenKept } from './keepers.js';
import { getPagePhoto, putPagePhoto } from './page-photos.js';
import { getPhoto, listPhotos } from './photo-store.js';

const square = async () => ({ width: 30, height: 20 });

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

function table() {
  return new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
}

test('a photograph of a page is held without any database', async () => {
  const photo = await putPagePhoto(new Blob(['moss']), square);
  expect(getPagePhoto(photo.id)).toEqual(photo);
  expect(await indexedDB.databases()).toEqual([]);
});

test('once the sketch that shows it is kept, it is kept as well, and no other', async () => {
  const shown = await putPagePhoto(new Blob(['shown']), square);
  const other = await putPagePhoto(new Blob(['other']), square);
  const session = table();
  const [paper] = session.document.papers;
  if (!paper) throw new Error('no paper');
  const edit = { do: 'set-paper', paper: { ...paper, look: { ...paper.look, photo: shown.id } } } as const;
  session.dispatch({ event: 'paper.change', edits: [edit], at: 1 });
  const told: boolean[] = [];
  const stop = whenKept(() => told.push(isPageKept()));
  expect([isPageKept(), keeperOf(session)]).toEqual([false, null]);
  const keeper = new Keeper(session, 'club');
  expect([isPageKept(), keeperOf(session), told]).toEqual([true, keeper, [true]]);
  await keeper.keepTable();
  expect((await listPhotos()).map(({ id, used }) => [id, used])).toEqual([[shown.id, true]]);
  expect([getPagePhoto(shown.id), getPagePhoto(other.id)?.id]).toEqual([null, other.id]);
  expect(await (await getPhoto(shown.id))?.blob.text()).toBe('shown');
  keeper.dispose();
  stop();
  expect(isPageKept()).toBe(false);
  await keeper.keepNow();
});
