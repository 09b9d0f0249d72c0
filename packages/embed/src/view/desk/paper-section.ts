import { formatSize, type Length, readLength } from '@trimwell/geometry';
import { type Paper, type Sketch, usualSheets } from '@trimwell/sketch';
import { MOST_SHEETS, type PaperChoice } from '../../state/choices.js';
import { apart } from '../first-look.js';
import { type Child, type Part, part } from '../part.js';
import { countField } from './count-field.js';
import type { Shown } from './desk-state.js';
import { fieldText, DESK_WORDS as WORDS } from './desk-words.js';

type Change = Omit<PaperChoice, 'paper'>;

/** Nothing is larger than 2 m, as in a sketch; in ticks. */
const LARGEST = 1_280_000;

const AS_DESIGNED = 'designed';
const ANOTHER = 'another';

/** The papers that something on the card is cut from, in their order. */
export function usedPapers({ card, pieces, mixes, papers }: Sketch): readonly Paper[] {
  const sources = new Set([card.base, ...pieces.map(({ from }) => from)]);
  const used = new Set([...sources, ...mixes.filter(({ id }) => sources.has(id)).flatMap((mix) => mix.papers)]);
  return papers.filter(({ id }) => used.has(id));
}

/** A typed length of a sheet's side, or null. */
export function readSide(text: string, { state }: Pick<Shown, 'state'>): Length | null {
  const reading = readLength(text, state.style.unit);
  return reading.ok && reading.length >= 1 && reading.length <= LARGEST ? reading.length : null;
}

function sizeFields(shown: Shown, paper: Paper, set: (change: Change) => void): readonly Child[] {
  const { state, acts } = shown;
  const side = (name: 'width' | 'height', label: string): Part => {
    const key = `${paper.id} ${name}`;
    const draft = state.drafts.get(key);
    const typed = (event: Event): void => {
      const text = (event.target as HTMLInputElement).value;
      const length = readSide(text, shown);
      acts.draft(key, length === null ? { text, wrong: true } : null);
      if (length !== null) set({ width: paper.width, height: paper.height, [name]: length });
    };
    return part(
      'label',
      { key: name },
      `${label} `,
      part('input', {
        class: 'side',
        '.value': draft?.text ?? fieldText(paper[name], state.style),
        'aria-invalid': draft?.wrong ? 'true' : null,
        onchange: typed,
      }),
    );
  };
  const wrong = ['width', 'height'].some((name) => state.drafts.get(`${paper.id} ${name}`)?.wrong);
  return [
    side('width', WORDS.width),
    side('height', WORDS.height),
    wrong ? part('p', { class: 'wrong', key: 'wrong' }, WORDS.lengthWrong(WORDS.lengthAllowed(state.style))) : null,
  ];
}

function paperRow(shown: Shown, paper: Paper): Part {
  const { state, acts } = shown;
  const { style, choices, document } = state;
  const { papers = [] } = choices;
  const own: Change = papers.find((each) => each.paper === paper.id) ?? {};
  const designed = document.papers.find(({ id }) => id === paper.id) ?? paper;
  const others = papers.filter((each) => each.paper !== paper.id);
  const set = (change: Change): void => acts.choose({ papers: [...others, { ...own, ...change, paper: paper.id }] });
  const unset = (): void => {
    const { width: _width, height: _height, ...rest } = own;
    acts.draft(`${paper.id} width`, null);
    acts.choose({ papers: [...others, { ...rest, paper: paper.id }] });
  };
  const sheets = usualSheets(style.unit);
  const usual = sheets.findIndex(({ width, height }) => width === paper.width && height === paper.height);
  const free = state.drafts.has(`${paper.id} free`);
  const resized = own.width !== undefined || own.height !== undefined;
  const value = free ? ANOTHER : !resized ? AS_DESIGNED : usual < 0 ? ANOTHER : String(usual);
  const picked = (event: Event): void => {
    const choice = (event.target as HTMLSelectElement).value;
    acts.draft(`${paper.id} free`, choice === ANOTHER ? { text: '', wrong: false } : null);
    const sheet = sheets[Number(choice)];
    if (choice === AS_DESIGNED) unset();
    else if (sheet) set({ width: sheet.width, height: sheet.height });
  };
  const took = (event: Event): void => {
    const field = event.target as HTMLInputElement;
    const file = field.files?.[0];
    if (file) acts.photograph(paper.id, file);
    field.value = '';
  };
  const options: readonly (readonly [string, string])[] = [
    [AS_DESIGNED, WORDS.asDesigned(formatSize(designed, style))],
    ...sheets.map((sheet, index) => [String(index), sheet.name] as const),
    [ANOTHER, WORDS.another],
  ];
  return part(
    'fieldset',
    { key: paper.id, class: 'paper' },
    part('legend', {}, apart(paper.name)),
    part(
      'label',
      { key: 'sheet' },
      `${WORDS.sheet} `,
      part(
        'select',
        { onchange: picked },
        options.map(([each, text]) => part('option', { value: each, '.selected': each === value }, text)),
      ),
    ),
    value === ANOTHER ? sizeFields(shown, paper, set) : [],
    countField(shown, {
      key: `${paper.id} sheets`,
      label: WORDS.sheets,
      value: paper.sheets ?? null,
      least: 0,
      most: MOST_SHEETS,
      mayBeEmpty: true,
      set: (sheets) => set({ sheets }),
    }),
    part(
      'label',
      { key: 'colour' },
      `${WORDS.colour} `,
      part('input', {
        type: 'color',
        '.value': paper.look.ground,
        onchange: (event: Event) => set({ ground: (event.target as HTMLInputElement).value }),
      }),
    ),
    part(
      'label',
      { key: 'photo', class: 'file' },
      `${state.photographed.has(paper.id) ? WORDS.photographTaken : WORDS.photograph} `,
      part('input', { type: 'file', accept: 'image/*', onchange: took }),
    ),
  );
}

/** What sheets the reader has, paper by paper. */
export function paperSection(shown: Shown): readonly Child[] {
  const scraps = new Set((shown.state.choices.scraps ?? []).map((_, index) => `readers-scrap-${index + 1}`));
  return [
    part('p', { class: 'quiet', key: 'hint' }, `${WORDS.paperHint} ${WORDS.photographHint}`),
    ...usedPapers(shown.state.sketch)
      .filter(({ id }) => !scraps.has(id))
      .map((paper) => paperRow(shown, paper)),
  ];
}
