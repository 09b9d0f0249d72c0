const KEY = 'trimwell-table:';

/**
 * The kept sketch that lay on the table of `place` in this very tab, or null: two tabs that are loaded again each find their
 * own. A browser that gives no storage gives null.
 */
export function recallTable(place: string): string | null {
  return tabStorage()?.getItem(KEY + place) ?? null;
}

/** Notes which kept sketch lies on the table of `place` in this tab. */
export function rememberTable(place: string, id: string): void {
  try {
    tabStorage()?.setItem(KEY + place, id);
  } catch (error) {
    // A full storage of the tab loses nothing: the database notes the table too, only not tab by tab.
    if (!(error instanceof DOMException)) throw error;
  }
}

/** Looking at `sessionStorage` throws in a page that may not store anything. */
function tabStorage(): Storage | null {
  try {
    return globalThis.sessionStorage ?? null;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}
