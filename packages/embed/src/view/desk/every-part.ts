import type { LengthStyle } from '@trimwell/geometry';
import { dealtSketch, drawCard, layCard, type Photos, PLAIN_HAND } from '@trimwell/handout';
import { batchRecipe, mixPlan, type Sketch } from '@trimwell/sketch';
import { isTooMuch } from '../../state/drawing-cost.js';
import { fineNode } from '../fine-picture.js';
import { type Part, part } from '../part.js';

interface Cards {
  readonly key: string;
  readonly parts: readonly Part[];
}

/** The cards that were drawn last, by sketch. */
const drawn = new WeakMap<Sketch, Cards>();

function numbers(cards: readonly number[]): string {
  const [first = 0] = cards;
  if (cards.length === 1) return `Card ${first + 1}`;
  const alike =
    cards.length > 6
      ? `${cards
          .slice(0, 6)
          .map((card) => card + 1)
          .join(', ')} …`
      : cards.map((card) => card + 1).join(', ');
  return `Cards ${alike}: ${cards.length} alike`;
}

/** Every card of a batch of `cards`, those that are alike drawn once; at most `most` pictures. */
export function everyCard(
  sketch: Sketch,
  cards: number,
  style: LengthStyle,
  photos: Photos,
  most: number,
): readonly Part[] {
  const key = JSON.stringify([cards, style, photos.size, most]);
  const known = drawn.get(sketch);
  if (known?.key === key) return known.parts;
  const plan = mixPlan(batchRecipe(sketch), cards);
  const looks = new Map<string, number[]>();
  plan.deal.forEach((papers, card) => {
    const look = JSON.stringify(papers);
    looks.set(look, [...(looks.get(look) ?? []), card]);
  });
  // Without a mix nothing is dealt and all cards are alike.
  if (looks.size === 0)
    looks.set(
      '',
      Array.from({ length: cards }, (_, card) => card),
    );
  const plainly = isTooMuch(sketch);
  const parts = [...looks.values()].slice(0, most).map((alike) => {
    const shown = dealtSketch(sketch, plan, alike[0] ?? 0);
    const options = { face: 'front', style, dimensions: false } as const;
    const drawing = plainly ? layCard(shown, options, PLAIN_HAND) : drawCard(shown, options);
    return part(
      'figure',
      { key: `card ${alike[0]}` },
      fineNode(drawing, photos),
      part('figcaption', {}, numbers(alike)),
    );
  });
  drawn.set(sketch, { key, parts });
  return parts;
}

/** How many pictures there are beyond `most`. */
export function cardsLeft(sketch: Sketch, cards: number, most: number): number {
  const { deal } = mixPlan(batchRecipe(sketch), cards);
  return Math.max(0, Math.max(1, new Set(deal.map((papers) => JSON.stringify(papers))).size) - most);
}
