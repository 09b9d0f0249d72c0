import type { Sketch } from '@trimwell/sketch';
import type { Words } from './options.js';

/** The flags that switch ways to save paper on for one run, whatever the sketch says. */
export const SAVING_FLAGS = ['hidden-centres', 'stopped-cuts'] as const;

/** How they stand in a usage line. */
export const SAVINGS_USAGE = '[--hidden-centres] [--stopped-cuts]';

/** `sketch` with the ways to save paper that its batch or the command line switches on. */
export function withSavings(sketch: Sketch, { flags }: Words): Sketch {
  const { batch } = sketch;
  const hiddenCentres = batch.hiddenCentres || flags.has('hidden-centres');
  const stoppedCuts = batch.stoppedCuts || flags.has('stopped-cuts');
  return { ...sketch, batch: { ...batch, hiddenCentres, stoppedCuts } };
}
