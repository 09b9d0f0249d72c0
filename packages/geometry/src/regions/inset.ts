import { ClipperOffset, EndType, JoinType, type Path64 } from 'clipper2-ts';
import { CURVE_ERROR, NOTHING, type Region, regionBounds, UNITS_PER_TICK } from './region.js';

/** What of `region` lies `by` ticks or more from all its edges: where the middle of a disc of that radius may lie within it. */
export function inset(region: Region, by: number): Region {
  if (region.rings.length === 0) return NOTHING;
  const offset = new ClipperOffset(2, CURVE_ERROR * UNITS_PER_TICK);
  for (const ring of region.rings) offset.addPath(ring as Path64, JoinType.Round, EndType.Polygon);
  const rings: Path64[] = [];
  offset.execute(-by * UNITS_PER_TICK, rings);
  return { rings };
}

/** How near a radius is found, in ticks: 1/80 mm. */
const NEAR_ENOUGH = CURVE_ERROR;

/** The radius of the largest disc that lies within `region`, in ticks, no more than `CURVE_ERROR` too small; 0 of nothing. */
export function largestDisc(region: Region): number {
  const box = regionBounds(region);
  if (!box) return 0;
  let least = 0;
  let most = Math.min(box.right - box.left, box.bottom - box.top) / 2;
  if (inset(region, most).rings.length > 0) return most;
  while (most - least > NEAR_ENOUGH) {
    const middle = (least + most) / 2;
    if (inset(region, middle).rings.length > 0) least = middle;
    else most = middle;
  }
  return least;
}
