import type { Look } from '@trimwell/sketch';

/** Where a motif is printed on its tile: x, y, degrees clockwise, and size; a negative size mirrors it left to right. */
type Place = readonly [x: number, y: number, turn?: number, size?: number];

/**
 * A motif printed in one ink on a tile 100 wide and high. `motif` is relative path data, only pairs of numbers; `reach` is
 * how far it comes from its place; `line` is the width of its stroke, 0 for a filled motif. The tile repeats without a
 * seam: what reaches over its edge is printed once more on the other side.
 */
interface Printing {
  readonly motif: string;
  readonly ink: number;
  readonly line: number;
  readonly reach: number;
  readonly places: readonly Place[];
  readonly opacity: number;
}

const DOT = 'l0 0';
const UPRIGHT = 'l0 100';
const LEVEL = 'l100 0';
const WHOLE: Place = [0, 0];

function print(
  motif: string,
  ink: number,
  line: number,
  reach: number,
  places: readonly Place[],
  opacity = 1,
): Printing {
  return { motif, ink, line, reach, places, opacity };
}

function band(from: number, width: number, ink: number, opacity?: number): Printing {
  return print(`l${width} 0 0 100 -${width} 0z`, ink, 0, 0, [[from, 0]], opacity);
}

function weft(from: number, width: number, ink: number, opacity?: number): Printing {
  return print(`l100 0 0 ${width} -100 0z`, ink, 0, 0, [[0, from]], opacity);
}

function short(value: number): number {
  return Math.round(value * 100) / 100;
}

function turned(motif: string, turn = 0, size = 1): string {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin, tall] = [Math.cos(angle), Math.sin(angle), Math.abs(size)];
  return motif.replace(/(-?[\d.]+) (-?[\d.]+)/g, (_pair, x: string, y: string) => {
    const [across, down] = [Number(x) * size, Number(y) * tall];
    return `${short(across * cos - down * sin)} ${short(across * sin + down * cos)}`;
  });
}

/** `motif`, which comes back to its start, so many times round it. */
function round(motif: string, times: number): string {
  return Array.from({ length: times }, (_, index) => turned(motif, (index * 360) / times)).join('');
}

const STAR = round('l3.95 -5.44 -3.95 -10.56 -3.95 10.56z', 5);
const FLAKE = round('l0 -17m0 7l5 -5m-5 5l-5 -5m5 5m0 10', 6);
const BLOSSOM = round('c-10 -5 -10 -17 -2 -18l2 2 2 -2c8 1 8 13 -2 18z', 5);
const LEAFLET = 'c2 -8 10 -11 17 -10 -2 7 -9 11 -17 10z';
const PAIR = `${LEAFLET}${turned(LEAFLET, 0, -1)}`;
const CHIP = 'l5 -1 3 4 -3 4 -5 -1z';
const HEART = 'm0 14c-22 -14 -16 -30 -6 -28 4 1 6 5 6 8 0 -3 2 -7 6 -8 10 -2 16 14 -6 28z';
const SPRIG = 'm-12 16q6 -16 22 -30m-17 20q-9 -2 -11 -11m17 2q11 5 17 1m-14 -5q-7 -5 -6 -12';
// Three strokes of a hand that writes: a loop, a small loop, an arch. Words are made of them and mean nothing.
const [L, E, N] = [
  'c4 -2 8 -14 5 -16 -4 -2 -5 16 1 16',
  'c3 -1 6 -6 4 -7 -3 -1 -4 7 1 7',
  'c0 -2 0 -5 0 -6 1 -1 4 -2 4 2l0 3c0 1 1 1 2 1',
];
const NOTES: readonly Place[] = [
  [12, 36],
  [30, 29],
  [48, 40],
  [72, 26],
  [10, 79],
  [36, 86],
  [56, 76],
  [80, 90],
];
const STAVES: readonly Place[] = [18, 25, 32, 39, 46, 68, 75, 82, 89, 96].map((y) => [0, y - 2]);
const ARCHES: readonly Place[] = [25, 50, 75, 100].flatMap((y, row) =>
  [0, 50].map((x): Place => [x + (row % 2) * 25, y]),
);

