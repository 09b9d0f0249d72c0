import { ticks } from '@trimwell/geometry';
import { type Edit, everyPiece, freeId, MOST_PIECES, type Piece, rulerStep } from '@trimwell/sketch';
import { type Command, selectedPieces } from './state.js';

/** The id without the number at its end, short enough for another number. */
export function stemOf(id: string): string {
  return id.replace(/-\d+$/, '').slice(0, 34);
}

/** The name with the next number behind it: Strip, Strip 2, Strip 3. */
export function nextName(name: string, pieces: readonly Pick<Piece, 'name'>[]): string {
  const stem = name.replace(/ \d+$/, '').slice(0, 74);
  for (let n = 2; ; n += 1) if (!pieces.some((piece) => piece.name === `${stem} ${n}`)) return `${stem} ${n}`;
}

/**
 * Glues a copy of every selected piece, two marks to the right and down, and selects the copies. A mat and its piece that
 * are copied together stay mat and piece; a mat copied alone mats nothing. Copies are neither locked nor hidden. Each
 * copy lies right over its original, or over the last of the originals where several are copied.
 */
export const duplicate: Command = (state, dispatch, at = 0) => {
  const { sketch } = state;
  const chosen = selectedPieces(state);
  const last = chosen.at(-1);
  if (!last || sketch.pieces.length + chosen.length > MOST_PIECES) return false;
  const shift = 2 * rulerStep(sketch.unit);
  const taken = [...everyPiece(sketch)];
  const named: Pick<Piece, 'name'>[] = [...sketch.pieces];
  const ids = new Map<string, string>();
  const copies = chosen.map((piece): Piece => {
    const { mats: _mats, locked: _locked, hidden: _hidden, ...free } = piece;
    const copy: Piece = {
      ...free,
      id: freeId(stemOf(piece.id), taken),
      name: nextName(piece.name, named),
      x: ticks(piece.x + shift),
      y: ticks(piece.y + shift),
    };
    taken.push(copy);
    named.push(copy);
    ids.set(piece.id, copy.id);
    return copy;
  });
  const place = sketch.pieces.indexOf(last) + 1;
  const added = copies.map((piece, index): Edit => ({ do: 'add-piece', piece, at: place + index }));
  const tied = chosen.flatMap((piece): readonly Edit[] => {
    const [mat, inner] = [ids.get(piece.id), piece.mats && ids.get(piece.mats.piece)];
    return piece.mats && mat && inner ? [{ do: 'mat', piece: mat, mats: { ...piece.mats, piece: inner } }] : [];
  });
  const selection = copies.map(({ id }) => id);
  dispatch?.({ event: 'piece.duplicate', edits: [...added, ...tied], selection, at });
  return true;
};
