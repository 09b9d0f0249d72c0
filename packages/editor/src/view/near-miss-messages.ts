import { formatLength, type Length } from '@trimwell/geometry';
import { counted, type NearMiss, realSheets, type Sketch } from '@trimwell/sketch';
import type { Offer } from '../session/trial.js';

const pieceName = (sketch: Sketch, id: string): string => sketch.pieces.find((piece) => piece.id === id)?.name ?? id;
const paperName = (sketch: Sketch, id: string): string => sketch.papers.find((paper) => paper.id === id)?.name ?? id;

/** What changes: `Make Gingham strip 2 in high instead of 2 1/8 in; its mat follows`. */
export function missChange({ sketch }: Offer, miss: NearMiss): string {
  // A length is not broken between its whole inches and its fraction.
  const written = (length: Length): string => formatLength(length, { unit: sketch.unit }).replaceAll(' ', '\u00a0');
  const [side, word] =
    miss.change.width > 0
      ? (['width', miss.change.height > 0 ? 'across' : 'wide'] as const)
      : (['height', 'high'] as const);
  const follow = ['', '; its mat follows', '; its mats follow'][Math.min(2, miss.mats.length)];
  return `Make ${pieceName(sketch, miss.piece)} ${written(miss.to[side])} ${word} instead of ${written(miss.from[side])}${follow}`;
}

/** What that gives: `2 sheets of Moss card instead of 3`, or `12 cards instead of 10`. */
export function missGain({ sketch, found, batch }: Offer, { adds, saves }: NearMiss): string {
  if (adds > 0) return `${counted((found.cards ?? 0) + adds, 'card')} instead of ${found.cards ?? 0}`;
  return saves
    .map(({ paper, sheets }) => {
      const name = paperName(sketch, paper);
      const shown = batch?.papers.find((each) => each.paper === paper)?.plan;
      if (!shown) return `${counted(sheets, 'sheet')} of ${name} fewer`;
      const before = realSheets(shown);
      return `${counted(before - sheets, 'sheet')} of ${name} instead of ${before}`;
    })
    .join(' and ');
}

/**
 * The near misses that hold against the plan that is shown. Near misses count sheets, and a plan that counts money may
 * come out at another number of them: what is saved from that number is not said then.
 */
export function offeredMisses({ found, batch }: Offer): readonly NearMiss[] {
  return found.misses.filter(({ adds }) => adds > 0 || (batch?.cards === found.cards && batch.sheets === found.sheets));
}

export const NOT_PROVEN = 'Whether it can be had without the change is not known.';
