import { TICKS_PER_INCH } from '@trimwell/geometry';
import type { Sketch } from '../model/sketch.js';
import { writeEdit } from '../read/write-sketch.js';
import type { NearMisses } from './near-miss.js';

/**
 * The document of near misses, `"trimwellNearMisses": 1`: lengths in ticks, but each `edit` as documents write it, so
 * that it can stand in a variation as it is.
 */
export function writeNearMisses({ cards, sheets, tolerance, misses }: NearMisses, unit: Sketch['unit']): object {
  return {
    trimwellNearMisses: 1,
    ticksPerInch: TICKS_PER_INCH,
    cards,
    sheets,
    tolerance,
    misses: misses.map((miss) => ({ ...miss, edit: writeEdit(miss.edit, unit) })),
  };
}
