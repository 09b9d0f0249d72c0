import { inches, millimetres, type Size, ticks, type Unit } from '@trimwell/geometry';
import type { Paper } from '../../model/sketch.js';
import { baseSheet, type Fold } from '../card-sizes.js';
import { plainId } from './plain-id.js';

/** Grounds for papers of which a list knows only the name; the first is that of the card base, the others take turns. */
const BASE_GROUND = '#f3ead8';
const GROUNDS = [
  '#4f6f52',
  '#dcaa4c',
  '#75628c',
  '#d99b93',
  '#2f5d66',
  '#a9622f',
  '#a3bcc4',
  '#5b3350',
  '#fbf8f0',
  '#b6483a',
  '#46555c',
] as const;

/** A paper of a list before it has a sheet. */
export interface PaperWish {
  readonly name: string;
  /** Sizes of all that is cut from it. */
  readonly blanks: readonly Size[];
  readonly base: boolean;
}

function fits(sheet: Size, { width, height }: Size): boolean {
  return (width <= sheet.width && height <= sheet.height) || (height <= sheet.width && width <= sheet.height);
}

/**
 * Papers for the names in a list: plain cardstock on sheets of 12 x 12 in (305 mm), that of the base on the smallest usual
 * sheet that holds the opened base and all else that is cut from it.
 */
export function listPapers(
  wishes: readonly PaperWish[],
  card: Size & { readonly fold: Fold },
  unit: Unit,
): readonly Paper[] {
  const side = unit === 'in' ? inches(12) : millimetres(305);
  const large: Size = { width: side, height: side };
  const none = ticks(0);
  const taken = new Set<string>();
  let turn = 0;
  return wishes.map(({ name, blanks, base }): Paper => {
    const usual = base ? baseSheet(card, unit) : null;
    const { width, height } = usual && blanks.every((blank) => fits(usual, blank)) ? usual : large;
    const ground = base ? BASE_GROUND : (GROUNDS[turn % GROUNDS.length] ?? BASE_GROUND);
    if (!base) turn += 1;
    return {
      id: plainId(name, 'paper', taken),
      name,
      kind: 'cardstock',
      width,
      height,
      directional: false,
      doubleSided: false,
      margins: { top: none, right: none, bottom: none, left: none },
      look: { pattern: 'plain', ground, inks: [], repeat: unit === 'in' ? inches(1 / 2) : millimetres(12) },
    };
  });
}
