import { flatCardBase, type Outline, type Point, pieceOutline, rectangle, type Size } from '@trimwell/geometry';
import { CARD_BASE, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import { pieceShape } from '../../draw/piece.js';

/** What a machine cuts and scores of one piece, from the piece's own untilted upper left corner; in ticks, y down. */
export interface CutPart extends Size {
  readonly name: string;
  /** Closed outlines: holes first, so that the piece is still held by its sheet while they are cut. */
  readonly cut: readonly Outline[];
  readonly score: readonly (readonly [Point, Point])[];
}

function basePart(sketch: Sketch): CutPart {
  const { width, height, score } = flatCardBase(sketch.card);
  const ends = (at: number): readonly [Point, Point] =>
    score?.axis === 'x'
      ? [
          { x: at, y: 0 },
          { x: at, y: height },
        ]
      : [
          { x: 0, y: at },
          { x: width, y: at },
        ];
  return {
    ...{ name: 'card base', width, height },
    cut: [rectangle(0, 0, width, height)],
    score: score ? [ends(score.at)] : [],
  };
}

/**
 * The finished piece of a blank, or the card base opened flat with its fold as a score; null for a blank of no piece. A
 * machine cuts the profile of a punched edge itself, so that no paper for the punch's bite is added.
 */
export function cutPart(sketch: Sketch, blank: string): CutPart | null {
  const id = pieceOfBlank(blank);
  if (id === CARD_BASE) return basePart(sketch);
  const piece = sketch.pieces.find((each) => each.id === id);
  if (!piece) return null;
  const { outline, holes } = pieceOutline(pieceShape(sketch, piece));
  return { name: piece.name, width: piece.width, height: piece.height, cut: [...holes, outline], score: [] };
}
