import { type Length, type Size, ticks, tightEdges } from '@trimwell/geometry';
import { rulerStep } from '../model/ruler-steps.js';
import type { Card, CardEdit, Piece, Sketch } from '../model/sketch.js';
import { type FitAxis, fitStretch, isCentred, markBelow, placeSized, SettledPlaces, type Stretch } from './fit-axis.js';
import { isConcentric } from './mats.js';

/** A piece that mats nothing, with all that its mats show around it: they are moved and sized as one. */
interface Group {
  readonly root: Piece;
  /** What each ring of mats reaches beyond the root, from the root's own 0 to the outermost. */
  readonly reaches: readonly number[];
}

/** Where a group's outer edges lie in both directions. */
interface Place {
  readonly across: Stretch;
  readonly down: Stretch;
}

type Axes = { readonly across: FitAxis; readonly down: FitAxis };

/** The mats around `piece`, each with how far it reaches beyond the root. */
function matsAround(pieces: readonly Piece[], piece: Piece, reach = 0): readonly { mat: Piece; reach: number }[] {
  return pieces.flatMap((mat) => {
    if (mat.mats?.piece !== piece.id) return [];
    const beyond = reach + mat.mats.reveal;
    return [{ mat, reach: beyond }, ...matsAround(pieces, mat, beyond)];
  });
}

function groupsOf({ pieces }: Sketch): readonly Group[] {
  return pieces
    .filter((piece) => !piece.mats)
    .map((root) => ({ root, reaches: [0, ...matsAround(pieces, root).map(({ reach }) => reach)] }));
}

function outermost({ reaches }: Group): number {
  return Math.max(...reaches);
}

function placeOf(group: Group): Place {
  const { x, y, width, height } = group.root;
  const reach = outermost(group);
  return {
    across: { start: x - reach, end: x + width + reach },
    down: { start: y - reach, end: y + height + reach },
  };
}

/** Where the piece itself lies, without its mats. */
function rootPlace({ root: { x, y, width, height } }: Group): Place {
  return { across: { start: x, end: x + width }, down: { start: y, end: y + height } };
}

function longest(group: Group): number {
  return Math.max(group.root.width, group.root.height) + 2 * outermost(group);
}

/** Tilted pieces and circles keep their proportion; all others are stretched with the card. */
function keepsProportion({ root }: Group): boolean {
  return root.tilt !== 0 || (root.shape === 'ellipse' && root.width === root.height);
}

function length({ start, end }: Stretch): number {
  return end - start;
}

/** A circle as large as both directions allow, at the edge or the middle where it was. */
function fitCircle(axes: Axes, old: Place, stretched: Place): Place {
  const side = Math.min(length(stretched.across), length(stretched.down));
  const along = (way: 'across' | 'down'): Stretch => {
    const { start, end } = stretched[way];
    return placeSized(axes[way], old[way], side, (start + end) / 2);
  };
  return { across: along('across'), down: along('down') };
}

