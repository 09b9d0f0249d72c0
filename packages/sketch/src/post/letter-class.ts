import type { Size } from '@trimwell/geometry';
import type { LetterClass, PostCountry } from './letter-limits.js';

/** Something to be posted. Its longer side counts as its length, along which the address is written. */
export interface PostItem extends Size {
  /** At its thickest spot, in ticks. */
  readonly thickness: number;
  /** In grams. */
  readonly weight: number;
  /** True when one place is thicker than another by more than paper, as foam under a piece makes it. */
  readonly uneven: boolean;
}

/** Why something does not belong to a class. */
export type LetterReason =
  | 'too-short'
  | 'too-low'
  | 'too-thin'
  | 'too-light'
  | 'too-long'
  | 'too-high'
  | 'too-thick'
  | 'too-heavy'
  | 'proportion';

export type SurchargeReason = LetterClass['surcharges'][number]['when'];

/** The cheapest class that takes an item, or null when none does, and why it is not a cheaper one. */
export interface LetterAnswer {
  readonly country: PostCountry;
  readonly class: LetterClass | null;
  /** What costs more within that class. */
  readonly surcharges: readonly SurchargeReason[];
  readonly refused: readonly { readonly class: LetterClass; readonly reasons: readonly LetterReason[] }[];
}

function sidesOf({ width, height }: Size): readonly [long: number, short: number] {
  return width >= height ? [width, height] : [height, width];
}

/** Every reason why `item` does not belong to `letterClass`; empty when it does. */
export function letterReasons(item: PostItem, letterClass: LetterClass): readonly LetterReason[] {
  const { least, most, lighterThan, proportion } = letterClass;
  const [length, height] = sidesOf(item);
  const ratio = length / height;
  const { thickness, weight } = item;
  const wrong: readonly (readonly [LetterReason, boolean])[] = [
    ['too-short', length < (least.length ?? 0)],
    ['too-low', height < (least.height ?? 0)],
    ['too-thin', thickness < (least.thickness ?? 0)],
    ['too-light', weight < (least.weight ?? 0)],
    ['too-long', length > (most.length ?? Infinity)],
    ['too-high', height > (most.height ?? Infinity)],
    ['too-thick', thickness > (most.thickness ?? Infinity)],
    ['too-heavy', weight > (most.weight ?? Infinity) || weight >= (lighterThan ?? Infinity)],
    ['proportion', ratio < (proportion?.least ?? 0) || ratio <= (proportion?.above ?? 0)],
  ];
  return wrong.flatMap(([reason, so]) => (so ? [reason] : []));
}

function costsMore(item: PostItem, each: LetterClass['surcharges'][number]): boolean {
  const [length, height] = sidesOf(item);
  switch (each.when) {
    case 'proportion':
      return length / height < each.least || length / height > each.most;
    case 'thin':
      return item.thickness < each.below && (length > each.longerThan || height > each.higherThan);
    case 'uneven':
      return item.uneven;
  }
}

function surchargesOf(item: PostItem, { surcharges }: LetterClass): readonly SurchargeReason[] {
  return surcharges.filter((each) => costsMore(item, each)).map(({ when }) => when);
}

/** The first class of `country` that takes `item`; classes stand cheapest first. */
export function letterClassOf(item: PostItem, country: PostCountry): LetterAnswer {
  const refused: { readonly class: LetterClass; readonly reasons: readonly LetterReason[] }[] = [];
  for (const each of country.classes) {
    const reasons = letterReasons(item, each);
    if (reasons.length === 0) return { country, class: each, surcharges: surchargesOf(item, each), refused };
    refused.push({ class: each, reasons });
  }
  return { country, class: null, surcharges: [], refused };
}
