import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatLength } from './format-length.js';
import { inches, ticks, type Unit } from './length.js';
import { LARGEST_LENGTH, readLength } from './parse-length.js';
import { LONGEST_SUM, readSum } from './read-sum.js';

function sum(text: string, unit: Unit = 'in'): number {
  const reading = readSum(text, unit);
  if (!reading.ok) throw new Error(`${text}: ${reading.problem}`);
  return reading.length;
}

function problem(text: string): string {
  const reading = readSum(text, 'in');
  return reading.ok ? `read as ${reading.length}` : reading.problem;
}

test('sums as they are worked out at the table', () => {
  expect(sum('5 1/4 - 2*1/8')).toBe(inches(5));
  expect(readSum('(4 1/4 in - 3mm)/2', 'mm')).toEqual({
    ok: true,
    length: (69_088 - 1_920) / 2,
    rounded: false,
    sum: true,
  });
  expect(sum('10.8cm + 1/16', 'in')).toBe(108 * 640 + 1016);
  expect(sum('10.8cm + 1/16 in', 'mm')).toBe(108 * 640 + 1016);
  expect(sum('2 × 3⅛"')).toBe(inches(6.25));
  expect(sum('4¼ + ½')).toBe(inches(4.75));
  expect(sum('½+¼')).toBe(inches(0.75));
  expect(sum('4 in / 2 + 1')).toBe(inches(3));
  expect(sum('(1/2 + 1/4) in', 'mm')).toBe(inches(0.75));
  expect(sum('1,5 cm + 2,25 mm', 'in')).toBe(17.25 * 640);
  expect(sum('4 in * (6 mm / 3 mm)')).toBe(inches(8));
  expect(sum('2*-(1 - 3)')).toBe(inches(4));
  expect(sum('8 1/2 : 4')).toBe(inches(2.125));
});

test('a hyphen without spaces joins a whole number and a fraction; a spaced one, or a minus sign, takes away', () => {
  const joined = ['4-1/4"', '4-1/4', '4-¼', '4-1/4 + 0', '0 + 4-1/4', '(4-1/4)'];
  for (const text of joined) expect(sum(text), text).toBe(inches(4.25));
  const taken = ['4 - 1/4', '4 -1/4', '4- 1/4', '4−1/4', '4–1/4', '4"-1/4"', '(4)-1/4', '4.0-1/4', '4-0.25'];
  for (const text of taken) expect(sum(text), text).toBe(inches(3.75));
  expect(sum('10-5-1/4')).toBe(inches(4.75));
  expect(sum('5-1')).toBe(inches(4));
  expect(sum('1/2-1/4')).toBe(inches(0.25));
});

test('all that is read as one length is read as that length, and as no sum', () => {
  for (const text of ['4 1/4 in', '4-1/4"', '4,25 in', '-1/8', '108', '17/4', '4 1⁄4″']) {
    expect(readSum(text, 'mm'), text).toEqual({ ...readLength(text, 'mm'), sum: false });
  }
});

test('what is wrong is said in words of its own', () => {
  expect(problem('4 in * 2 in')).toContain('an area');
  expect(problem('4 / 0')).toBe('There is no dividing by 0.');
  expect(problem('4 / (1/2 - 0.5)')).toBe('There is no dividing by 0.');
  expect(problem('1/0 + 2')).toBe('There is no dividing by 0.');
  expect(problem('4 in / 2 in')).toContain('no length');
  expect(problem('4 / 2 in')).toContain('A fraction has no spaces');
  expect(problem('1 + 4 in / 2 in')).toContain('no length');
  expect(problem('4 feet + 2')).toContain('"feet"');
  expect(problem('4 2')).toBe('A sign is missing before "2".');
  expect(problem('4 in 2')).toBe('A sign is missing before "2".');
  expect(problem('(4 + 2')).toBe('A ")" is missing.');
  expect(problem('4 + 2)')).toContain('no "("');
  expect(problem('4 +')).toContain('missing at the end');
  expect(problem('4 + * 2')).toContain('missing before "*"');
  expect(problem('(4 in + 1) mm')).toContain('has a unit');
  expect(problem('')).toContain('missing');
  expect(problem('  ')).toContain('missing');
  expect(problem('100 m')).toContain('"m"');
  expect(problem('9999999 in + 1')).toContain('100 m');
  expect(problem('1e3 + 1')).toContain('"e"');
});

test('length and depth are bounded, and nothing takes long', () => {
  expect(problem(`${'1+'.repeat(70)}1`)).toContain(String(LONGEST_SUM));
  expect(problem(`${'('.repeat(40)}1${')'.repeat(40)}`)).toContain('deep');
  expect(problem(`${'-'.repeat(60)}1`)).toContain('deep');
  expect(sum(`${'('.repeat(10)}1${')'.repeat(10)}`)).toBe(inches(1));
  expect(problem(Array(24).fill('9999').join('*'))).toContain('100 m');
});

