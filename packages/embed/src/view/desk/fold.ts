import { type Child, type Part, part } from '../part.js';
import type { Fold, Shown } from './desk-state.js';

/** A part of the desk that opens and closes; what is in it is made only while it is open. */
export function fold({ state, acts }: Shown, name: Fold, title: string, inside: () => readonly Child[]): Part {
  const open = state.folds.has(name);
  const toggled = (event: Event): void => acts.toggle(name, (event.currentTarget as HTMLDetailsElement).open);
  return part(
    'details',
    { key: name, class: 'fold', open, ontoggle: toggled },
    part('summary', {}, title),
    part('div', { class: 'inside' }, open ? inside() : []),
  );
}