/** Half of what a turned rectangle needs across and down; floating ticks, since a turn leaves the ruler. */
function halfBox({ width, height }: Size, tilt: number): { readonly across: number; readonly down: number } {
  const turn = (tilt * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  return { across: (width * cos + height * sin) / 2, down: (width * sin + height * cos) / 2 };
}

/** A tilted group in its own proportion, about its middle, its turned corners on the card when they were. */
function fitTilted(axes: Axes, group: Group, old: Place): Place {
  const { step } = axes.across;
  const { tilt } = group.root;
  const beyond = 2 * outermost(group);
  const { across, down } = axes;
  const { from, to } = across.to * down.from < down.to * across.from ? across : down;
  // Multiplied first: a share of its own would not be exact, and a size that comes to a mark would fall short of it.
  const sized = (stretch: Stretch): number =>
    Math.max(step, markBelow((length(stretch) * to) / from - beyond, step)) + beyond;
  const before = halfBox({ width: ticks(length(old.across)), height: ticks(length(old.down)) }, tilt);
  const [width, height] = [sized(old.across), sized(old.down)];
  const after = halfBox({ width: ticks(width), height: ticks(height) }, tilt);
  const along = (way: 'across' | 'down', size: number): Stretch => {
    const axis = axes[way];
    const middle = (old[way].start + old[way].end) / 2;
    const wanted = (middle * axis.to) / axis.from;
    const within = middle - before[way] >= -1 && middle + before[way] <= axis.from + 1;
    const room = within && 2 * after[way] <= axis.to;
    const kept = room ? Math.max(after[way], Math.min(wanted, axis.to - after[way])) : wanted;
    if (isCentred(axis, old[way])) return placeSized(axis, old[way], size, kept);
    const start = kept - size / 2;
    const marked = kept < axis.to / 2 ? Math.ceil(start / step) * step : markBelow(start, step);
    const off = Math.abs(marked + size / 2 - axis.to / 2) + after[way] > axis.to / 2;
    // Where no mark keeps its corners on the card, the card wins over the ruler.
    const at = room && off ? Math.round(start) : marked;
    return { start: at, end: at + size };
  };
  return { across: along('across', width), down: along('down', height) };
}

/** Marks of the ruler: the widest border around a piece that is taken for a frame, and kept. */
const WIDEST_FRAME = 12;

/** How wide the border of `outer` around `inner` is when it is even all round, like a mat's; else 0. */
function frameWidth(outer: Place, inner: Place, step: Length): number {
  const width = inner.across.start - outer.across.start;
  const even =
    outer.across.end - inner.across.end === width &&
    inner.down.start - outer.down.start === width &&
    outer.down.end - inner.down.end === width;
  return even && width > 0 && width <= WIDEST_FRAME * step ? width : 0;
}

/** Settles the edges of a matted group, so that what is flush with an inner edge follows it. */
function settle(places: SettledPlaces, { reaches }: Group, old: Stretch, now: Stretch): void {
  const outer = Math.max(...reaches);
  for (const reach of [...reaches].sort((a, b) => b - a)) {
    places.settle(old.start + outer - reach, now.start + outer - reach);
    places.settle(old.end - outer + reach, now.end - outer + reach);
  }
}

function resized(group: Group, { across, down }: Place): readonly CardEdit[] {
  const { root } = group;
  const reach = outermost(group);
  const x = ticks(across.start + reach);
  const y = ticks(down.start + reach);
  const width = ticks(length(across) - 2 * reach);
  const height = ticks(length(down) - 2 * reach);
  const same = x === root.x && y === root.y && width === root.width && height === root.height;
  return same ? [] : [{ do: 'resize', piece: root.id, x, y, width, height }];
}

/** Corners that had room and have none on the smaller piece are made as round as it allows. */
function rounded(sketch: Sketch, group: Group, { across, down }: Place): readonly CardEdit[] {
  const outer = outermost(group);
  const around = [{ mat: group.root, reach: 0 }, ...matsAround(sketch.pieces, group.root)];
  return around.flatMap(({ mat: piece, reach }): readonly CardEdit[] => {
    const width = ticks(length(across) - 2 * (outer - reach));
    const height = ticks(length(down) - 2 * (outer - reach));
    const tight = tightEdges({ width, height }, piece.corners).length > tightEdges(piece, piece.corners).length;
    if (piece.shape !== 'rectangle' || isConcentric(piece) || !tight) return [];
    const most = Math.floor(Math.min(width, height) / 2);
    const within = (radius: Length): Length => ticks(Math.min(radius, most));
    const { tl, tr, br, bl } = piece.corners;
    const corners = { tl: within(tl), tr: within(tr), br: within(br), bl: within(bl) };
    return [{ do: 'round', piece: piece.id, corners }];
  });
}

/** What is known while a card is fitted: the places settled so far, and where each stretched group has come. */
interface Fitting {
  readonly axes: Axes;
  readonly across: SettledPlaces;
  readonly down: SettledPlaces;
  readonly done: Map<Group, Place>;
}

function stretched({ across, down }: Fitting, group: Group): Place {
  const old = placeOf(group);
  const reach = outermost(group);
  return { across: fitStretch(across, old.across, reach), down: fitStretch(down, old.down, reach) };
}

/** Where a piece comes that another one frames without being its mat: as evenly within it as before; null without one. */
function framed({ done, axes }: Fitting, group: Group): Place | null {
  const old = placeOf(group);
  const { step } = axes.across;
  const least = step + 2 * outermost(group);
  for (const [outer, now] of done) {
    if (outer.root.tilt !== 0 || outer.root.face !== group.root.face) continue;
    const width = frameWidth(rootPlace(outer), old, step);
    const beyond = outermost(outer) + width;
    const within = ({ start, end }: Stretch): Stretch => ({ start: start + beyond, end: end - beyond });
    const place = { across: within(now.across), down: within(now.down) };
    if (width > 0 && length(place.across) >= least && length(place.down) >= least) return place;
  }
  return null;
}

/** Places every group that is stretched, the largest first: what lies on it is flush with it and framed by it. */
function stretchGroups(fitting: Fitting, groups: readonly Group[]): void {
  const { across, down, done } = fitting;
  for (const group of groups.filter((one) => !keepsProportion(one)).sort((a, b) => longest(b) - longest(a))) {
    const old = placeOf(group);
    const frame = framed(fitting, group);
    const now = frame ?? stretched(fitting, group);
    done.set(group, now);
    if (!frame && group.reaches.length === 1) continue;
    settle(across, group, old.across, now.across);
    settle(down, group, old.down, now.down);
  }
}

function fitGroup(fitting: Fitting, group: Group): Place {
  const { axes, done } = fitting;
  const place = done.get(group);
  if (place) return place;
  const old = placeOf(group);
  return group.root.tilt === 0 ? fitCircle(axes, old, stretched(fitting, group)) : fitTilted(axes, group, old);
}

/**
 * The edits that give `sketch` the card `card` and fit its pieces to it, on both faces. Places and sizes are stretched
 * with the card and brought to marks of the ruler; borders around the card up to 12 marks, and even ones around a piece, stay
 * as wide as they are; mats keep their reveals. What was flush (with the card or with each other) stays flush, what was
 * centred stays centred (for which a place may lie halfway between two marks), what lay on the card stays on it as long as its
 * reveals leave room. Tilted pieces and circles keep their proportion, and of what was flush only the card's edges and
 * middle. On a card whose own size is off the ruler only what spans it is off the ruler too, and flush means within a step.
 * Punched edges may end in part of a repeat afterwards, as after any resizing.
 */
export function fitToCard(sketch: Sketch, card: Card): readonly CardEdit[] {
  const step = rulerStep(sketch.unit);
  const axes: Axes = {
    across: { from: sketch.card.width, to: card.width, step },
    down: { from: sketch.card.height, to: card.height, step },
  };
  const across = new SettledPlaces(axes.across);
  const fitting: Fitting = { axes, across, down: new SettledPlaces(axes.down), done: new Map() };
  const groups = groupsOf(sketch);
  stretchGroups(fitting, groups);
  const pieces = groups.flatMap((group) => {
    const place = fitGroup(fitting, group);
    return [...resized(group, place), ...rounded(sketch, group, place)];
  });
  return [{ do: 'card', card }, ...pieces];
}
