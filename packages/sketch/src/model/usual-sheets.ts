import { inches, type Length, millimetres, type Unit } from '@trimwell/geometry';

/** A size in which paper is sold. `unit` is the one that it is named in; `source` says where the size stands. */
export interface UsualSheet {
  readonly name: string;
  readonly width: Length;
  readonly height: Length;
  readonly unit: Unit;
  readonly source: string;
}

const TRADE = 'US customary common practice, no source';
const LETTER = 'ASME Y14.1, size A: 8.5 x 11 in';
const ISO = 'ISO 216';
const METRIC = 'trade size, 12 in rounded to whole millimetres, no source';

/** Sizes in which card makers' papers are usually sold, the most usual first in each unit. */
export const USUAL_SHEETS: readonly UsualSheet[] = [
  { name: '12 × 12 in', width: inches(12), height: inches(12), unit: 'in', source: TRADE },
  { name: 'Letter, 8 1/2 × 11 in', width: inches(8.5), height: inches(11), unit: 'in', source: LETTER },
  { name: '8 × 8 in', width: inches(8), height: inches(8), unit: 'in', source: TRADE },
  { name: '6 × 6 in', width: inches(6), height: inches(6), unit: 'in', source: TRADE },
  { name: 'A4, 210 × 297 mm', width: millimetres(210), height: millimetres(297), unit: 'mm', source: ISO },
  { name: '305 × 305 mm', width: millimetres(305), height: millimetres(305), unit: 'mm', source: METRIC },
  { name: 'A5, 148 × 210 mm', width: millimetres(148), height: millimetres(210), unit: 'mm', source: ISO },
  { name: 'A3, 297 × 420 mm', width: millimetres(297), height: millimetres(420), unit: 'mm', source: ISO },
];

/** The usual sheets, those named in `unit` first; otherwise in their order. */
export function usualSheets(unit: Unit): readonly UsualSheet[] {
  return [
    ...USUAL_SHEETS.filter((sheet) => sheet.unit === unit),
    ...USUAL_SHEETS.filter((sheet) => sheet.unit !== unit),
  ];
}

/** The usual sheet of exactly this size, upright or lying, or null. */
export function usualSheetOf({ width, height }: Pick<UsualSheet, 'width' | 'height'>): UsualSheet | null {
  const same = (sheet: UsualSheet): boolean =>
    (sheet.width === width && sheet.height === height) || (sheet.width === height && sheet.height === width);
  return USUAL_SHEETS.find(same) ?? null;
}
