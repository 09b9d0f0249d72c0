import type { LengthStyle } from '@trimwell/geometry';
import { LIVE_WORDS as WORDS } from './live-words.js';
import { type Part, part } from './part.js';

export interface ControlBar {
  readonly style: LengthStyle;
  readonly open: boolean;
  readonly onStyle: (style: LengthStyle) => void;
  readonly onOpen: () => void;
}

/** The two controls that are always there: the unit of the sizes, and the way to the reader's own version. */
export function controlBar({ style, open, onStyle, onOpen }: ControlBar): Part {
  const shown = style.unit === 'mm' ? 'mm fraction' : `in ${style.form ?? 'fraction'}`;
  const chosen = (event: Event): void => {
    const [unit, form] = (event.target as HTMLSelectElement).value.split(' ');
    onStyle({ unit, form } as LengthStyle);
  };
  return part(
    'div',
    { class: 'bar' },
    part(
      'button',
      { type: 'button', class: 'main', 'aria-expanded': String(open), onclick: onOpen },
      open ? WORDS.close : WORDS.makeYours,
    ),
    part(
      'label',
      {},
      `${WORDS.sizesIn} `,
      part(
        'select',
        { onchange: chosen },
        WORDS.styles.map(([value, text]) => part('option', { value, '.selected': value === shown }, text)),
      ),
    ),
  );
}
