import { AS_MANY_AS_POSSIBLE } from '@trimwell/sketch';
import { MOST_WISHED } from '../../state/choices.js';
import { apart } from '../first-look.js';
import { type Child, part } from '../part.js';
import { countField } from './count-field.js';
import type { Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';

function target(event: Event): HTMLInputElement {
  return event.target as HTMLInputElement;
}

/** How many cards: a number, or as many as the paper gives. */
export function cardsSection(shown: Shown): readonly Child[] {
  const { state, acts } = shown;
  const { cards } = state.sketch.batch;
  const asMany = cards === AS_MANY_AS_POSSIBLE;
  const number = asMany ? (state.plan.made?.batch.cards ?? 1) : cards;
  return [
    part(
      'div',
      { class: 'row' },
      countField(shown, {
        key: 'cards',
        label: WORDS.cards,
        value: number,
        least: 1,
        most: MOST_WISHED,
        mayBeEmpty: false,
        disabled: asMany,
        set: (count) => acts.choose({ cards: count ?? number }),
      }),
      part(
        'label',
        { class: 'tick' },
        part('input', {
          type: 'checkbox',
          '.checked': asMany,
          onchange: (event: Event) => {
            const cards = target(event).checked ? AS_MANY_AS_POSSIBLE : (state.plan.made?.batch.cards ?? 1);
            // It is read first: whatever is done shows the state from before again.
            acts.draft('cards', null);
            acts.choose({ cards });
          },
        }),
        ` ${WORDS.asMany}`,
      ),
    ),
  ];
}

/** Every variation with a switch and what it is for. */
export function variationsSection({ state, acts }: Shown): readonly Child[] {
  const on = state.choices.on ?? [];
  return state.offered.map(({ key, variation }) =>
    part(
      'label',
      { class: 'tick', key },
      part('input', {
        type: 'checkbox',
        '.checked': on.includes(key),
        onchange: (event: Event) =>
          acts.choose({
            on: target(event).checked ? [...on.filter((each) => each !== key), key] : on.filter((each) => each !== key),
          }),
      }),
      part(
        'span',
        {},
        apart(variation.name),
        variation.note === '' ? null : part('span', { class: 'quiet' }, ' ', apart(variation.note)),
      ),
    ),
  );
}
