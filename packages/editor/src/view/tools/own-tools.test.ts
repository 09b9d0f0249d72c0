import { inches, millimetres } from '@trimwell/geometry';
import { USUAL_PUNCHES, USUAL_RADII, type UsualPunch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import type { Drawer } from '../../keeping/drawer-store.js';
import { OwnTools, roundersFor } from './own-tools.js';

const lace = { ...(USUAL_PUNCHES.in[2] as UsualPunch), id: 'lace' };

function tools(kept: Drawer = { radii: [inches(1 / 2), inches(1 / 4)], punches: [] }) {
  const written: Drawer[] = [];
  const own = new OwnTools(async () => ({
    readDrawer: async () => kept,
    writeDrawer: async (drawer) => void written.push(drawer),
  }));
  return { own, written };
}

test('as long as nothing of the page is kept nothing is read or written; then what was put in is kept too', async () => {
  let kept = false;
  let begin = (): void => undefined;
  const asked: string[] = [];
  const written: Drawer[] = [];
  const store = {
    readDrawer: async (): Promise<Drawer> => {
      asked.push('read');
      return { radii: [inches(1 / 2)], punches: [lace] };
    },
    writeDrawer: async (drawer: Drawer) => void written.push(drawer),
  };
  const own = new OwnTools(async () => store, {
    isKept: () => kept,
    whenKept: (listener) => {
      begin = listener;
    },
  });
  await own.load();
  await own.setRadius(inches(1 / 4), true);
  await own.setPunch({ ...lace, id: 'other' }, true);
  expect([own.kept, own.trouble, own.radii, asked, written]).toEqual([false, null, [inches(1 / 4)], [], []]);
  kept = true;
  begin();
  await own.load();
  const all = { radii: [inches(1 / 4), inches(1 / 2)], punches: [lace] };
  expect([own.kept, asked, written]).toEqual([true, ['read'], [all]]);
  expect({ radii: own.radii, punches: own.punches }).toEqual(all);
});

test('the drawer is read once, and its rounders come in order', async () => {
  let reads = 0;
  const own = new OwnTools(async () => {
    reads += 1;
    return {
      readDrawer: async () => ({ radii: [inches(1 / 2), inches(1 / 4)], punches: [lace] }),
      writeDrawer: async () => {},
    };
  });
  expect(roundersFor('mm', own)).toEqual(USUAL_RADII.mm);
  await Promise.all([own.load(), own.load()]);
  expect(reads).toBe(1);
  expect(own.radii).toEqual([inches(1 / 4), inches(1 / 2)]);
  expect(roundersFor('mm', own)).toEqual(own.radii);
  expect(own.samePunch({ ...lace, name: 'Other' })).toBe(lace);
});

test('what changes is told at once and kept in order', async () => {
  const { own, written } = tools();
  await own.load();
  let told = 0;
  const stop = own.subscribe(() => {
    told += 1;
  });
  const first = own.setRadius(millimetres(5), true);
  expect(own.radii).toEqual([millimetres(5), inches(1 / 4), inches(1 / 2)]);
  await Promise.all([first, own.setRadius(inches(1 / 4), false), own.setPunch(lace, true)]);
  expect(written.map(({ radii, punches }) => [radii.length, punches.length])).toEqual([
    [3, 0],
    [2, 0],
    [2, 1],
  ]);
  expect(told).toBe(3);
  stop();
  await own.setPunch({ ...lace, id: 'again', name: 'Lace again' }, true);
  expect(own.punches.map(({ id }) => id)).toEqual(['again']);
  await own.setPunch({ ...lace, id: 'again' }, false);
  expect(own.punches).toEqual([]);
  expect(told).toBe(3);
});

test('a radius that is there, is not there, or is none, changes nothing', async () => {
  const { own, written } = tools();
  await own.load();
  await own.setRadius(inches(1 / 4), true);
  await own.setRadius(inches(1 / 8), false);
  await own.setRadius(inches(0), true);
  expect(written).toEqual([]);
});

test('where nothing can be kept the tools last as long as the page, and it is said why', async () => {
  const own = new OwnTools(async () => {
    throw new Error('this browser has no database for pages');
  });
  await own.load();
  expect(own.trouble).toBe('this browser has no database for pages');
  await own.setRadius(inches(1 / 8), true);
  expect(own.radii).toEqual([inches(1 / 8)]);
});
