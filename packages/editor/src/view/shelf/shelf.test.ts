import 'fake-indexeddb/auto';
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { closeDatabase, inDatabase } from '../../keeping/database.js';
import { Keeper } from '../../keeping/keeper.js';
import { listKept, readKept } from '../../keeping/sketch-store.js';
import { Session } from '../../session/session.js';
import { KeptNoteElement } from '../kept-note.js';
import { DrawingElement } from '../table/drawing-element.js';
import { type BoardsElement, standing } from './boards.js';
import './define.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { ShelfElement } from './shelf.js';
import type { StorageElement } from './storage-panel.js';

customElements.define('trimwell-drawing', DrawingElement);
customElements.define('trimwell-kept-note', KeptNoteElement);

const keepers: Keeper[] = [];

/** Waits until `check` holds, however busy the machine is. */
function eventually(check: () => void | Promise<void>): Promise<void> {
  return vi.waitFor(check, PATIENCE);
}

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

afterEach(async () => {
  document.body.replaceChildren();
  for (const keeper of keepers.splice(0)) {
    keeper.dispose();
    await keeper.keepNow();
  }
  vi.restoreAllMocks();
});

function rename(session: Session, title: string): void {
  session.dispatch({ event: 'sketch.rename', edits: [{ do: 'describe', title }], at: 0 });
}

/** A table on which each of `titles` was made and kept; the last one lies there. */
async function table(...titles: readonly string[]) {
  const session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  const keeper = new Keeper(session, 'club');
  keepers.push(keeper);
  for (const title of titles) {
    keeper.lay(sampleSketch());
    rename(session, title);
    await keeper.keepNow();
  }
  return { session, keeper };
}

async function shelf(session: Session, about: string | null = null) {
  const element = new ShelfElement();
  Object.assign(element, { session, about });
  document.body.append(element);
  const settle = async () => {
    await eventually(async () => {
      await element.updateComplete;
      expect(element.renderRoot.textContent).toMatch(/sketch(es)?|of \d/);
    });
    await boards()?.updateComplete;
  };
  const boards = () => element.renderRoot.querySelector<BoardsElement>('trimwell-boards');
  const titles = () =>
    [...(boards()?.renderRoot.querySelectorAll('li b') ?? [])].map((title) => title.textContent?.trim()).sort();
  const card = (title: string) =>
    [...(boards()?.renderRoot.querySelectorAll('li') ?? [])].find((item) => item.textContent?.includes(title));
  const press = async (label: string) => {
    const buttons = [...element.renderRoot.querySelectorAll('button')];
    const found = buttons.find((button) => (button.ariaLabel ?? button.textContent ?? '').includes(label));
    if (!found) throw new Error(`no button ${label}: ${buttons.map(({ textContent }) => textContent)}`);
    found.click();
    await settle();
  };
  const pick = async (title: string) => {
    card(title)?.click();
    await settle();
  };
  await eventually(async () => {
    await element.updateComplete;
    expect(element.renderRoot.querySelector('.find + span')?.textContent).not.toBe('');
  });
  await settle();
  return { element, boards, titles, card, press, pick, settle };
}

test('all kept sketches stand on it, and the one on the table is in hand', async () => {
  const { session } = await table('Hedge', 'Star');
  const { titles, boards, element } = await shelf(session);
  expect(titles()).toEqual(['Hedge', 'Star']);
  const chosen = boards()?.renderRoot.querySelector('li[aria-selected="true"]');
  expect(chosen?.textContent).toContain('Star');
  expect(chosen?.textContent).toContain('on the table');
  expect(element.renderRoot.querySelector('.hand h3')?.textContent).toBe('Star');
});

test('a search leaves those that have all its words', async () => {
  const { session } = await table('Hedge', 'Star', 'Hedge row');
  const { element, titles, settle } = await shelf(session);
  const box = element.renderRoot.querySelector<HTMLInputElement>('input[type=search]');
  if (!box) throw new Error('no search box');
  const look = async (words: string) => {
    box.value = words;
    box.dispatchEvent(new Event('input'));
    await settle();
  };
  await look('hedge');
  expect(titles()).toEqual(['Hedge', 'Hedge row']);
  expect(element.renderRoot.textContent).toContain('2 of 3');
  await look('teapot');
  expect(titles()).toEqual([]);
  expect(element.renderRoot.textContent).toContain('No sketch on the shelf has all these words');
});

test('one that is wanted comes on the table, and goes on being that kept one', async () => {
  const { session, keeper } = await table('Hedge', 'Star');
  const { element, press, pick } = await shelf(session);
  const picked = vi.fn();
  element.addEventListener('sketch-pick', (event) => picked((event as CustomEvent).detail));
  await pick('Hedge');
  await press('Lay it on the table');
  expect(session.document.title).toBe('Hedge');
  expect(picked).toHaveBeenCalledWith({ sketch: session.document, kept: keeper.keptId });
  rename(session, 'Hedge, taller');
  await keeper.keepNow();
  expect((await listKept()).map(({ title }) => title).sort()).toEqual(['Hedge, taller', 'Star']);
});

