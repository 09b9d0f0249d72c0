import { readFileSync } from 'node:fs';
import { checkSketch, expectSketch, suspectsIn } from '@trimwell/sketch';
import { assembly, cardFacts, safeFindings, suspectsOf } from '@trimwell/sketch/assembly';
import { against, baseline, percentile, row, seeded, timed } from './measure.mjs';

const PIECES = 40;
const MARK = 1016;
const demo = new URL('../../demo/sketches/hedgerow-wreath.json', import.meta.url);

function cardOf(pieces) {
  const sketch = expectSketch(JSON.parse(readFileSync(demo, 'utf8')));
  return { ...sketch, pieces: [...sketch.pieces, ...pieces(sketch).slice(0, PIECES - sketch.pieces.length)] };
}

/** A card as it may be built: panels on foam, a strip across each, leaves on the panels, a row of blossoms along the foot. */
function built(sketch) {
  const strip = sketch.pieces.find(({ id }) => id === 'strip');
  const piece = (id, shape, x, y, width, height, more = {}) => ({
    ...strip,
    id,
    shape,
    punched: {},
    x: x * MARK,
    y: y * MARK,
    width: width * MARK,
    height: height * MARK,
    ...more,
  });
  const panels = [0, 1, 2].flatMap((n) => [
    piece(`panel-${n}`, 'rectangle', 4 + 20 * n, 8, 18, 40, { raise: 2 * MARK }),
    piece(`band-${n}`, 'rectangle', 4 + 20 * n, 16, 18, 6),
    ...[0, 1, 2, 3, 4].map((leaf) =>
      piece(`leaf-${n}-${leaf}`, 'ellipse', 6 + 20 * n + 2 * leaf, 24 + 4 * leaf, 6, 4, { tilt: 15 * leaf }),
    ),
  ]);
  const foot = Array.from({ length: 12 }, (_, n) =>
    piece(`blossom-${n}`, 'ellipse', 4 + 5 * n, 66 + (n % 2) * 3, 6, 6),
  );
  return [...panels, ...foot];
}

/** Small pieces in rows, none over another. */
function inRows(sketch) {
  const strip = sketch.pieces.find(({ id }) => id === 'strip');
  return Array.from({ length: PIECES }, (_, n) => ({
    ...strip,
    id: `small-${n}`,
    punched: {},
    x: 4 * MARK + (n % 6) * 10 * MARK,
    y: 6 * MARK + Math.floor(n / 6) * 13 * MARK,
    width: 8 * MARK,
    height: (8 + (n % 3)) * MARK,
  }));
}

/** Pieces of every shape strewn over the card: rounded, tilted, punched, oval, many of them hidden by others. */
function strewn(seed, hidden) {
  return (sketch) => {
    const next = seeded(seed);
    const [strip] = sketch.pieces.filter(({ id }) => id === 'strip');
    const punch = sketch.punches[0]?.id;
    return Array.from({ length: PIECES }, (_, n) => {
      const radius = next(3) * 2 * MARK;
      return {
        ...strip,
        id: `strewn-${n}`,
        shape: ['rectangle', 'rectangle', 'ellipse', 'banner', 'tag'][next(5)],
        x: next(hidden ? 24 : 50) * MARK,
        y: next(hidden ? 30 : 70) * MARK,
        width: (8 + next(hidden ? 40 : 24)) * MARK,
        height: (8 + next(hidden ? 50 : 24)) * MARK,
        tilt: [0, 0, 12, -7, 30][next(5)],
        corners: { tl: radius, tr: radius, br: radius, bl: radius },
        punched: next(3) === 0 && punch ? { bottom: punch, top: punch } : {},
      };
    });
  };
}

/** Rounds of all sketches: in the first ones the code itself is still new to the machine, as on the first look at a table. */
const FIRST = 1;
const ROUNDS = 10;
/** Cards of each kind. */
const CARDS = 12;

/** Every check of pieces and of the card as a whole, and no mend. */
function looked(sketch) {
  return [suspectsIn(sketch), suspectsOf(cardFacts(sketch))];
}

function figures(name, sketches, base, work) {
  const times = Array.from({ length: ROUNDS }, () =>
    sketches.map((sketch) => {
      const fresh = structuredClone(sketch);
      return timed(() => work(fresh));
    }),
  );
  const first = times.slice(0, FIRST).flat();
  const later = times.slice(FIRST).flat();
  row(
    name,
    `median ${against(percentile(later, 0.5), base)}`,
    `95 % ${against(percentile(later, 0.95), base)}`,
    `at first, median ${against(percentile(first, 0.5), base)}`,
  );
}

/**
 * Milliseconds of all checks of a card of forty pieces, nothing of it known before; of the checks of pieces with each mend tried; of all
 * that the tray of building shows; and of all that a worker does for a table.
 */
export async function bench() {
  const base = baseline();
  const often = (sketch) => Array.from({ length: CARDS }, () => sketch);
  const strewnFrom = (seed, hidden) => Array.from({ length: CARDS }, (_, n) => cardOf(strewn(seed + n, hidden)));
  for (const [name, sketches] of [
    ['as built', often(cardOf(built))],
    ['in rows', often(cardOf(inRows))],
    ['strewn', strewnFrom(1, false)],
    ['strewn, mostly hidden', strewnFrom(101, true)],
  ]) {
    figures(`all checks, ${PIECES} pieces ${name}`, sketches, base, looked);
    figures(`findings with their mends, ${PIECES} pieces ${name}`, sketches, base, checkSketch);
    figures(`assembly, ${PIECES} pieces ${name}`, sketches, base, assembly);
    figures(`all with mends, ${PIECES} pieces ${name}`, sketches, base, (sketch) => safeFindings(assembly(sketch)));
  }
}
