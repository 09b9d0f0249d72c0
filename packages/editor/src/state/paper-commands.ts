import { onEach } from './on-selected.js';
import type { Command } from './state.js';

/** Cuts the selected pieces from another paper or mix. */
export function cutFrom(from: string): Command {
  return onEach('piece.paper', (piece, { papers, mixes }) => {
    const known = papers.some(({ id }) => id === from) || mixes.some(({ id }) => id === from);
    return !known || piece.from === from ? [] : [{ do: 'cut-from', piece: piece.id, from }];
  });
}
