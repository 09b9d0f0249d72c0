import { flattenOutline, type PlacedPiece, pieceOutline } from '@trimwell/geometry';

/**
 * A raster of level lines over a face: along each line, where every piece lies, from its outline in chords far finer than any region
 * has, turned by school trigonometry. It shares no code with the regions but the outline of a piece.
 */

/** Chords of each arc or curve. */
const CHORDS = 96;

interface Edge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
}

function edgesOf({ shape, x, y, tilt }: PlacedPiece): readonly Edge[] {
  const { outline, holes } = pieceOutline(shape);
  const angle = (tilt * Math.PI) / 180;
  const [middleX, middleY] = [shape.width / 2, shape.height / 2];
  const turned = [outline, ...holes].map((ring) =>
    flattenOutline(ring, CHORDS).map((point) => {
      const [dx, dy] = [point.x - middleX, point.y - middleY];
      return {
        x: x + middleX + dx * Math.cos(angle) - dy * Math.sin(angle),
        y: y + middleY + dx * Math.sin(angle) + dy * Math.cos(angle),
      };
    }),
  );
  return turned.flatMap((ring) =>
    ring.slice(1).map((to, at) => {
      const from = ring[at] ?? to;
      return { ax: from.x, ay: from.y, bx: to.x, by: to.y };
    }),
  );
}

type Stretch = readonly [from: number, to: number];

/** Where the line at `y` runs within a piece: between odd and even crossings. */
function stretchesAt(edges: readonly Edge[], y: number): readonly Stretch[] {
  const crossings: number[] = [];
  for (const { ax, ay, bx, by } of edges)
    if (ay > y !== by > y) crossings.push(ax + ((bx - ax) * (y - ay)) / (by - ay));
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((from, at): readonly Stretch[] => {
    const to = crossings[at + 1];
    return at % 2 === 0 && to !== undefined ? [[from, to]] : [];
  });
}

function minus(stretches: readonly Stretch[], [from, to]: Stretch): readonly Stretch[] {
  return stretches.flatMap(([left, right]): readonly Stretch[] => {
    const parts: readonly Stretch[] = [
      [left, Math.min(right, from)],
      [Math.max(left, to), right],
    ];
    return parts.filter(([a, b]) => a < b);
  });
}

/**
 * The visible area of each piece in square ticks, as the sum over lines `gap` apart of what shows along them, and of each pair what it
 * shares.
 */
export function rasterOf(stack: readonly PlacedPiece[], gap: number) {
  const edges = stack.map(edgesOf);
  const ys = edges.flatMap((each) => each.flatMap(({ ay }) => ay));
  const visible = stack.map(() => 0);
  const shared = stack.map(() => stack.map(() => 0));
  for (let y = Math.min(...ys) + gap / 2; y < Math.max(...ys); y += gap) {
    const lines = edges.map((each) => stretchesAt(each, y));
    lines.forEach((line, at) => {
      const shown = lines.slice(at + 1).reduce((left, over) => over.reduce(minus, left), line);
      visible[at] = (visible[at] ?? 0) + gap * shown.reduce((sum, [from, to]) => sum + to - from, 0);
      lines.slice(at + 1).forEach((other, after) => {
        let common = 0;
        for (const [a, b] of line) for (const [c, d] of other) common += Math.max(0, Math.min(b, d) - Math.max(a, c));
        const row = shared[at] as number[];
        row[at + 1 + after] = (row[at + 1 + after] ?? 0) + gap * common;
      });
    });
  }
  return { visible, shared };
}
