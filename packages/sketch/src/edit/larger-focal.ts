import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { rulerStep } from '../model/ruler-steps.js';
import type { CardEdit, Piece, Sketch } from '../model/sketch.js';
import { applyEdit } from './apply-edit.js';

/** The most marks of the ruler that a focal piece grows on each side, and what still shows of what it lies on. */
const MEASURES = {
  in: { most: 6, shows: inches(1 / 8) },
  mm: { most: 10, shows: millimetres(3) },
} as const;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The upright box around `piece`, tilted as it is. */
function boxAround({ x, y, width, height, tilt }: Piece): Box {
  const turn = (tilt * Math.PI) / 180;
  const across = Math.abs(width * Math.cos(turn)) + Math.abs(height * Math.sin(turn));
  const down = Math.abs(width * Math.sin(turn)) + Math.abs(height * Math.cos(turn));
  const [middleX, middleY] = [x + width / 2, y + height / 2];
  return {
    left: middleX - across / 2,
    top: middleY - down / 2,
    right: middleX + across / 2,
    bottom: middleY + down / 2,
  };
}

function lead(inner: Box, outer: Box): number {
  return Math.min(
    inner.left - outer.left,
    inner.top - outer.top,
    outer.right - inner.right,
    outer.bottom - inner.bottom,
  );
}

/** A piece, then the mats behind it, outwards. */
function matted(sketch: Sketch, piece: Piece): readonly Piece[] {
  const mat = sketch.pieces.find((other) => other.mats?.piece === piece.id);
  return mat ? [piece, ...matted(sketch, mat)] : [piece];
}

/** The box of what `outer` lies on: the highest upright piece below it that holds all of it, or the card. */
function lyingOn(sketch: Sketch, outer: Piece): Box {
  const { card, pieces } = sketch;
  const below = pieces.slice(0, pieces.indexOf(outer)).filter(({ face, tilt }) => face === outer.face && tilt === 0);
  const box = boxAround(outer);
  const on = below.findLast((piece) => lead(box, boxAround(piece)) >= 0);
  return on ? boxAround(on) : { left: 0, top: 0, right: card.width, bottom: card.height };
}

/** True when no punched edge of `pieces` gets part of a repeat by growing `longer`. */
function keepsRepeats(sketch: Sketch, pieces: readonly Piece[], longer: number): boolean {
  return pieces.every(({ punched }) =>
    Object.values(punched).every((id) => {
      const punch = sketch.punches.find((each) => each.id === id);
      return !punch || longer % punch.repeat === 0;
    }),
  );
}

/**
 * The first focal piece grown all round by as many marks of the ruler as there is room for on what it lies on, 3/8 in or
 * 10 mm at most, such that 1/8 in (3 mm) of that still shows; its mats follow. Empty without a focal piece, without
 * room, and where nothing larger is accepted.
 */
export function largerFocal(sketch: Sketch, accepts: (varied: Sketch) => boolean): readonly CardEdit[] {
  const focal = sketch.pieces.find(({ kind, mats }) => kind === 'focal piece' && !mats);
  if (!focal) return [];
  const { most, shows } = MEASURES[sketch.unit];
  const mark = rulerStep(sketch.unit);
  const chain = matted(sketch, focal);
  const room = lyingOn(sketch, chain.at(-1) ?? focal);
  for (let marks = most; marks > 0; marks -= 1) {
    const longer = 2 * marks * mark;
    if (!keepsRepeats(sketch, chain, longer)) continue;
    const edit = grown(focal, ticks(marks * mark));
    const varied = applyEdit(sketch, edit);
    const outer = varied.pieces.find(({ id }) => id === chain.at(-1)?.id);
    if (outer && lead(boxAround(outer), room) >= shows && accepts(varied)) return [edit];
  }
  return [];
}

function grown({ id, x, y, width, height }: Piece, by: Length): CardEdit {
  return {
    do: 'resize',
    piece: id,
    x: ticks(x - by),
    y: ticks(y - by),
    width: ticks(width + 2 * by),
    height: ticks(height + 2 * by),
  };
}
