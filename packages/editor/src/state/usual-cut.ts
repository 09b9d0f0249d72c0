import { inches, type Length, millimetres, nearestStep, type Size, ticks } from '@trimwell/geometry';
import { type Edit, type Face, type Paper, PIECE_KINDS, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';

/** `bounded` by the sheet it is cut from, and brought down to the step; never less than one step. */
function sideOn(step: Length, wanted: number, most: number): Length {
  return ticks(Math.max(1, Math.floor(Math.min(wanted, most) / step)) * step);
}

/** What a piece is before anybody has changed it: its kind, its shape and its size. */
export type UsualCut = Pick<Piece, 'kind' | 'shape'> & Size;

/**
 * The usual size of a piece of `kind` on this card: a liner leaves 1/8 in (3 mm) all round, a panel 1/4 in at the sides, a
 * strip goes over the whole width, a sentiment over six tenths and a banner over three quarters of it, all 1 in (25 mm)
 * high; a tag is 1 1/2 by 3 in (38 by 75 mm), a focal piece half the card (common practice, no source). Never larger than
 * the sheet of `paper`. Null for a mat, which goes by its piece, and for what is none of these.
 */
export function usualCut(sketch: Sketch, paper: Size, kind: Piece['kind']): UsualCut | null {
  const step = rulerStep(sketch.unit);
  const { width, height } = sketch.card;
  const metric = sketch.unit === 'mm';
  const reveal = metric ? millimetres(3) : inches(1 / 8);
  const strip = metric ? millimetres(25) : inches(1);
  const cut = (w: number, h: number, shape: Piece['shape'] = 'rectangle'): UsualCut => ({
    kind,
    shape,
    width: sideOn(step, w, paper.width),
    height: sideOn(step, h, paper.height),
  });
  switch (kind) {
    case 'liner':
      return cut(width - 2 * reveal, height - 2 * reveal);
    case 'panel':
      return cut(width - 4 * reveal, height * 0.4);
    case 'strip':
      return cut(width, strip);
    case 'sentiment':
      return cut(width * 0.6, strip);
    case 'focal piece':
      return cut(width * 0.5, height * 0.5);
    case 'banner':
      return cut(width * 0.75, strip, 'banner');
    case 'tag':
      return cut(
        Math.min(metric ? millimetres(38) : inches(1.5), width),
        Math.min(metric ? millimetres(75) : inches(3), height),
        'tag',
      );
    default:
      return null;
  }
}

/**
 * What is cut first from a paper: inside, a liner; on the front, a panel from patterned paper or kraft, a strip from foil,
 * a sentiment from vellum, and from cardstock a focal piece (common practice, no source).
 */
export function firstKind({ kind }: Paper, face: Face): Piece['kind'] {
  if (face === 'inside') return 'liner';
  switch (kind) {
    case 'patterned paper':
    case 'kraft':
      return 'panel';
    case 'foil':
      return 'strip';
    case 'vellum':
      return 'sentiment';
    default:
      return 'focal piece';
  }
}

/** The paper that `from` names, or the first of the mix that it names. */
export function sourceOf(
  { papers, mixes }: Sketch,
  from: string,
): { readonly paper: Paper; readonly name: string } | null {
  const mix = mixes.find(({ id }) => id === from);
  const paper = papers.find(({ id }) => id === (mix ? mix.papers[0] : from));
  return paper ? { paper, name: mix?.name ?? paper.name } : null;
}

/** The name that a new piece gets. */
export function usualName(source: string, kind: Piece['kind']): string {
  return `${source} ${kind}`.slice(-80);
}

/** The start of a side `size` long, centred about `middle`, on the step, and on the card as far as it fits. */
export function startAbout(middle: number, size: Length, card: Length, step: Length): Length {
  const start = nearestStep(middle - size / 2, step);
  return ticks(Math.max(0, Math.min(start, Math.max(0, card - size))));
}

/** Where a piece of this cut lies about a point: a banner comes in from the left edge, where a card mostly folds. */
export function placedAbout(sketch: Sketch, cut: UsualCut, about: { readonly x: number; readonly y: number }) {
  const step = rulerStep(sketch.unit);
  const { card } = sketch;
  return {
    x: cut.kind === 'banner' ? ticks(0) : startAbout(about.x, cut.width, card.width, step),
    y: startAbout(about.y, cut.height, card.height, step),
  };
}

function isSquare({ tl, tr, br, bl }: Piece['corners']): boolean {
  return tl + tr + br + bl === 0;
}

/**
 * True while nobody has given `piece` a size of its own, a tilt, corners, edges or a mat since it was cut. Any kind's usual
 * size will do: on a list that is gone through by arrow keys, kinds are passed that have none.
 */
function isAsCut(sketch: Sketch, piece: Piece, paper: Size): boolean {
  const usual = PIECE_KINDS.some((kind) => {
    const cut = usualCut(sketch, paper, kind);
    return cut?.width === piece.width && cut.height === piece.height;
  });
  const tied = piece.mats !== undefined || sketch.pieces.some((other) => other.mats?.piece === piece.id);
  const plain = isSquare(piece.corners) && Object.keys(piece.punched).length === 0;
  return usual && plain && !tied && !piece.locked && piece.tilt === 0;
}

/**
 * Makes a piece that is still as it was cut the usual piece of another kind: its size, shape, place and, unless it was
 * given one, its name. Null where the piece has been worked on, or the kind has no usual size.
 */
export function recut(sketch: Sketch, piece: Piece, kind: Piece['kind']): readonly Edit[] | null {
  const source = sourceOf(sketch, piece.from);
  const cut = source && usualCut(sketch, source.paper, kind);
  if (!source || !cut || !isAsCut(sketch, piece, source.paper)) return null;
  const { shape, width, height } = cut;
  const about = { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 };
  const unnamed = PIECE_KINDS.some((one) => piece.name === usualName(source.name, one));
  const name = unnamed ? { name: usualName(source.name, kind) } : {};
  return [
    { do: 'alter-piece', piece: piece.id, kind, shape, ...name },
    { do: 'resize', piece: piece.id, ...placedAbout(sketch, cut, about), width, height },
  ];
}
