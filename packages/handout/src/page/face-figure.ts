import type { Point } from '@trimwell/geometry';
import { CARD_BASE, type Face, type Sketch } from '@trimwell/sketch';
import { drawCard } from '../draw/card.js';
import { drawDimension } from '../draw/dimension.js';
import { labelPieces } from '../draw/labels.js';
import type { Drawing, Item } from '../drawing/drawing.js';
import { CALLOUT_GAP, type Callout, calloutHeight, calloutWidth, placeCallouts } from './callouts.js';
import { localiseItems } from './localise.js';
import type { TextMeasure } from './measure.js';
import { scaledGroup, scaledLooks } from './scaled-drawing.js';
import { POINT } from './sheet-of-paper.js';
import type { Speech } from './speech.js';
import { type Area, areaCorners, visiblePoints } from './visible-point.js';

/** A drawing with its words that fits a room on the page, its upper left corner at any point. */
export interface Figure {
  readonly width: number;
  readonly height: number;
  readonly alt: string;
  readonly looks: Drawing['looks'];
  items(at: Point): readonly Item[];
}

interface FaceRoom {
  readonly width: number;
  /** What the card may take, and what its callouts may take when they are many. */
  readonly height: number;
  readonly mostHeight: number;
}

const DIMENSION_SIZE = 7.5 * POINT;
/** Room for the dimension of the width below the card, and of the height to its left. */
const BELOW = 17 * POINT;
const BESIDE = 15 * POINT;
/** Room for the end of a dimension line that reaches beyond the card's edge. */
const ABOVE = 4 * POINT;

/** What has to be said of one piece, before it is known where on the page. */
interface Part {
  readonly piece: string;
  readonly name: string;
  readonly letter: string;
  readonly figure: string;
  readonly area: Area;
  readonly above: readonly Area[];
}

function partsOf(sketch: Sketch, face: Face, speech: Speech): readonly Part[] {
  const labels = labelPieces(sketch);
  const pieces = sketch.pieces.filter((piece) => piece.face === face);
  const { width, height } = sketch.card;
  const base: Part = {
    piece: CARD_BASE,
    name: speech.say.cardBase,
    letter: labels.get(CARD_BASE) ?? 'A',
    figure: speech.bareSize(sketch.card),
    area: { x: 0 as Area['x'], y: 0 as Area['y'], width, height, tilt: 0, shape: 'rectangle' },
    above: pieces,
  };
  const parts = pieces.map(
    (piece, index): Part => ({
      piece: piece.id,
      name: piece.name,
      letter: labels.get(piece.id) ?? '?',
      figure: speech.bareSize(piece),
      area: piece,
      above: pieces.slice(index + 1),
    }),
  );
  return face === 'front' ? [base, ...parts] : parts;
}

/** What the card and all its pieces cover, in ticks of the card. */
function reach(sketch: Sketch, face: Face) {
  const { width, height } = sketch.card;
  const corners = sketch.pieces.filter((piece) => piece.face === face).flatMap(areaCorners);
  const x = Math.min(0, ...corners.map((corner) => corner.x));
  const y = Math.min(0, ...corners.map((corner) => corner.y));
  const right = Math.max(width, ...corners.map((corner) => corner.x));
  const bottom = Math.max(height, ...corners.map((corner) => corner.y));
  return { x, y, width: right - x, height: bottom - y };
}

/** The middle of the widest stretch of a line from `from` to `to` that none of `crossings` is in; null below `room`. */
export function clearOf(crossings: readonly number[], from: number, to: number, room: number): number | null {
  const marks = [from, ...[...crossings].filter((at) => at > from && at < to).sort((a, b) => a - b), to];
  const gaps = marks.slice(1).map((end, index) => ({ start: marks[index] ?? from, end }));
  const widest = gaps.reduce((best, gap) => (gap.end - gap.start > best.end - best.start ? gap : best));
  return widest.end - widest.start < room ? null : (widest.start + widest.end) / 2;
}

/** Where leaders cross the upright line at `x`. */
function crossingsAt(x: number, items: readonly Item[]): readonly number[] {
  return items.flatMap((item) => {
    if (item.kind !== 'line' || item.role !== 'leader') return [];
    const { from, to } = item;
    const share = (x - from.x) / (to.x - from.x);
    return share >= 0 && share <= 1 ? [from.y + share * (to.y - from.y)] : [];
  });
}

