import { inches, type Length, millimetres, nearestStep, type Point, type Size, ticks } from '@trimwell/geometry';
import { everyPiece, type Face, freeId, type Paper, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import type { Command, EditorState } from './state.js';

/** Most pieces that a sketch may hold, as its schema says. */
export const MOST_PIECES = 200;

/** `bounded` by the sheet it is cut from, and brought down to the step; never less than one step. */
function sideOn(step: Length, wanted: number, most: number): Length {
  return ticks(Math.max(1, Math.floor(Math.min(wanted, most) / step)) * step);
}

type NewPiece = Pick<Piece, 'kind'> & Size;

/**
 * What is cut first from a paper: inside, a liner that leaves 1/8 in (3 mm) all round; on the front, a panel from
 * patterned paper or kraft, a strip over the whole width from foil, a sentiment from vellum, and from cardstock a focal
 * piece of half the card (common practice, no source). Never larger than its sheet.
 */
function firstCut(sketch: Sketch, paper: Paper, face: Face): NewPiece {
  const step = rulerStep(sketch.unit);
  const { width, height } = sketch.card;
  const reveal = sketch.unit === 'in' ? inches(1 / 8) : millimetres(3);
  const strip = sketch.unit === 'in' ? inches(1) : millimetres(25);
  const cut = (kind: Piece['kind'], w: number, h: number): NewPiece => ({
    kind,
    width: sideOn(step, w, paper.width),
    height: sideOn(step, h, paper.height),
  });
  if (face === 'inside') return cut('liner', width - 2 * reveal, height - 2 * reveal);
  switch (paper.kind) {
    case 'patterned paper':
    case 'kraft':
      return cut('panel', width - 4 * reveal, height * 0.4);
    case 'foil':
      return cut('strip', width, strip);
    case 'vellum':
      return cut('sentiment', width * 0.6, strip);
    default:
      return cut('focal piece', width * 0.5, height * 0.5);
  }
}

/** The paper that `from` names, or the first of the mix that it names. */
function paperOf({ papers, mixes }: Sketch, from: string): { readonly paper: Paper; readonly name: string } | null {
  const mix = mixes.find(({ id }) => id === from);
  const paper = papers.find(({ id }) => id === (mix ? mix.papers[0] : from));
  return paper ? { paper, name: mix?.name ?? paper.name } : null;
}

/** The start of a side `size` long, centred about `middle`, on the step, and on the card as far as it fits. */
function startAbout(middle: number, size: Length, card: Length, step: Length): Length {
  const start = nearestStep(middle - size / 2, step);
  return ticks(Math.max(0, Math.min(start, Math.max(0, card - size))));
}

function newPiece({ sketch, face }: EditorState, from: string, about?: Point): Piece | null {
  const source = paperOf(sketch, from);
  if (!source || sketch.pieces.length >= MOST_PIECES) return null;
  const { kind, width, height } = firstCut(sketch, source.paper, face);
  const step = rulerStep(sketch.unit);
  const { card } = sketch;
  const square = ticks(0);
  return {
    id: freeId(kind.replaceAll(' ', '-'), everyPiece(sketch)),
    name: `${source.name} ${kind}`.slice(-80),
    kind,
    face,
    shape: 'rectangle',
    x: startAbout(about?.x ?? card.width / 2, width, card.width, step),
    y: startAbout(about?.y ?? card.height / 2, height, card.height, step),
    width,
    height,
    tilt: 0,
    corners: { tl: square, tr: square, br: square, bl: square },
    punched: {},
    from,
    raise: square,
    perCard: 1,
  };
}

/**
 * Cuts a new piece from a paper or a mix, glues it on top and selects it; its middle comes to `about` (ticks on the face
 * that is shown), or to the middle of the card. Does not apply to a paper that is not there, or when the sketch is full.
 */
export function addPiece(from: string, about?: Point): Command {
  return (state, dispatch, at = 0) => {
    const piece = newPiece(state, from, about);
    if (!piece) return false;
    dispatch?.({ event: 'piece.add', edits: [{ do: 'add-piece', piece }], selection: [piece.id], at });
    return true;
  };
}
