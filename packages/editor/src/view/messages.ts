import { counted, type OneMore, type Sketch } from '@trimwell/sketch';
import type { Limit, PlanView } from '../session/plan-messages.js';

/** Every sentence that the table shows, in one place. The face has its own in `face-messages.ts`. */

/** How many cards, as large as it gets on the table. */
export function cardsText(plan: PlanView): string {
  return plan.batch ? counted(plan.batch.cards, 'card') : 'Planning…';
}

export function sheetsText(plan: PlanView): string {
  if (plan.failure !== null) return `No plan: ${plan.failure}`;
  return plan.batch ? `from ${counted(plan.batch.sheets, 'sheet')}` : '';
}

/** What is proven, and never more than that. */
export function proofText(plan: PlanView): string {
  const { batch } = plan;
  if (!batch) return '';
  if (!batch.complete) return 'not all can be made';
  // Papers of a mix are dealt evenly; an uneven deal might need fewer sheets in all, so the words say what was proven.
  if (batch.fewestSheets) return batch.mixed ? 'fewest for an even mix' : 'fewest possible';
  return plan.searching ? 'looking for fewer' : `at least ${batch.lowerBound} needed`;
}

export function limitText(limit: Limit | null, sketch: Sketch): string {
  if (!limit) return '';
  const names = limit.runsOut.map((id) => sketch.papers.find((paper) => paper.id === id)?.name ?? id);
  const out = names.length > 0 ? `; ${names.join(' and ')} ${names.length === 1 ? 'runs' : 'run'} out first` : '';
  const most = limit.proven ? `${counted(limit.cards, 'card')} at most` : `${counted(limit.cards, 'card')} or more`;
  return `The sheets give ${most}${out}.`;
}

/** What one sheet more of each limited paper would give, the best first; empty until it is known. */
export function oneMoreText(oneMore: readonly OneMore[], limit: Limit | null, sketch: Sketch): string {
  if (!limit || oneMore.length === 0) return '';
  const name = (id: string): string => sketch.papers.find((paper) => paper.id === id)?.name ?? id;
  const better = oneMore.filter(({ cards }) => cards > limit.cards).sort((a, b) => b.cards - a.cards);
  const rest = oneMore.filter(({ cards }) => cards <= limit.cards);
  const none = rest.every(({ proven }) => proven) ? 'none more' : 'none more that was found';
  const gains = better.map(
    ({ paper, cards, proven }, index) =>
      `${name(paper)}${index === 0 ? ' gives' : ''} ${cards}${proven ? '' : ' or more'}`,
  );
  if (gains.length === 0) return `One more sheet of any one paper gives ${none}.`;
  return `One more sheet of ${gains.join(', of ')}${rest.length > 0 ? `, of others ${none}` : ''}.`;
}

/** What the pin of the yield ruler says at `cards`. */
export function rulerText(cards: number, sheets: number | undefined): string {
  return sheets === undefined ? counted(cards, 'card') : `${counted(cards, 'card')} from ${counted(sheets, 'sheet')}`;
}

export function copiesText(copies: number): string {
  return copies === 1 ? '1 sheet' : `${copies} sheets, cut alike`;
}

/** Centres cut out of pieces with a knife, as small sheets of their own. */
export function centresText(copies: number, piece: string): string {
  return copies === 1 ? `centre of 1 ${piece}` : `centres of ${copies} ${piece}, cut alike`;
}

export function atHandText(sheets: number | undefined): string {
  return sheets === undefined ? '' : `${sheets} at hand`;
}

/** What to do first, on a card that nothing is glued to yet. */
export const CUT_A_FIRST =
  'Take a sheet from below and drop it on the card: that cuts the first piece. “Cut a piece” under the sheet does the same.';
export const PICK_A_PIECE =
  'Pick a piece on the card or in the stack. Or take a sheet from below and drop it on the card.';
