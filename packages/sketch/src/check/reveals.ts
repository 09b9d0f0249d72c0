import type { Piece, Sketch } from '../model/sketch.js';

/** Marks of the ruler: the widest that is taken for a border. */
export const WIDEST_BORDER = 12;

type Place = Pick<Piece, 'x' | 'y' | 'width' | 'height'>;

/** What shows of an outer piece on each side of an inner one, in ticks; less than 0 where the inner one reaches beyond. */
export interface Reveals {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The reveals of two upright pieces, or of two with the same tilt, in the frame of the inner one. */
export function revealsOf(outer: Place, inner: Place, tilt = 0): Reveals {
  const across = inner.x + inner.width / 2 - outer.x - outer.width / 2;
  const down = inner.y + inner.height / 2 - outer.y - outer.height / 2;
  const [cos, sin] = tilt === 0 ? [1, 0] : [Math.cos((-tilt * Math.PI) / 180), Math.sin((-tilt * Math.PI) / 180)];
  const [dx, dy] = [across * cos - down * sin, across * sin + down * cos];
  const [wide, high] = [(outer.width - inner.width) / 2, (outer.height - inner.height) / 2];
  return { left: wide + dx, right: wide - dx, top: high + dy, bottom: high - dy };
}

export function sides({ left, top, right, bottom }: Reveals): readonly [number, number, number, number] {
  return [left, top, right, bottom];
}

/** The card as an outer piece. */
export function cardPlace({ card }: Sketch): Place {
  const nought = 0 as Piece['x'];
  return { x: nought, y: nought, width: card.width, height: card.height };
}