test('a sum that comes to no whole tick says so; one that comes back to a whole tick does not', () => {
  expect(readSum('1/3 + 1/3', 'in')).toMatchObject({ ok: true, length: 10_837, rounded: true });
  expect(readSum('1/3 + 1/3 + 1/3', 'in')).toMatchObject({ ok: true, length: inches(1), rounded: false });
  expect(readSum('1 in / 7 * 7', 'mm')).toMatchObject({ ok: true, length: inches(1), rounded: false });
  expect(readSum('-(1/3 + 1/3)', 'in')).toMatchObject({ length: -10_837, rounded: true });
});

test('a figure behind ≈ is read as it stands, and what comes of it counts as rounded', () => {
  const shown = formatLength(ticks(105 * 640), { unit: 'in' });
  expect(shown).toBe('≈ 4 1⁄8 + 0.0089 in');
  const reading = readSum(shown, 'in');
  expect(reading).toMatchObject({ ok: true, rounded: true });
  expect(reading.ok && Math.abs(reading.length - 105 * 640)).toBeLessThan(2);
});

/** A random expression as a text, and its value in exact fractions of the sketch's unit, by an evaluator of its own. */
interface Worked {
  readonly text: string;
  readonly top: bigint;
  readonly bottom: bigint;
  readonly length: boolean;
}

const PER = { in: 16256n, mm: 640n, cm: 6400n } as const;

const leaf = (unit: Unit): fc.Arbitrary<Worked> =>
  fc
    .record({
      whole: fc.nat(40),
      top: fc.integer({ min: 1, max: 40 }),
      bottom: fc.integer({ min: 1, max: 64 }),
      form: fc.constantFrom('whole', 'fraction', 'mixed', 'decimal' as const),
      named: fc.constantFrom('in', 'mm', 'cm', null),
    })
    .map(({ whole, top, bottom, form, named }) => {
      const [text, t, b] =
        form === 'whole'
          ? [`${whole}`, BigInt(whole), 1n]
          : form === 'fraction'
            ? [`${top}/${bottom}`, BigInt(top), BigInt(bottom)]
            : form === 'mixed'
              ? [`${whole} ${top}/${bottom}`, BigInt(whole * bottom + top), BigInt(bottom)]
              : [`${whole}.${String(top).padStart(2, '0')}`, BigInt(whole * 100 + top), 100n];
      const per = PER[named ?? unit];
      // Every leaf is a length here, so that sums of all kinds can be made of it; numbers stand in products only.
      return { text: named ? `${text} ${named}` : text, top: t * per, bottom: b, length: true };
    });

function lengthSum(unit: Unit, depth: number): fc.Arbitrary<Worked> {
  if (depth === 0) return leaf(unit);
  const below = lengthSum(unit, depth - 1);
  const joined = fc.tuple(below, below, fc.constantFrom('+', '-')).map(
    ([a, b, sign]): Worked => ({
      text: `(${a.text}) ${sign} (${b.text})`,
      top: a.top * b.bottom + (sign === '+' ? 1n : -1n) * b.top * a.bottom,
      bottom: a.bottom * b.bottom,
      length: true,
    }),
  );
  const scaled = fc.tuple(below, fc.integer({ min: 1, max: 12 }), fc.constantFrom('*', '/')).map(
    ([a, n, sign]): Worked => ({
      text: `(${a.text})${sign}${n}`,
      top: sign === '*' ? a.top * BigInt(n) : a.top,
      bottom: sign === '*' ? a.bottom : a.bottom * BigInt(n),
      length: true,
    }),
  );
  return fc.oneof(joined, scaled, below);
}

test('sums of all shapes agree with exact rational arithmetic', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<Unit>('in', 'mm').chain((unit) => fc.tuple(fc.constant(unit), lengthSum(unit, 2))),
      ([unit, { text, top, bottom }]) => {
        const size = top < 0n ? -top : top;
        const floor = size / bottom;
        const nearest = (size - floor * bottom) * 2n >= bottom ? floor + 1n : floor;
        if (text.length > LONGEST_SUM) return;
        const reading = readSum(text, unit);
        if (nearest > BigInt(LARGEST_LENGTH)) {
          expect(reading).toMatchObject({ ok: false, problem: 'That is more than 100 m.' });
          return;
        }
        expect(reading).toMatchObject({
          ok: true,
          length: top < 0n && nearest > 0n ? -Number(nearest) : Number(nearest),
          rounded: top % bottom !== 0n,
        });
      },
    ),
    { numRuns: 3000 },
  );
});

test('more than the largest length is refused in words, however it comes about', () => {
  expect(problem('((28 in)*12)*12')).toBe('That is more than 100 m.');
});

test('nothing that is typed throws', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[0-9 ./*+()"a-z¼-]{0,30}$/), (text) => {
      const reading = readSum(text, 'in');
      if (reading.ok) expect(Number.isSafeInteger(reading.length)).toBe(true);
      else expect(reading.problem).toMatch(/\.$/);
    }),
    { numRuns: 3000 },
  );
});
