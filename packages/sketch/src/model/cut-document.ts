import { TICKS_PER_MM, ticks, type Unit } from '@trimwell/geometry';
import * as z from 'zod/mini';
import { lengthsIn } from './lengths.js';

/** Ids of a cut job may be any short text, since they come from other people's lists. */
const id = z.string().check(z.minLength(1), z.maxLength(200));

/** A cut job may be about any sheet: up to 100 m, at which areas in square ticks are still exact numbers. */
const LARGEST_IN_JOB = 100_000 * TICKS_PER_MM;

function jobSchema(unit: Unit) {
  const { side, amount } = lengthsIn(unit, LARGEST_IN_JOB);
  const nought = z._default(amount, ticks(0));
  const margins = z.strictObject({ top: nought, right: nought, bottom: nought, left: nought });
  const trimmer = z.strictObject({
    bladeLength: z._default(z.nullable(side), null),
    narrowestStrip: nought,
    thinnestTrim: nought,
    kerf: nought,
    rulerStep: z._default(z.nullable(side), null),
    stoppedCuts: z._default(z.boolean(), false),
  });
  const paper = z.strictObject({
    id,
    width: side,
    height: side,
    sheets: z._default(z.nullable(z.int().check(z.minimum(0), z.maximum(1_000_000))), null),
    directional: z._default(z.boolean(), false),
    price: z._default(z.nullable(z.number().check(z.minimum(0), z.maximum(1_000_000_000))), null),
    margins: z.prefault(margins, {}),
  });
  const blank = z.strictObject({
    id,
    width: side,
    height: side,
    quantity: z.int().check(z.minimum(0), z.maximum(1_000_000)),
    papers: z._default(z.nullable(z.array(id).check(z.minLength(1))), null),
    turn: z._default(z.boolean(), true),
  });
  return z.strictObject({
    trimwellJob: z.literal(1),
    unit: z._default(z.enum(['in', 'mm']), 'in'),
    trimmer: z.prefault(trimmer, {}),
    papers: z.array(paper).check(z.minLength(1), z.maxLength(1_000)),
    blanks: z.array(blank).check(z.maxLength(5_000)),
  });
}

const inInches = jobSchema('in');
const inMillimetres = jobSchema('mm');

/** The schema of a cut job document whose bare numbers are in `unit`. */
export function cutJobSchema(unit: Unit): typeof inInches {
  return unit === 'in' ? inInches : inMillimetres;
}

/** A cut job as JSON, `"trimwellJob": 1`. */
export type CutJobDocument = z.input<typeof inInches>;
