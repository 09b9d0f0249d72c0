import type { Point } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import type { Item } from '../drawing/drawing.js';
import type { CardOptions } from './card-options.js';
import { drawDimension } from './dimension.js';
import { labelPieces } from './labels.js';
import { textWidth } from './text-width.js';

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

/** The letters of `shown`, the pieces on a face, and the card's overall dimensions, as `options` asks for them. */
export function drawCardMarks(
  sketch: Sketch,
  shown: readonly Piece[],
  options: CardOptions & { readonly size: number },
): readonly Item[] {
  const { width, height } = sketch.card;
  const { size } = options;
  const items: Item[] = [];
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
  if (options.dimensions !== false) {
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
  return items;
}
