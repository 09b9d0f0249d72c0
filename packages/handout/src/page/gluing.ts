import { CARD_BASE, type Face, type Piece, type Sketch } from '@trimwell/sketch';
import type { BuildStep } from '@trimwell/sketch/assembly';
import type { WorkPart } from './after-cutting.js';
import { called, type HandoutContext } from './context.js';
import { tied } from './wrap.js';

/** The piece that `piece` is mainly glued to: the highest below it under its middle, else the card itself. */
export function gluedOnto(pieces: readonly Piece[], piece: Piece): string {
  const middle = { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 };
  const lower = pieces
    .slice(0, pieces.indexOf(piece))
    .filter(
      (other) =>
        other.face === piece.face &&
        middle.x >= other.x &&
        middle.x <= other.x + other.width &&
        middle.y >= other.y &&
        middle.y <= other.y + other.height,
    );
  return lower.at(-1)?.id ?? CARD_BASE;
}

/** What a step glues its piece onto: what it is mainly glued to, or all that bears it where it reaches over that with a gap. */
export function stepOnto({ pieces }: Sketch, { piece, bridges, restsOn }: BuildStep): readonly string[] {
  const upper = pieces.find(({ id }) => id === piece);
  const onto = upper ? gluedOnto(pieces, upper) : CARD_BASE;
  return bridges.includes(onto) ? restsOn : [onto];
}

/** The gluing order of one face in a line, by letters alone: `B onto A, C onto B`. */
export function gluingLine({ sketch, labels, speech }: HandoutContext, face: Face): string {
  const { say, length } = speech;
  const letter = (id: string): string => labels.get(id) ?? '?';
  return sketch.pieces
    .filter((piece) => piece.face === face)
    .map((piece) => {
      const glued = tied(say.onTo(letter(piece.id), letter(gluedOnto(sketch.pieces, piece))));
      return piece.raise > 0 ? `${glued} (${say.raisedBy(length(piece.raise))})` : glued;
    })
    .join(', ');
}

/** The pieces of one face in gluing order, each with what it goes onto and the foam under it. */
export function gluingTexts(context: HandoutContext, face: Face): readonly string[] {
  const { say, length } = context.speech;
  return context.sketch.pieces
    .filter((piece) => piece.face === face)
    .map((piece) => {
      const onto = gluedOnto(context.sketch.pieces, piece);
      const letter = context.labels.get(onto) ?? '?';
      const glued = say.onTo(called(context, piece.id), letter);
      return piece.raise > 0 ? `${glued}, ${say.raisedBy(length(piece.raise))}` : glued;
    });
}

/** The gluing of a card, inside first, as one part of the work; none where nothing is glued. */
export function gluingWork(context: HandoutContext): readonly WorkPart[] {
  const texts = (['inside', 'front'] as const).flatMap((face) => gluingTexts(context, face));
  return texts.length === 0 ? [] : [{ title: context.speech.say.heads.gluing, texts }];
}
