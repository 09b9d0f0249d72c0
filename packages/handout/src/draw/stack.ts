import { formatLength, inches, type LengthStyle, type Outline, type Point } from '@trimwell/geometry';
import { CARD_BASE, type Face, type Piece, type Sketch } from '@trimwell/sketch';
import type { Drawing, Item } from '../drawing/drawing.js';
import { labelPieces } from './labels.js';
import { facePaper, looksOf } from './piece.js';
import { textWidth } from './text-width.js';

export interface StackOptions {
  readonly face: Face;
  readonly style: LengthStyle;
  /** Height of the letters, in ticks. Default 1/5 in. */
  readonly size?: number;
  /** How far apart the slips are lifted, in ticks. Default enough for their names not to touch. */
  readonly lift?: number;
}

/** How far back an edge leans and how flat it lies, as shares of its depth: an oblique view from above. */
const LEAN = 0.34;
const FLAT = 0.2;
/** Least room for letters and names, in ems, so that the slips of short-named pieces are not drawn larger than others. */
const NAMES = 17;

interface Slip {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly paper: string;
  readonly rect: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

function slipOf(sketch: Sketch, piece: Piece, style: LengthStyle): Slip {
  const note = piece.raise > 0 ? `raised ${formatLength(piece.raise, style)}` : '';
  return { id: piece.id, name: piece.name, note, paper: facePaper(sketch, piece), rect: piece };
}

/** What stands beside a slip. */
function nameOf({ name, note }: Slip): string {
  return note === '' ? name : `${name}, ${note}`;
}

function slanted({ x, y, width, height }: Slip['rect'], level: number): Outline {
  const point = (px: number, py: number): Point => ({ x: px - py * LEAN, y: level + py * FLAT });
  const [a, b, c, d] = [point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)];
  return { start: a, steps: [b, c, d, a].map((to) => ({ kind: 'line', to })) };
}

/**
 * The stack of one face: every piece as a slip of its own paper, lifted apart, the base at the bottom, each with its
 * letter and name beside it.
 */
export function drawStack(sketch: Sketch, { face, style, size = inches(1) / 5, lift }: StackOptions): Drawing {
  const { card } = sketch;
  const labels = labelPieces(sketch);
  const base: Slip = {
    id: CARD_BASE,
    name: 'Card base',
    note: foldNote(card.fold),
    paper: card.base,
    rect: { x: 0, y: 0, width: card.width, height: card.height },
  };
  const slips = [
    base,
    ...sketch.pieces.filter((piece) => piece.face === face).map((piece) => slipOf(sketch, piece, style)),
  ];
  const step = lift ?? Math.max(card.height * FLAT * 0.52, size * 2.3);
  const right = card.width + size * 1.2;
  const items = slips.flatMap((slip, index): Item[] => {
    const level = -index * step;
    const key = `slip:${slip.id}`;
    const outline = slanted(slip.rect, level);
    const middle = level + (slip.rect.y + slip.rect.height / 2) * FLAT;
    const end = slip.rect.x + slip.rect.width - (slip.rect.y + slip.rect.height / 2) * LEAN;
    const text = level + card.height * FLAT * 0.5;
    return [
      { kind: 'path', key: `${key}:shadow`, role: 'shadow', piece: slip.id, outline },
      { kind: 'path', key, role: 'outline', piece: slip.id, outline, fill: { paper: slip.paper } },
      {
        kind: 'line',
        key: `${key}:leader`,
        role: 'leader',
        piece: slip.id,
        from: { x: end, y: middle },
        to: { x: right, y: text },
      },
      {
        kind: 'text',
        key: `${key}:label`,
        role: 'label',
        piece: slip.id,
        at: { x: right + size * 0.4, y: text + size * 0.35 },
        text: labels.get(slip.id) ?? '?',
        size,
        align: 'start',
      },
      {
        kind: 'text',
        key: `${key}:name`,
        role: 'note',
        piece: slip.id,
        at: { x: right + size * 1.6, y: text + size * 0.35 },
        text: nameOf(slip),
        size,
        align: 'start',
      },
    ];
  });
  const top = -(slips.length - 1) * step - size;
  const names = Math.max(size * NAMES, ...slips.map((slip) => size * 2 + textWidth(nameOf(slip), size)));
  const left = -card.height * LEAN - size * 0.5;
  return {
    title: 'The stack',
    description: `Gluing order, lowest first: ${slips.map(({ name }) => name).join(', ')}.`,
    box: { x: left, y: top, width: right + names - left, height: card.height * FLAT + size * 1.5 - top },
    items,
    looks: looksOf(sketch),
  };
}

function foldNote(fold: Sketch['card']['fold']): string {
  if (fold === 'none') return 'flat';
  return fold === 'left' ? 'folds at the left' : 'folds at the top';
}
