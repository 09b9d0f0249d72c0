import { holdsPoint, type Length } from '@trimwell/geometry';
import { CARD_BASE, type Face, type Piece, placedPiece, type Sketch } from '@trimwell/sketch';
import type { BuildStep } from '@trimwell/sketch/assembly';
import type { WorkPart } from './after-cutting.js';
import { called, type HandoutContext } from './context.js';
import { tied } from './wrap.js';

/** The faces in the order in which they are glued. */
export const GLUED_FACES = ['front', 'inside'] as const satisfies readonly Face[];

/** The piece that `piece` is mainly glued to: the highest below it under its middle, else the card itself. */
export function gluedOnto(sketch: Sketch, piece: Piece): string {
  const middle = { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 };
  const lower = sketch.pieces
    .slice(0, sketch.pieces.indexOf(piece))
    .filter((other) => other.face === piece.face && holdsPoint(placedPiece(sketch, other), middle));
  return lower.at(-1)?.id ?? CARD_BASE;
}

/** What a step glues its piece onto: what it is mainly glued to, or all that bears it where it does not reach that. */
export function stepOnto(sketch: Sketch, { piece, gluedTo, restsOn }: BuildStep): readonly string[] {
  const upper = sketch.pieces.find(({ id }) => id === piece);
  const onto = upper ? gluedOnto(sketch, upper) : CARD_BASE;
  return gluedTo.includes(onto) ? [onto] : restsOn;
}

/** A piece as the pages tell to glue it. */
export interface Glued {
  readonly piece: string;
  readonly face: Face;
  readonly onto: readonly string[];
  readonly foam: Length;
}

/** The gluing of a card without its heights, for what loads no polygons: each piece onto what it is mainly glued to. */
export function plainGluing(sketch: Sketch): readonly Glued[] {
  return sketch.pieces.map((piece) => ({
    piece: piece.id,
    face: piece.face,
    onto: [gluedOnto(sketch, piece)],
    foam: piece.raise,
  }));
}

function lettersText({ labels, speech }: HandoutContext, ids: readonly string[]): string {
  return speech.list(ids.map((id) => labels.get(id) ?? '?'));
}

/** The gluing order of one face in a line, by letters alone: `B onto A, C onto B`. */
export function gluingLine(context: HandoutContext, face: Face): string {
  const { say, length } = context.speech;
  return context.gluing
    .filter((glued) => glued.face === face)
    .map(({ piece, onto, foam }) => {
      const glued = tied(say.onTo(lettersText(context, [piece]), lettersText(context, onto)));
      return foam > 0 ? `${glued} (${say.raisedBy(length(foam))})` : glued;
    })
    .join(', ');
}

/** The pieces of one face in gluing order, each with what it goes onto and the foam under it. */
export function gluingTexts(context: HandoutContext, face: Face): readonly string[] {
  const { say, length } = context.speech;
  return context.gluing
    .filter((glued) => glued.face === face)
    .map(({ piece, onto, foam }) => {
      const glued = say.onTo(called(context, piece), lettersText(context, onto));
      return foam > 0 ? `${glued}, ${say.raisedBy(length(foam))}` : glued;
    });
}

/** The gluing of a card, front first, as one part of the work; none where nothing is glued. */
export function gluingWork(context: HandoutContext): readonly WorkPart[] {
  const texts = GLUED_FACES.flatMap((face) => gluingTexts(context, face));
  return texts.length === 0 ? [] : [{ title: context.speech.say.heads.gluing, texts }];
}
