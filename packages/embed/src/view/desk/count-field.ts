import { type Child, part } from '../part.js';
import type { Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';

interface CountField {
  /** Name of its draft among the desk's. */
  readonly key: string;
  readonly label: string;
  /** Null stands for an empty field. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  readonly mayBeEmpty: boolean;
  readonly disabled?: boolean;
  set(count: number | null): void;
}

/** A field for a whole number. What is none stays as it was typed, changes nothing, and is told with what is allowed. */
export function countField({ state, acts }: Shown, field: CountField): readonly Child[] {
  const { key, label, value, least, most, mayBeEmpty, disabled = false } = field;
  const draft = disabled ? undefined : state.drafts.get(key);
  const typed = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const { value: text } = input;
    const count = Number(text);
    // What is no number at all reads as nothing; only the browser knows of it.
    const empty = text === '' && !input.validity.badInput;
    const good = empty ? mayBeEmpty : text !== '' && Number.isSafeInteger(count) && count >= least && count <= most;
    acts.draft(key, good ? null : { text, wrong: true });
    if (good) field.set(empty ? null : count);
  };
  const told = `${key} told`.replaceAll(' ', '-');
  return [
    part(
      'label',
      { key },
      `${label} `,
      part('input', {
        type: 'number',
        class: 'count',
        min: String(least),
        max: String(most),
        '.value': draft?.text ?? String(value ?? ''),
        disabled,
        'aria-invalid': draft ? 'true' : null,
        'aria-describedby': draft ? told : null,
        onchange: typed,
      }),
    ),
    draft
      ? part(
          'p',
          { class: 'wrong', key: told, id: told, role: 'alert' },
          WORDS.countWrong(draft.text, least, most, mayBeEmpty),
        )
      : null,
  ];
}
