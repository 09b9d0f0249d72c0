import { type Length, millimetres, ticks } from '@trimwell/geometry';
import type { Paper } from '../model/sketch.js';

/** How thick one sheet is, and whether that was measured or is only usual. */
export interface Caliper {
  readonly caliper: Length;
  readonly estimated: boolean;
}

/** Usual calipers by kind of paper, in millimetres (common practice, no source). */
const USUAL: Readonly<Record<Paper['kind'], number>> = {
  cardstock: 0.3,
  'patterned paper': 0.18,
  vellum: 0.12,
  foil: 0.25,
  kraft: 0.3,
  other: 0.2,
};

/** Millimetres of caliper for each gram per square metre: a bulk of 1.3 cm3/g (common practice, no source). */
const BULK = 0.0013;

/** The caliper of `paper` as it says, else from its weight, else what is usual for its kind; the last two are estimates. */
export function estimateCaliper({ caliper, gsm, kind }: Pick<Paper, 'caliper' | 'gsm' | 'kind'>): Caliper {
  if (caliper !== undefined) return { caliper, estimated: false };
  const thick = gsm === undefined ? USUAL[kind] : gsm * BULK;
  return { caliper: ticks(Math.round(thick * millimetres(1))), estimated: true };
}
