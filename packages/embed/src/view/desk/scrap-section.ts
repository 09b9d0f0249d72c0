import { formatSize } from '@trimwell/geometry';
import { CARD_BASE, counted } from '@trimwell/sketch';
import { scrapName } from '../../state/apply-choices.js';
import { MOST_SCRAPS, MOST_SHEETS, type Scrap } from '../../state/choices.js';
import { apart } from '../first-look.js';
import { type Child, type Part, part } from '../part.js';
import type { ScrapForm, Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';
import { readSide } from './paper-section.js';

const EMPTY = { name: '', width: '', height: '', sheets: '1', problem: '' } as const;

/** The scrap that was described, or what is wrong. */
function readForm(form: ScrapForm, shown: Shown, count: number): Scrap | string {
  const [width, height] = [readSide(form.width, shown), readSide(form.height, shown)];
  const sheets = Number(form.sheets);
  if (width === null || height === null) return WORDS.lengthWrong(WORDS.lengthAllowed(shown.state.style));
  if (!Number.isSafeInteger(sheets) || sheets < 1 || sheets > MOST_SHEETS)
    return `${WORDS.sheets}: 1 to ${MOST_SHEETS}.`;
  const name = form.name.trim().slice(0, 80) || `${WORDS.scrap} ${count + 1}`;
  return { name, like: form.like, width, height, sheets };
}

function scrapFields(shown: Shown, form: ScrapForm): Part {
  const { state, acts } = shown;
  const { scraps = [] } = state.choices;
  const field = (name: 'name' | 'width' | 'height' | 'sheets', label: string): Part =>
    part(
      'label',
      { key: name },
      `${label} `,
      part('input', {
        class: name === 'name' ? 'name' : 'side',
        '.value': form[name],
        maxlength: '80',
        onchange: (event: Event) => acts.scrapForm({ ...form, [name]: (event.target as HTMLInputElement).value }),
      }),
    );
  const add = (): void => {
    const scrap = readForm(form, shown, scraps.length);
    if (typeof scrap === 'string') acts.scrapForm({ ...form, problem: scrap });
    else {
      acts.scrapForm(null);
      acts.choose({ scraps: [...scraps, scrap] });
    }
  };
  return part(
    'fieldset',
    { key: 'form', class: 'paper' },
    part('legend', {}, WORDS.addScrap),
    field('width', WORDS.width),
    field('height', WORDS.height),
    field('sheets', WORDS.sheets),
    field('name', WORDS.scrapName),
    part(
      'label',
      { key: 'like' },
      `${WORDS.scrapLike} `,
      part(
        'select',
        { onchange: (event: Event) => acts.scrapForm({ ...form, like: (event.target as HTMLSelectElement).value }) },
        state.document.papers.map(({ id, name }) => part('option', { value: id, '.selected': id === form.like }, name)),
      ),
    ),
    part('button', { type: 'button', key: 'add', onclick: add }, WORDS.scrapAdd),
    form.problem === '' ? null : part('p', { class: 'wrong', key: 'problem', role: 'alert' }, form.problem),
  );
}

function fromSelect({ state, acts }: Shown, piece: { readonly id: string; readonly name: string }): Part {
  const { choices, document } = state;
  const { from = [], scraps = [] } = choices;
  const designed =
    piece.id === CARD_BASE ? document.card.base : (state.sketch.pieces.find(({ id }) => id === piece.id)?.from ?? '');
  const chosen = from.find((each) => each.piece === piece.id)?.from;
  const picked = (event: Event): void => {
    const { value } = event.target as HTMLSelectElement;
    const others = from.filter((each) => each.piece !== piece.id);
    acts.choose({ from: value === '' ? others : [...others, { piece: piece.id, from: value }] });
  };
  const usual = [...document.papers, ...document.mixes].find(({ id }) => id === designed)?.name;
  const options: readonly (readonly [string, string])[] = [
    ['', chosen === undefined && usual !== undefined ? WORDS.fromUsual(usual) : 'as designed'],
    ...document.papers.map(({ id, name }) => [id, name] as const),
    ...scraps.map(({ name }, index) => [scrapName(index), name] as const),
  ];
  return part(
    'label',
    { key: piece.id, class: 'from' },
    part('span', {}, apart(piece.name)),
    ' ',
    part(
      'select',
      { onchange: picked },
      options.map(([value, text]) => part('option', { value, '.selected': value === (chosen ?? '') }, text)),
    ),
  );
}

/** Scraps of the reader's own, and which piece is cut from which paper. */
export function scrapSection(shown: Shown): readonly Child[] {
  const { state, acts } = shown;
  const { scraps = [], from = [] } = state.choices;
  const used = new Set(from.map((each) => each.from));
  const first = state.document.papers[0]?.id ?? '';
  return [
    ...scraps.map((scrap, index) =>
      part(
        'p',
        { key: `scrap ${index}`, class: 'row' },
        part(
          'span',
          {},
          apart(scrap.name),
          `, ${formatSize(scrap, state.style)}, ${counted(scrap.sheets, 'sheet')}. `,
          used.has(scrapName(index)) ? null : part('span', { class: 'quiet' }, WORDS.scrapUnused),
        ),
        part(
          'button',
          { type: 'button', 'aria-label': WORDS.scrapRemove(scrap.name), onclick: () => acts.removeScrap(index) },
          '×',
        ),
      ),
    ),
    state.scrapForm
      ? scrapFields(shown, state.scrapForm)
      : part(
          'button',
          {
            type: 'button',
            key: 'open',
            disabled: scraps.length >= MOST_SCRAPS,
            onclick: () => acts.scrapForm({ ...EMPTY, like: first }),
          },
          WORDS.addScrap,
        ),
    part(
      'div',
      { key: 'from', role: 'group', 'aria-label': WORDS.fromTitle },
      part('p', {}, part('b', {}, WORDS.fromTitle)),
      [{ id: CARD_BASE, name: 'Card base' }, ...state.sketch.pieces].map((piece) => fromSelect(shown, piece)),
    ),
  ];
}
