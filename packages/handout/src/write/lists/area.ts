import { TICKS_PER_INCH, TICKS_PER_MM, type Unit } from '@trimwell/geometry';

/** An area in square ticks: whole, and beyond what a floating number holds exactly for large batches. */
export type Area = bigint;

/** Square ticks in one hundredth of a square inch times a hundred, and in a square centimetre. */
const PER_UNIT: Readonly<Record<Unit, bigint>> = {
  in: BigInt(TICKS_PER_INCH) ** 2n,
  mm: BigInt(TICKS_PER_MM * 10) ** 2n,
};

/** What areas are said in: square inches, or square centimetres in a metric sketch. */
export const AREA_UNITS = { in: 'in²', mm: 'cm²' } as const satisfies Readonly<Record<Unit, string>>;

/** The area of `count` rectangles. */
export function areaOf({ width, height }: { readonly width: number; readonly height: number }, count: number): Area {
  return BigInt(width) * BigInt(height) * BigInt(count);
}

function decimalText(area: Area, unit: Unit, places: number): { readonly text: string; readonly exact: boolean } {
  const scale = 10n ** BigInt(places);
  const per = PER_UNIT[unit];
  const rounded = (2n * area * scale + per) / (2n * per);
  const digits = String(rounded).padStart(places + 1, '0');
  const text = `${digits.slice(0, -places)}.${digits.slice(-places)}`.replace(/\.?0+$/, '');
  return { text, exact: rounded * per === area * scale };
}

/** An area for people, to a hundredth; behind `≈` when that is not exact. */
export function areaText(area: Area, unit: Unit): string {
  const { text, exact } = decimalText(area, unit, 2);
  return `${exact ? '' : '≈ '}${text} ${AREA_UNITS[unit]}`;
}

/** An area for programs: in² (cm² in a metric sketch), to the nearest millionth. */
export function areaNumber(area: Area, unit: Unit): number {
  return Number(decimalText(area, unit, 6).text);
}
