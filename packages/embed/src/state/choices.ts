import type { LengthStyle, Unit } from '@trimwell/geometry';
import { type Problem, problemAt, readBase64url, writeBase64url } from '@trimwell/sketch';
import * as z from 'zod/mini';

/** Longest code of choices that is looked at: sixty papers of one's own take half of it. */
export const LONGEST_CHOICES = 20_000;
/** Most scraps that a reader adds. */
export const MOST_SCRAPS = 12;
/** Most sheets of one paper. */
export const MOST_SHEETS = 999;
/** Most cards that can be asked for. */
export const MOST_WISHED = 500;
/** Nothing is larger than 2 m, as in a sketch; in ticks. */
const LARGEST = 1_280_000;
const LONGEST_NAME = 80;

/** The letter in front says how the rest is written. */
const PACKING = 'c';

const id = z.string().check(z.maxLength(60), z.regex(/^[a-z0-9]+([-:][a-z0-9]+)*$/));
const side = z.int().check(z.minimum(1), z.maximum(LARGEST));
const sheets = z.nullable(z.int().check(z.minimum(0), z.maximum(MOST_SHEETS)));
const paper = z.strictObject({
  /** The paper of the sketch that it stands for. */
  paper: id,
  width: z.optional(side),
  height: z.optional(side),
  /** Null for as many as needed. */
  sheets: z.optional(sheets),
  /** One's own colour in the place of the print. */
  ground: z.optional(z.string().check(z.regex(/^#[0-9a-f]{6}$/))),
});
const scrap = z.strictObject({
  name: z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME)),
  /** The paper of the sketch that it looks like. */
  like: id,
  width: side,
  height: side,
  sheets: z.int().check(z.minimum(1), z.maximum(MOST_SHEETS)),
});

const schema = z.strictObject({
  trimwellChoices: z.literal(1),
  /** The sketch that they are for. */
  sketch: id,
  unit: z.optional(z.enum(['in', 'mm'])),
  form: z.optional(z.enum(['fraction', 'decimal'])),
  cards: z.optional(z.union([z.int().check(z.minimum(1), z.maximum(MOST_WISHED)), z.literal('as many as possible')])),
  /** Variations that are on: ids of the sketch's own, and those of the ready ones behind `ready:`. */
  on: z.optional(z.array(id).check(z.maxLength(60))),
  /** What is known of one's own sheets. */
  papers: z.optional(z.array(paper).check(z.maxLength(80))),
  scraps: z.optional(z.array(scrap).check(z.maxLength(MOST_SCRAPS))),
  /** Which paper or scrap a piece is cut from instead; a scrap is `scrap:` and its number from 1. */
  from: z.optional(z.array(z.strictObject({ piece: id, from: id })).check(z.maxLength(250))),
});

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

/** What a reader has chosen for a sketch; lengths in ticks. What is not there is as the designer has it. */
export type Choices = DeepReadonly<z.output<typeof schema>>;
export type PaperChoice = NonNullable<Choices['papers']>[number];
/** Which paper or scrap a piece is cut from instead. */
export type FromChoice = NonNullable<Choices['from']>[number];
export type Scrap = NonNullable<Choices['scraps']>[number];
export type Form = NonNullable<LengthStyle['form']>;

export type ChoicesReading =
  | { readonly ok: true; readonly choices: Choices }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function refused(code: string, value: unknown, allowed: string): ChoicesReading {
  return { ok: false, problems: [problemAt(code, [], value, allowed)] };
}

/** No choices yet for the sketch called `sketch`. */
export function noChoices(sketch: string): Choices {
  return { trimwellChoices: 1, sketch };
}

/** True when nothing was chosen. */
export function isUnchosen({ trimwellChoices: _version, sketch: _sketch, ...chosen }: Choices): boolean {
  return Object.keys(chosen).length === 0;
}

/** Reads choices from an unknown value, such as what `JSON.parse` gives. */
export function readChoices(value: unknown): ChoicesReading {
  const read = z.safeDecode(schema, value as z.input<typeof schema>);
  if (read.success) return { ok: true, choices: read.data };
  const [issue] = read.error.issues;
  return {
    ok: false,
    problems: [problemAt(issue?.code ?? 'not-choices', issue?.path ?? [], value, 'what a reader can choose')],
  };
}

/** Choices as letters, digits, `-` and `_` for the fragment of a link: `c`, then their JSON in base64url (RFC 4648, section 5). */
export function writeChoicesCode(choices: Choices): string {
  return `${PACKING}${writeBase64url(new TextEncoder().encode(JSON.stringify(choices)))}`;
}

/** Reads what `writeChoicesCode` wrote; anything else is refused, in time that its length bounds. */
export function readChoicesCode(code: string): ChoicesReading {
  if (code.length > LONGEST_CHOICES)
    return refused('too-large', code, `a code of at most ${LONGEST_CHOICES} characters`);
  const bytes = code.startsWith(PACKING) ? readBase64url(code.slice(PACKING.length)) : null;
  if (!bytes) return refused('not-a-code', code, 'a code exactly as it was copied');
  try {
    return readChoices(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)));
  } catch (error) {
    // What is no UTF-8 or no JSON was never written by us; anything else is a fault of ours.
    if (error instanceof TypeError || error instanceof SyntaxError)
      return refused('not-a-code', code, 'a code exactly as it was copied');
    throw error;
  }
}

/** The sizes of a reader: the unit they chose, else `unit`. */
export function styleOf({ unit: chosen, form }: Choices, unit: Unit): LengthStyle {
  return { unit: chosen ?? unit, form: form ?? 'fraction' };
}
