import { ticks } from '@trimwell/geometry';
import { CARD_BASE } from '../../batch/recipe.js';
import { fitsSheets } from '../../check/fits-sheet.js';
import type { Edit, Paper, Piece, Sketch } from '../../model/sketch.js';
import type { CardCheck } from '../card-finding.js';
import { isDark, linerReveal } from '../card-fold.js';

/** An id that no piece has yet. */
function freeId({ pieces }: Sketch): string {
  const taken = new Set(pieces.map(({ id }) => id));
  for (let n = 1; ; n += 1) {
    const id = n === 1 ? 'liner' : `liner-${n}`;
    if (!taken.has(id)) return id;
  }
}

function linerOf(sketch: Sketch, from: string, size: Pick<Piece, 'width' | 'height'>): Piece {
  const [square, off] = [ticks(0), linerReveal(sketch.unit)];
  return {
    id: freeId(sketch),
    name: 'Liner',
    kind: 'liner',
    face: 'inside',
    shape: 'rectangle',
    x: off,
    y: off,
    ...size,
    tilt: 0,
    corners: { tl: square, tr: square, br: square, bl: square },
    punched: {},
    from,
    raise: square,
    perCard: 1,
  };
}

/** True for a paper that is written on and through which the dark one does not show. */
function isLight(paper: Paper): boolean {
  return paper.look.pattern === 'plain' && paper.kind !== 'foil' && paper.kind !== 'vellum' && !isDark(paper);
}

/**
 * A folded card of dark paper with nothing inside to write on; mended by a liner, 1/8 in or 3 mm in from every edge, of the first plain
 * light paper of the sketch that is large enough and will do.
 */
export const darkInside: CardCheck = ({ sketch, fold }) => {
  const anything = sketch.pieces.some(({ face }) => face === 'inside');
  if (sketch.card.fold === 'none' || !fold.dark || anything) return [];
  const { liner } = fold;
  const liners =
    liner.width > 0 && liner.height > 0
      ? sketch.papers.filter(isLight).map(({ id }) => linerOf(sketch, id, liner))
      : [];
  return [
    {
      code: 'dark-inside',
      severity: 'worth knowing',
      piece: CARD_BASE,
      paper: sketch.card.base,
      place: null,
      amount: 0,
      fixes: liners
        .filter((piece) => fitsSheets(sketch, piece))
        .map((piece): readonly Edit[] => [{ do: 'add-piece', piece, at: 0 }]),
    },
  ];
};
