import {
  type FlatCardBase,
  flatCardBase,
  flattenOutline,
  type Length,
  type Outline,
  type Point,
  pieceOutline,
  rectangle,
} from '@trimwell/geometry';
import { CARD_BASE } from '@trimwell/sketch';
import { pieceShape } from '../draw/piece.js';
import { called, type HandoutContext } from './context.js';

/** What is printed at true size of one piece, from its own untilted upper left corner; lengths in ticks. */
export interface TemplatePart {
  readonly piece: string;
  readonly letter: string;
  readonly name: string;
  readonly caption: string;
  readonly width: Length;
  readonly height: Length;
  readonly outlines: readonly Outline[];
  /** Where it is scored. */
  readonly fold: readonly [Point, Point] | null;
}

function foldOf({ width, height, score }: FlatCardBase): TemplatePart['fold'] {
  if (!score) return null;
  const point = (along: number): Point => (score.axis === 'x' ? { x: score.at, y: along } : { x: along, y: score.at });
  return [point(0), point(score.axis === 'x' ? height : width)];
}

function basePart(context: HandoutContext): TemplatePart {
  const flat = flatCardBase(context.sketch.card);
  const { width, height } = flat;
  const name = called(context, CARD_BASE);
  return {
    piece: CARD_BASE,
    letter: context.labels.get(CARD_BASE) ?? 'A',
    name,
    caption: `${name}, ${context.speech.size({ width, height })}`,
    width,
    height,
    outlines: [rectangle(0, 0, width, height)],
    fold: foldOf(flat),
  };
}

/** The card base opened flat and every piece, finished, as they are printed at true size, in gluing order. */
export function templateParts(context: HandoutContext): readonly TemplatePart[] {
  const { sketch, speech, labels } = context;
  const parts = sketch.pieces.map((piece): TemplatePart => {
    const { outline, holes } = pieceOutline(pieceShape(sketch, piece));
    const name = called(context, piece.id);
    const { width, height } = piece;
    return {
      piece: piece.id,
      letter: labels.get(piece.id) ?? '?',
      name,
      caption: `${name}, ${speech.size(piece)}`,
      width,
      height,
      outlines: [outline, ...holes],
      fold: null,
    };
  });
  return [basePart(context), ...parts];
}

/** Lines to an arc or curve where an outline has to be parted: within a hundredth of a millimetre for a 12 in circle. */
const FINE = 96;

/** The part after a quarter turn clockwise, its outlines as lines. */
export function flatParts(
  part: TemplatePart,
  turned: boolean,
): {
  readonly width: number;
  readonly height: number;
  readonly outlines: readonly (readonly Point[])[];
  readonly fold: readonly [Point, Point] | null;
} {
  const { width, height, fold } = part;
  const turn = ({ x, y }: Point): Point => (turned ? { x: height - y, y: x } : { x, y });
  return {
    width: turned ? height : width,
    height: turned ? width : height,
    outlines: part.outlines.map((outline) => flattenOutline(outline, FINE).map(turn)),
    fold: fold ? [turn(fold[0]), turn(fold[1])] : null,
  };
}
