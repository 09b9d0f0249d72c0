import { placedBounds, type Size, ticks } from '@trimwell/geometry';
import type { BatchPlan } from '../batch/batch-plan.js';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Sketch } from '../model/sketch.js';
import type { LetterAnswer } from '../post/letter-class.js';
import { type CardFold, cardFold } from './card-fold.js';
import { cardGirth } from './card-girth.js';
import { type PostedCard, postAnswers, postedCard } from './card-post.js';
import { type CardThickness, cardThickness } from './card-thickness.js';
import { type CardWeight, cardWeight } from './card-weight.js';
import { type CardEnvelopes, cardEnvelopes } from './envelope-fit.js';
import { type FaceStack, faceStack } from './face-stack.js';

export interface AssemblyOptions {
  /** The plan of the batch, where there is one: it tells which way bases lie, and what cannot be cut. */
  readonly batch?: BatchPlan;
  /** The country of the post (ISO 3166-1, two letters). Default: all of the table, and no findings about post. */
  readonly post?: string;
}

/** What is known of a card as a whole. */
export interface CardFacts {
  readonly sketch: Sketch;
  readonly options: AssemblyOptions;
  readonly front: FaceStack;
  readonly inside: FaceStack;
  readonly thickness: CardThickness;
  readonly weight: CardWeight;
  readonly envelopes: CardEnvelopes;
  readonly fold: CardFold;
  readonly posted: PostedCard;
  readonly post: readonly LetterAnswer[];
}

/** The size of the closed card with all that hangs over its edges, in whole ticks, rounded up. */
export function closedSize(sketch: Sketch): Size {
  const box = { left: 0, top: 0, right: sketch.card.width as number, bottom: sketch.card.height as number };
  const { width, fold } = sketch.card;
  for (const piece of sketch.pieces) {
    const { top, bottom, ...across } = placedBounds(placedPiece(sketch, piece));
    // Without a fold the inside is the back, which is seen from behind.
    const mirrored = fold === 'none' && piece.face === 'inside';
    const [left, right] = mirrored ? [width - across.right, width - across.left] : [across.left, across.right];
    box.left = Math.min(box.left, left);
    box.top = Math.min(box.top, top);
    box.right = Math.max(box.right, right);
    box.bottom = Math.max(box.bottom, bottom);
  }
  return { width: ticks(Math.ceil(box.right - box.left)), height: ticks(Math.ceil(box.bottom - box.top)) };
}

/** Everything that is known of the card of `sketch` as a whole. */
export function cardFacts(sketch: Sketch, options: AssemblyOptions = {}): CardFacts {
  const [front, inside] = [faceStack(sketch, 'front'), faceStack(sketch, 'inside')];
  const thickness = cardThickness(sketch, front, inside);
  const weight = cardWeight(sketch);
  const envelopes = cardEnvelopes(sketch, closedSize(sketch), cardGirth(sketch, front, inside, thickness));
  const posted = postedCard(sketch, envelopes, thickness, weight);
  return {
    sketch,
    options,
    front,
    inside,
    thickness,
    weight,
    envelopes,
    fold: cardFold(sketch, options.batch),
    posted,
    post: postAnswers(posted, options.post),
  };
}
