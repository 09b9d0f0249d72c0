import { ticks } from '@trimwell/geometry';
import type { Sketch } from '../model/sketch.js';
import { type Caliper, estimateCaliper } from './estimate-caliper.js';

/** The caliper of the thickest paper that `from` may stand for. */
export function caliperOf({ papers, mixes }: Pick<Sketch, 'papers' | 'mixes'>, from: string): Caliper {
  const ids = mixes.find(({ id }) => id === from)?.papers ?? [from];
  const calipers = papers.filter(({ id }) => ids.includes(id)).map(estimateCaliper);
  return calipers.reduce((most, each) => (each.caliper > most.caliper ? each : most), {
    caliper: ticks(0),
    estimated: false,
  });
}
