import { usableRect } from '@trimwell/geometry';
import { pieceBlank } from '../batch/piece-blank.js';
import type { Piece, Sketch } from '../model/sketch.js';

/** True when a sheet of every paper that `piece` is cut from is large enough for it. */
export function fitsSheets(sketch: Sketch, piece: Piece): boolean {
  const papers = sketch.mixes.find(({ id }) => id === piece.from)?.papers ?? [piece.from];
  const { width, height } = pieceBlank(sketch, piece);
  return sketch.papers
    .filter(({ id }) => papers.includes(id))
    .every((paper) => {
      const sheet = usableRect(paper);
      const upright = width <= sheet.width && height <= sheet.height;
      return upright || (!paper.directional && height <= sheet.width && width <= sheet.height);
    });
}

/** False for a piece of `after` that is larger than its sheet, and was not in `before`: no way to mend anything. */
export function stillFits(before: Sketch, after: Sketch, piece: Piece): boolean {
  const was = before.pieces.find(({ id }) => id === piece.id);
  if (was === piece || fitsSheets(after, piece)) return true;
  return was !== undefined && !fitsSheets(before, was);
}
