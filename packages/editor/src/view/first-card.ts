import { beginSketch, CARD_SIZES, type Sketch } from '@trimwell/sketch';

/** What lies on a table that nobody laid anything on: a blank card of the commonest US size. */
export function firstCard(): Sketch {
  const size = CARD_SIZES.find(({ id }) => id === 'us-a2');
  if (!size) throw new RangeError('the list of card sizes has no US A2');
  const { width, height } = size;
  return beginSketch({ layout: 'blank-card', width, height, unit: 'in', fold: 'left' });
}
