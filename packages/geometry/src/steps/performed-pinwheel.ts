/** A cut that stopped inside its part, `at` from the part's left or top edge. */
export interface Slit {
  readonly direction: 'vertical' | 'horizontal';
  readonly at: number;
  readonly start: 'left' | 'top' | 'right' | 'bottom';
  readonly length: number;
}

/** A rectangle as left, top, right and bottom edge, from its part's own corner. */
export type Edges = readonly [left: number, top: number, right: number, bottom: number];

const MIRRORED = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;

/**
 * The five parts into which four slits turn a `w x h` part, if they meet as a pinwheel does; null when they leave it
 * in one piece or in other pieces. It shares nothing with the planner or the step list.
 */
export function turnedParts(slits: readonly Slit[], w: number, h: number): readonly Edges[] | null {
  const clockwise = clockwiseParts(slits, w, h);
  if (clockwise) return clockwise;
  const mirrored = slits.map((slit) => ({
    ...slit,
    at: slit.direction === 'vertical' ? w - slit.at : slit.at,
    start: MIRRORED[slit.start],
  }));
  return (
    clockwiseParts(mirrored, w, h)?.map(([left, top, right, bottom]) => [w - right, top, w - left, bottom]) ?? null
  );
}

function clockwiseParts(slits: readonly Slit[], w: number, h: number): readonly Edges[] | null {
  const find = (direction: Slit['direction'], start: Slit['start']): Slit | undefined =>
    slits.find((slit) => slit.direction === direction && slit.start === start);
  const upper = find('horizontal', 'left');
  const right = find('vertical', 'top');
  const lower = find('horizontal', 'right');
  const left = find('vertical', 'bottom');
  if (slits.length !== 4 || !upper || !right || !lower || !left) return null;
  const [x1, x2, y1, y2] = [left.at, right.at, upper.at, lower.at];
  const meets =
    x1 <= x2 &&
    y1 <= y2 &&
    upper.length === x2 &&
    right.length === y2 &&
    lower.length === w - x1 &&
    left.length === h - y1;
  if (!meets) return null;
  return [
    [0, 0, x2, y1],
    [x2, 0, w, y2],
    [x1, y2, w, h],
    [0, y1, x1, h],
    [x1, y1, x2, y2],
  ];
}
