import type { BatchPlan } from '../batch/batch-plan.js';
import { closedSize } from '../check/whole-card.js';
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
