import { inches, type LengthStyle, type Point, rectangle } from '@trimwell/geometry';
import type { Face, Piece, Sketch } from '@trimwell/sketch';
import type { Drawing, Item } from '../drawing/drawing.js';
import { drawDimension } from './dimension.js';
import { labelPieces } from './labels.js';
import { drawPiece, looksOf } from './piece.js';
import { textWidth } from './text-width.js';

export interface CardOptions {
  readonly face: Face;
  readonly style: LengthStyle;
  /** Height of the figures, in ticks. Default 1/6 in. */
  readonly size?: number;
  /** Overall dimensions below and to the left. Default true. */
  readonly dimensions?: boolean;
  /** The pieces' letters, each in a corner of its piece. Default false. */
  readonly labels?: boolean;
  /** Leaves out the pieces that are hidden on the table. Default false: on paper every piece is drawn. */
  readonly leaveOutHidden?: boolean;
}

const CARD = 'card';

/** How far a letter is moved, in ems, when its place is taken, and how often that is tried. */
const ASIDE = 0.5;
const TRIES = 40;

/**
 * Where the letter of each piece stands: at its top left corner or, when a letter of an earlier piece is there, the next
 * free place to the right. Letters are never on each other unless more than 40 places are taken.
 */
function letterPlaces(pieces: readonly Piece[], letters: ReadonlyMap<string, string>, size: number): readonly Point[] {
  const taken: { readonly x: number; readonly y: number; readonly width: number }[] = [];
  for (const piece of pieces) {
    const width = textWidth(letters.get(piece.id) ?? '?', size) + size * 0.25;
    const y = piece.y + size * 1.1;
    const free = (x: number): boolean =>
      taken.every((other) => Math.abs(other.y - y) >= size || x >= other.x + other.width || other.x >= x + width);
    const places = Array.from({ length: TRIES }, (_, index) => piece.x + size * (0.3 + ASIDE * index));
    taken.push({ x: places.find(free) ?? piece.x + size * 0.3, y, width });
  }
  return taken.map(({ x, y }) => ({ x, y }));
}

/** One face of the card in true proportion: the base, then every piece on that face in gluing order. */
export function drawCard(sketch: Sketch, options: CardOptions): Drawing {
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
  items.push(...shown.map((piece) => drawPiece(sketch, piece)));
  if (options.labels) {
    const labels = labelPieces(sketch);
    const places = letterPlaces(shown, labels, size);
    items.push(
      ...shown.map(
        (piece, index): Item => ({
          kind: 'text',
          key: `label:${piece.id}`,
          role: 'label',
          piece: piece.id,
          at: places[index] ?? { x: piece.x, y: piece.y },
          text: labels.get(piece.id) ?? '?',
          size,
          align: 'start',
        }),
      ),
    );
  }
  const room = options.dimensions === false ? 0 : size * 2.6;
  if (room > 0) {
    items.push(
      ...drawDimension({
        key: 'width',
        along: 'x',
        from: 0,
        length: width,
        at: height + size * 1.7,
        edge: height,
        size,
        style: options.style,
      }),
      ...drawDimension({
        key: 'height',
        along: 'y',
        from: 0,
        length: height,
        at: -size * 1.7,
        edge: 0,
        size,
        style: options.style,
      }),
    );
  }
  const edge = size * 0.6;
  return {
    title: `${sketch.title}, ${options.face === 'front' ? 'card face' : 'inside'}`,
    description: `${shown.length} pieces on a card base, lowest first: ${shown.map((piece) => piece.name).join(', ')}.`,
    box: { x: -room - edge, y: -edge, width: width + room + 2 * edge, height: height + room + 2 * edge },
    items,
    looks: looksOf(sketch),
  };
}
