import fc from 'fast-check';
import { expect, test } from 'vitest';
import { breakableSize, formatLength, formatSize, writeLength } from './format-length.js';
import { inches, millimetres, nearestStep, TICKS_PER_INCH, TICKS_PER_MM, ticks, type Unit } from './length.js';
import { LengthError, parseLength, readLength } from './parse-length.js';

/** Independent of the parser: nearest whole number to top * per / bottom, in big integers, a half away from zero. */
function nearestTick(top: bigint, bottom: bigint, per: number): number {
  const scaled = top * BigInt(per);
  const floor = scaled / bottom;
  return Number((scaled - floor * bottom) * 2n >= bottom ? floor + 1n : floor);
}

test('an inch is 25.4 mm exactly (international yard and pound agreement of 1959, from memory)', () => {
  expect(TICKS_PER_INCH * 10).toBe(TICKS_PER_MM * 254);
  expect(parseLength('25.4 mm', 'in')).toBe(parseLength('1 in', 'mm'));
});

test('every 1/64 in up to 24 in is exact, read in four ways and written back', () => {
  for (let n = 0; n <= 24 * 64; n += 1) {
    const want = ticks(n * 254);
    const whole = Math.floor(n / 64);
    expect(readLength(`${n}/64 in`, 'mm')).toEqual({ ok: true, length: want, rounded: false });
    expect(parseLength(`${whole} ${n % 64}/64"`, 'mm')).toBe(want);
    expect(parseLength(`${whole}-${n % 64}/64 inches`, 'mm')).toBe(want);
    expect(parseLength(`${n / 64}`, 'in')).toBe(want);
    expect(parseLength(writeLength(want, 'in'), 'mm')).toBe(want);
    expect(parseLength(formatLength(want, { unit: 'in' }), 'mm')).toBe(want);
  }
});

test('every 0.1 mm up to 24 in is exact, read as mm and cm and written back', () => {
  for (let n = 0; n <= 6096; n += 1) {
    const want = ticks(n * 64);
    const text = `${Math.floor(n / 10)}.${n % 10}`;
    expect(readLength(`${text} mm`, 'in')).toEqual({ ok: true, length: want, rounded: false });
    expect(parseLength(`${Math.floor(n / 100)}.${String(n % 100).padStart(2, '0')} cm`, 'in')).toBe(want);
    expect(millimetres(n / 10)).toBe(want);
    expect(parseLength(writeLength(want, 'mm'), 'in')).toBe(want);
    expect(parseLength(formatLength(want, { unit: 'mm' }), 'in')).toBe(want);
  }
});

test('each way of writing four and a quarter inches is read', () => {
  const ways = [
    '4 1/4 in',
    '4-1/4"',
    '4.25in',
    '4¼',
    '4 ¼ in',
    '4¼"',
    '17/4',
    '4 1⁄4″',
    '04.250 inch',
    '+4.25',
    '4,25 in',
  ];
  for (const way of ways) expect(parseLength(way, 'in'), way).toBe(inches(4.25));
  expect(parseLength('108 mm', 'in')).toBe(108 * 640);
  expect(parseLength('10.8 cm', 'in')).toBe(108 * 640);
  expect(parseLength('108', 'mm')).toBe(108 * 640);
  expect(parseLength('-1/8', 'in')).toBe(-2032);
  expect(parseLength('−⅛ in', 'mm')).toBe(-2032);
  expect(parseLength('.5', 'in')).toBe(inches(0.5));
});

test('what is no length is refused with what would be read', () => {
  const bad = [
    '',
    ' ',
    'wide',
    '4 in 2',
    '1/0',
    '4..5',
    '4 1/4 1/2',
    '1e3',
    '0x10',
    'NaN',
    '4 feet',
    '--4',
    '4.5 1/2',
    '1/2/3',
    '9'.repeat(41),
    '1e999',
    '100001 m',
    '99999999 in',
    '4 2',
    '4-',
  ];
  for (const text of bad) expect(readLength(text, 'in').ok, text).toBe(false);
  expect(() => parseLength('wide', 'in')).toThrow(LengthError);
  expect(() => parseLength('wide', 'in')).toThrow('"wide"');
});

test('mixed numbers agree with exact rational arithmetic', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 90 }),
      fc.integer({ min: 0, max: 200 }),
      fc.integer({ min: 1, max: 200 }),
      fc.constantFrom<Unit>('in', 'mm'),
      (whole, top, bottom, unit) => {
        const per = unit === 'in' ? 16256 : 640;
        const want = nearestTick(BigInt(whole) * BigInt(bottom) + BigInt(top), BigInt(bottom), per);
        const reading = readLength(`${whole} ${top}/${bottom} ${unit}`, 'in');
        expect(reading).toMatchObject({ ok: true, length: want });
        expect(reading.ok && reading.rounded).toBe((per * top) % bottom !== 0);
      },
    ),
    { numRuns: 3000 },
  );
});

test('decimals agree with exact rational arithmetic', () => {
  fc.assert(
    fc.property(
      fc.nat(400),
      fc.stringMatching(/^\d{1,12}$/),
      fc.constantFrom('in', 'mm', 'cm'),
      (whole, part, unit) => {
        const per = unit === 'in' ? 16256 : unit === 'mm' ? 640 : 6400;
        const want = nearestTick(BigInt(`${whole}${part}`), 10n ** BigInt(part.length), per);
        expect(readLength(`${whole}.${part}${unit}`, 'in')).toMatchObject({ ok: true, length: want });
      },
    ),
    { numRuns: 3000 },
  );
});

