import type { KeepTrouble } from './keep-error.js';
import type { KeptSketch } from './kept-sketch.js';

/** How it stands with the sketch on the table. */
export type KeptState =
  /** Nothing to keep: it is as it came. */
  | { readonly kind: 'as it came' }
  /** Changed, and about to be kept. */
  | { readonly kind: 'keeping' }
  /** In the database since `at` (milliseconds since 1970). */
  | { readonly kind: 'kept'; readonly at: number }
  /** Changes are on the table only. */
  | { readonly kind: 'not kept'; readonly trouble: KeepTrouble; readonly reason: string }
  /** Another tab kept a newer one; nothing was changed here. */
  | { readonly kind: 'newer elsewhere'; readonly theirs: KeptSketch }
  /** Both tabs changed it: what is on this table is kept as a copy beside `theirs`. */
  | { readonly kind: 'kept aside'; readonly theirs: KeptSketch }
  /** It was taken off the shelf; the next change puts it there again. */
  | { readonly kind: 'off the shelf' };

/** What the user wants of two versions: the other tab's on this table, both on the shelf, or this one in its place. */
export type Choice = 'theirs' | 'both' | 'mine';
