import { configureGlobal } from 'fast-check';

/**
 * Tests of random examples see the same ones in every run, so that a run can be repeated. `SEED=7 npx vitest run ...` tries others:
 * do that after changing what such a test covers, and give what it finds a test of its own.
 */
const SEED = 20_261_126;

const wanted = process.env.SEED;
if (wanted !== undefined && !/^\d{1,9}$/.test(wanted))
  throw new RangeError(`SEED is "${wanted}"; it has to be a whole number of up to nine digits.`);
configureGlobal({ seed: wanted === undefined ? SEED : Number(wanted) });
