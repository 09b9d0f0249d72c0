import { type Outline, type Point, polygon } from '@trimwell/geometry';
import type { GroupItem, Item } from '../drawing/drawing.js';
import { FLAT, LEAN, type StackSlip } from './stack-layout.js';

/** Foam pads stand at these shares of the front edge, each so many ems wide, but no wider than this share of the edge. */
const PADS = [0.2, 0.5, 0.8];
const PAD_EMS = 1.1;
const PAD_SHARE = 0.16;

function at(px: number, py: number): Point {
  return { x: px - py * LEAN, y: py * FLAT };
}

function upperSide({ x, y, width, height }: StackSlip['rect']): Outline {
  return polygon([at(x, y), at(x + width, y), at(x + width, y + height), at(x, y + height)]);
}

/** The front and the right edge of the paper, as thick as it is drawn. */
function cutEdge({ rect: { x, y, width, height }, thick }: StackSlip): Outline {
  const [left, right, back] = [at(x, y + height), at(x + width, y + height), at(x + width, y)];
  const below = (point: Point): Point => ({ x: point.x, y: point.y + thick });
  return polygon([left, right, back, below(back), below(right), below(left)]);
}

/** The pads under the front edge, from the paper down to what it lies on. */
function foamPads({ rect: { x, y, width, height }, thick, foam }: StackSlip, size: number): readonly Outline[] {
  if (foam <= 0) return [];
  const front = at(x, y + height);
  const pad = Math.min(size * PAD_EMS, width * PAD_SHARE);
  return PADS.map((share) => {
    const left = front.x + width * share - pad / 2;
    const top = front.y + thick;
    return polygon([
      { x: left, y: top },
      { x: left + pad, y: top },
      { x: left + pad, y: top + foam },
      { x: left, y: top + foam },
    ]);
  });
}

/** One slip as a group: its shadow, the foam it stands on, its cut edge and its upper side. */
export function drawSlip(slip: StackSlip, size: number): GroupItem {
  const key = `slip:${slip.id}`;
  const common = { kind: 'path', piece: slip.id } as const;
  const outline = upperSide(slip.rect);
  const fill = { paper: slip.paper };
  const items: readonly Item[] = [
    { ...common, key: `${key}:shadow`, role: 'shadow', outline },
    ...foamPads(slip, size).map(
      (pad, index): Item => ({ ...common, key: `${key}:foam${index}`, role: 'foam', outline: pad }),
    ),
    { ...common, key: `${key}:edge`, role: 'paper', outline: cutEdge(slip), fill },
    { ...common, key: `${key}:side`, role: 'outline', outline, fill },
  ];
  const nought = { x: 0, y: 0 };
  return {
    kind: 'group',
    key,
    role: 'outline',
    piece: slip.id,
    origin: nought,
    move: { x: 0, y: slip.level },
    turn: 0,
    items,
  };
}
