import type { Paper, Sketch } from '../model/sketch.js';

/** How heavy a paper is, in grams per square metre, and whether it says so itself or that is only usual. */
export interface Grammage {
  readonly gsm: number;
  readonly estimated: boolean;
}

/** Usual weights by kind of paper, in grams per square metre (common practice, no source). */
const USUAL: Readonly<Record<Paper['kind'], number>> = {
  cardstock: 216,
  'patterned paper': 150,
  vellum: 105,
  foil: 250,
  kraft: 250,
  other: 160,
};

/** The weight of `paper` as it says, else what is usual for its kind, which is an estimate. */
export function estimateGsm({ gsm, kind }: Pick<Paper, 'gsm' | 'kind'>): Grammage {
  return gsm === undefined ? { gsm: USUAL[kind], estimated: true } : { gsm, estimated: false };
}

/** The weight of the heaviest paper that `from` may stand for. */
export function gsmOf({ papers, mixes }: Sketch, from: string): Grammage {
  const ids = mixes.find(({ id }) => id === from)?.papers ?? [from];
  return papers
    .filter(({ id }) => ids.includes(id))
    .map(estimateGsm)
    .reduce((most, each) => (each.gsm > most.gsm ? each : most), { gsm: 0, estimated: false });
}
