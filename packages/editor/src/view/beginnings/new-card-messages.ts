import { formatLength, type Length, type Size, type Unit } from '@trimwell/geometry';
import type { CardSize, Fold } from '@trimwell/sketch';

/** Every sentence of the tray of new cards. */

const FOLDS: Readonly<Record<Fold, string>> = { left: 'at the left', top: 'along the top', none: 'not at all' };

export function foldText(fold: Fold): string {
  return FOLDS[fold];
}

/** Two lengths as one figure: 4 1⁄4 × 5 1⁄2 in. */
export function sizeText({ width, height }: Size, unit: Unit): string {
  return `${formatLength(width, { unit, bare: true })} × ${formatLength(height, { unit })}`;
}

/** The same without its unit, which is named once above all of them. */
export function figureText({ width, height }: Size, unit: Unit): string {
  return `${formatLength(width, { unit, bare: true })} × ${formatLength(height, { unit, bare: true })}`;
}

/** What a size is, for those who cannot see it beside the others. */
export function sizeLabel({ name, unit, source }: CardSize, size: Size): string {
  return `${name}, ${sizeText(size, unit)}${source === 'common practice' ? '' : `, ${source}`}`;
}

/** Why a fold is not to be had: the base that would have to be cut. */
export function tooLongText(flat: Length, unit: Unit): string {
  return `opened, the base would be ${formatLength(flat, { unit })} long, more than a sheet has`;
}

/** The whole wish in one line. */
export function wishText(name: string, size: Size, unit: Unit, fold: Fold): string {
  const folded = fold === 'none' ? 'not folded' : `folded ${foldText(fold)}`;
  return `${name}, ${sizeText(size, unit)}, ${folded}`;
}

export const KEPT = 'The sketch that is on the table now stays on the shelf.';