interface DimensionPlace {
  readonly scale: number;
  readonly origin: Point;
  readonly box: ReturnType<typeof reach>;
  readonly callouts: readonly Item[];
}

/** The width below the card, the height to its left, its figure where no leader runs through it. */
function dimensions(
  sketch: Sketch,
  { scale, origin, box, callouts }: DimensionPlace,
  speech: Speech,
  measure: TextMeasure,
): readonly Item[] {
  const { width, height } = sketch.card;
  const style = { unit: speech.unit, bare: true };
  const size = DIMENSION_SIZE / scale;
  const below = box.y + box.height;
  const at = box.x - 0.9 * size;
  const upright = drawDimension({ key: 'height', along: 'y', from: 0, length: height, at, edge: box.x, size, style });
  const said = upright.find((item) => item.kind === 'text');
  const room = said?.kind === 'text' ? measure.width(said.text, DIMENSION_SIZE, 'text') + 3 * POINT : 0;
  const crossings = crossingsAt(origin.x + at * scale, callouts);
  const middle = clearOf(crossings, origin.y, origin.y + height * scale, room);
  return [
    ...drawDimension({
      key: 'width',
      along: 'x',
      from: 0,
      length: width,
      at: below + 1.75 * size,
      edge: below,
      size,
      style,
    }),
    ...upright.flatMap((item): readonly Item[] => {
      if (item.kind !== 'text') return [item];
      return middle === null ? [] : [{ ...item, at: { x: item.at.x, y: (middle - origin.y) / scale } }];
    }),
  ];
}

/** One face of the card to scale, with its dimensions, and with every piece's letter and size beside it, behind a leader. */
export function faceFigure(sketch: Sketch, face: Face, room: FaceRoom, speech: Speech, measure: TextMeasure): Figure {
  const parts = partsOf(sketch, face, speech);
  const cap = room.width * 0.27;
  const said = parts.map((part) => (calloutWidth(part, measure) <= cap ? part : { ...part, figure: '' }));
  const column = Math.ceil(Math.max(...said.map((part) => calloutWidth(part, measure)), 0));
  const box = reach(sketch, face);
  const across = room.width - 2 * (column + CALLOUT_GAP) - BESIDE;
  const scale = Math.min(1, across / box.width, (room.height - ABOVE - BELOW) / box.height);
  const tall = Math.min(room.mostHeight, Math.max(box.height * scale, calloutHeight(said.length)));
  const height = Math.ceil(ABOVE + tall + BELOW);
  const drawing = drawCard(sketch, { face, style: { unit: speech.unit }, dimensions: false });
  // The card stands in the middle of its room, with what is said of it close by.
  const left = (room.width - box.width * scale - BESIDE) / 2 + BESIDE;
  const top = ABOVE + (tall - box.height * scale) / 2;
  const draw = (at: Point): readonly Item[] => {
    const origin = { x: at.x + left - box.x * scale, y: at.y + top - box.y * scale };
    const onPage = ({ x, y }: Point): Point => ({ x: origin.x + x * scale, y: origin.y + y * scale });
    const callouts = said.map(
      ({ area, above, ...words }): Callout => ({
        ...words,
        points: visiblePoints(area, above).map(onPage),
        middle: onPage({ x: area.x + area.width / 2, y: area.y + area.height / 2 }),
      }),
    );
    const places = {
      left: at.x + left - BESIDE - CALLOUT_GAP,
      right: at.x + left + box.width * scale + CALLOUT_GAP,
      from: at.y + ABOVE,
      to: at.y + ABOVE + tall,
    };
    const beside = placeCallouts(callouts, places, measure);
    const lines = dimensions(sketch, { scale, origin, box, callouts: beside }, speech, measure);
    const items = localiseItems([...drawing.items, ...lines], speech);
    return [scaledGroup(items, scale, origin, `face:${face}`), ...beside];
  };
  const named = parts.map(({ letter, name, figure }) => `${letter} ${name} ${figure}`);
  return {
    width: room.width,
    height,
    alt: speech.say.faceAlt(face, sketch.title, named.length === 0 ? speech.say.noPieces : named.join('; ')),
    looks: scaledLooks(drawing.looks, scale),
    items: draw,
  };
}
