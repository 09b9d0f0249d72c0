import type { Boundary, BoundaryEdge } from './placed-piece.js';

/**
 * Where level lines cross a boundary: for each line the places in ascending order, each followed by how far the true edge may be
 * from it, in floating ticks. What lies between the first and the second, the third and the fourth and so on is inside.
 */
export type Crossings = readonly (readonly number[])[];

/** The first of `lines`, in ascending order, that lies at `y` or below it. */
function firstFrom(lines: readonly number[], y: number): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] ?? Infinity) < y) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Puts a crossing in its place; there are few on a line, mostly two. */
function insert(row: number[], x: number, error: number): void {
  let at = row.length;
  row.push(x, error);
  for (; at > 0 && (row[at - 2] as number) > x; at -= 2) {
    row[at] = row[at - 2] as number;
    row[at + 1] = row[at - 1] as number;
  }
  row[at] = x;
  row[at + 1] = error;
}

function cross(rows: readonly number[][], lines: readonly number[], { from, to, error }: BoundaryEdge): void {
  const [top, bottom] = from.y <= to.y ? [from, to] : [to, from];
  const slope = (bottom.x - top.x) / (bottom.y - top.y);
  // A line through a corner belongs to the edge below it alone.
  for (let at = firstFrom(lines, top.y); at < lines.length; at += 1) {
    const y = lines[at] ?? Infinity;
    if (y >= bottom.y) return;
    insert(rows[at] ?? [], top.x + slope * (y - top.y), error);
  }
}

/** Where each of `lines`, given by their y in ascending order, crosses `boundary`. */
export function crossingsOf({ edges }: Boundary, lines: readonly number[]): Crossings {
  const rows = lines.map((): number[] => []);
  for (const edge of edges) cross(rows, lines, edge);
  return rows;
}

/** What is no wider than this between two places that were worked out is nothing: far below anything that is cut. */
const ROUNDING = 1e-6;

/**
 * The middle of the first stretch of a line that is inside of `own` and outside of all `covers`; null when there is none.
 * Where a curve's error leaves it open, a place is covered.
 */
export function uncovered(own: readonly number[], covers: readonly (readonly number[])[]): number | null {
  for (let at = 0; at + 3 < own.length; at += 4) {
    const end = (own[at + 2] ?? 0) - (own[at + 3] ?? 0);
    let reached = (own[at] ?? 0) + (own[at + 1] ?? 0);
    let next = end;
    // Each turn goes on from what was reached to the furthest that a cover there reaches to.
    for (let further = reached; further < end - ROUNDING; reached = further) {
      next = end;
      for (const cover of covers)
        for (let from = 0; from + 3 < cover.length; from += 4) {
          const left = (cover[from] ?? 0) - (cover[from + 1] ?? 0);
          const right = (cover[from + 2] ?? 0) + (cover[from + 3] ?? 0);
          if (left <= reached + ROUNDING) further = Math.max(further, right);
          else next = Math.min(next, left);
        }
      if (further <= reached) return (reached + next) / 2;
    }
  }
  return null;
}

/** True when what is inside of one and what is inside of another share a stretch of a line, their errors left out. */
export function meetOnLine(one: readonly number[], other: readonly number[]): boolean {
  for (let at = 0; at + 3 < one.length; at += 4)
    for (let over = 0; over + 3 < other.length; over += 4) {
      const left = Math.max(one[at] ?? 0, other[over] ?? 0);
      const right = Math.min(one[at + 2] ?? 0, other[over + 2] ?? 0);
      if (right - left > ROUNDING) return true;
    }
  return false;
}
