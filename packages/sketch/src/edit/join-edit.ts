import type { CardEdit } from '../model/sketch.js';

/** Edits that others may depend on: what comes after them is never joined with what came before. */
const STANDS_BETWEEN: ReadonlySet<CardEdit['do']> = new Set([
  'add-piece',
  'remove-piece',
  'mat',
  'remove-paper',
  'remove-mix',
  'remove-punch',
] satisfies readonly CardEdit['do'][]);

/** True when all that `earlier` sets is set anew by `later`, whatever else happens between them. */
function overwrites(later: CardEdit, earlier: CardEdit): boolean {
  switch (later.do) {
    case 'place':
    case 'tilt':
    case 'round':
    case 'cut-from':
      return earlier.do === later.do && earlier.piece === later.piece;
    case 'resize':
      return (earlier.do === 'resize' || earlier.do === 'place') && earlier.piece === later.piece;
    case 'punch':
      return earlier.do === 'punch' && earlier.piece === later.piece && earlier.edge === later.edge;
    case 'card':
      return earlier.do === 'card';
    case 'alter-piece':
      return (
        earlier.do === 'alter-piece' &&
        earlier.piece === later.piece &&
        Object.keys(earlier).every((field) => field in later)
      );
    default:
      return false;
  }
}

/** True when `later`, coming right after `earlier`, leaves nothing of it; with something between them it might. */
function replaces(later: CardEdit, earlier: CardEdit): boolean {
  switch (later.do) {
    case 'order':
      return earlier.do === 'order' && earlier.piece === later.piece;
    case 'mat':
      return later.mats !== null && earlier.do === 'mat' && earlier.piece === later.piece;
    case 'set-paper':
      return earlier.do === 'set-paper' && earlier.paper.id === later.paper.id;
    case 'set-mix':
      return earlier.do === 'set-mix' && earlier.mix.id === later.mix.id;
    case 'set-punch':
      return earlier.do === 'set-punch' && earlier.punch.id === later.punch.id;
    default:
      return false;
  }
}

/**
 * `edits` and then `next`, without what `next` makes needless: while a piece is dragged, only its last place is kept. On
 * every sketch on which all of `edits` and `next` can be made, the result makes the same sketch.
 */
export function joinEdit(edits: readonly CardEdit[], next: CardEdit): readonly CardEdit[] {
  const newest = edits.at(-1);
  if (newest && replaces(next, newest)) return [...edits.slice(0, -1), next];
  const kept: CardEdit[] = [];
  for (let at = edits.length - 1; at >= 0; at -= 1) {
    const edit = edits[at];
    if (!edit) continue;
    if (STANDS_BETWEEN.has(edit.do)) return [...edits.slice(0, at + 1), ...kept.reverse(), next];
    if (!overwrites(next, edit)) kept.push(edit);
  }
  return [...kept.reverse(), next];
}
