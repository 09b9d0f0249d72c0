import * as z from 'zod/mini';
import { lengthsIn } from '../model/lengths.js';
import type { Problem } from '../model/problem.js';
import { GRAMS_PER_OUNCE } from '../model/weight-units.js';
import { schemaProblems } from '../read/schema-problems.js';
import written from './letter-limits.json' with { type: 'json' };

const WEIGHT = /^(\d{1,5}(?:\.\d{1,4})?) (g|oz)$/;

/** A weight as a text (`100 g`, `3.5 oz`) on the one side and as grams on the other. */
const weight = z.codec(z.string().check(z.maxLength(20)), z.custom<number>(Number.isFinite), {
  decode: (text, context) => {
    const [, figure, unit] = WEIGHT.exec(text) ?? [];
    if (figure === undefined || Number(figure) === 0) {
      context.issues.push({ code: 'custom', input: text, message: 'a weight above 0, such as 100 g or 3.5 oz' });
      return z.NEVER;
    }
    return Number(figure) * (unit === 'oz' ? GRAMS_PER_OUNCE : 1);
  },
  encode: (grams) => `${grams} g`,
});

// Every length of the file names its unit.
const { side } = lengthsIn('mm');
const words = (longest: number) => z.string().check(z.minLength(1), z.maxLength(longest));
const ratio = z.number().check(z.minimum(1), z.maximum(20));
const code = z.string().check(z.regex(/^[a-z]+(-[a-z]+)*$/));

const measures = z.strictObject({
  length: z.optional(side),
  height: z.optional(side),
  thickness: z.optional(side),
  weight: z.optional(weight),
});

const surcharge = z.discriminatedUnion('when', [
  // The longer side over the shorter one lies beyond these.
  z.strictObject({ when: z.literal('proportion'), least: ratio, most: ratio }),
  // Thinner than this, when it is longer or higher than that.
  z.strictObject({ when: z.literal('thin'), below: side, longerThan: side, higherThan: side }),
  // Something in it makes it thicker in one place than in another.
  z.strictObject({ when: z.literal('uneven') }),
]);

const letterClass = z.strictObject({
  id: code,
  name: words(60),
  least: z._default(measures, {}),
  most: measures,
  lighterThan: z.optional(weight),
  // The longer side over the shorter one: at least, or more than.
  proportion: z.optional(z.strictObject({ least: z.optional(ratio), above: z.optional(ratio) })),
  surcharges: z._default(z.array(surcharge).check(z.maxLength(12)), []),
  note: z.optional(words(300)),
});

const country = z.strictObject({
  // ISO 3166-1, two letters.
  code: z.string().check(z.regex(/^[A-Z]{2}$/)),
  name: words(60),
  // The date that the source bears, as much of it as it says; null where it bears none.
  edition: z.nullable(z.string().check(z.regex(/^\d{4}(-\d{2}(-\d{2})?)?$/))),
  source: words(200),
  notes: z.array(words(300)).check(z.maxLength(12)),
  // The cheapest first.
  classes: z.array(letterClass).check(z.minLength(1), z.maxLength(24)),
});

const limits = z.strictObject({
  trimwellPost: z.literal(1),
  notice: words(200),
  countries: z.array(country).check(z.minLength(1), z.maxLength(300)),
});

/** What the posts of some countries take as letters: lengths in ticks, weights in grams. */
export type LetterLimits = z.output<typeof limits>;
export type PostCountry = LetterLimits['countries'][number];
export type LetterClass = PostCountry['classes'][number];

/** A table of letter limits, or everything that is wrong with it. */
export type LetterLimitsReading =
  | { readonly ok: true; readonly limits: LetterLimits }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads a table as it stands in `letter-limits.json`. */
export function readLetterLimits(value: unknown): LetterLimitsReading {
  const reading = z.safeParse(limits, value);
  return reading.success
    ? { ok: true, limits: reading.data }
    : { ok: false, problems: schemaProblems(reading.error.issues, value) };
}

let known: LetterLimits | null = null;

/** The table that comes with Trimwell: the one file `letter-limits.json`. @throws RangeError when that is broken. */
export function letterLimits(): LetterLimits {
  if (known) return known;
  const reading = readLetterLimits(written);
  if (!reading.ok) throw new RangeError(reading.problems.map(({ message }) => message).join('\n'));
  known = reading.limits;
  return known;
}

/** The JSON Schema (2020-12) of `letter-limits.json`, generated from the schema that reads it. */
export function letterLimitsJsonSchema(): object {
  return { title: 'Letter limits by country', ...z.toJSONSchema(limits, { io: 'input' }) };
}
