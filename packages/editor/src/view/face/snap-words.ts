import type { Unit } from '@trimwell/geometry';
import type { SnapMark } from '../../state/snap.js';
import { said, unitName } from './said-length.js';

function named(mark: SnapMark): string {
  return mark.piece ?? 'the card';
}

/** What one mark says, but for reveals, which are said together. */
function words(mark: SnapMark, unit: Unit): string | null {
  switch (mark.kind) {
    case 'edge':
      return `lines up with ${mark.piece ?? 'the edge of the card'}`;
    case 'centre':
      return `in the middle of ${named(mark)}, ${mark.axis === 'x' ? 'across' : 'up and down'}`;
    case 'gap':
      return mark.length === undefined ? null : `equal gaps of ${said(mark.length, unit)} ${unitName(unit)}`;
    default:
      return null;
  }
}

/** The reveals among `marks`: on how many sides the most frequent one shows. */
function revealWords(marks: readonly SnapMark[], unit: Unit): string | null {
  const lengths = marks.flatMap(({ kind, length }) =>
    kind === 'reveal' && length !== undefined && length > 0 ? [length] : [],
  );
  const count = (length: number): number => lengths.filter((other) => other === length).length;
  const [best] = lengths.toSorted((a, b) => count(b) - count(a) || a - b);
  if (best === undefined) return null;
  const sides = count(best);
  const where = sides >= 4 ? ' all round' : sides === 3 ? ' on three sides' : sides === 2 ? ' on two sides' : '';
  return `${said(best, unit)} ${unit === 'in' ? 'inch' : 'millimetre'} reveal${where}`;
}

/** What a piece has come to rest on, in words: `lines up with Print panel, 1/8 inch reveal all round`; empty for nothing. */
export function snapWords(marks: readonly SnapMark[], unit: Unit): string {
  const all = [...marks.map((mark) => words(mark, unit)), revealWords(marks, unit)];
  return [...new Set(all.filter((text) => text !== null))].join(', ');
}
