import type { KeepTrouble } from './keep-error.js';
import type { KeptState } from './kept-state.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

function sameDay(one: number, other: number): boolean {
  return new Date(one).toDateString() === new Date(other).toDateString();
}

/** When something was kept, as said at `now`: `a moment ago`, `4 minutes ago`, `today at 14:20`, `3 May 2031 at 14:20`. */
export function timeWords(at: number, now: number): string {
  const since = now - at;
  if (since < MINUTE) return 'a moment ago';
  const minutes = Math.floor(since / MINUTE);
  if (since < HOUR) return minutes === 1 ? 'a minute ago' : `${minutes} minutes ago`;
  const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' }).format(at);
  if (sameDay(at, now)) return `today at ${clock}`;
  const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }).format(at);
  return `${day} at ${clock}`;
}

/** Why nothing can be kept, after `not kept: `. */
const TROUBLES: Readonly<Record<KeepTrouble, string>> = {
  full: 'storage is full',
  refused: 'this browser lets the page keep nothing',
  blocked: 'an older version of this page is open in another tab',
  failed: 'the browser could not write it',
};

/** What the user can do about it. */
const WAYS_OUT: Readonly<Record<KeepTrouble, string>> = {
  full: 'You can go on working. Make room on the shelf, or save the sketch as a file.',
  refused:
    'You can go on working, and save the sketch as a file before you leave. A private window often keeps nothing.',
  blocked: 'Close the other tab, and the next change is kept. Or save the sketch as a file.',
  failed: 'You can go on working; the next change is tried again. To be safe, save the sketch as a file.',
};

/** How it stands with the sketch on the table, in a few words for beside its title. */
export function keptWords(state: KeptState, now: number): string {
  switch (state.kind) {
    case 'as it came':
      return '';
    case 'keeping':
      return 'keeping…';
    case 'kept':
      return `kept ${timeWords(state.at, now)}`;
    case 'not kept':
      return `not kept: ${TROUBLES[state.trouble]}`;
    case 'newer elsewhere':
      return 'newer in another tab';
    case 'kept aside':
      return 'changed in two tabs';
    case 'off the shelf':
      return 'off the shelf; the next change puts it back';
  }
}

/** What the user has to know or to choose, as a sentence; null when there is nothing. */
export function keptAdvice(state: KeptState, now: number): string | null {
  switch (state.kind) {
    case 'not kept':
      return state.trouble === 'failed' ? `${WAYS_OUT.failed} (${state.reason})` : WAYS_OUT[state.trouble];
    case 'newer elsewhere':
      return `Another tab changed this sketch (${timeWords(state.theirs.keptAt, now)}). Which one is to lie on this table?`;
    case 'kept aside':
      return `Another tab changed this sketch too (${timeWords(state.theirs.keptAt, now)}). Nothing is lost: yours is kept as a copy beside it. Which do you want?`;
    default:
      return null;
  }
}

/** A number of bytes as a person reads it: `640 bytes`, `12 KB`, `3.4 MB`. A kilobyte is 1000 bytes. */
export function bytesWords(bytes: number): string {
  if (bytes < 1_000) return `${bytes} bytes`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1_000)} KB`;
  if (bytes < 1_000_000_000) return `${(bytes / 1_000_000).toFixed(1)} MB`;
  return `${(bytes / 1_000_000_000).toFixed(1)} GB`;
}
