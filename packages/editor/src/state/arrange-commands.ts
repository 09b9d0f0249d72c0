import { type Axis, type Length, nearestStep, ticks } from '@trimwell/geometry';
import { type Edit, rulerStep, type Sketch } from '@trimwell/sketch';
import { type Body, type Box, boxAround, leadBody, selectedBodies } from './group.js';
import { onMark } from './place-commands.js';
import { leastSide } from './resize.js';
import { extentOf } from './select-commands.js';
import type { Command, EditorState } from './state.js';

/** Where pieces line up: at the near edges (left, top), the middles, or the far edges (right, bottom). */
export type Line = 'near' | 'middle' | 'far';

const SIZE = { x: 'width', y: 'height' } as const;

/** A new place of a body along one axis, and how far it is from where it would be exactly. */
interface Rest {
  readonly body: Body;
  readonly to: Length;
  /** Ticks between the exact place and the mark that was taken instead; 0 when the place is exact. */
  readonly off: number;
}

/** What arranging comes to: the edits, and the largest distance that was given away to the marks of the ruler. */
export interface Arrangement {
  readonly edits: readonly Edit[];
  readonly off: Length;
}

/**
 * Whether places are brought to marks: when everything that takes part lies on them. Who has left the ruler on purpose,
 * with a typed place or size, gets what was asked for to the tick.
 */
function keepsMarks(bodies: readonly Body[], axis: Axis, step: Length, card?: Length): boolean {
  return (
    (card === undefined || onMark(card, step)) &&
    bodies.every(({ handle }) => onMark(handle[axis], step) && onMark(handle[SIZE[axis]], step))
  );
}

/**
 * The whole tick or mark nearest to `exact`; halfway, the one to the left or above. A tilted piece's box lies anywhere,
 * so it is its own untilted place that comes to the mark.
 */
function rest(body: Body, axis: Axis, exact: number, step: Length | null): Rest {
  const own = body.handle[axis] + (exact - extentOf(body.handle)[axis]);
  const to = step === null ? ticks(Math.ceil(own - 0.5)) : ticks(-nearestStep(-own, step) || 0);
  return { body, to, off: Math.abs(to - own) };
}

function arrangement(rests: readonly Rest[], axis: Axis): Arrangement {
  const edits = rests.flatMap(({ body: { handle }, to }): readonly Edit[] =>
    to === handle[axis] ? [] : [{ do: 'place', piece: handle.id, x: handle.x, y: handle.y, [axis]: to }],
  );
  return { edits, off: ticks(Math.ceil(Math.max(0, ...rests.map(({ off }) => off)))) };
}

function lineOf(box: Box, axis: Axis, line: Line): number {
  return box[axis] + (line === 'near' ? 0 : line === 'middle' ? box[SIZE[axis]] / 2 : box[SIZE[axis]]);
}

/**
 * The middle to line up to when places come to marks: that of the longest piece once it lies on its mark, since the box
 * around all is its own then, and lining up again changes nothing.
 */
function ruledMiddle(bodies: readonly Body[], axis: Axis, middle: number, step: Length): number {
  const longest = bodies.reduce((best, body) =>
    extentOf(body.handle)[SIZE[axis]] > extentOf(best.handle)[SIZE[axis]] ? body : best,
  );
  if (longest.locked) return middle;
  const half = extentOf(longest.handle)[SIZE[axis]] / 2;
  const { to } = rest(longest, axis, middle - half, step);
  return extentOf(longest.handle)[axis] + (to - longest.handle[axis]) + half;
}

const NOTHING: Arrangement = { edits: [], off: ticks(0) };

/**
 * The selected pieces lined up along `axis` within the box around them all, or a single one on the card. Locked pieces
 * count for the box and stay. When all lie on marks of the ruler they come to marks again, so that a middle between two
 * marks is missed by half a mark; else the places are exact, to the tick.
 */
