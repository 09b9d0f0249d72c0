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

/** Loads a part; loading it twice is loading it once. */
export async function fetchPart(part: LatePart): Promise<void> {
  await LATE[part]();
}

/** What the table fetches by itself once it stands; the picture of the batch waits until it is laid out. */
export const SOON: readonly LatePart[] = ['ticket', 'watch', 'other ways', 'near misses'];
