import type { Point } from '@trimwell/geometry';

export interface ClipBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The part of the line from `a` to `b` inside `box`; null when none is (Liang and Barsky, 1984). */
export function clipLine(a: Point, b: Point, box: ClipBox): readonly [Point, Point] | null {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  let [near, far] = [0, 1];
  const edges: readonly (readonly [step: number, room: number])[] = [
    [-dx, a.x - box.x],
    [dx, box.x + box.width - a.x],
    [-dy, a.y - box.y],
    [dy, box.y + box.height - a.y],
  ];
  for (const [step, room] of edges) {
    if (step === 0) {
      if (room < 0) return null;
    } else if (step < 0) near = Math.max(near, room / step);
    else far = Math.min(far, room / step);
  }
  if (near >= far) return null;
  const at = (share: number): Point => ({ x: a.x + share * dx, y: a.y + share * dy });
  return [near === 0 ? a : at(near), far === 1 ? b : at(far)];
}

/** The stretches of the open line through `points` that lie inside `box`, in order. */
export function clipPath(points: readonly Point[], box: ClipBox): readonly (readonly Point[])[] {
  const stretches: Point[][] = [];
  let last: Point | null = null;
  for (let index = 1; index < points.length; index += 1) {
    const [a, b] = [points[index - 1], points[index]];
    const kept = a && b ? clipLine(a, b, box) : null;
    if (!kept) {
      last = null;
      continue;
    }
    const [from, to] = kept;
    if (last === from) stretches.at(-1)?.push(to);
    else stretches.push([from, to]);
    last = to === b ? to : null;
  }
  return stretches;
}
