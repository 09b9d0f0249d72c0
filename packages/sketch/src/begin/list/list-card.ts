import { flatCardBase, type Size, type Unit, writeLength } from '@trimwell/geometry';
import { type Fold, foldsOf } from '../card-sizes.js';
import type { BareUnit } from './list-columns.js';
import { readListSize } from './list-lengths.js';
import { type ListProblem, listProblem } from './list-problem.js';
import type { ListRow } from './list-row.js';

const FOLDS: readonly Fold[] = ['left', 'top', 'none'];

/** What is known of the card beside the list. */
export interface CardWish {
  readonly card?: string;
  readonly fold?: Fold;
}

export interface ListCard extends Size {
  readonly fold: Fold;
}

/** The fold with which a card opens to its blank; null when none does. */
function foldOf(card: Size, blank: Size): Fold | null {
  const opens = (fold: Fold): boolean => {
    const flat = flatCardBase({ ...card, fold });
    return flat.width === blank.width && flat.height === blank.height;
  };
  return FOLDS.find(opens) ?? null;
}

/**
 * The card of a list: as wished, else that of the row of the card base, whose opened size tells the fold; without either
 * the usual fold of a card of that size.
 */
export function listCard(
  wish: CardWish,
  base: ListRow | undefined,
  { bare, unit }: { readonly bare: BareUnit | null; readonly unit: Unit },
): ListCard | ListProblem {
  const usual = (card: Size): Fold => foldsOf(card, unit)[0] ?? 'none';
  if (wish.card !== undefined) {
    const reading = readListSize(wish.card, bare);
    if (!reading.ok)
      return listProblem(
        'not-a-size',
        { row: null, column: 'The size of the card' },
        wish.card,
        'a width and a height with their unit, such as 4 1/4 x 5 1/2 in or 105 x 148 mm',
      );
    const { size } = reading;
    return { ...size, fold: wish.fold ?? (base?.blank && foldOf(size, base.blank)) ?? usual(size) };
  }
  if (!base)
    return listProblem(
      'no-card',
      { row: null, column: 'The size of the card' },
      undefined,
      'a size beside the list, such as 4 1/4 x 5 1/2 in, or a row of the kind "card base"',
    );
  const size: Size = { width: base.width, height: base.height };
  if (!base.blank) return { ...size, fold: wish.fold ?? usual(size) };
  const fold = foldOf(size, base.blank);
  if (!fold)
    return listProblem(
      'no-fold',
      { row: base.row, column: 'blank width' },
      `${writeLength(base.blank.width, unit)} x ${writeLength(base.blank.height, unit)}`,
      'for a card base a blank of its own size, of twice its width, or of twice its height',
    );
  return { ...size, fold: wish.fold ?? fold };
}
