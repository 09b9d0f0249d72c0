/** A reader of the SVG files for cutting machines that shares nothing with their writer: from the text alone. */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface ReadPath {
  readonly box: Box;
  readonly closed: boolean;
  /** Within the path, positive when it is walked clockwise on the screen; and the length of its line. */
  readonly area: number;
  readonly length: number;
  readonly points: readonly (readonly [number, number])[];
}

export interface ReadGroup {
  readonly attributes: ReadonlyMap<string, string>;
  readonly paths: readonly ReadPath[];
}

export interface ReadSvg {
  readonly width: number;
  readonly height: number;
  readonly unit: string;
  readonly viewBox: readonly number[];
  /** By id; others than these two are there as well, should a file have them. */
  readonly groups: { readonly cut?: ReadGroup; readonly score?: ReadGroup };
  readonly tags: readonly string[];
}

const STEPS = 64;
type Pair = readonly [number, number];

/** Points on an elliptic arc without rotation, less than half a turn: SVG 2, appendix B.2.4, radii made larger as in B.2.5. */
function arc([x1, y1]: Pair, [x2, y2]: Pair, wideX: number, wideY: number, sweep: boolean): readonly Pair[] {
  const [hx, hy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const lambda = (hx / wideX) ** 2 + (hy / wideY) ** 2;
  const grow = Math.max(1, Math.sqrt(lambda));
  const [rx, ry] = [wideX * grow, wideY * grow];
  const under = rx * rx * ry * ry - rx * rx * hy * hy - ry * ry * hx * hx;
  const factor = Math.sqrt(Math.max(0, under) / (rx * rx * hy * hy + ry * ry * hx * hx)) * (sweep ? 1 : -1);
  const [cx, cy] = [(factor * rx * hy) / ry, (-factor * ry * hx) / rx];
  const [from, to] = [Math.atan2((hy - cy) / ry, (hx - cx) / rx), Math.atan2((-hy - cy) / ry, (-hx - cx) / rx)];
  let span = to - from;
  if (sweep && span < 0) span += 2 * Math.PI;
  if (!sweep && span > 0) span -= 2 * Math.PI;
  return Array.from({ length: STEPS }, (_, n): Pair => {
    const angle = from + (span * (n + 1)) / STEPS;
    return [cx + (x1 + x2) / 2 + rx * Math.cos(angle), cy + (y1 + y2) / 2 + ry * Math.sin(angle)];
  });
}

function cubic([x0, y0]: Pair, numbers: readonly number[]): readonly Pair[] {
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = numbers;
  return Array.from({ length: STEPS }, (_, n): Pair => {
    const t = (n + 1) / STEPS;
    const of = (a: number, b: number, c: number, d: number): number =>
      (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;
    return [of(x0, x1, x2, x3), of(y0, y1, y2, y3)];
  });
}

/** One path: M first, then L, A, C in absolute figures, Z last. @throws Error for anything else */
export function readPath(data: string): ReadPath {
  const points: Pair[] = [];
  let closed = false;
  for (const [, letter = '', rest = ''] of data.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = rest.trim() === '' ? [] : rest.trim().split(/\s+/).map(Number);
    if (closed || numbers.some((number) => !Number.isFinite(number))) throw new Error(`Cannot read the path ${data}`);
    const here = points.at(-1) ?? [0, 0];
    const [a = 0, b = 0] = numbers;
    const key = `${letter}${numbers.length}`;
    if (key === 'M2' && points.length === 0) points.push([a, b]);
    else if (key === 'L2') points.push([a, b]);
    else if (key === 'A7' && numbers[2] === 0 && numbers[3] === 0)
      points.push(...arc(here, [numbers[5] ?? 0, numbers[6] ?? 0], a, b, numbers[4] === 1));
    else if (key === 'C6') points.push(...cubic(here, numbers));
    else if (key === 'Z0') closed = true;
    else throw new Error(`Cannot read ${letter}${rest} of the path ${data}`);
  }
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const box = { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
  let [area, length] = [0, 0];
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    area += (x * nextY - nextX * y) / 2;
    length += Math.hypot(nextX - x, nextY - y);
  });
  return { box, closed, area, length, points };
}

function attributesOf(text: string): ReadonlyMap<string, string> {
  return new Map([...text.matchAll(/([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, value]));
}

/** The whole file. @throws Error for a path outside a group, or one that cannot be read */
export function readCutSvg(text: string): ReadSvg {
  const root = attributesOf(/<svg ([^>]*)>/.exec(text)?.[1] ?? '');
  const [, width = '', unit = ''] = /^([\d.]+)(in|mm)$/.exec(root.get('width') ?? '') ?? [];
  const groups = Object.fromEntries(
    [...text.matchAll(/<g ([^>]*)>([\s\S]*?)<\/g>/g)].map(([, head = '', body = '']) => {
      const attributes = attributesOf(head);
      const paths = [...body.matchAll(/<path d="([^"]*)"\/>/g)].map(([, data = '']) => readPath(data));
      if (body.replace(/<path d="[^"]*"\/>/g, '').trim() !== '')
        throw new Error(`A group has more than paths: ${body}`);
      return [attributes.get('id') ?? '', { attributes, paths }];
    }),
  );
  return {
    width: Number(width),
    height: Number((root.get('height') ?? '').replace(unit, '')),
    unit,
    viewBox: (root.get('viewBox') ?? '').split(' ').map(Number),
    groups,
    tags: [...new Set([...text.matchAll(/<([a-z]+)[ >]/g)].map(([, tag = '']) => tag))],
  };
}
