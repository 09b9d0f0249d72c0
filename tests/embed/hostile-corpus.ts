import { seeded } from '../bench/measure.mjs';
import { at, full, type Hostile, json, type Loose } from './hostile.js';
import { hostileCodes } from './hostile-codes.js';
import { hostileKeys, hostileShapes, soundTrap, trap } from './hostile-shapes.js';
import { hostileTexts, hostileValues } from './hostile-values.js';
import { HOSTILE_TEXTS } from './hostile-words.js';
import { largeSketches } from './large-sketches.js';

export type { Hostile } from './hostile.js';

/** Anything anywhere: one place of the sample with one strange value, chosen by a seed. */
function anything(count: number): readonly Hostile[] {
  const pick = seeded(20261126);
  const strange: readonly unknown[] = [
    ...Object.values(HOSTILE_TEXTS),
    ...[null, true, false, 0, -0, 1, -1, 1.5, 1e21, 1e-7, 2 ** 31, [], {}, [[]], [null], '1', 'in', '4 in', '#000000'],
    ...[{ '': 0 }, { length: 1e9 }, Array.from({ length: 300 }, () => ({}))],
  ];
  return Array.from({ length: count }, (_, index) => {
    const document = full();
    const path: (string | number)[] = [];
    for (let value: unknown = document; typeof value === 'object' && value !== null; ) {
      const choices = Object.keys(value);
      const key = choices[pick(Math.max(1, choices.length))];
      if (key === undefined || (path.length > 0 && pick(4) === 0)) break;
      path.push(Array.isArray(value) ? Number(key) : key);
      value = (value as Loose)[key];
    }
    const value = strange[pick(strange.length)];
    return json(
      `anything ${index}: ${path.join('.')} is ${JSON.stringify(value)?.slice(0, 30)}`,
      at(document, path, value),
      null,
    );
  });
}

/** The whole corpus; the same at each call. */
export function hostileCorpus(): readonly Hostile[] {
  return [
    ...hostileTexts(),
    ...hostileValues(),
    ...hostileKeys(),
    ...hostileShapes(),
    trap(),
    soundTrap(),
    ...largeSketches(full()).map(({ name, document }) => ({ ...json(name, document, 'read'), large: true as const })),
    ...anything(120),
    ...hostileCodes(JSON.stringify(full())),
  ];
}
