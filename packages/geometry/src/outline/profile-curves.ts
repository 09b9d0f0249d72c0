import type { EdgePoint, EdgeStep, ProfileShape } from './punch-profile.js';

/** Share of a half wave at which a cubic's handles come nearest to a cosine. */
const HANDLE = 0.3642;

type Cubic = readonly [EdgePoint, EdgePoint, EdgePoint, EdgePoint];

/** A half wave between two points: level at both ends. */
function halfWave(from: EdgePoint, to: EdgePoint): Cubic {
  const length = to.along - from.along;
  return [
    from,
    { along: from.along + HANDLE * length, in: from.in },
    { along: from.along + (1 - HANDLE) * length, in: to.in },
    to,
  ];
}

function between(a: EdgePoint, b: EdgePoint, t: number): EdgePoint {
  return { along: a.along + (b.along - a.along) * t, in: a.in + (b.in - a.in) * t };
}

/** The part of a cubic before and after `t` (de Casteljau). */
function splitCubic([a, b, c, d]: Cubic, t: number): readonly [Cubic, Cubic] {
  const [ab, bc, cd] = [between(a, b, t), between(b, c, t), between(c, d, t)];
  const [abc, bcd] = [between(ab, bc, t), between(bc, cd, t)];
  const middle = between(abc, bcd, t);
  return [
    [a, ab, abc, middle],
    [middle, bcd, cd, d],
  ];
}

function alongAt([a, b, c, d]: Cubic, t: number): number {
  const u = 1 - t;
  return u * u * u * a.along + 3 * u * u * t * b.along + 3 * u * t * t * c.along + t * t * t * d.along;
}

/** The parameter at which a cubic, which only ever goes forward, is `along`: found by halving, to the last bit. */
function parameterAt(cubic: Cubic, along: number): number {
  let [low, high] = [0, 1];
  for (let n = 0; n < 52; n += 1) {
    const middle = (low + high) / 2;
    if (alongAt(cubic, middle) < along) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The cubic between `from` and `to`, or null when it lies outside. */
function clipped(cubic: Cubic, from: number, to: number): Cubic | null {
  const [start, , , end] = cubic;
  if (end.along <= from || start.along >= to) return null;
  const tail = start.along < from ? splitCubic(cubic, parameterAt(cubic, from))[1] : cubic;
  return end.along > to ? splitCubic(tail, parameterAt(tail, to))[0] : tail;
}

/** A turning point of a profile: share of the repeat along it, share of the depth inside the edge. */
export type Turn = readonly [along: number, inside: number];

/** The half waves of one repeat through its turning points, from joint to joint. */
function wavesOf(turns: readonly Turn[], start: number, repeat: number, depth: number): readonly Cubic[] {
  const points = turns.map(([along, inside]): EdgePoint => ({ along: start + along * repeat, in: inside * depth }));
  return points.slice(1).map((to, index) => halfWave(points[index] as EdgePoint, to));
}

/** A smooth profile that is level at each of its `turns`; the first lies at 0, the last at 1, both equally deep. */
export function curvedProfile(turns: readonly Turn[]): ProfileShape {
  return {
    depth: (along, start, { repeat, depth }) => {
      const waves = wavesOf(turns, start, repeat, depth);
      const wave = waves.find(([, , , end]) => along <= end.along) ?? (waves.at(-1) as Cubic);
      return splitCubic(wave, parameterAt(wave, along))[0][3].in;
    },
    steps: (from, to, start, { repeat, depth }) =>
      wavesOf(turns, start, repeat, depth).flatMap((wave): EdgeStep[] => {
        const part = clipped(wave, from, to);
        if (!part) return [];
        const [, control1, control2, end] = part;
        return [{ kind: 'curve', control1, control2, to: end }];
      }),
  };
}

/** A profile of straight lines through its `turns`, which go forward. */
export function straightProfile(turns: readonly Turn[]): ProfileShape {
  const depth: ProfileShape['depth'] = (along, start, punch) => {
    const share = (along - start) / punch.repeat;
    const next = turns.findIndex(([at]) => share <= at);
    const [b, deepB] = turns[next < 0 ? turns.length - 1 : Math.max(1, next)] as Turn;
    const [a, deepA] = turns[(next < 0 ? turns.length - 1 : Math.max(1, next)) - 1] as Turn;
    const part = Math.max(0, Math.min(1, (share - a) / (b - a)));
    return (deepA + (deepB - deepA) * part) * punch.depth;
  };
  return {
    depth,
    steps: (from, to, start, punch) => [
      ...turns
        .map(([at, inside]): EdgePoint => ({ along: start + at * punch.repeat, in: inside * punch.depth }))
        .filter(({ along }) => along > from && along < to)
        .map((point): EdgeStep => ({ kind: 'line', to: point })),
      { kind: 'line', to: { along: to, in: depth(to, start, punch) } },
    ],
  };
}