const PRINTS: { readonly [pattern in Look['pattern']]: readonly Printing[] } = {
  plain: [],
  stripe: [band(0, 34, 0), band(58, 8, 1)],
  'slant stripe': [
    print('l36 0 -100 100 -36 0z', 0, 0, 136, [WHOLE]),
    print('l10 0 -100 100 -10 0z', 1, 0, 110, [[60, 0]]),
  ],
  dot: [print(DOT, 0, 26, 13, [[25, 25]]), print(DOT, 1, 26, 13, [[75, 75]])],
  speckle: [
    print(CHIP, 0, 0, 12, [
      [8, 14],
      [52, 6, 40, 1.4],
      [84, 38, 110],
      [30, 46, 200, 1.3],
      [64, 70, 300],
      [14, 84, 60, 0.8],
    ]),
    print(CHIP, 1, 0, 12, [
      [34, 20, 80, 0.8],
      [74, 14, 200],
      [10, 58, 20, 1.4],
      [48, 92, 140, 1.2],
      [92, 74, 250, 0.7],
    ]),
    print(CHIP, 2, 0, 12, [
      [60, 36, 10, 0.7],
      [97, 5, 160, 1.2],
      [40, 68, 240, 0.8],
      [80, 96, 330],
      [22, 32, 120, 0.6],
    ]),
  ],
  gingham: [band(0, 50, 0, 0.5), weft(0, 50, 0, 0.5)],
  plaid: [
    band(8, 30, 0, 0.42),
    weft(8, 30, 0, 0.42),
    band(66, 6, 1, 0.8),
    weft(66, 6, 1, 0.8),
    band(80, 3, 2, 0.9),
    weft(80, 3, 2, 0.9),
  ],
  grid: [
    print(UPRIGHT, 1, 1.2, 0, [
      [37.5, 0],
      [62.5, 0],
      [87.5, 0],
    ]),
    print(LEVEL, 1, 1.2, 0, [
      [0, 37.5],
      [0, 62.5],
      [0, 87.5],
    ]),
    print(`m12.5 0${UPRIGHT}m-12.5 -87.5${LEVEL}`, 0, 3, 0, [WHOLE]),
  ],
  chevron: [
    print('l25 -25 25 25 25 -25 25 25', 0, 15, 110, [[0, 45]]),
    print('l25 -25 25 25 25 -25 25 25', 1, 5, 110, [[0, 80]]),
  ],
  star: [
    print(STAR, 0, 0, 17, [[26, 27]]),
    print(STAR, 1, 0, 17, [[76, 77]]),
    print(DOT, 1, 5, 3, [[76, 24]]),
    print(DOT, 0, 5, 3, [[25, 76]]),
  ],
  heart: [
    print(HEART, 0, 0, 20, [[26, 30]]),
    print(HEART, 1, 0, 20, [[75, 79, 0, 0.8]]),
    print(DOT, 2, 5, 3, [
      [76, 26],
      [24, 78],
    ]),
  ],
  snow: [
    print(FLAKE, 0, 2.4, 20, [[28, 28]]),
    print(FLAKE, 1, 1.8, 16, [[77, 72, 15, 0.75]]),
    print(DOT, 1, 5, 3, [
      [74, 22],
      [22, 70],
      [50, 50],
    ]),
    print(DOT, 0, 3, 2, [
      [60, 6],
      [94, 40],
      [40, 90],
      [4, 96],
    ]),
  ],
  sprig: [
    print(SPRIG, 0, 2.6, 30, [
      [27, 28],
      [75, 76, 0, -1],
    ]),
    print('m13 -19l0 0m7 21l0 0', 1, 6.4, 30, [
      [27, 28],
      [75, 76, 0, -1],
    ]),
  ],
  leaf: [
    print('m0 24c3 -16 -3 -32 0 -48', 1, 2, 26, [
      [26, 28],
      [76, 78],
    ]),
    print(`m0 18${PAIR}m0 -14${PAIR}m0 -14${turned(LEAFLET, -58)}`, 0, 0, 34, [
      [26, 28],
      [76, 78, 0, -1],
    ]),
    print(DOT, 2, 5, 3, [
      [76, 26],
      [26, 78],
    ]),
  ],
  blossom: [
    print('c8 10 12 18 10 30', 2, 2, 32, [
      [27, 26],
      [74, 74, 0, -0.8],
    ]),
    print(LEAFLET, 2, 0, 24, [
      [36, 48, -20, 0.9],
      [34, 42, 190, 0.9],
      [67, 92, 200, 0.8],
    ]),
    print(BLOSSOM, 0, 0, 20, [[27, 26, 10]]),
    print(BLOSSOM, 1, 0, 16, [[74, 74, -12, 0.82]]),
    print(DOT, 1, 9, 5, [
      [27, 26],
      [74, 22],
    ]),
    print(DOT, 0, 8, 4, [[74, 74]]),
    print(DOT, 3, 7, 4, [
      [16, 76],
      [88, 34],
    ]),
  ],
  shell: [
    print('c0 -33 50 -33 50 0', 0, 2.6, 52, ARCHES),
    print('m9 0c0 -21 32 -21 32 0m-22 0c0 -7 12 -7 12 0', 1, 1.6, 52, ARCHES),
  ],
  'wood grain': [
    print('c4 20 -3 35 1 50s-5 30 -1 50', 0, 1.6, 110, [
      [4, 0],
      [15, 40],
      [86, 70, 0, -1],
      [96, 20],
    ]),
    print('c-2 22 -14 30 -14 50s16 28 14 50', 0, 1.6, 120, [
      [42, 0],
      [58, 0, 0, -1],
    ]),
    print('c-1 22 -9 30 -9 50s10 28 9 50', 1, 1.2, 120, [
      [32, 0],
      [69, 0, 0, -1],
    ]),
    print('c-9 9 -9 21 0 30 9 -9 9 -21 0 -30z', 0, 1.6, 32, [[50, 35]]),
    print('c-9 9 -9 21 0 30 9 -9 9 -21 0 -30z', 1, 1.4, 16, [[50, 43, 0, 0.47]]),
    print('c3 16 -3 26 0 42', 1, 1.2, 44, [
      [9, 44],
      [91, 8],
      [50, 78],
      [79, 60],
    ]),
  ],
  lettering: [
    print(`${L}${E}${N}${E}m10 0${N}${L}${E}${E}${N}m9 0${E}${N}${L}`, 0, 1.8, 0, [[5, 30]]),
    print(`${N}${E}${E}${L}${N}m10 0${E}${L}${N}m9 0${L}${N}${E}${E}${N}`, 1, 1.8, 0, [[4, 80]]),
  ],
  music: [
    print(LEVEL, 1, 0.9, 0, STAVES),
    print('l2.6 -1.4', 0, 5.6, 6, NOTES),
    print('m5 -2l0 -19c1 4 7 5 6 11', 0, 1.2, 24, NOTES),
    print('l0 28', 1, 1.2, 0, [
      [90, 16],
      [68, 66],
    ]),
  ],
};

