import {
  boxesMeet,
  coveringOf,
  isPunched,
  type PlacedBounds,
  type PlacedPiece,
  type Point,
  placedBounds,
  punchedDepths,
  ticks,
} from '@trimwell/geometry';
import type { Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { isHidden } from './cover-memory.js';

/** A share of a radius: how far inside of a corner's box its arc is at 45 degrees. */
const WITHIN_ARC = 1 - Math.SQRT1_2;

/** An upright box that lies within a piece all over; null for shapes and tilts that are rarely worth one. */
function innerBox({ shape, x, y, tilt }: PlacedPiece): PlacedBounds | null {
  if (tilt !== 0) return null;
  const { width, height, corners } = shape;
  if (shape.shape === 'rectangle') {
    const arc = Math.max(corners.tl, corners.tr, corners.br, corners.bl) * WITHIN_ARC;
    const { left, top, right, bottom } = punchedDepths(shape);
    return {
      left: x + arc + left,
      top: y + arc + top,
      right: x + width - arc - right,
      bottom: y + height - arc - bottom,
    };
  }
  if (shape.shape !== 'ellipse') return null;
  const [across, down] = [(width / 2) * WITHIN_ARC, (height / 2) * WITHIN_ARC];
  return { left: x + across, top: y + down, right: x + width - across, bottom: y + height - down };
}

/** Where `target` first shows below upright `boxes`, from the top down; null when they hide all of it. A sweep, exact. */
export function shownBelow(target: PlacedBounds, boxes: readonly PlacedBounds[]): Point | null {
  const cuts = [target.top, target.bottom];
  for (const { top, bottom } of boxes) {
    if (target.top < top && top < target.bottom) cuts.push(top);
    if (target.top < bottom && bottom < target.bottom) cuts.push(bottom);
  }
  cuts.sort((a, b) => a - b);
  const inOrder = [...boxes].sort((a, b) => a.left - b.left);
  for (let at = 1; at < cuts.length; at += 1) {
    const [top, bottom] = [cuts[at - 1] as number, cuts[at] as number];
    if (top === bottom) continue;
    const row = inOrder.filter((box) => box.top <= top && box.bottom >= bottom);
    let reached = target.left;
    for (const { left, right } of row) if (left <= reached) reached = Math.max(reached, right);
    if (reached >= target.right) continue;
    const next = row.reduce((least, { left }) => (left > reached ? Math.min(least, left) : least), target.right);
    return { x: (reached + next) / 2, y: (top + bottom) / 2 };
  }
  return null;
}

/** Covers without their punched edges: those are counted as cut off as deep as they are shaped. */
const plain = new WeakMap<PlacedPiece, PlacedPiece>();

function withoutPunches(piece: PlacedPiece): PlacedPiece {
  const known = plain.get(piece);
  if (known) return known;
  const smaller = cutOff(piece);
  plain.set(piece, smaller);
  return smaller;
}

function cutOff(piece: PlacedPiece): PlacedPiece {
  const { shape, tilt } = piece;
  const { left, top, right, bottom } = punchedDepths(shape);
  if (left + top + right + bottom === 0) return piece;
  const width = Math.max(1, shape.width - left - right);
  const height = Math.max(1, shape.height - top - bottom);
  // It is turned about the middle of the whole piece, and not about its own.
  const [offX, offY] = [left + width / 2 - shape.width / 2, top + height / 2 - shape.height / 2];
  const angle = (tilt * Math.PI) / 180;
  const [cos, sin] = tilt === 0 ? [1, 0] : [Math.cos(angle), Math.sin(angle)];
  return {
    ...piece,
    shape: { ...shape, punched: {}, width: ticks(width), height: ticks(height) },
    x: ticks(Math.round(piece.x + shape.width / 2 + offX * cos - offY * sin - width / 2)),
    y: ticks(Math.round(piece.y + shape.height / 2 + offX * sin + offY * cos - height / 2)),
  };
}

const filled = new WeakMap<PlacedPiece, PlacedPiece>();

/** A piece as if none of its edges were punched. */
function unpunched(piece: PlacedPiece): PlacedPiece {
  const known = filled.get(piece);
  if (known) return known;
  const whole = isPunched(piece.shape) ? { ...piece, shape: { ...piece.shape, punched: {} } } : piece;
  filled.set(piece, whole);
  return whole;
}

/** True when one lies exactly where the other does. */
function alike(one: PlacedPiece, other: PlacedPiece): boolean {
  return (
    one.x === other.x &&
    one.y === other.y &&
    one.tilt === other.tilt &&
    one.shape.width === other.shape.width &&
    one.shape.height === other.shape.height &&
    JSON.stringify(one.shape) === JSON.stringify(other.shape)
  );
}

/**
 * True when nothing of `target` shows below `covers`. Boxes decide nearly always: those within the covers may hide it all,
 * those around them may fail to; only in between the outlines are looked at. There a punched edge of a cover hides nothing,
 * and one of `target` counts as plain, so that too little is told rather than too much.
 */
export function coveredBy(
  { placed, bounds, covers: memory }: CheckField,
  target: PlacedPiece,
  covers: readonly Piece[],
): boolean {
  const box = placedBounds(target);
  const near = covers.filter((cover) => boxesMeet(bounds(cover), box));
  if (near.length === 0) return false;
  // Under its like a piece is covered, punched edges and all; that is not remembered of other covers.
  if (near.some((cover) => alike(placed(cover), target))) return true;
  const own = unpunched(target);
  const over = near.map((cover) => withoutPunches(placed(cover)));
  return isHidden(memory, own, over, () => {
    const { x, y, shape } = target;
    const [middleX, middleY] = [x + shape.width / 2, y + shape.height / 2];
    const middle = { left: middleX - 1, top: middleY - 1, right: middleX + 1, bottom: middleY + 1 };
    const at = shownBelow(innerBox(target) ?? middle, near.map(bounds));
    if (at) return { is: 'shown', at };
    const inner = near.flatMap((cover) => innerBox(placed(cover)) ?? []);
    if (!shownBelow(box, inner)) return { is: 'hidden', by: over };
    return coveringOf(own, over);
  });
}
