import { afterEach, expect, test, vi } from 'vitest';
import { PATIENCE } from '../../../../tests/kit/patience.js';

const opening = vi.hoisted(() => ({
  blocked: (): void => undefined,
  opens: (_database: object): void => undefined,
}));

vi.mock('idb', () => ({
  openDB: (_name: string, _version: number, { blocked }: { readonly blocked: () => void }) => {
    opening.blocked = blocked;
    return new Promise((resolve) => {
      opening.opens = resolve;
    });
  },
}));

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

test('a database that was blocked and opens after all is closed, so that it stands in nobody’s way', async () => {
  vi.stubGlobal('indexedDB', {});
  vi.resetModules();
  const { inDatabase } = await import('./database.js');
  const used = inDatabase(async () => 'used');
  opening.blocked();
  const close = vi.fn();
  opening.opens({ close });
  await expect(used).rejects.toMatchObject({ trouble: 'blocked' });
  await vi.waitFor(() => expect(close).toHaveBeenCalledOnce(), PATIENCE);
  // The next use opens it anew, and keeps what it opened.
  const again = inDatabase(async (database) => database);
  const second = { close: vi.fn() };
  opening.opens(second);
  expect(await again).toBe(second);
  expect(second.close).not.toHaveBeenCalled();
});