test('writeLength reads back as exactly the same ticks in either unit', () => {
  fc.assert(
    fc.property(fc.integer({ min: -2_000_000, max: 2_000_000 }), fc.constantFrom<Unit>('in', 'mm'), (n, unit) => {
      expect(parseLength(writeLength(ticks(n), unit), unit === 'in' ? 'mm' : 'in')).toBe(ticks(n));
    }),
    { numRuns: 5000 },
  );
});

test('what was typed reads back as typed', () => {
  for (const typed of ['4.3333 in', '1/3 in', '2 2/3 in', '0.2 in', '4 1/4 in', '5 3/64 in', '0.1234 in']) {
    expect(writeLength(parseLength(typed, 'in'), 'in')).toBe(typed);
  }
  for (const typed of ['148.5 mm', '0.125 mm', '33.333 mm', '305 mm']) {
    expect(writeLength(parseLength(typed, 'mm'), 'mm')).toBe(typed);
  }
});

test('a figure is exact or says by how much it is not', () => {
  expect(formatLength(inches(4.25), { unit: 'in' })).toBe('4 1⁄4 in');
  expect(formatLength(inches(0.75), { unit: 'in', bare: true })).toBe('3⁄4');
  expect(formatLength(inches(5), { unit: 'in' })).toBe('5 in');
  expect(formatLength(inches(3 / 32), { unit: 'in' })).toBe('3⁄32 in');
  expect(formatLength(inches(3 / 32), { unit: 'in', form: 'decimal' })).toBe('0.0938 in'.replace('0.', '≈ 0.'));
  expect(formatLength(millimetres(105), { unit: 'in' })).toBe('≈ 4 1⁄8 + 0.0089 in');
  expect(formatLength(millimetres(105), { unit: 'mm' })).toBe('105 mm');
  expect(formatLength(inches(4.25), { unit: 'mm' })).toBe('107.95 mm');
  expect(formatLength(inches(1 / 64), { unit: 'mm' })).toBe('≈ 0.4 mm');
  expect(formatLength(ticks(-2032), { unit: 'in' })).toBe('−1⁄8 in');
  expect(formatSize({ width: inches(4), height: inches(5.25) }, { unit: 'in' })).toBe('4 × 5 1⁄4 in');
  // A line breaks at the one plain space.
  expect(breakableSize({ width: inches(8.5), height: inches(5.25) }, { unit: 'in' })).toBe(
    '8\u00a01⁄2\u00a0× 5\u00a01⁄4\u00a0in',
  );
});

test('what is nearer to 0 than to any mark is a plain decimal, in either unit and form (by hand)', () => {
  // 10 ticks are 10/16256 in and 10/640 mm.
  for (const form of ['fraction', 'decimal'] as const) {
    expect(formatLength(ticks(10), { unit: 'in', form })).toBe('≈ 0.0006 in');
    expect(formatLength(ticks(-10), { unit: 'in', form })).toBe('≈ −0.0006 in');
  }
  expect(formatLength(ticks(10), { unit: 'mm' })).toBe('≈ 0.016 mm');
  expect(formatLength(ticks(1), { unit: 'in', bare: true })).toBe('≈ 0.0001');
  expect(formatLength(ticks(0), { unit: 'in' })).toBe('0 in');
  // Half way to the first mark of 1/16 in, 508 ticks, the mark is nearer; on a finer ruler there is one before.
  expect(formatLength(ticks(507), { unit: 'in' })).toBe('≈ 0.0312 in');
  expect(formatLength(ticks(509), { unit: 'in' })).toBe('≈ 1⁄16 − 0.0312 in');
  expect(formatLength(ticks(507), { unit: 'in', marks: 32 })).toBe('≈ 1⁄32 − 0.0001 in');
});

test('a length that is not 0 is never shown as 0 and something', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 2_000 }),
      fc.constantFrom<Unit>('in', 'mm'),
      fc.constantFrom<'fraction' | 'decimal'>('fraction', 'decimal'),
      fc.constantFrom(8, 16, 32, 64),
      (n, unit, form, marks) => {
        expect(formatLength(ticks(n), { unit, form, marks: marks as 8 | 16 | 32 | 64 })).not.toMatch(/^(≈ )?0 /);
      },
    ),
    { numRuns: 5000 },
  );
});

test('a shown figure without ≈ reads back as exactly the length', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 400_000 }),
      fc.constantFrom<Unit>('in', 'mm'),
      fc.boolean(),
      (n, unit, decimal) => {
        const shown = formatLength(ticks(n), { unit, form: decimal ? 'decimal' : 'fraction' });
        if (!shown.startsWith('≈')) expect(parseLength(shown, unit)).toBe(n);
        else expect(shown).toMatch(/^≈ [\d ⁄.+−]+ (in|mm)$/);
      },
    ),
    { numRuns: 5000 },
  );
});

test('the nearest step takes a tie up and keeps zero positive', () => {
  expect(nearestStep(150, ticks(100))).toBe(200);
  expect(nearestStep(-150, ticks(100))).toBe(-100);
  expect(Object.is(nearestStep(-20, ticks(100)), 0)).toBe(true);
  expect(() => ticks(1.5)).toThrow(RangeError);
  expect(() => millimetres(0.05)).toThrow(RangeError);
});