export function alignment(state: EditorState, axis: Axis, line: Line): Arrangement {
  const { sketch } = state;
  const bodies = selectedBodies(state);
  const free = bodies.filter(({ locked }) => !locked);
  const onCard = bodies.length === 1;
  const card = { x: ticks(0), y: ticks(0), width: sketch.card.width, height: sketch.card.height };
  const box = onCard ? card : boxAround(bodies.map(({ handle }) => extentOf(handle)));
  if (!box || free.length === 0) return NOTHING;
  const step = rulerStep(sketch.unit);
  const marks = keepsMarks(bodies, axis, step, onCard ? card[SIZE[axis]] : undefined);
  const goal =
    marks && line === 'middle' && !onCard
      ? ruledMiddle(bodies, axis, lineOf(box, axis, line), step)
      : lineOf(box, axis, line);
  return arrangement(
    free.map((body) => {
      const mine = extentOf(body.handle);
      return rest(body, axis, mine[axis] + goal - lineOf(mine, axis, line), marks ? step : null);
    }),
    axis,
  );
}

/**
 * Equal gaps between the selected pieces along `axis`: the outermost two stay where they are, the others come between
 * them in the order of their middles. Gaps may be negative, for pieces that overlap. Locked pieces stay, and what lies
 * between two that stay is spaced between those. On marks as in `alignment`: gaps then differ by a mark at most.
 */
export function spacing(state: EditorState, axis: Axis): Arrangement {
  const size = SIZE[axis];
  const bodies = selectedBodies(state).toSorted((a, b) => {
    const [one, other] = [extentOf(a.handle), extentOf(b.handle)];
    return one[axis] + one[size] / 2 - other[axis] - other[size] / 2;
  });
  if (bodies.length < 3) return NOTHING;
  const step = rulerStep(state.sketch.unit);
  const marks = keepsMarks(bodies, axis, step) ? step : null;
  const stays = bodies.flatMap(({ locked }, index) =>
    locked || index === 0 || index === bodies.length - 1 ? [index] : [],
  );
  const rests = stays.slice(1).flatMap((last, turn): readonly Rest[] => {
    const run = bodies.slice(stays[turn], last + 1);
    const boxes = run.map(({ handle }) => extentOf(handle));
    const [first, end] = [boxes[0], boxes.at(-1)];
    if (!first || !end) return [];
    const inner = boxes.slice(1, -1).reduce((sum, box) => sum + box[size], 0);
    const gap = (end[axis] - first[axis] - first[size] - inner) / (run.length - 1);
    let at = first[axis] + first[size] + gap;
    return run.slice(1, -1).map((body, index) => {
      const exact = at;
      at += (boxes[index + 1]?.[size] ?? 0) + gap;
      return rest(body, axis, exact, marks);
    });
  });
  return arrangement(rests, axis);
}

function arranges(event: string, arrange: (state: EditorState) => Arrangement): Command {
  return (state, dispatch, at = 0) => {
    const { edits, off } = arrange(state);
    if (edits.length === 0) return false;
    dispatch?.({ event, edits, ...(off === 0 ? {} : { off }), at });
    return true;
  };
}

/** Lines the selected pieces up; a single one on the card. See `alignment`. */
export function align(axis: Axis, line: Line): Command {
  return arranges('arrange.align', (state) => alignment(state, axis, line));
}

/** Makes the gaps between the selected pieces equal; takes three or more. See `spacing`. */
export function spaceEvenly(axis: Axis): Command {
  return arranges('arrange.space', (state) => spacing(state, axis));
}

/** The size that pieces get from the one taken last, as far as their mats allow; its left and top stay. */
function sized(sketch: Sketch, { handle }: Body, axis: Axis, size: Length): readonly Edit[] {
  const key = SIZE[axis];
  if (size === handle[key] || size < leastSide(sketch, handle, ticks(1))) return [];
  const { x, y, width, height } = handle;
  return [{ do: 'resize', piece: handle.id, x, y, width, height, [key]: size }];
}

/** Makes every selected piece as wide (`x`) or as high (`y`) as the one taken last, to the tick. Left and top stay. */
export function sameSize(axis: Axis): Command {
  return arranges('arrange.size', (state) => {
    const bodies = selectedBodies(state);
    const lead = leadBody(bodies, state.selection);
    const size = lead?.handle[SIZE[axis]];
    if (size === undefined) return NOTHING;
    const edits = bodies
      .filter((body) => body !== lead && !body.locked)
      .flatMap((body) => sized(state.sketch, body, axis, size));
    return { edits, off: ticks(0) };
  });
}
