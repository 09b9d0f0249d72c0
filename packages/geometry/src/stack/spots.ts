import { isPlainRectangle } from '../outline/punched-shape.js';
import { crossingsOf } from './lines.js';
import { placedBounds } from './placed-bounds.js';
import { boundaryIn, FACE, type PlacedPiece } from './placed-piece.js';

/** Lines across all of a stack, beside those at the ends and through the middle of what is no plain upright rectangle. */
const ACROSS = 48;

/** What is no wider than this, in ticks, is no spot. */
const NARROW = 1e-6;

/** Pieces that fit into one word of a set. */
const WORD = 30;

/** True for plain upright rectangles: all that others leave of them is met at ends. */
function isPlain({ shape, tilt }: PlacedPiece): boolean {
  return tilt % 90 === 0 && isPlainRectangle(shape);
}

/**
 * The level lines on which it is looked what lies over each other: one tick beside the ends of each piece, where every part of upright
 * rectangles begins or ends; and some between of what is not plain.
 */
function linesOver(pieces: readonly PlacedPiece[]): readonly number[] {
  const lines = new Set<number>();
  let [first, last] = [Infinity, -Infinity];
  for (const piece of pieces) {
    const { top, bottom } = placedBounds(piece);
    lines.add(top + 1).add(bottom - 1);
    if (isPlain(piece)) {
      lines.add(top - 1).add(bottom + 1);
      continue;
    }
    lines.add((top + bottom) / 2);
    [first, last] = [Math.min(first, top), Math.max(last, bottom)];
  }
  if (first < last) for (let part = 0.5; part < ACROSS; part += 1) lines.add(first + ((last - first) * part) / ACROSS);
  return [...lines].sort((a, b) => a - b);
}

/** An end of a stretch of a line that a piece lies over. */
interface End {
  readonly x: number;
  readonly piece: number;
}

/** The ends on each of `lines`, from the left. */
function endsOn(lines: readonly number[], pieces: readonly PlacedPiece[]): readonly (readonly End[])[] {
  const rows = lines.map((): End[] => []);
  pieces.forEach((placed, piece) => {
    crossingsOf(boundaryIn(FACE, placed), lines).forEach((crossings, line) => {
      for (let at = 0; at < crossings.length; at += 2) rows[line]?.push({ x: crossings[at] ?? 0, piece });
    });
  });
  for (const row of rows) row.sort((one, other) => one.x - other.x);
  return rows;
}

/** The pieces of a set, in ascending order. */
function listed(words: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (let word = 0; word < words.length; word += 1)
    for (let piece = word * WORD, rest = words[word] ?? 0; rest > 0; piece += 1, rest >>= 1)
      if (rest & 1) found.push(piece);
  return found;
}

/**
 * The spots of a stack: each is the places of the pieces that lie over it, in ascending order. What is no plain upright rectangle is
 * looked at on lines, so that a spot which lies between two of them may be missed; no spot is told twice.
 */
export function spotsOf(pieces: readonly PlacedPiece[]): readonly (readonly number[])[] {
  const spots = new Map<string, readonly number[]>();
  const words = new Array<number>(Math.ceil(pieces.length / WORD)).fill(0);
  for (const row of endsOn(linesOver(pieces), pieces)) {
    words.fill(0);
    row.forEach(({ x, piece }, at) => {
      const word = Math.floor(piece / WORD);
      words[word] = (words[word] ?? 0) ^ (1 << (piece % WORD));
      const next = row[at + 1];
      if (!next || next.x - x <= NARROW) return;
      const key = words.join();
      if (!spots.has(key)) spots.set(key, listed(words));
    });
  }
  return [...spots.values()].filter((spot) => spot.length > 0);
}