test('keys: arrows take cards in hand, Enter lays one on the table, Delete takes one off', async () => {
  const { session } = await table('Hedge', 'Star');
  const { boards, titles, settle } = await shelf(session);
  const key = async (name: string) => {
    const at = boards()?.renderRoot.querySelector('li[tabindex="0"]');
    at?.dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true }));
    await settle();
  };
  await key('End');
  await key('Enter');
  const last = session.document.title;
  await key('Home');
  await key('Enter');
  expect([last, session.document.title].sort()).toEqual(['Hedge', 'Star']);
  await key('Delete');
  await eventually(() => expect(titles()).toEqual([last]));
});

test('taking off can be undone, as often as something was taken off', async () => {
  const { session } = await table('Hedge', 'Star');
  const { titles, press, pick, element } = await shelf(session);
  await pick('Hedge');
  await press('Take it off the shelf');
  await eventually(() => expect(titles()).toEqual(['Star']));
  expect(element.renderRoot.textContent).toContain('Hedge is off the shelf');
  await press('Put Hedge back');
  await eventually(() => expect(titles()).toEqual(['Hedge', 'Star']));
  expect(element.renderRoot.querySelector('.away')).toBeNull();
});

test('a copy stands beside its sketch and is in hand', async () => {
  const { session } = await table('Hedge');
  const { titles, press } = await shelf(session);
  await press('Stand a copy beside it');
  await eventually(() => expect(titles()).toEqual(['Hedge', 'Hedge']));
});

test('what is on the table as it came can be put on the shelf', async () => {
  const { session, keeper } = await table();
  const { press, titles, element } = await shelf(session);
  expect(element.renderRoot.textContent).toContain('Nothing stands here yet');
  await press('Put it on the shelf');
  await eventually(() => expect(titles()).toEqual([sampleSketch().title]));
  expect(keeper.state.kind).toBe('kept');
});

test('one that cannot be read says why, stays, and can only be saved or taken off', async () => {
  const { session, keeper } = await table('Hedge', 'Star');
  const hedge = (await listKept()).find(({ title }) => title === 'Hedge');
  if (!hedge) throw new Error('not kept');
  await inDatabase((database) => database.put('sketches', { ...hedge, document: '{"trimwell":99}' }));
  const { element, pick } = await shelf(session);
  await pick('Hedge');
  const hand = element.renderRoot.querySelector('.hand');
  expect(hand?.textContent).toContain('"trimwell": 1');
  expect(hand?.textContent).not.toContain('Lay it on the table');
  expect(hand?.textContent).not.toContain('Copy a link');
  expect(session.document.title).toBe('Star');
  expect((await readKept(keeper.keptId ?? ''))?.title).toBe('Star');
});

test('a page that keeps nothing still opens files and makes links', async () => {
  const session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  const element = new ShelfElement();
  element.session = session;
  document.body.append(element);
  await element.updateComplete;
  expect(element.renderRoot.textContent).toContain('This page keeps nothing');
  const labels = [...element.renderRoot.querySelectorAll('button')].map(({ textContent }) => textContent?.trim());
  expect(labels).toEqual(['Open a file…', 'Save as a file', 'Copy a link']);
});

test('cards stand beside each other in their true sizes, as long as they fit', () => {
  const inch = 16_256;
  expect(standing(4 * inch, 5 * inch)).toEqual({ width: 108, height: 135 });
  expect(standing(2 * inch, 2 * inch)).toEqual({ width: 54, height: 54 });
  const large = standing(12 * inch, 12 * inch);
  expect(large).toEqual({ width: 118, height: 118 });
});

test('the note beside the title says what is kept, and offers ways out when it cannot be', async () => {
  const { session, keeper } = await table('Hedge');
  const note = new KeptNoteElement();
  note.keeper = keeper;
  document.body.append(note);
  await note.updateComplete;
  expect(note.renderRoot.querySelector('.words')?.textContent).toBe('kept a moment ago');
  expect(note.renderRoot.querySelector('[role=status]')?.textContent).toBe('');
  const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
  rename(session, 'Hedge, taller');
  await keeper.keepNow();
  await note.updateComplete;
  expect(note.renderRoot.querySelector('[role=status]')?.textContent).toContain('not kept: storage is full');
  const room = vi.fn();
  note.addEventListener('tray-wish', (event) => room((event as CustomEvent).detail));
  const buttons = [...note.renderRoot.querySelectorAll('button')];
  expect(buttons.map(({ textContent }) => textContent)).toEqual(['Save as a file', 'Make room…']);
  buttons[1]?.click();
  expect(room).toHaveBeenCalledWith({ tray: 'shelf', about: 'storage' });
  put.mockRestore();
});

test('who wants to make room sees what fills the storage at once', async () => {
  const { session } = await table('Hedge');
  const { element } = await shelf(session, 'storage');
  const storage = element.renderRoot.querySelector<StorageElement>('trimwell-storage');
  await eventually(() => expect(storage?.renderRoot.querySelector('table')?.textContent).toContain('Hedge'));
  const off = storage?.renderRoot.querySelector<HTMLButtonElement>('button[aria-label="Take Hedge off the shelf"]');
  off?.click();
  await eventually(async () => expect(await listKept()).toEqual([]));
});
