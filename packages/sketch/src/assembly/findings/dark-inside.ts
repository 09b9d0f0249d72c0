import { ticks } from '@trimwell/geometry';
import { CARD_BASE } from '../../batch/recipe.js';
import type { Edit, Piece, Sketch } from '../../model/sketch.js';
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

function withLiner(sketch: Sketch, from: string, size: Pick<Piece, 'width' | 'height'>): Edit {
  const [square, off] = [ticks(0), linerReveal(sketch.unit)];
  const piece: Piece = {
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
  return { do: 'add-piece', piece, at: 0 };
}

/**
 * A folded card of dark paper with nothing inside to write on; mended by a liner of a plain light paper of the sketch, 1/8 in or 3 mm
 * in from every edge.
 */
export const darkInside: CardCheck = ({ sketch, fold }) => {
  const anything = sketch.pieces.some(({ face }) => face === 'inside');
  if (sketch.card.fold === 'none' || !fold.dark || anything) return [];
  const light = sketch.papers.find(
    (paper) => paper.look.pattern === 'plain' && paper.kind !== 'foil' && !isDark(paper),
  );
  return [
    {
      code: 'dark-inside',
      severity: 'worth knowing',
      piece: CARD_BASE,
      paper: sketch.card.base,
      place: null,
      amount: 0,
      fixes: light && fold.liner.width > 0 && fold.liner.height > 0 ? [[withLiner(sketch, light.id, fold.liner)]] : [],
    },
  ];
};
