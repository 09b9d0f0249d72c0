/** The value below which `share` of `values` lie (nearest rank). */
export function percentile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
}

/** Milliseconds that `work` takes. */
export function timed(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** A generator of whole numbers from 0 to `below - 1`, the same for the same seed (mulberry32, public domain). */
export function seeded(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
  };
}

/** Milliseconds of a fixed piece of arithmetic, so that figures from different machines can be set in proportion. */
export function baseline() {
  const once = () =>
    timed(() => {
      let sum = 0;
      for (let n = 0; n < 5_000_000; n += 1) sum = (sum + ((n * n) % 7)) | 0;
      if (sum === -1) throw new Error('never');
    });
  once();
  return percentile([once(), once(), once(), once(), once()], 0.5);
}

/** One line of a table: a name and its figures, each with a unit. */
export function row(name, ...figures) {
  console.log(`${name.padEnd(44)} ${figures.join('   ')}`);
}

/** `value` milliseconds, and how many times the baseline that is. */
export function against(value, base) {
  return `${value.toFixed(2)} ms (${(value / base).toFixed(2)} x)`;
}
