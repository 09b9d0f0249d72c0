import { apart } from '../first-look.js';
import { type Child, part } from '../part.js';
import type { Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';

/** What the designer wrote: notes, what else is needed, credit, and where to go on. */
export function designerSection({ state }: Shown): readonly Child[] {
  const { notes = '', credit, links, supplies } = state.sketch;
  const lines = notes.split('\n').filter((line) => line.trim() !== '');
  return [
    ...lines.map((line) => part('p', {}, apart(line))),
    supplies.length === 0
      ? null
      : part(
          'div',
          { key: 'supplies' },
          part('p', {}, part('b', {}, WORDS.supplies)),
          part(
            'ul',
            {},
            supplies.map((supply) => part('li', {}, apart(supply))),
          ),
        ),
    credit ? part('p', { key: 'credit' }, apart(credit)) : null,
    ...links.map(({ text, address }, index) =>
      part(
        'p',
        { key: `link ${index}` },
        part('a', { href: address, rel: 'noopener noreferrer', target: '_blank' }, apart(text)),
      ),
    ),
  ];
}

/** True when the designer wrote something. */
export function hasWords({ state }: Shown): boolean {
  const { notes = '', credit, links, supplies } = state.sketch;
  return notes.trim() !== '' || credit !== undefined || links.length > 0 || supplies.length > 0;
}

/** Printing, files, and the link to the reader's own version. */
export function handOnSection({ state, acts }: Shown): readonly Child[] {
  const picked = (event: Event): void =>
    acts.page((event.target as HTMLSelectElement).value === 'a4' ? 'a4' : 'letter');
  const copy = (event: Event): void => {
    const field = (event.currentTarget as HTMLElement).closest('.row')?.querySelector('input');
    if (field) acts.copy(field);
  };
  return [
    part(
      'div',
      { class: 'row', key: 'files' },
      part('button', { type: 'button', key: 'print', onclick: () => acts.print() }, WORDS.print),
      part('button', { type: 'button', key: 'handout', onclick: () => acts.make('handout') }, WORDS.handout),
      part(
        'label',
        { key: 'page' },
        `${WORDS.pagePaper} `,
        part(
          'select',
          { onchange: picked },
          (['letter', 'a4'] as const).map((page) =>
            part('option', { value: page, '.selected': page === state.page }, WORDS[page]),
          ),
        ),
      ),
      part('button', { type: 'button', key: 'list', onclick: () => acts.make('piece list') }, WORDS.pieceList),
    ),
    part(
      'div',
      { class: 'row', key: 'link' },
      part('label', { class: 'link' }, `${WORDS.link} `, part('input', { readonly: true, '.value': state.link })),
      part('button', { type: 'button', onclick: copy }, WORDS.copy),
    ),
    part('p', { class: 'quiet', key: 'hint' }, WORDS.linkHint),
    part(
      'div',
      { class: 'row', key: 'forget' },
      part('button', { type: 'button', onclick: () => acts.forget() }, WORDS.forget),
    ),
  ];
}
