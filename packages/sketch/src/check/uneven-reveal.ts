import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import type { Check, Suspect } from './finding.js';
import { cardPlace, type Reveals, revealsOf, sides, WIDEST_BORDER } from './reveals.js';

/** Marks of the ruler: what two borders may differ by, and what the fourth may. */
const SLIP = 2;
const FOURTH = 3;

/** The topmost piece below that holds all of `piece`, or null for the card. A mat that is out of true is told as such. */
function holderOf({ under }: CheckField, piece: Piece): Piece | null {
  const holds = (other: Piece): boolean =>
    other.tilt === 0 &&
    (other.shape === 'rectangle' || other.shape === piece.shape) &&
    sides(revealsOf(other, piece)).every((reveal) => reveal >= 0);
  return under(piece).findLast(holds) ?? null;
}

type Pair = readonly [near: number, far: number];

/** What has to be moved for two borders to be alike, or 0 when they are, or when they are meant to differ. */
function slip([near, far]: Pair, at: Length, step: Length): number {
  const differ = Math.abs(near - far);
  if (differ === 0 || differ > SLIP * step || Math.min(near, far) <= 0 || Math.max(near, far) > WIDEST_BORDER * step)
    return 0;
  const by = (far - near) / 2;
  // On the ruler it lies as near to the middle as can be: between two marks there is none.
  if (at % step === 0 && differ <= step && (at + by) % step !== 0) return 0;
  return by;
}

/** The side that alone differs from three equal ones, by so many ticks; null when there is none, or when it is meant to. */
function oddSide({ left, top, right, bottom }: Reveals, step: Length) {
  const all = { left, top, right, bottom };
  for (const [side, reveal] of Object.entries(all) as [keyof Reveals, number][]) {
    const [one = 0, ...rest] = (Object.keys(all) as (keyof Reveals)[])
      .filter((key) => key !== side)
      .map((key) => all[key]);
    const differ = reveal - one;
    const even = rest.every((other) => other === one) && one > 0 && one <= WIDEST_BORDER * step;
    if (even && differ !== 0 && reveal > 0 && Math.abs(differ) <= FOURTH * step) return { side, differ };
  }
  return null;
}

/** `piece` made longer on one side by `by` ticks. */
function grown(piece: Piece, side: keyof Reveals, by: number): Edit {
  const level = side === 'left' || side === 'right';
  return {
    do: 'resize',
    piece: piece.id,
    x: ticks(piece.x - (side === 'left' ? by : 0)),
    y: ticks(piece.y - (side === 'top' ? by : 0)),
    width: ticks(piece.width + (level ? by : 0)),
    height: ticks(piece.height + (level ? 0 : by)),
  };
}

/**
 * A narrow border around an upright piece that is nearly even: left and right, or top and bottom, differ by no more than
 * two marks of the ruler, or three sides are equal and the fourth differs by no more than three. Wider differences, borders over
 * 12 marks and what cannot be more even on the ruler are taken to be meant. Mended by moving the piece to the middle, or
 * by making it longer or shorter where one side alone is off.
 */
export const unevenReveal: Check = (field, piece) => {
  const { sketch, step } = field;
  if (piece.tilt !== 0) return null;
  const holder = holderOf(field, piece);
  if (holder?.mats?.piece === piece.id || (holder?.kind === 'mat' && !holder.mats)) return null;
  const reveals = revealsOf(holder ?? cardPlace(sketch), piece);
  const found = (amount: number, fixes: Suspect['fixes']): Suspect => ({
    code: 'uneven-reveal',
    severity: 'looks wrong',
    piece: piece.id,
    ...(holder ? { other: holder.id } : {}),
    amount: ticks(Math.round(Math.abs(amount))),
    fixes,
  });
  const odd = oddSide(reveals, step);
  const level = slip([reveals.left, reveals.right], piece.x, step);
  const upright = slip([reveals.top, reveals.bottom], piece.y, step);
  const middled = movedBy(piece, Math.round(level), Math.round(upright));
  const middle: readonly (readonly Edit[])[] =
    level === 0 && upright === 0 ? [] : [[middled], onMarks(piece, middled, step)];
  if (odd) return found(odd.differ, [[grown(piece, odd.side, odd.differ)], ...middle]);
  if (level === 0 && upright === 0) return null;
  return found(2 * Math.max(Math.abs(level), Math.abs(upright)), middle);
};

function onMarks(piece: Piece, to: Extract<Edit, { do: 'place' }>, step: Length): readonly Edit[] {
  return [{ do: 'place', piece: piece.id, x: nearestStep(to.x, step), y: nearestStep(to.y, step) }];
}
