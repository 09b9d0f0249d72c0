import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { KeepError } from '../../keeping/keep-error.js';
import { PhotoShelf } from './photo-shelf.js';

const kept = new Map<string, Blob>();
let asked: string[] = [];

async function bring(id: string): Promise<Blob | null> {
  asked.push(id);
  return kept.get(id) ?? null;
}

beforeEach(() => {
  kept.clear();
  asked = [];
  // jsdom makes no object URLs.
  vi.stubGlobal('URL', Object.assign(URL, { createObjectURL: (photo: Blob) => `blob:${photo.size}` }));
});

afterEach(() => vi.unstubAllGlobals());

test('a photograph is brought once, told of, and stays at hand', async () => {
  kept.set('aa', new Blob(['a']));
  const shelf = new PhotoShelf(bring);
  const told: (readonly string[])[] = [];
  shelf.subscribe(() => told.push([...shelf.photos.keys()]));
  const before = shelf.photos;
  await Promise.all([shelf.bring(['aa']), shelf.bring(['aa', 'aa'])]);
  await shelf.bring(['aa']);
  expect(asked).toEqual(['aa']);
  expect(told).toEqual([['aa']]);
  expect(shelf.photos.get('aa')).toMatch(/^blob:/);
  expect(shelf.photos).not.toBe(before);
});

test('what goes wrong otherwise is not taken for a missing photograph alone: it is thrown on', async () => {
  const shelf = new PhotoShelf(async () => {
    throw new TypeError('a fault');
  });
  await expect(shelf.bring(['ee'])).rejects.toThrow('a fault');
  expect(shelf.isMissing('ee')).toBe(true);
});

test('one that is not there is missing until it comes, and is looked for again', async () => {
  const shelf = new PhotoShelf(bring);
  expect(shelf.isMissing('bb')).toBe(false);
  await shelf.bring(['bb']);
  expect(shelf.isMissing('bb')).toBe(true);
  kept.set('bb', new Blob(['b']));
  await shelf.bring(['bb']);
  expect(shelf.isMissing('bb')).toBe(false);
  expect(shelf.photos.has('bb')).toBe(true);
});

test('a browser that keeps nothing has no photographs; one that was just taken is at hand all the same', async () => {
  const shelf = new PhotoShelf(async () => {
    throw new KeepError('refused', 'no database');
  });
  await shelf.bring(['cc']);
  expect(shelf.isMissing('cc')).toBe(true);
  let told = 0;
  const stop = shelf.subscribe(() => {
    told += 1;
  });
  shelf.put('cc', new Blob(['c']));
  expect(shelf.isMissing('cc')).toBe(false);
  expect(told).toBe(1);
  stop();
  shelf.put('dd', new Blob(['d']));
  expect(told).toBe(1);
});
