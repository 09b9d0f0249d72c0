/**
 * Parts of the table that are not needed for the first look at it. Each comes as a bundle of its own when it is wanted, or
 * when the planner first rests and nobody waits for anything.
 */
const LATE = {
  ticket: () => import('./ticket/define.js'),
  watch: () => import('./watch/define.js'),
  'other ways': () => import('./variations/define-panel.js'),
  'near misses': () => import('./table/define-near-misses.js'),
  batch: () => import('./table/define-batch.js'),
} as const;

export type LatePart = keyof typeof LATE;

/** What the table fetches by itself once it stands; the picture of the batch waits until it is laid out. */
const SOON: readonly LatePart[] = ['ticket', 'watch', 'other ways', 'near misses'];

/** Fetches the late parts of one table; `missing` is told in words when one cannot be loaded. */
export class LateParts {
  #asked = false;

  constructor(private readonly missing: (words: string) => void) {}

  /** False, with a word about it, when the part cannot be loaded. Loading it twice is loading it once. */
  async fetch(part: LatePart): Promise<boolean> {
    try {
      await LATE[part]();
      return true;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.missing(`A part of the table could not be loaded; load the page anew. (${why})`);
      return false;
    }
  }

  /** Fetches what the table needs soon, once, when the browser has nothing else to do. */
  fetchSoon(): void {
    if (this.#asked) return;
    this.#asked = true;
    const fetch = (): void => {
      for (const part of SOON) void this.fetch(part);
    };
    // Not every browser tells when it is idle.
    if ('requestIdleCallback' in globalThis) requestIdleCallback(fetch, { timeout: 500 });
    else setTimeout(fetch, 50);
  }
}