/** A path of a print, in hundredths of its repeat; `line` is 0 for a filled one. */
export interface PrintPath {
  readonly d: string;
  readonly ink: number;
  readonly line: number;
  readonly opacity: number;
}

function reaches(at: number, reach: number): readonly number[] {
  return [-100, 0, 100].filter((over) => over === 0 || (at + over + reach > 0 && at + over - reach < 100));
}

const drawn = new Map<Look['pattern'], readonly PrintPath[]>();

function stamped({ motif, ink, line, reach, places, opacity }: Printing): PrintPath {
  const d = places.flatMap(([x, y, turn, size]) => {
    const stamp = turned(motif, turn, size);
    return reaches(x, reach).flatMap((over) => reaches(y, reach).map((down) => `M${x + over} ${y + down}${stamp}`));
  });
  return { d: d.join(''), ink, line, opacity };
}

/** How many inks a print is printed in. */
export function printInks(pattern: Look['pattern']): number {
  return Math.max(0, ...PRINTS[pattern].map(({ ink }) => ink + 1));
}

/** The paths of one tile of a print, 100 wide and high, lowest first; none for plain paper. */
export function printPaths(pattern: Look['pattern']): readonly PrintPath[] {
  const known = drawn.get(pattern) ?? PRINTS[pattern].map(stamped);
  drawn.set(pattern, known);
  return known;
}
