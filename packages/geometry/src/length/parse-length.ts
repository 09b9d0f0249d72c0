import { type Length, TICKS_PER_INCH, TICKS_PER_MM, ticks, type Unit } from './length.js';

/** What `readLength` found: the length and whether it had to be rounded to a whole tick, or what was wrong. */
export type LengthReading =
  | { readonly ok: true; readonly length: Length; readonly rounded: boolean }
  | { readonly ok: false; readonly allowed: string };

/** Thrown by `parseLength`; `text` is what was found, `allowed` says what would be read. */
export class LengthError extends RangeError {
  override readonly name = 'LengthError';
  constructor(
    readonly text: string,
    readonly allowed: string,
  ) {
    super(`Cannot read ${JSON.stringify(text)} as a length; allowed: ${allowed}.`);
  }
}

/** Longest text that is looked at. */
const LONGEST_TEXT = 40;
/** Largest length that is accepted, in ticks: 100 m, far beyond any sheet. */
export const LARGEST_LENGTH = 100_000 * TICKS_PER_MM;

const ALLOWED = 'a length such as 4 1/4 in, 4.25in, 4¼, 108 mm or 10.8 cm, up to 100 m';

/** The vulgar fractions of Unicode that stand on an inch ruler or in a recipe. */
export const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}; // prettier-ignore

/** The unit that each spelling names. */
export const UNIT_NAMES: Readonly<Record<string, Unit | 'cm'>> = {
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '″': 'in',
  '”': 'in',
  mm: 'mm',
  cm: 'cm',
};

const PATTERN =
  /^([+\-−]?) *(?:(\d+)(?: +|-(?=\d)|$|(?=[^\d/. -]))|(?=\d))?(?:(\d+)\/(\d+)|(\d*\.\d+|\d+\.?))? *([a-z"″”]*)$/;

/** An exact rational, as big integers so that no digit a person types is lost on the way to ticks. */
interface Rational {
  readonly top: bigint;
  readonly bottom: bigint;
}

function decimal(text: string): Rational {
  const [whole = '', part = ''] = text.split('.');
  return { top: BigInt(whole + part || '0'), bottom: 10n ** BigInt(part.length) };
}

function add(a: Rational, b: Rational): Rational {
  return { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom };
}

/**
 * Reads one length. Digits are multiplied straight into ticks in exact rational arithmetic, never through the other
 * unit; what is no whole number of ticks goes to the nearest one, a half away from zero, and `rounded` says so.
 * A bare number takes `unit`. Signs, `4 1/4`, `4-1/4"`, `4¼`, `.5`, `10.8 cm` and a decimal comma (`10,8 cm`) are read.
 */
export function readLength(text: string, unit: Unit): LengthReading {
  const refused: LengthReading = { ok: false, allowed: ALLOWED };
  if (text.length > LONGEST_TEXT) return refused;
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR_FRACTIONS[sign] ?? ''} `)
    .replaceAll('⁄', '/')
    .replaceAll('\u00a0', ' ')
    .replace(/(\d),(\d)/, '$1.$2')
    .replace(/\s+/g, ' ')
    .trim();
  const found = PATTERN.exec(plain);
  if (!found) return refused;
  const [, sign = '', whole, top, bottom, part, suffix = ''] = found;
  if (whole === undefined && top === undefined && part === undefined) return refused;
  if (whole !== undefined && part !== undefined) return refused;
  const named = suffix === '' ? unit : UNIT_NAMES[suffix];
  if (!named) return refused;
  let value: Rational = part === undefined ? decimal(whole ?? '0') : decimal(part);
  if (top !== undefined && bottom !== undefined) {
    if (/^0+$/.test(bottom)) return refused;
    value = add(value, { top: BigInt(top), bottom: BigInt(bottom) });
  }
  const perUnit = named === 'in' ? TICKS_PER_INCH : named === 'cm' ? TICKS_PER_MM * 10 : TICKS_PER_MM;
  const scaled = value.top * BigInt(perUnit);
  const nearest = (2n * scaled + value.bottom) / (2n * value.bottom);
  if (nearest > BigInt(LARGEST_LENGTH)) return refused;
  const length = ticks(sign === '' || sign === '+' ? Number(nearest) : -Number(nearest));
  return { ok: true, length, rounded: nearest * value.bottom !== scaled };
}

/**
 * `readLength` for those who want the length or an exception.
 * @throws LengthError when `text` is no length.
 */
export function parseLength(text: string, unit: Unit): Length {
  const reading = readLength(text, unit);
  if (!reading.ok) throw new LengthError(text, reading.allowed);
  return reading.length;
}
