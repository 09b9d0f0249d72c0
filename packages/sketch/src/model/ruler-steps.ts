import { inches, type Length, millimetres, type Unit } from '@trimwell/geometry';

/** The steps of the trimmer's own ruler, coarsest first: 1/16, 1/32 and 1/64 in; 1, 0.5 and 0.1 mm. */
export const RULER_STEPS: Readonly<Record<Unit, readonly [Length, Length, Length]>> = {
  in: [inches(1 / 16), inches(1 / 32), inches(1 / 64)],
  mm: [millimetres(1), millimetres(0.5), millimetres(0.1)],
};

/** The step by which a piece moves and snaps: 1/16 in or 1 mm, the marks of a usual ruler. */
export function rulerStep(unit: Unit): Length {
  return RULER_STEPS[unit][0];
}
