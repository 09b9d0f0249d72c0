import { expectSketch, type Sketch, type SketchDocument } from '@trimwell/sketch';
import { sampleDocument } from './sample-document.js';

type PieceDocument = NonNullable<SketchDocument['pieces']>[number];

/** A plain piece of `width` x `height` in, in the middle of the face of 4 1/4 x 5 1/2 in. */
export function middlePiece(
  id: string,
  from: string,
  width: number,
  height: number,
  more: Partial<PieceDocument> = {},
): PieceDocument {
  const place = { x: (4.25 - width) / 2, y: (5.5 - height) / 2 };
  return { id, name: `The ${id}`, kind: 'panel', ...place, width, height, from, ...more };
}

/**
 * Folded cards of ivory; `pieces` of moss sheets of 4 x 5 1/4 in and of Fern sprig 12 x 12 in, so that everything can be
 * counted by hand, with hidden centres switched on.
 */
export function centreSketch(
  pieces: readonly PieceDocument[],
  cards: SketchDocument['batch']['cards'] = 6,
  more: Partial<SketchDocument> = {},
): Sketch {
  const document = sampleDocument();
  const papers = document.papers.map((paper) =>
    paper.id === 'moss' ? { ...paper, width: 4, height: '5 1/4 in' } : { ...paper, directional: false },
  );
  return expectSketch({
    ...document,
    papers,
    punches: [],
    variations: [],
    pieces: [...pieces],
    batch: { cards, contrast: [], hiddenCentres: true },
    ...more,
  });
}

/** A mat of moss, hidden by a panel but for 1/8 in, and `tags` tags of moss on that, 2 x 3 in each. */
export function taggedSketch(tags = 1, cards: SketchDocument['batch']['cards'] = 6): Sketch {
  return centreSketch(
    [
      middlePiece('mat', 'moss', 4, 5.25),
      middlePiece('panel', 'sprig', 3.75, 5),
      middlePiece('tag', 'moss', 2, 3, { perCard: tags }),
    ],
    cards,
  );
}
