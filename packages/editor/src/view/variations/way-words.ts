import { formatLength } from '@trimwell/geometry';
import { counted, type Sketch } from '@trimwell/sketch';
import type { WayFigures } from '../../session/variation-plans.js';

export const WAYS = {
  heading: 'Other ways',
  none: 'The same card, made in another way: without a tool, larger, on other paper.',
  start: 'Start another',
  ready: 'Ready to add',
  noneReady: 'None that changes this card.',
  order: 'Put on from the top down: where two change the same, the lower one has it.',
  counting: 'Counting sheets…',
  changedIn: (name: string) => `What ${name} brings or sets was changed in it; the card keeps its own.`,
} as const;

/** What stands of the size of the card, when it is another. */
function sizeText({ card, unit }: Sketch, varied: Sketch): readonly string[] {
  if (card.width === varied.card.width && card.height === varied.card.height) return [];
  const { width, height } = varied.card;
  return [`Card ${formatLength(width, { unit, bare: true })} × ${formatLength(height, { unit })}`];
}

function sheetsText(base: WayFigures, way: WayFigures): string {
  if (way.sheets === base.sheets)
    return way.cards === base.cards ? 'As many sheets' : `${counted(way.sheets, 'sheet')}`;
  return `${counted(way.sheets, 'sheet')}, not ${base.sheets}`;
}

/** What the sheets at hand would give; nothing where no sheet is counted. */
function yieldText(base: WayFigures, way: WayFigures): readonly string[] {
  if (way.most === null || way.most === base.most) return [];
  return [base.most === null ? `${way.most} cards at most` : `up to ${counted(way.most, 'card')}, not ${base.most}`];
}

/** What a way of making the card does to the card, the sheets and the yield, against the card as it is. */
export function wayText(sketch: Sketch, varied: Sketch, base: WayFigures | null, way: WayFigures | null): string {
  const card = sizeText(sketch, varied);
  if (!base || !way) return [...card, WAYS.counting].join('; ');
  if (!way.complete) return [...card, 'not all of it can be cut'].join('; ');
  const cards = way.cards === base.cards ? [] : [`${counted(way.cards, 'card')}, not ${base.cards}`];
  const gives = yieldText(base, way);
  const words = [...card, ...cards, sheetsText(base, way), ...gives];
  return words.join('; ');
}
