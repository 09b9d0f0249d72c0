import { type Length, ticks } from '@trimwell/geometry';
import { matPlace } from '../edit/mats.js';
import type { Piece } from '../model/sketch.js';
import type { Box } from './layout-room.js';
import type { StartingPaper } from './starting-papers.js';

/** A mat behind a piece of a layout; its reveal is in ruler steps. */
export interface LayoutMat {
  readonly from: StartingPaper;
  readonly reveal: number;
}

/** A piece as a layout states it: its place in ruler steps, its mats from the innermost outwards. */
export interface LayoutPiece {
  readonly id: string;
  readonly name: string;
  readonly kind: Piece['kind'];
  readonly box: Box;
  /** A paper, or the id of the layout's mix. */
  readonly from: StartingPaper | 'prints';
  readonly face?: Piece['face'];
  readonly shape?: Piece['shape'];
  readonly tilt?: number;
  readonly art?: Piece['art'];
  readonly mats?: readonly LayoutMat[];
}

/** Where step 0 lies, and how long a step is, in ticks. */
export interface StepScale {
  readonly step: Length;
  readonly left: Length;
  readonly top: Length;
}

/** The pieces of the sketch that `laid` stands for, in gluing order: its outermost mat first, the piece itself last. */
export function cutPieces(laid: LayoutPiece, { step, left, top }: StepScale): readonly Piece[] {
  const square = ticks(0);
  const piece: Piece = {
    id: laid.id,
    name: laid.name,
    kind: laid.kind,
    face: laid.face ?? 'front',
    shape: laid.shape ?? 'rectangle',
    x: ticks(left + laid.box.x * step),
    y: ticks(top + laid.box.y * step),
    width: ticks(laid.box.width * step),
    height: ticks(laid.box.height * step),
    tilt: laid.tilt ?? 0,
    corners: { tl: square, tr: square, br: square, bl: square },
    punched: {},
    from: laid.from,
    raise: square,
    perCard: 1,
    ...(laid.art ? { art: laid.art } : {}),
  };
  const stack: Piece[] = [piece];
  for (const [index, { from, reveal }] of (laid.mats ?? []).entries())
    stack.unshift(matBehind(laid, index, stack[0] ?? piece, from, ticks(reveal * step)));
  return stack;
}

/** The mat number `index` of a layout's piece, behind `inner`. */
function matBehind(laid: LayoutPiece, index: number, inner: Piece, from: StartingPaper, reveal: Length): Piece {
  const { art: _art, ...plain } = inner;
  return {
    ...plain,
    ...matPlace(inner, reveal),
    id: `${laid.id}-mat${index === 0 ? '' : `-${index + 1}`}`,
    name: `${laid.name} mat${index === 0 ? '' : ` ${index + 1}`}`,
    kind: 'mat',
    from,
    mats: { piece: inner.id, reveal },
  };
}
