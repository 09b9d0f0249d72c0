import { isPageKept } from './keepers.js';

const KEY = 'trimwell:post';

/** The country of the post that was chosen on this machine; null where none was, or nothing may be kept. */
export function rememberedPost(): string | null {
  try {
    const code = isPageKept() ? localStorage.getItem(KEY) : null;
    return code !== null && /^[A-Z]{2}$/.test(code) ? code : null;
  } catch {
    // A browser that forbids storage remembers nothing, which is no fault.
    return null;
  }
}

/** Remembers the choice, where the tables of this page are kept. */
export function rememberPost(code: string | null): void {
  if (!isPageKept()) return;
  try {
    if (code === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, code);
  } catch {
    // It lasts as long as the page, then.
  }
}
