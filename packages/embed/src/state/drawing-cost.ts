import type { Sketch } from '@trimwell/sketch';

/** Most repeats of punches and pieces on a drawing; beyond, pieces are drawn plainly, so that no sketch holds the page up. */
const MOST_MARKS = 6_000;

/** True for a sketch whose true edges would be too much to draw. */
export function isTooMuch({ pieces, punches }: Sketch): boolean {
  const repeats = new Map(punches.map(({ id, repeat }) => [id, repeat]));
  let marks = 0;
  for (const { width, height, punched } of pieces) {
    marks += 1;
    for (const [edge, id] of Object.entries(punched)) {
      const repeat = id === undefined ? undefined : repeats.get(id);
      const length = edge === 'top' || edge === 'bottom' ? width : height;
      if (repeat !== undefined) marks += length / repeat;
    }
  }
  return marks > MOST_MARKS;
}
