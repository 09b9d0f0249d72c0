import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { GRAMS_PER_OUNCE } from '../model/weight-units.js';
import { letterClassOf, type PostItem } from './letter-class.js';
import { letterLimits, letterLimitsJsonSchema, readLetterLimits } from './letter-limits.js';
import written from './letter-limits.json' with { type: 'json' };

/** An item from lengths and a weight; 1 mm thick, 5 g, even, unless said otherwise. */
function item(width: Length, height: Length, rest: Partial<PostItem> = {}): PostItem {
  return { width, height, thickness: millimetres(1), weight: 5, uneven: false, ...rest };
}

const mm = (width: number, height: number, thickness = 1, weight = 5): PostItem =>
  item(millimetres(width), millimetres(height), { thickness: millimetres(thickness), weight });

function answer(code: string, posted: PostItem) {
  const country = letterLimits().countries.find((each) => each.code === code);
  if (!country) throw new Error(`${code} is in the table`);
  const found = letterClassOf(posted, country);
  return { class: found.class?.id ?? null, surcharges: found.surcharges, why: found.refused[0]?.reasons ?? [] };
}

test('six countries, each with a source and at least two classes; the notice is said', () => {
  const { countries, notice } = letterLimits();
  expect(countries.map(({ code }) => code)).toEqual(['US', 'GB', 'CA', 'DE', 'IE', 'AU']);
  for (const { classes, source } of countries) {
    expect(source.length).toBeGreaterThan(10);
    expect(classes.length).toBeGreaterThanOrEqual(2);
  }
  expect(notice).toBe('Limits change: check with your post office.');
});

// Domestic Mail Manual 101.1.1 and 101.1.2 (updated 2023-07-09).
test.each<readonly [string, PostItem, string | null, readonly string[]]>([
  ['5 x 3 1/2 in, the least', item(inches(5), inches(3.5)), 'letter', []],
  ['3 1/4 in square: below the least of every class', item(inches(3.25), inches(3.25)), null, []],
  ['11 1/2 x 6 1/8 in, the most', item(inches(11.5), inches(6.125)), 'letter', []],
  ['a sixteenth longer', item(inches(11.5625), inches(6.125)), 'flat', []],
  ['1/4 in thick', item(inches(7.25), inches(5.25), { thickness: inches(1 / 4) }), 'letter', []],
  ['a tick thicker', item(inches(7.25), inches(5.25), { thickness: inches(1 / 4) + 1 }), 'flat', []],
  ['3.5 oz', item(inches(7.25), inches(5.25), { weight: 3.5 * GRAMS_PER_OUNCE }), 'letter', []],
  ['a gram more', item(inches(7.25), inches(5.25), { weight: 3.5 * GRAMS_PER_OUNCE + 1 }), 'flat', []],
  ['13 oz and a gram', item(inches(7.25), inches(5.25), { weight: 13 * GRAMS_PER_OUNCE + 1 }), null, []],
  // The manual's and our table's examples: a square is 1.0, No. 10 is 2.30, 5 x 8 is 1.6, A2 is 1.314.
  ['5 x 5 in, the smallest square', item(inches(5), inches(5)), 'letter', ['proportion']],
  ['No. 10', item(inches(9.5), inches(4.125)), 'letter', []],
  ['5 x 8 in', item(inches(8), inches(5)), 'letter', []],
  ['US A2', item(inches(5.75), inches(4.375)), 'letter', []],
  ['2.5 times as long as high', item(inches(10), inches(4)), 'letter', []],
  ['a little longer', item(inches(10.0625), inches(4)), 'letter', ['proportion']],
  ['6 1/2 in square: higher than a letter', item(inches(6.5), inches(6.5)), 'flat', []],
  ['0.008 in, longer than 6 in', item(inches(6.5), inches(4.75), { thickness: 0.008 * 16_256 }), 'letter', ['thin']],
  ['0.008 in, 6 x 4 1/4 in', item(inches(6), inches(4.25), { thickness: 0.008 * 16_256 }), 'letter', []],
  ['foam in it', item(inches(7.25), inches(5.25), { uneven: true }), 'letter', ['uneven']],
])('United States, %s', (_name, posted, expected, surcharges) => {
  expect(answer('US', posted)).toMatchObject({ class: expected, surcharges });
});

// The posts' published sizes as collected: 240 x 165 x 5 mm and 100 g; 245 x 156 x 5 mm and 50 g; 235 x 125 x 5 mm and 20 g with a side of 1.4; 235 x 162 x 5 mm; 240 mm and below 250 g.
test.each<readonly [string, string, PostItem, string | null]>([
  ['GB', 'the largest letter', mm(240, 165, 5, 100), 'letter'],
  ['GB', '6 mm thick', mm(229, 162, 6), 'large-letter'],
  ['GB', 'larger than a large letter', mm(354, 250), null],
  ['CA', 'the largest standard letter', mm(245, 156, 5, 50), 'standard'],
  ['CA', 'the smallest one', mm(140, 90, 0.2, 2), 'standard'],
  ['CA', '51 g', mm(245, 156, 5, 51), 'non-standard'],
  ['CA', '139 mm long', mm(139, 90), null],
  ['DE', 'the largest', mm(235, 125, 5, 20), 'standard'],
  ['DE', 'DL', mm(220, 110), 'standard'],
  ['DE', 'C6 of 21 g', mm(162, 114, 3, 21), 'compact'],
  ['DE', 'less than 1.4 times as long as high', mm(140, 101), 'compact'],
  ['DE', 'C5: 125 mm is the limit', mm(229, 162), 'large'],
  ['DE', 'a square of 125 mm', mm(125, 125), 'large'],
  ['IE', 'the largest letter', mm(235, 162, 5, 100), 'letter'],
  ['IE', '101 g', mm(235, 162, 5, 101), 'large-envelope'],
  ['AU', 'the largest small letter', mm(240, 130, 5, 249), 'small'],
  ['AU', '250 g', mm(240, 130, 5, 250), 'large'],
])('%s, %s', (code, _name, posted, expected) => {
  expect(answer(code, posted).class).toBe(expected);
});

test('why it is no cheaper letter is told', () => {
  expect(answer('DE', mm(150, 150, 6, 30)).why).toEqual(['too-high', 'too-thick', 'too-heavy', 'proportion']);
});

test('a table with mistakes is refused by path, value and what is allowed', () => {
  const spoilt = (change: (table: typeof written) => unknown) => {
    const copy = structuredClone(written);
    change(copy);
    const reading = readLetterLimits(copy);
    return reading.ok ? [] : reading.problems.map(({ message }) => message);
  };
  expect(spoilt(() => {})).toEqual([]);
  expect(spoilt((table) => Object.assign(table.countries[0]?.classes[0]?.most ?? {}, { weight: '3 stone' }))).toEqual([
    'countries[0].classes[0].most.weight is "3 stone"; allowed: a weight above 0, such as 100 g or 3.5 oz.',
  ]);
  expect(spoilt((table) => Object.assign(table.countries[1] ?? {}, { code: 'gb' }))[0]).toContain('countries[1].code');
  expect(spoilt((table) => Object.assign(table, { stamps: 1 }))[0]).toContain('stamps');
});

test('the JSON Schema is made from the schema that reads the table', () => {
  const schema = JSON.stringify(letterLimitsJsonSchema());
  for (const key of ['trimwellPost', 'lighterThan', 'longerThan', 'edition']) expect(schema).toContain(`"${key}"`);
  expect(ticks(0)).toBe(0);
});
