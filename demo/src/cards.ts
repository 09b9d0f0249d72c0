import { expectSketch, type Sketch } from '@trimwell/sketch';
import hedgerowWreath from '../sketches/hedgerow-wreath.json';
import starWindow from '../sketches/star-window.json';
import tideLine from '../sketches/tide-line.json';

/** The club's cards: US with rounded corners and a punched edge, metric A6, square. */
export const CARDS: readonly Sketch[] = [hedgerowWreath, tideLine, starWindow].map(expectSketch);

/** The first card, for pages that show one. */
export function firstCard(): Sketch {
  const [card] = CARDS;
  if (!card) throw new Error('The club has cards.');
  return card;
}
