import { seeded } from '../bench/measure.mjs';
import { HOSTILE_TEXTS } from './hostile-words.js';

/** A code of choices that came in a link, and whether it may be taken. */
export interface HostileChoices {
  readonly name: string;
  readonly code: string;
  /** What a reader has to answer; null where either will do. */
  readonly ends: 'read' | 'refused' | null;
}

/** A code as FORMATS.md says it: `c`, then JSON in base64url. */
function codeOf(value: unknown): string {
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return `c${Buffer.from(text, 'utf8').toString('base64url')}`;
}

const FOR = { trimwellChoices: 1, sketch: 'fern-sampler' } as const;

/** What a piece is cut from instead, said in two words. */
function fromOf(words: string): { readonly piece: string; readonly from: string } {
  const [piece = '', from = ''] = words.split(' ');
  return { piece, from };
}

/** Choices that are no choices: values out of range, keys that are none, documents of another kind. */
const REFUSED: readonly unknown[] = [
  ...[null, 7, 'text', [], {}, true, { trimwellChoices: 2, sketch: 'a' }, { trimwellChoices: 1 }],
  ...[
    { ...FOR, sketch: '__proto__' },
    { ...FOR, sketch: 'A' },
    { ...FOR, sketch: 'x'.repeat(61) },
  ],
  ...[
    { ...FOR, unit: 'cm' },
    { ...FOR, form: 'words' },
    { ...FOR, more: 1 },
    { ...FOR, sketch: null },
  ],
  ...[0, -1, 501, 1e9, 1.5, '7', 'most', null].map((cards) => ({ ...FOR, cards })),
  ...[['<script>'], 'square', Array.from({ length: 61 }, () => 'square'), [7]].map((on) => ({ ...FOR, on })),
  ...[0, -1, 1.5, 1e12, 1e308, '8 in', null].map((width) => ({ ...FOR, papers: [{ paper: 'ivory', width }] })),
  ...[-1, 1000, 1.5, '7'].map((sheets) => ({ ...FOR, papers: [{ paper: 'ivory', sheets }] })),
  ...['red', 'url(#x)', '#FFFFFF', '#fff', '"><script>', 0].map((ground) => ({
    ...FOR,
    papers: [{ paper: 'ivory', ground }],
  })),
  ...['A B', 'url(#x)', '../x', ''].map((id) => ({ ...FOR, papers: [{ paper: id }] })),
  { ...FOR, scraps: Array.from({ length: 13 }, () => ({ name: 'a', like: 'ivory', width: 1, height: 1, sheets: 1 })) },
  { ...FOR, scraps: [{ name: '', like: 'ivory', width: 1, height: 1, sheets: 1 }] },
  { ...FOR, scraps: [{ name: 'x'.repeat(81), like: 'ivory', width: 1, height: 1, sheets: 1 }] },
  { ...FOR, from: [{ piece: 'panel', from: 'javascript:alert(1)' }] },
  ...[{}, [{ piece: 'panel' }], [{ from: 'ivory' }], [null], 'ivory'].map((from) => ({ ...FOR, from })),
  ...[{}, { ivory: {} }, [{}], [null]].map((papers) => ({ ...FOR, papers })),
  { ...FOR, papers: Array.from({ length: 81 }, () => ({ paper: 'ivory' })) },
  { ...FOR, from: Array.from({ length: 251 }, () => ({ piece: 'panel', from: 'ivory' })) },
];

const SCRAP = { name: 'Scrap', like: 'ivory', width: 100_000, height: 90_000, sheets: 2 } as const;

/** Choices that are sound by themselves and meant for another sketch, or for none: taken, and what does not fit is told of. */
const READ: readonly unknown[] = [
  FOR,
  { ...FOR, papers: [{ paper: 'constructor', width: 1 }, { paper: 'valueof' }, { paper: 'prototype' }] },
  { ...FOR, on: ['constructor', 'ready:square-corners', 'ready:nothing', 'square', 'square'] },
  { ...FOR, scraps: [{ ...SCRAP, like: 'constructor' }] },
  {
    ...FOR,
    scraps: [SCRAP],
    from: ['panel scrap:1', 'strip scrap:2', 'nothing scrap:1', 'card-base scrap:1'].map(fromOf),
  },
  { ...FOR, from: ['panel constructor', 'constructor ivory', 'panel ivory', 'panel dots'].map(fromOf) },
  { ...FOR, papers: [{ paper: 'ivory', width: 1, height: 1, sheets: 0 }], cards: 'as many as possible' },
  { ...FOR, papers: [1, 2].map(() => ({ paper: 'ivory', width: 1_280_000, height: 1, sheets: null })), cards: 500 },
  ...Object.values(HOSTILE_TEXTS).map((name) => ({ ...FOR, scraps: [{ ...SCRAP, name: name.slice(0, 80) }] })),
];

/** The codes; the same at each call. */
export function hostileChoices(): readonly HostileChoices[] {
  const pick = seeded(29);
  const sound = codeOf({ ...FOR, cards: 7, on: ['square'] });
  const random = (length: number): string =>
    Buffer.from(Uint8Array.from({ length }, () => pick(256))).toString('base64url');
  const plain = (name: string, code: string, ends: HostileChoices['ends'] = 'refused') => ({ name, code, ends });
  return [
    ...REFUSED.map((value, index) => plain(`no choices ${index}`, codeOf(value))),
    ...READ.map((value, index) => plain(`choices ${index}`, codeOf(value), 'read')),
    ...['', 'c', 'd', '%', 'c%3Cscript%3E', '<script>window.trimwellRan=1</script>', `d${sound.slice(1)}`].map((code) =>
      plain(`code ${JSON.stringify(code.slice(0, 30))}`, code),
    ),
    plain('longer than is looked at', `c${'A'.repeat(20_001)}`),
    plain('lists in lists', codeOf('['.repeat(7_000) + ']'.repeat(7_000))),
    plain('a prototype', codeOf('{"trimwellChoices":1,"sketch":"a","__proto__":{"polluted":1}}')),
    plain('no UTF-8', `c${Buffer.from([0xff, 0xfe, 0x7b, 0x7d]).toString('base64url')}`),
    ...Array.from({ length: 30 }, (_, index) => plain(`random ${index}`, `c${random(2 + pick(200))}`)),
    ...Array.from({ length: 20 }, (_, index) => plain(`cut ${index}`, sound.slice(0, 2 + pick(sound.length - 3)))),
  ];
}
