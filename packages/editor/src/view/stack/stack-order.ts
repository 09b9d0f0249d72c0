import { CARD_BASE, type Face, type Piece, type Sketch } from '@trimwell/sketch';

/** A row of the stack where it lies on the screen: its middle, in pixels from the top of the picture. */
export interface RowPlace {
  readonly id: string;
  readonly middle: number;
}

/** What the lifted rows would lie right over when let go at `at`: the topmost row below it, or null for the card. */
export function overAt(rows: readonly RowPlace[], lifted: readonly string[], at: number): string | null {
  const below = rows.filter(({ id, middle }) => id !== CARD_BASE && !lifted.includes(id) && middle > at);
  return below.reduce<RowPlace | null>((top, row) => (top && top.middle <= row.middle ? top : row), null)?.id ?? null;
}

/** `sketch` as its stack would be with the pieces `lifted` right over `over`. */
export function withGap(sketch: Sketch, lifted: readonly string[], over: string | null): Sketch {
  const moved = sketch.pieces.filter(({ id }) => lifted.includes(id));
  const rest = sketch.pieces.filter((piece) => !moved.includes(piece));
  const at = over === null ? 0 : rest.findIndex(({ id }) => id === over) + 1;
  return { ...sketch, pieces: [...rest.slice(0, at), ...moved, ...rest.slice(at)] };
}

/** The ids from `anchor` to `row` along the stack of one face, `row` last; `row` alone without an anchor there. */
export function stretchTo(sketch: Sketch, face: Face, anchor: string | undefined, row: string): readonly string[] {
  const ids = sketch.pieces.filter((piece: Piece) => piece.face === face).map(({ id }) => id);
  const [from, to] = [anchor === undefined ? -1 : ids.indexOf(anchor), ids.indexOf(row)];
  if (from < 0) return [row];
  return from <= to ? ids.slice(from, to + 1) : ids.slice(to, from + 1).reverse();
}
