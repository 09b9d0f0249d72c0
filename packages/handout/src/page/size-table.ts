import { flatCardBase } from '@trimwell/geometry';
import { CARD_BASE, type Piece, pieceBlank } from '@trimwell/sketch';
import type { Atom, AtomGroup } from './atom.js';
import { type HandoutContext, sourceName } from './context.js';
import { cornersText, punchedEdges, shapeText } from './piece-words.js';
import { POINT } from './sheet-of-paper.js';
import { type Cell, headingAtom, rowAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

interface Row {
  readonly letter: string;
  readonly name: string;
  readonly size: string;
  readonly paper: string;
  readonly count: string;
  readonly notes: readonly string[];
}

/** What has to be done to a piece beside cutting it, and how it lies. */
function notesOf(context: HandoutContext, piece: Piece): readonly string[] {
  const { sketch, speech } = context;
  const { say } = speech;
  const blank = pieceBlank(sketch, piece);
  const larger = blank.width !== piece.width || blank.height !== piece.height;
  return [
    shapeText(piece, speech),
    larger ? say.cutTo(speech.size(blank)) : '',
    ...punchedEdges(sketch, piece).map(({ punch, edges }) =>
      say.punchedWith(speech.list(edges.map((edge) => say.edge[edge])), punch),
    ),
    cornersText(piece.corners, speech),
    piece.raise > 0 ? say.raisedBy(speech.length(piece.raise)) : '',
    piece.tilt === 0 ? '' : say.tilted(speech.number(piece.tilt)),
  ].filter((note) => note !== '');
}

function baseRow(context: HandoutContext): Row {
  const { sketch, speech, labels } = context;
  const { card } = sketch;
  const flat = flatCardBase(card);
  const scored =
    card.fold === 'none' ? [] : [speech.say.scoredTo(speech.length(foldAt(card)), card.fold, speech.size(card))];
  return {
    letter: labels.get(CARD_BASE) ?? 'A',
    name: speech.say.cardBase,
    size: speech.size(flat),
    paper: sourceName(context, card.base),
    count: '1',
    notes: scored,
  };
}

/** Where the card base is scored, from the edge that its fold is named after. */
export function foldAt(card: HandoutContext['sketch']['card']) {
  return card.fold === 'top' ? card.height : card.width;
}

function rowsOf(context: HandoutContext): readonly Row[] {
  const { sketch, speech, labels } = context;
  const pieces = sketch.pieces.map(
    (piece): Row => ({
      letter: labels.get(piece.id) ?? '?',
      name: piece.name,
      size: speech.size(piece),
      paper: sourceName(context, piece.from),
      count: String(piece.perCard),
      notes: notesOf(context, piece),
    }),
  );
  return [baseRow(context), ...pieces];
}

/** Shares of the width: letter, piece, size, paper, how many. */
const SHARES = [0.085, 0.295, 0.25, 0.27, 0.1] as const;

/** The sizes of all pieces of one card as a table: each letter has one row, and its size stands there once. */
export function sizeTable(context: HandoutContext, width: number): readonly Atom[] {
  const { say } = context.speech;
  const { measure } = context;
  const gap = 5 * POINT;
  const at = (index: number): { x: number; width: number } => {
    const x = SHARES.slice(0, index).reduce((sum, share) => sum + share, 0) * width;
    return {
      x: Math.round(x),
      width: Math.round((SHARES[index] ?? 0) * width - (index === SHARES.length - 1 ? 0 : gap)),
    };
  };
  // The letter heads its row as the words above head their columns.
  const cells = (texts: readonly (readonly Cell['words'][number][])[], tag: 'TH' | 'TD'): readonly Cell[] =>
    texts.map((words, index) => ({
      ...at(index),
      words,
      tag: index === 0 ? 'TH' : tag,
      ...(index === SHARES.length - 1 ? { align: 'end' as const } : {}),
    }));
  const noted = (notes: readonly string[]): Cell => {
    const { x } = at(1);
    return { x, width: width - x, words: [{ text: notes.join('; '), style: STYLES.small }], tag: 'TD' };
  };
  const { columns } = say;
  const head = rowAtom(
    cells(
      [columns.letter, columns.piece, columns.size, columns.paper, columns.count].map((text) => [
        { text, style: STYLES.head },
      ]),
      'TH',
    ),
    measure,
    { tag: 'TR', rule: width },
  );
  const group: AtomGroup = { tag: 'Table', head };
  const rows = rowsOf(context).map(({ letter, name, size, paper, count, notes }) =>
    rowAtom(
      cells(
        [
          [{ text: letter, style: STYLES.strong }],
          [{ text: name, style: STYLES.body }],
          [{ text: size, style: STYLES.strong }],
          [{ text: paper, style: STYLES.body }],
          [{ text: count, style: STYLES.body }],
        ],
        'TD',
      ),
      measure,
      { tag: 'TR', rule: width, group, ...(notes.length > 0 ? { below: noted(notes) } : {}) },
    ),
  );
  return [headingAtom(say.heads.sizes, 2, width, measure, { mark: { title: say.heads.sizes, level: 2 } }), ...rows];
}
