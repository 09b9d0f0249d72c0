import { configureGlobal } from 'fast-check';

/**
 * Tests of random examples see the same ones in every run, so that a run can be repeated. `SEED=7 npx vitest run ...` tries others:
 * do that after changing what such a test covers, and give what it finds a test of its own.
 */
const USUAL = '20261126';

const { SEED = USUAL } = process.env;
if (!/^\d{1,9}$/.test(SEED))
  throw new RangeError(`SEED is "${SEED}"; it has to be a whole number of up to nine digits.`);
configureGlobal({ seed: Number(SEED) });
