import { asLength, type ExactValue, type Fraction, fraction, plus, SumError, through, times } from './exact-value.js';
import { type Length, TICKS_PER_INCH, TICKS_PER_MM, ticks, type Unit } from './length.js';
import { LARGEST_LENGTH, readLength, UNIT_NAMES, VULGAR_FRACTIONS } from './parse-length.js';

/** What `readSum` found: the length, whether it had to be rounded to a whole tick, and whether anything was reckoned. */
export type SumReading =
  | { readonly ok: true; readonly length: Length; readonly rounded: boolean; readonly sum: boolean }
  | { readonly ok: false; readonly problem: string };

/** Longest text that is looked at, and how deep parentheses and signs may be nested. */
export const LONGEST_SUM = 120;
const DEEPEST = 12;

const EXAMPLES = '4 1/4 in, 108 mm or 5 1/4 - 2*1/8';
const TICKS_PER: Readonly<Record<Unit | 'cm', number>> = {
  in: TICKS_PER_INCH,
  mm: TICKS_PER_MM,
  cm: TICKS_PER_MM * 10,
};

type Token =
  | { readonly kind: 'number'; readonly text: string; readonly value: Fraction }
  | { readonly kind: 'unit'; readonly text: string; readonly perUnit: bigint }
  | { readonly kind: 'sign'; readonly text: '+' | '-' | '*' | '/' | '(' | ')' };

/** A mixed number (4 1/4, and 4-1/4 without any space), a fraction, a decimal or a whole number, at the start of a text. */
const NUMBER = /^(?:(\d+)(?: +|-)(\d+)\/(\d+)(?![\d.])|(\d+)\/(\d+)(?![\d.])|(\d*\.\d+|\d+\.?))/;
const UNIT = /^(inches|inch|in|mm|cm|"|″|”)(?![a-z])/;

/** One spelling for each thing: signs, spaces, vulgar fractions, decimal commas. */
function plainText(text: string): string {
  return text
    .toLowerCase()
    .replace(/(\d?)([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])(\d?)/g, (_all, before: string, sign: string, after: string) => {
      const written = VULGAR_FRACTIONS[sign] ?? '';
      return `${before}${before === '' ? '' : ' '}${written}${after === '' ? '' : ' '}${after}`;
    })
    .replaceAll('⁄', '/')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\s+/g, ' ')
    .replace(/[−–]/g, ' - ')
    .replace(/[×·∙]/g, '*')
    .replace(/[÷:]/g, '/')
    .trim();
}

function decimal(text: string): Fraction {
  const [whole = '', part = ''] = text.split('.');
  return fraction(BigInt(whole + part || '0'), 10n ** BigInt(part.length));
}

function numberAt(text: string): Token | null {
  const found = NUMBER.exec(text);
  if (!found) return null;
  const [all, whole = '0', mixedTop, mixedBottom, top, bottom, plain] = found;
  if (plain !== undefined) return { kind: 'number', text: all, value: decimal(plain) };
  const below = BigInt(mixedBottom ?? bottom ?? '1');
  return { kind: 'number', text: all, value: fraction(BigInt(whole) * below + BigInt(mixedTop ?? top ?? '0'), below) };
}

function tokenAt(text: string): Token {
  const number = numberAt(text);
  if (number) return number;
  const unit = UNIT.exec(text)?.[1];
  const named = unit === undefined ? undefined : UNIT_NAMES[unit];
  if (unit !== undefined && named) return { kind: 'unit', text: unit, perUnit: BigInt(TICKS_PER[named]) };
  const sign = (['+', '-', '*', '/', '(', ')'] as const).find((known) => text.startsWith(known));
  if (sign) return { kind: 'sign', text: sign };
  const word = /^[^\d\s+\-*/()]+/.exec(text)?.[0] ?? text.slice(0, 1);
  throw new SumError(`${JSON.stringify(word)} is no number, no unit and no sign. Such as ${EXAMPLES}.`);
}

function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  for (let rest = text; rest !== ''; ) {
    const token = tokenAt(rest);
    tokens.push(token);
    rest = rest.slice(token.text.length).trimStart();
  }
  return tokens;
}

/** Reads the tokens of one sum from left to right; see `readSum` for the grammar. */
class SumReader {
  #at = 0;
  constructor(
    private readonly tokens: readonly Token[],
    private readonly perUnit: bigint,
  ) {}

