import { usableRect } from '@trimwell/geometry';
import { pieceBlank } from '../batch/recipe.js';
import type { Paper, Piece, Sketch } from '../model/sketch.js';
import type { Check } from './finding.js';

/** The papers that `piece` is cut from whose print has an up. */
export function directionalPapers({ papers, mixes }: Sketch, { from }: Piece): readonly Paper[] {
  const ids = mixes.find(({ id }) => id === from)?.papers ?? [from];
  return papers.filter(({ id, directional }) => directional && ids.includes(id));
}

/**
 * A piece whose blank would fit its sheet only when it is turned, which the print of its paper does not allow; mended by letting the
 * print lie on its side.
 */
export const printMustTurn: Check = ({ sketch }, piece) => {
  const papers = directionalPapers(sketch, piece);
  if (papers.length === 0) return null;
  const blank = pieceBlank(sketch, piece);
  const tight = papers.filter((paper) => {
    const { width, height } = usableRect(paper);
    const upright = blank.width <= width && blank.height <= height;
    return !upright && blank.height <= width && blank.width <= height;
  });
  const [first] = tight;
  if (!first) return null;
  const { width, height } = usableRect(first);
  const over = Math.max(blank.width - width, blank.height - height);
  return {
    code: 'print-must-turn',
    severity: 'stops the build',
    piece: piece.id,
    amount: over as typeof blank.width,
    fixes: [tight.map((paper) => ({ do: 'set-paper' as const, paper: { ...paper, directional: false } }))],
  };
};
