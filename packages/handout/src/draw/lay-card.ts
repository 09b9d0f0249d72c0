import { inches, rectangle } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import type { Drawing, Item } from '../drawing/drawing.js';
import type { CardOptions } from './card-options.js';
import { type Hand, layPiece } from './lay-piece.js';
import { looksOf } from './piece-look.js';

const CARD = 'card';

/** One face of the card in true proportion, drawn by `hand`: the base, then every piece on that face in gluing order. */
export function layCard(sketch: Sketch, options: CardOptions, hand: Hand): Drawing {
  const { width, height, fold, base } = sketch.card;
  const size = options.size ?? inches(1) / 6;
  const shown = sketch.pieces.filter(
    (piece) => piece.face === options.face && !(options.leaveOutHidden && piece.hidden),
  );
  const outline = rectangle(0, 0, width, height);
  const items: Item[] = [
    { kind: 'path', key: `${CARD}:shadow`, role: 'shadow', outline },
    { kind: 'path', key: `${CARD}:paper`, role: 'outline', outline, fill: { paper: base } },
  ];
  if (fold === 'left')
    items.push({ kind: 'line', key: `${CARD}:fold`, role: 'fold', from: { x: 0, y: 0 }, to: { x: 0, y: height } });
  if (fold === 'top')
    items.push({ kind: 'line', key: `${CARD}:fold`, role: 'fold', from: { x: 0, y: 0 }, to: { x: width, y: 0 } });
  items.push(...shown.map((piece) => layPiece(sketch, piece, hand)));
  const room = options.dimensions === false ? 0 : size * 2.6;
  items.push(...hand.marks(sketch, shown, { ...options, size }));
  const edge = size * 0.6;
  return {
    title: `${sketch.title}, ${options.face === 'front' ? 'card face' : 'inside'}`,
    description: `${shown.length} pieces on a card base, lowest first: ${shown.map((piece) => piece.name).join(', ')}.`,
    box: { x: -room - edge, y: -edge, width: width + room + 2 * edge, height: height + room + 2 * edge },
    items,
    looks: looksOf(sketch),
  };
}
