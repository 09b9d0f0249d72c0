import { counted } from '@trimwell/sketch';
import { type Child, type Part, part } from '../part.js';
import type { Shown } from './desk-state.js';
import { resultText, unmadeTexts, DESK_WORDS as WORDS } from './desk-words.js';

function later(): readonly Part[] {
  return [part('p', { class: 'quiet' }, WORDS.loading)];
}

function more(count: number, show: () => void): Part | null {
  return count === 0 ? null : part('button', { type: 'button', key: 'more', onclick: show }, WORDS.more(count));
}

/** What comes out, in a line that is said when it changes. */
export function resultLine({ state }: Shown): Part {
  const { made } = state.plan;
  return part(
    'div',
    { class: 'result', key: 'result', 'data-searching': state.plan.searching },
    part('p', { role: 'status', class: 'tally' }, resultText(state.plan)),
    made
      ? unmadeTexts(made.batch, made.sketch).map((text, index) =>
          part('p', { key: `unmade ${index}`, class: 'wrong' }, text),
        )
      : [],
  );
}

/** The sheets and their cuts. */
export function guideSection({ state, acts }: Shown): readonly Child[] {
  const { made } = state.plan;
  const { guide } = state.parts;
  if (!guide || !made) return later();
  const { parts, left } = guide.guideSheets(made.sketch, made.batch, state.style, state.photos, state.most.sheets);
  return [...parts, more(left, () => acts.more('sheets'))];
}

/** Every card of the batch. */
export function everySection({ state, acts }: Shown): readonly Child[] {
  const { made } = state.plan;
  const { every } = state.parts;
  if (!every || !made) return later();
  const { sketch, batch } = made;
  const { cards } = batch;
  return [
    part('p', { class: 'quiet', key: 'count' }, counted(cards, 'card')),
    part(
      'div',
      { class: 'cards', key: 'cards' },
      every.everyCard(sketch, cards, state.style, state.photos, state.most.cards),
    ),
    more(every.cardsLeft(sketch, cards, state.most.cards), () => acts.more('cards')),
  ];
}

/** The steps with their checklist. */
export function stepsSection(shown: Shown): readonly Child[] {
  const { state } = shown;
  const { steps } = state.parts;
  if (!steps || !state.work) return later();
  return [
    state.plan.searching ? part('p', { class: 'quiet', key: 'searching' }, WORDS.stillLooking) : null,
    ...steps.stepsChecklist(shown, state.work),
  ];
}
