/**
 * Sums of `sizes` (each with the blade's kerf behind it, each used at most `most` times) that fit into `length`, the
 * last kerf left off: the places where a cut can be worth making (normal patterns; Herz 1972, Christofides and Whitlock
 * 1977). Rising; null when there are more than `limit`.
 */
export function cutPoints(
  length: number,
  sizes: readonly { readonly size: number; readonly most: number }[],
  kerf: number,
  limit: number,
): readonly number[] | null {
  const reach = length + kerf;
  let sums = new Set<number>([0]);
  for (const { size, most } of sizes) {
    const step = size + kerf;
    const next = new Set(sums);
    for (const start of sums) {
      let sum = start;
      for (let times = 0; times < most && sum + step <= reach; times += 1) {
        sum += step;
        next.add(sum);
        if (next.size > limit + 1) return null;
      }
    }
    sums = next;
  }
  sums.delete(0);
  return [...sums].map((sum) => sum - kerf).sort((a, b) => a - b);
}

/** Demands of equal sizes added up, so that two kinds of one width count as one size. */
export function mergeSizes(
  sizes: readonly { readonly size: number; readonly most: number }[],
): readonly { readonly size: number; readonly most: number }[] {
  const merged = new Map<number, number>();
  for (const { size, most } of sizes) merged.set(size, (merged.get(size) ?? 0) + most);
  return [...merged].map(([size, most]) => ({ size, most })).sort((a, b) => b.size - a.size);
}

/** Multiples of a size that are tried: all the first ones, then ever wider apart, so that few reach across any sheet. */
function multiples(most: number): readonly number[] {
  const times: number[] = [];
  for (let next = 1; next <= most; next = Math.max(next + 1, Math.floor(next * 1.3))) times.push(next);
  return times;
}

/** Multiples of single sizes may be this many times as many as places are asked for; more are thinned out. */
const MOST_PURE = 4;

/** At most `most` of `points`, spread evenly over them, the first and the last among them. */
function thinned(points: readonly number[], most: number): readonly number[] {
  if (points.length <= most) return points;
  return Array.from(
    { length: most },
    (_, index) => points[Math.round((index * (points.length - 1)) / (most - 1))] as number,
  );
}

/** Multiples of one size, and one other size beside them: a small set of good cuts for when `cutPoints` has too many. */
export function fewPoints(
  length: number,
  sizes: readonly { readonly size: number; readonly most: number }[],
  kerf: number,
  limit: number,
): readonly number[] {
  const reach = length + kerf;
  const sums = new Set<number>();
  for (const { size, most } of sizes) {
    const fitting = Math.min(most, Math.floor(reach / (size + kerf)));
    for (const times of multiples(fitting)) sums.add(times * (size + kerf));
  }
  const pure = thinned(
    [...sums].sort((a, b) => a - b),
    MOST_PURE * limit,
  );
  if (pure.length < sums.size) return pure.map((sum) => sum - kerf);
  for (const sum of pure) {
    for (const { size } of sizes) {
      if (sums.size >= limit) break;
      if (sum + size + kerf <= reach) sums.add(sum + size + kerf);
    }
  }
  return [...sums].sort((a, b) => a - b).map((sum) => sum - kerf);
}

/** Index of the largest of `points` (rising) not beyond `at`; -1 when there is none. */
export function floorIndex(points: readonly number[], at: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] as number) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** For each point and each one below it, the index of the largest point in what lies between them; -1 for none. */
export function betweenPoints(points: readonly number[]): readonly Int32Array[] {
  return points.map((point, index) => {
    const between = new Int32Array(index);
    let at = index - 1;
    for (let from = 0; from < index; from += 1) {
      while (at >= 0 && (points[at] as number) > point - (points[from] as number)) at -= 1;
      between[from] = at;
    }
    return between;
  });
}
