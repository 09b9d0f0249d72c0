import { formatLength, formatSize, type Length, type LengthStyle, type Unit } from '@trimwell/geometry';
import { MESSAGES, type Messages } from './messages.js';
import { tied } from './wrap.js';

export const LANGUAGES = ['en', 'de'] as const;
/** The languages that a handout can be in, by BCP 47. */
export type Language = (typeof LANGUAGES)[number];

interface Size {
  readonly width: Length;
  readonly height: Length;
}

/** All that a sentence on a page is made with: one language, one unit. */
export interface Speech {
  readonly language: Language;
  readonly unit: Unit;
  readonly say: Messages;
  /** A length with its unit, which no line is broken in. */
  length(length: Length): string;
  /** `width × height` with the unit, which no line is broken in. */
  size(size: Size): string;
  /** The same without the unit, for a drawing. */
  bareSize(size: Size): string;
  list(parts: readonly string[]): string;
  /** A day written out; `day` is `YYYY-MM-DD`. */
  day(day: string): string;
  number(value: number): string;
  /** A country's name by its code (ISO 3166-1, two letters). */
  country(code: string): string;
}

const DAY = /^\d{4}-\d{2}-\d{2}$/;

function dayOf(day: string): Date {
  const date = new Date(`${day}T00:00:00Z`);
  // A day such as 30 February would otherwise become one in March.
  if (!DAY.test(day) || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== day)
    throw new RangeError(`date is ${JSON.stringify(day)}; allowed: a day as YYYY-MM-DD.`);
  return date;
}

/**
 * The speech of a handout. Millimetres have the language's decimal sign, inches are fractions in both languages unless
 * `form` says otherwise.
 */
export function speechIn(language: Language, unit: Unit, form: NonNullable<LengthStyle['form']> = 'fraction'): Speech {
  const style: LengthStyle = { unit, form };
  const say = MESSAGES[language];
  // Made once: making one takes longer than a page of what it is used for.
  const lists = new Intl.ListFormat(language, { type: 'conjunction' });
  const days = new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' });
  const countries = new Intl.DisplayNames(language, { type: 'region' });
  const numbers = new Intl.NumberFormat(language);
  const local = (text: string): string => {
    const decimal = language === 'de' ? text.replaceAll('.', ',') : text;
    return unit === 'in' ? decimal.replace(/ in$/, ` ${say.inch}`) : decimal;
  };
  return {
    language,
    unit,
    say,
    length: (length) => tied(local(formatLength(length, style))),
    size: (size) => tied(local(formatSize(size, style))),
    bareSize: (size) => local(formatSize(size, { ...style, bare: true })),
    list: (parts) => lists.format(parts),
    day: (day) => days.format(dayOf(day)),
    number: (value) => numbers.format(value).replace('-', '−'),
    country: (code) => countries.of(code) ?? code,
  };
}
