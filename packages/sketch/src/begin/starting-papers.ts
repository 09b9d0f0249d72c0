import { inches, millimetres, type Size, ticks, type Unit } from '@trimwell/geometry';
import type { Look, Paper } from '../model/sketch.js';
import { refuseBeginning } from './begin-error.js';
import { baseSheet, baseSheets, type Fold } from './card-sizes.js';

interface PaperIdea {
  readonly name: string;
  readonly kind: Paper['kind'];
  readonly gsm: number;
  readonly pattern: Look['pattern'];
  readonly ground: string;
  readonly inks: readonly string[];
  /** One repeat of the print, in sixteenths of an inch, or about as many times 1.5 mm. */
  readonly repeat: number;
}

function card(name: string, ground: string, gsm = 216): PaperIdea {
  return { name, kind: 'cardstock', gsm, pattern: 'plain', ground, inks: [], repeat: 8 };
}

function print(
  name: string,
  pattern: Look['pattern'],
  ground: string,
  inks: readonly string[],
  repeat: number,
): PaperIdea {
  return { name, kind: 'patterned paper', gsm: 150, pattern, ground, inks, repeat };
}

/** The papers of the Fernhollow paper club that new cards begin with: names and prints are our own. */
const IDEAS = {
  oat: card('Oat card', '#f3ead8', 270),
  chalk: card('Chalk card', '#fbf8f0', 270),
  cream: card('Clotted cream card', '#fffaf0'),
  fern: card('Fern card', '#4f6f52'),
  bracken: card('Bracken card', '#a9622f'),
  heather: card('Heather card', '#75628c'),
  slate: card('Slate card', '#46555c'),
  damson: card('Damson card', '#5b3350'),
  'dog-rose': card('Dog rose card', '#d99b93'),
  honey: card('Honey card', '#dcaa4c'),
  rain: card('Rain card', '#a3bcc4'),
  millpond: card('Millpond card', '#2f5d66'),
  poppy: card('Poppy card', '#b6483a'),
  fronds: print('Fern fronds', 'sprig', '#eef1e2', ['#5c7f58', '#c07a3e'], 14),
  'lane-stripe': print('Lane stripe', 'stripe', '#f4efe3', ['#7f9a78', '#c58a58'], 6),
  picnic: print('Picnic gingham', 'gingham', '#fdf8ee', ['#c9665a'], 6),
  'elder-beads': print('Elder beads', 'dot', '#f7ebe4', ['#b05a63', '#dcaa4c'], 7),
  'moor-plaid': print('Moor plaid', 'plaid', '#e9e4ea', ['#8f7fa6', '#46555c', '#dcaa4c'], 16),
  'lantern-stars': print('Lantern stars', 'star', '#2b4454', ['#ecd08a', '#8fb0bb'], 12),
  'hill-post': print('Hill post', 'lettering', '#f6efe0', ['#7a6a55', '#b39a72'], 14),
  'rain-stripe': print('Rain stripe', 'stripe', '#edf2f1', ['#5f8b93', '#a3bcc4'], 6),
  'rose-hedge': print('Rose hedge', 'sprig', '#fbf0ea', ['#8a9a6a', '#c9665a'], 14),
  'pond-dots': print('Pond dots', 'dot', '#e3edee', ['#2f5d66', '#7fa3aa'], 7),
  'honey-check': print('Honey check', 'gingham', '#fff9ea', ['#dcaa4c'], 6),
} satisfies Record<string, PaperIdea>;

export type StartingPaper = keyof typeof IDEAS;

/** A print that has an up must not be turned when it is cut. */
const DIRECTIONAL: ReadonlySet<Look['pattern']> = new Set(['sprig', 'lettering']);

function paperOf(id: StartingPaper, sheet: Size, unit: Unit): Paper {
  const { name, kind, gsm, pattern, ground, inks, repeat } = IDEAS[id];
  const none = ticks(0);
  return {
    id,
    name,
    kind,
    width: sheet.width,
    height: sheet.height,
    directional: DIRECTIONAL.has(pattern),
    doubleSided: false,
    margins: { top: none, right: none, bottom: none, left: none },
    gsm,
    look: { pattern, ground, inks, repeat: unit === 'in' ? inches(repeat / 16) : millimetres(repeat * 1.5) },
  };
}

/**
 * The papers that a new card begins with, its base first: the base on the smallest sheet that it opens on, cardstock on
 * 12 x 12 in (metric: A4, or 305 mm for cards that A4 is too small for), prints on 12 x 12 in (305 mm).
 * @throws BeginError when the opened base fits on no sheet.
 */
export function startingPapers(
  base: StartingPaper,
  others: readonly StartingPaper[],
  size: Size & { readonly fold: Fold },
  unit: Unit,
): readonly Paper[] {
  const sheet = baseSheet(size, unit);
  if (!sheet)
    return refuseBeginning(
      'fold',
      size.fold,
      'a fold with which the opened card fits on a sheet of 12 x 12 in (305 mm)',
    );
  const large = baseSheets(unit).at(-1) ?? sheet;
  const plain = unit === 'in' ? large : (baseSheet({ ...size, fold: 'none' }, unit) ?? large);
  return [
    paperOf(base, sheet, unit),
    ...others.map((id) => paperOf(id, IDEAS[id].kind === 'cardstock' ? plain : large, unit)),
  ];
}