  whole(): Fraction {
    const value = this.#sum(0);
    const over = this.tokens[this.#at];
    if (over?.text === ')') throw new SumError('A ")" has no "(" before it.');
    if (over) throw new SumError(`A sign is missing before ${JSON.stringify(over.text)}.`);
    return asLength(value, this.perUnit);
  }

  #takes(...signs: readonly string[]): string | null {
    const token = this.tokens[this.#at];
    if (token?.kind !== 'sign' || !signs.includes(token.text)) return null;
    this.#at += 1;
    return token.text;
  }

  #sum(depth: number): ExactValue {
    let value = this.#term(depth);
    for (let sign = this.#takes('+', '-'); sign; sign = this.#takes('+', '-'))
      value = plus(value, this.#term(depth), sign === '+' ? 1n : -1n, this.perUnit);
    return value;
  }

  #term(depth: number): ExactValue {
    let value = this.#factor(depth);
    for (let sign = this.#takes('*', '/'); sign; sign = this.#takes('*', '/')) {
      const next = this.#factor(depth);
      value = sign === '*' ? times(value, next) : through(value, next);
    }
    return value;
  }

  #factor(depth: number): ExactValue {
    if (depth > DEEPEST) throw new SumError(`Parentheses and signs can be ${DEEPEST} deep.`);
    const sign = this.#takes('+', '-');
    if (sign) {
      const { kind, value } = this.#factor(depth + 1);
      return { kind, value: sign === '-' ? { ...value, top: -value.top } : value };
    }
    if (this.#takes('(')) {
      const inner = this.#sum(depth + 1);
      if (!this.#takes(')')) throw new SumError('A ")" is missing.');
      return this.#withUnit(inner);
    }
    const token = this.tokens[this.#at];
    if (token?.kind !== 'number') {
      const where = token ? `before ${JSON.stringify(token.text)}` : 'at the end';
      throw new SumError(`A length is missing ${where}. Such as ${EXAMPLES}.`);
    }
    this.#at += 1;
    return this.#withUnit({ kind: 'number', value: token.value });
  }

  #withUnit(before: ExactValue): ExactValue {
    const token = this.tokens[this.#at];
    if (token?.kind !== 'unit') return before;
    if (before.kind !== 'number') throw new SumError(`What stands before ${JSON.stringify(token.text)} has a unit.`);
    this.#at += 1;
    return { kind: 'length', value: fraction(before.value.top * token.perUnit, before.value.bottom) };
  }
}

/** The whole number nearest to `value`, a half away from zero. */
function nearestWhole({ top, bottom }: Fraction): bigint {
  const size = top < 0n ? -top : top;
  const nearest = (2n * size + bottom) / (2n * bottom);
  return top < 0n ? -nearest : nearest;
}

function reckoned(text: string, unit: Unit): SumReading {
  const exact = new SumReader(tokensOf(text), BigInt(TICKS_PER[unit])).whole();
  const nearest = nearestWhole(exact);
  if (nearest > BigInt(LARGEST_LENGTH) || nearest < -BigInt(LARGEST_LENGTH))
    throw new SumError('That is more than 100 m.');
  return { ok: true, length: ticks(Number(nearest)), rounded: nearest * exact.bottom !== exact.top, sum: true };
}

/**
 * Reads what a person types for a length: all that `readLength` reads, and little sums of it.
 *
 *     sum    = term { ("+" | "-") term }
 *     term   = factor { ("*" | "/") factor }
 *     factor = ("-" | "+") factor | "(" sum ")" [unit] | number [unit]
 *     number = whole " " fraction | whole "-" fraction | fraction | decimal       fraction = digits "/" digits
 *     unit   = in | inch | inches | " | mm | cm
 *
 * A hyphen with no space on either side joins a whole number and a fraction, as `readLength` has it: `4-1/4` is four and
 * a quarter, while `4 - 1/4`, `4 -1/4` and `4" - 1/4"` are three and three quarters. A real minus sign (−) always takes
 * away. A fraction has no spaces; `1 / 2` divides. × · ÷ : and vulgar fractions are read too.
 *
 * Lengths are added to lengths, and multiplied or divided by numbers. A number alone takes `unit` when it is added to a length, or
 * is all there is. All is reckoned in exact fractions; only the end is rounded to a whole tick, a half away from zero, and
 * `rounded` says so. A leading `≈`, as `formatLength` writes it, is read over, and what comes of it counts as rounded.
 */
export function readSum(text: string, unit: Unit): SumReading {
  if (text.length > LONGEST_SUM) return { ok: false, problem: `At most ${LONGEST_SUM} characters are read.` };
  const plain = readLength(text, unit);
  if (plain.ok) return { ...plain, sum: false };
  const about = text.trimStart().startsWith('≈');
  const written = plainText(about ? text.replace('≈', '') : text);
  if (written === '') return { ok: false, problem: `A length is missing. Such as ${EXAMPLES}.` };
  try {
    const reading = reckoned(written, unit);
    return about && reading.ok ? { ...reading, rounded: true } : reading;
  } catch (error) {
    if (error instanceof SumError) return { ok: false, problem: error.message };
    throw error;
  }
}
