import 'fake-indexeddb/auto';
import { inches } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PATIENCE } from '../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { PlanPort } from '../session/plan-messages.js';
import { Session } from '../session/session.js';
import { closeDatabase, inDatabase } from './database.js';
import { Keeper } from './keeper.js';
import { documentText } from './kept-sketch.js';
import type { KeptState } from './kept-state.js';
import { listKept, readKept } from './sketch-store.js';

const open: Keeper[] = [];

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

afterEach(async () => {
  for (const keeper of open.splice(0)) {
    keeper.dispose();
    await keeper.keepNow();
  }
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** One tab: its session, its keeper, and the ways in which a user changes the sketch. */
function tab(sketch: Sketch = sampleSketch(), place = 'club') {
  const port: PlanPort = { onmessage: null, postMessage: () => undefined, terminate: () => undefined };
  const session = new Session(sketch, port);
  const keeper = new Keeper(session, place);
  open.push(keeper);
  const rename = (title: string) =>
    session.dispatch({ event: 'sketch.rename', edits: [{ do: 'describe', title }], at: 0 });
  const drag = (x: number) =>
    session.dispatch({
      event: 'piece.move',
      edits: [{ do: 'place', piece: 'panel', x: inches(x), y: inches(1) }],
      gesture: 'g',
      at: 0,
    });
  return { session, keeper, rename, drag };
}

/** A tab in which `title` was given and kept. */
async function keptTab(title: string) {
  const made = tab();
  made.rename(title);
  await made.keeper.keepNow();
  return made;
}

/** Another tab that found the kept sketch on its table. */
async function secondTab() {
  const made = tab();
  expect(await made.keeper.restore()).toMatchObject({ ok: true });
  await made.keeper.keepNow();
  return made;
}

async function titles(): Promise<readonly string[]> {
  return (await listKept()).map(({ title }) => title).sort();
}

async function reached(keeper: Keeper, kind: KeptState['kind']): Promise<void> {
  await vi.waitFor(() => expect(keeper.state.kind).toBe(kind), PATIENCE);
}

test('a browser that refuses to be asked for lasting storage breaks nothing', async () => {
  let asked = 0;
  // No spy: it would hear the refusal itself, and none would be left unheard.
  const persist = () => {
    asked += 1;
    return Promise.reject(new DOMException('not now', 'InvalidStateError'));
  };
  vi.stubGlobal('navigator', { storage: { persist } });
  const { keeper } = await keptTab('One');
  // Long enough for a refusal that nobody hears to be told.
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(asked).toBe(1);
  expect(keeper.state.kind).toBe('kept');
});

test('two tabs that come to the very same sketch have nothing to choose', async () => {
  const first = await keptTab('One');
  const second = await secondTab();
  second.rename('Same');
  first.rename('Same');
  await first.keeper.keepNow();
  await reached(second.keeper, 'kept');
  await second.keeper.keepNow();
  // What the first one told has come by now.
  await new Promise((resolve) => setTimeout(resolve, 400));
  expect(second.keeper.state.kind).toBe('kept');
  second.rename('Further');
  await second.keeper.keepNow();
  expect(second.keeper.state.kind).toBe('kept');
  expect(await titles()).toEqual(['Further']);
});

describe('keeping', () => {
  test('nothing is kept of a sketch that is as it came', async () => {
    const { keeper, session } = tab();
    session.dispatch({ event: 'piece.select', edits: [], selection: ['panel'], at: 0 });
    await keeper.keepNow();
    expect(keeper.state.kind).toBe('as it came');
    expect(keeper.keptId).toBeNull();
    expect(await listKept()).toEqual([]);
  });

  test('a change is kept by itself, soon, as the document that is on the table', async () => {
    const { keeper, session, rename } = tab();
    rename('Hedge');
    expect(keeper.state.kind).toBe('keeping');
    await reached(keeper, 'kept');
    expect((await readKept(keeper.keptId ?? ''))?.document).toBe(documentText(session.document));
  });

  test('changes that follow each other are kept together', async () => {
    const { keeper, rename } = tab();
    for (const title of ['A', 'B', 'C']) rename(title);
    await keeper.keepNow();
    expect(await listKept()).toMatchObject([{ title: 'C', revision: 1 }]);
  });

  test('the middle of a gesture is never kept; what was settled before it is kept at once', async () => {
    const { keeper, session, rename, drag } = tab();
    rename('Before');
    const before = documentText(session.document);
    drag(0.5);
    drag(1);
    await reached(keeper, 'kept');
    await keeper.keepNow();
    const [kept] = await listKept();
    expect(kept?.document).toBe(before);
    session.settle('g');
    await keeper.keepNow();
    expect((await listKept())[0]?.document).toBe(documentText(session.document));
  });

  test('a gesture that is put back keeps nothing', async () => {
    const { keeper, session, drag } = tab();
    drag(1);
    session.cancel('g');
    await keeper.keepNow();
    expect(keeper.state.kind).toBe('as it came');
    expect(await listKept()).toEqual([]);
  });

  test('the next tab finds it on its table, and goes on with it', async () => {
    const first = await keptTab('Hedge');
    const second = await secondTab();
    expect(second.session.document.title).toBe('Hedge');
    expect(second.keeper.keptId).toBe(first.keeper.keptId);
    second.rename('Hedge, taller');
    await second.keeper.keepNow();
    expect(await listKept()).toMatchObject([{ title: 'Hedge, taller', revision: 2 }]);
  });

  test('what the user has begun on is not replaced by what was kept', async () => {
    await keptTab('Hedge');
    const { keeper, session, rename } = tab();
    const restored = keeper.restore();
    rename('Begun');
    expect(await restored).toBeNull();
    expect(session.document.title).toBe('Begun');
    await keeper.keepNow();
    expect(await titles()).toEqual(['Begun', 'Hedge']);
  });

  test('another place has another table', async () => {
    await keptTab('Hedge');
    expect(await tab(sampleSketch(), 'other').keeper.restore()).toBeNull();
  });

  test('a kept sketch that cannot be read is told, and the table stays', async () => {
    const { keeper } = await keptTab('Hedge');
    const kept = await readKept(keeper.keptId ?? '');
    if (!kept) throw new Error('not kept');
    await inDatabase((database) => database.put('sketches', { ...kept, document: '{"trimwell":99}' }));
    const second = tab();
    expect(await second.keeper.restore()).toMatchObject({ ok: false, problems: [{ path: 'trimwell' }] });
    expect(second.session.document).toEqual(sampleSketch());
  });
});

describe('opening another sketch', () => {
  const other = { ...sampleSketch(), title: 'Other' };

  test('what lay there is kept first, and the other becomes a kept one with its first change', async () => {
    const { keeper, rename } = tab();
    rename('Hedge');
    keeper.lay(other);
    await keeper.keepNow();
    expect(await titles()).toEqual(['Hedge']);
    rename('Other, changed');
    await keeper.keepNow();
    expect(await titles()).toEqual(['Hedge', 'Other, changed']);
  });

  test('going back to a sketch that is kept goes on with that one, and makes no second', async () => {
    const { keeper, session, rename } = await keptTab('Hedge');
    const hedge = session.document;
    const id = keeper.keptId;
    keeper.lay(other);
    keeper.lay(hedge);
    rename('Hedge again');
    await keeper.keepNow();
    expect(keeper.keptId).toBe(id);
    expect(await titles()).toEqual(['Hedge again']);
  });

  test('what the user brings is kept at once, and only once', async () => {
    const { keeper } = tab();
    keeper.adopt(other);
    await keeper.keepNow();
    expect(keeper.state.kind).toBe('kept');
    keeper.adopt(structuredClone(other));
    await keeper.keepNow();
    expect(await listKept()).toMatchObject([{ title: 'Other', revision: 1 }]);
  });

  test('a sketch opened in the session by others is one that the user brought', async () => {
    const { keeper, session, rename } = await keptTab('Hedge');
    rename('Hedge, last');
    session.open(other);
    await keeper.keepNow();
    expect(await titles()).toEqual(['Hedge, last', 'Other']);
  });
});

describe('two tabs on one sketch', () => {
  test('the one that changed nothing hears of it at once, and can take the newer', async () => {
    const first = await keptTab('Hedge');
    const second = await secondTab();
    first.rename('Hedge, taller');
    await reached(second.keeper, 'newer elsewhere');
    await second.keeper.choose('theirs');
    expect(second.session.document.title).toBe('Hedge, taller');
    expect(second.keeper.state.kind).toBe('kept');
    expect(await titles()).toEqual(['Hedge, taller']);
  });

  async function apart() {
    const first = await keptTab('Hedge');
    const second = await secondTab();
    first.rename('First');
    second.rename('Second');
    await first.keeper.keepNow();
    await second.keeper.keepNow();
    expect(second.keeper.state.kind).toBe('kept aside');
    return { first, second };
  }

  test('nothing is overwritten: the later one is kept as a copy beside the earlier', async () => {
    const { second } = await apart();
    expect(await titles()).toEqual(['First', 'Second']);
    second.rename('Second, more');
    await second.keeper.keepNow();
    expect(await titles()).toEqual(['First', 'Second, more']);
    expect(second.keeper.state.kind).toBe('kept aside');
  });

  test('both: they stay two', async () => {
    const { second } = await apart();
    await second.keeper.choose('both');
    expect(second.keeper.state.kind).toBe('kept');
    second.rename('Second, more');
    await second.keeper.keepNow();
    expect(await titles()).toEqual(['First', 'Second, more']);
  });

  test('theirs: the copy is taken away, and can be put back', async () => {
    const { first, second } = await apart();
    await second.keeper.choose('theirs');
    expect(second.session.document.title).toBe('First');
    expect(second.keeper.keptId).toBe(first.keeper.keptId);
    expect(await titles()).toEqual(['First']);
    const [copy] = second.keeper.takenOff.all;
    if (!copy) throw new Error('nothing to put back');
    expect(await second.keeper.putBack(copy)).toBe(true);
    expect(await titles()).toEqual(['First', 'Second']);
  });

  test('mine: it takes the place of theirs, and the other tab hears of it', async () => {
    const { first, second } = await apart();
    await second.keeper.choose('mine');
    expect(await titles()).toEqual(['Second']);
    expect(second.keeper.keptId).toBe(first.keeper.keptId);
    await reached(first.keeper, 'newer elsewhere');
    second.rename('Second, more');
    await second.keeper.keepNow();
    expect(await titles()).toEqual(['Second, more']);
    expect((await listKept())[0]?.aside).toBe(false);
  });

  test('mine, when they went on in the meantime: asked again', async () => {
    const { first, second } = await apart();
    first.rename('First, more');
    await first.keeper.keepNow();
    await second.keeper.choose('mine');
    expect(second.keeper.state).toMatchObject({ kind: 'kept aside', theirs: { title: 'First, more' } });
    expect(await titles()).toEqual(['First, more', 'Second']);
  });

  test('theirs, when this page cannot read it: both stay, and why is told', async () => {
    const { first, second } = await apart();
    const theirs = await readKept(first.keeper.keptId ?? '');
    if (!theirs) throw new Error('not kept');
    await inDatabase((database) => database.put('sketches', { ...theirs, document: '{"trimwell":99}' }));
    expect(await second.keeper.choose('theirs')).toMatchObject([{ path: 'trimwell' }]);
    expect(second.keeper.state.kind).toBe('kept aside');
    expect(second.session.document.title).toBe('Second');
    expect(await titles()).toEqual(['First', 'Second']);
  });

  test('what is changed while the copy is being kept aside is in the copy', async () => {
    const first = await keptTab('Hedge');
    const second = await secondTab();
    first.rename('First');
    await first.keeper.keepNow();
    second.rename('Second');
    const keeping = second.keeper.keepNow();
    second.rename('Second, at once');
    await keeping;
    await second.keeper.keepNow();
    expect(await titles()).toEqual(['First', 'Second, at once']);
  });

  test('changing what another tab took off keeps it again', async () => {
    const first = await keptTab('Hedge');
    const second = await secondTab();
    await first.keeper.takeOff(first.keeper.keptId ?? '');
    await reached(second.keeper, 'off the shelf');
    second.rename('Hedge, kept');
    await second.keeper.keepNow();
    expect(second.keeper.state.kind).toBe('kept');
    expect(await titles()).toEqual(['Hedge, kept']);
  });
});

describe('when nothing can be kept', () => {
  /** Every write fails from now on as in a full storage; the function that comes back makes room. */
  function fill(): () => void {
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    return () => put.mockRestore();
  }

  test('it is told, work goes on, and the next change is kept with all before it', async () => {
    const { keeper, session, rename } = await keptTab('Hedge');
    const makeRoom = fill();
    rename('Lost?');
    await keeper.keepNow();
    expect(keeper.state).toMatchObject({ kind: 'not kept', trouble: 'full' });
    expect(keeper.waiting.map(({ title }) => title)).toEqual(['Lost?']);
    session.open({ ...sampleSketch(), title: 'Other' });
    await keeper.keepNow();
    expect(keeper.waiting.map(({ title }) => title).sort()).toEqual(['Lost?', 'Other']);
    makeRoom();
    rename('Other, more');
    await keeper.keepNow();
    expect(keeper.state.kind).toBe('kept');
    expect(await titles()).toEqual(['Lost?', 'Other, more']);
  });

  test('making room keeps what waits', async () => {
    const { keeper, rename, session } = await keptTab('Hedge');
    const id = keeper.keptId ?? '';
    session.open({ ...sampleSketch(), title: 'Other' });
    await keeper.keepNow();
    const makeRoom = fill();
    rename('Other, more');
    await keeper.keepNow();
    makeRoom();
    await keeper.takeOff(id);
    expect(keeper.state.kind).toBe('kept');
    expect(await titles()).toEqual(['Other, more']);
  });

  test('a browser that refuses is told as such', async () => {
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(() => {
      throw new DOMException('not here', 'SecurityError');
    });
    const { keeper, session, rename } = tab();
    expect(await keeper.restore()).toBeNull();
    rename('Hedge');
    await keeper.keepNow();
    expect(keeper.state).toMatchObject({ kind: 'not kept', trouble: 'refused' });
    expect(session.document.title).toBe('Hedge');
  });
});

describe('taking off', () => {
  test('can be undone while the shelf is looked at, and for ten seconds at least', async () => {
    const { keeper } = await keptTab('Hedge');
    const stopLooking = keeper.takenOff.look();
    await keeper.takeOff(keeper.keptId ?? '');
    stopLooking();
    expect(keeper.state.kind).toBe('off the shelf');
    const now = Date.now();
    const clock = vi.spyOn(Date, 'now').mockReturnValue(now + 9_000);
    keeper.takenOff.look()();
    expect(keeper.takenOff.all).toHaveLength(1);
    clock.mockReturnValue(now + 11_000);
    expect(keeper.takenOff.all).toHaveLength(1);
    keeper.takenOff.look()();
    expect(keeper.takenOff.all).toEqual([]);
  });

  test('what is put back is the one on the table again', async () => {
    const { keeper, rename } = await keptTab('Hedge');
    const taken = await keeper.takeOff(keeper.keptId ?? '');
    if (!taken) throw new Error('nothing was taken off');
    expect(await keeper.putBack(taken)).toBe(true);
    await keeper.keepNow();
    expect(keeper.state.kind).toBe('kept');
    rename('Hedge, taller');
    await keeper.keepNow();
    expect(await listKept()).toMatchObject([{ title: 'Hedge, taller', revision: 2 }]);
  });
});

test('the browser is asked once to let it last, when something of the user’s own was kept', async () => {
  const persist = vi.fn(async () => true);
  vi.stubGlobal('navigator', { storage: { persist } });
  const { keeper, rename } = tab();
  await keeper.restore();
  await keeper.keepNow();
  expect(persist).not.toHaveBeenCalled();
  rename('A');
  await keeper.keepNow();
  rename('B');
  await keeper.keepNow();
  expect(persist).toHaveBeenCalledTimes(1);
});
