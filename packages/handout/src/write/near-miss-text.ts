import { formatLength, type LengthStyle } from '@trimwell/geometry';
import { counted, type NearMiss, type NearMisses, type Sketch } from '@trimwell/sketch';
import { labelPieces } from '../draw/labels.js';

/** What a near miss changes and what that gives: `D Strip: 2 in high instead of 2 1/8 in: 12 cards instead of 9`. */
function missText(sketch: Sketch, found: NearMisses, miss: NearMiss): string {
  const style: LengthStyle = { unit: sketch.unit };
  const labels = labelPieces(sketch);
  const called = (id: string): string =>
    `${labels.get(id) ?? '?'} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? id}`;
  const paper = (id: string): string => sketch.papers.find((each) => each.id === id)?.name ?? id;
  const [side, word] =
    miss.change.width > 0
      ? (['width', miss.change.height > 0 ? 'across' : 'wide'] as const)
      : (['height', 'high'] as const);
  const size = `${formatLength(miss.to[side], style)} ${word} instead of ${formatLength(miss.from[side], style)}`;
  const cards = found.cards ?? 0;
  const saved = miss.saves.map((each) => `${counted(each.sheets, 'sheet')} of ${paper(each.paper)}`).join(' and ');
  const gain = miss.adds > 0 ? `${counted(cards + miss.adds, 'card')} instead of ${cards}` : `${saved} fewer`;
  const along = miss.mats.length > 0 ? `; its mats follow: ${miss.mats.map(called).join(', ')}` : '';
  return `  ${called(miss.piece)}: ${size}: ${gain}${miss.proven ? '' : ' (not proven that it cannot be had as it is)'}${along}`;
}

/** Near misses in plain words, the smallest change first. */
export function nearMissText(sketch: Sketch, found: NearMisses): string {
  const within = `up to ${formatLength(found.tolerance, { unit: sketch.unit })} smaller`;
  if (found.cards === null) return `${sketch.title}: no paper is limited, so there is no number of cards to compare\n`;
  const head = `${sketch.title}: ${counted(found.cards, 'card')} from ${counted(found.sheets, 'sheet')} as it is`;
  const misses =
    found.misses.length > 0
      ? [`Near misses, pieces ${within}:`, ...found.misses.map((miss) => missText(sketch, found, miss))]
      : [`No piece ${within} saves a sheet or adds a card.`];
  return `${[head, ...misses].join('\n')}\n`;
}
