import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import type { Keeper } from '../../keeping/keeper.js';
import { setKeeper } from '../../keeping/keepers.js';
import { getPagePhoto } from '../../keeping/page-photos.js';
import { Session } from '../../session/session.js';
import { holdPhoto } from './hold-photo.js';
import { photoShelf } from './photo-shelf.js';

beforeEach(() => {
  // jsdom's bytes are none to the hash of Node.
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) });
  // jsdom reads no pictures and makes no object URLs; and it has no database, so that whoever wants it fails.
  vi.stubGlobal('createImageBitmap', async () => ({ width: 3, height: 2, close: () => undefined }));
  vi.stubGlobal('URL', Object.assign(URL, { createObjectURL: (photo: Blob) => `blob:${photo.size}` }));
});

afterEach(() => vi.unstubAllGlobals());

test('a photograph is kept where the table is, else held for the page', async () => {
  const session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  const id = await holdPhoto(session, new Blob(['fern']));
  expect(getPagePhoto(id)).toMatchObject({ width: 3, height: 2 });
  expect(photoShelf.photos.has(id)).toBe(true);
  setKeeper(session, {} as Keeper);
  await expect(holdPhoto(session, new Blob(['moss']))).rejects.toMatchObject({ name: 'KeepError' });
  setKeeper(session, null);
});

test('where no table of the page is kept, no photograph is looked for in the browser', async () => {
  const open = vi.fn();
  vi.stubGlobal('indexedDB', { open });
  await photoShelf.bring(['ab'.repeat(32)]);
  expect(photoShelf.isMissing('ab'.repeat(32))).toBe(true);
  expect(open).not.toHaveBeenCalled();
});
