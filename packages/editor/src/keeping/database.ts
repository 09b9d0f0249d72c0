import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import { asKeepError, KeepError } from './keep-error.js';
import type { KeptSketch } from './kept-sketch.js';
import type { KeptPhoto } from './photo-store.js';

const NAME = 'trimwell';
const VERSION = 1;

interface Stores extends DBSchema {
  sketches: { key: string; value: KeptSketch; indexes: { place: string } };
  /** Which kept sketch lay on the table of a place last. */
  tables: { key: string; value: string };
  photos: { key: string; value: KeptPhoto };
  /** The designer's own tools, under one key; read through a schema. */
  drawer: { key: string; value: unknown };
}

export type KeepingDatabase = IDBPDatabase<Stores>;

let opened: Promise<KeepingDatabase> | null = null;

function open(): Promise<KeepingDatabase> {
  if (typeof indexedDB === 'undefined') throw new KeepError('refused', 'this browser has no database for pages');
  return new Promise((resolve, reject) => {
    let waiting = true;
    const settle = (database: KeepingDatabase): void => {
      // Nobody waits for one that was blocked and opens after all: open, it would stand in the way of newer pages.
      if (waiting) resolve(database);
      else database.close();
    };
    openDB<Stores>(NAME, VERSION, {
      upgrade(database) {
        database.createObjectStore('sketches', { keyPath: 'id' }).createIndex('place', 'place');
        database.createObjectStore('tables');
        database.createObjectStore('photos', { keyPath: 'id' });
        database.createObjectStore('drawer');
      },
      blocked: () => {
        waiting = false;
        reject(new KeepError('blocked', 'another tab holds an older version of the database open'));
      },
      // A newer page in another tab waits for this one to let go; the next use opens it again.
      blocking: (_old, _new, event) => {
        forgetDatabase();
        if (event.target instanceof IDBDatabase) event.target.close();
      },
      terminated: forgetDatabase,
    }).then(settle, reject);
  });
}

function forgetDatabase(): void {
  opened = null;
}

/** Closes the database, so that the next use opens it anew. */
export async function closeDatabase(): Promise<void> {
  const database = opened;
  forgetDatabase();
  (await database)?.close();
}

/**
 * Lets `use` work in the database, which is opened on first use and once more after the browser has closed it.
 * @throws KeepError when it cannot be opened, or when `use` fails in it.
 */
export async function inDatabase<T>(use: (database: KeepingDatabase) => Promise<T>): Promise<T> {
  for (let again = false; ; again = true) {
    try {
      opened ??= open();
      return await use(await opened);
    } catch (error) {
      const closed = error instanceof DOMException && error.name === 'InvalidStateError';
      // What failed to open is tried anew next time: the visitor may have allowed it in the meantime.
      if (closed || !(await isOpen())) forgetDatabase();
      if (!closed || again) throw asKeepError(error);
    }
  }
}

async function isOpen(): Promise<boolean> {
  const found = await opened?.then(
    () => true,
    () => false,
  );
  return found ?? false;
}

/**
 * Lets `use` write in `stores`, all of it or nothing, and waits until it is written.
 * @throws KeepError as `inDatabase`; when the storage is full, that is what it says
 */
export function inTransaction<T, Names extends StoreNames<Stores>>(
  stores: Names[],
  use: (work: IDBPTransaction<Stores, Names[], 'readwrite'>) => Promise<T>,
): Promise<T> {
  return inDatabase(async (database) => {
    const work = database.transaction(stores, 'readwrite');
    // How it ended is looked at below; until then a failure must not count as unheard.
    work.done.catch(() => undefined);
    try {
      const result = await use(work);
      await work.done;
      return result;
    } catch (error) {
      // When the storage is full, a request only hears that it was aborted; the transaction knows why.
      throw work.error ? asKeepError(work.error) : error;
    }
  });
}
