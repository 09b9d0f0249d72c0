import { CARD_BASE, type Edge } from '@trimwell/sketch';
import { called, type HandoutContext } from './context.js';
import { isEven, punchedEdges, roundedCorners, shapeText } from './piece-words.js';
import { foldAt } from './size-table.js';

/** Work of one kind once all is cut. */
export interface WorkPart {
  readonly title: string;
  readonly texts: readonly string[];
}

/** What is done to the pieces of a batch after cutting, in the order in which it is best done. */
export function workAfterCutting(context: HandoutContext): readonly WorkPart[] {
  const { sketch, batch, speech } = context;
  const { say } = speech;
  const { card, pieces } = sketch;
  const count = (perCard: number): number => perCard * batch.cards;
  const edgesText = (edges: readonly Edge[]): string => speech.list(edges.map((edge) => say.edge[edge]));
  const scoring =
    card.fold === 'none'
      ? []
      : [
          say.scoreStep(
            batch.cards,
            called(context, CARD_BASE),
            speech.length(foldAt(card)),
            card.fold,
            speech.size(card),
          ),
        ];
  const punching = pieces.flatMap((piece) =>
    punchedEdges(sketch, piece).map(({ punch, edges }) =>
      say.punchStep(edgesText(edges), count(piece.perCard), called(context, piece.id), punch),
    ),
  );
  const rounding = pieces.flatMap((piece) => {
    const corners = roundedCorners(piece.corners, speech);
    if (corners.length === 0) return [];
    const name = called(context, piece.id);
    return isEven(piece.corners)
      ? [say.roundStep(count(piece.perCard), name, speech.length(piece.corners.tl))]
      : [say.roundSomeStep(count(piece.perCard), name, speech.list(corners))];
  });
  const shaping = pieces
    .filter(({ shape }) => shape !== 'rectangle')
    .map((piece) => say.shapeStep(count(piece.perCard), called(context, piece.id), shapeText(piece, speech)));
  const { heads } = say;
  return [
    { title: heads.punching, texts: punching },
    { title: heads.rounding, texts: rounding },
    { title: heads.shaping, texts: shaping },
    { title: heads.scoring, texts: scoring },
  ].filter(({ texts }) => texts.length > 0);
}
