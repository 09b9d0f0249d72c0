import { isRigid, type Span, sectionSpans, ticks } from '@trimwell/geometry';
import type { LayerHeight } from '@trimwell/geometry/regions';
import { CARD_BASE, type Face, type Piece, placedPiece, type Sketch } from '@trimwell/sketch';
import type { FaceHeights } from '../../session/assembly-messages.js';
import type { CardView } from '../../session/card-watch.js';

/** A stretch of the line where a paper is equally high: its lower and its upper side. */
export interface LaidSpan extends Span {
  readonly bottom: number;
  readonly top: number;
  /** How high foam fills the room between it and what is next below; over it where it is glued on from below. */
  readonly foam: number;
}

/** A paper of the closed card where a straight cut through all of it meets it; heights from the table up, in ticks. */
export interface Slab {
  /** The piece, or `CARD_BASE` for a leaf. */
  readonly piece: string;
  /** From the left or from the top; those that meet are one piece of paper that goes over a step. */
  readonly spans: readonly LaidSpan[];
  /** Where it is furthest from the card along the line. */
  readonly bottom: number;
  readonly top: number;
  /** True where it is glued on from above, so that its foam is under it. */
  readonly below: boolean;
}

/** The closed card cut through along a straight line, from the table up. */
export interface CardSection {
  readonly slabs: readonly Slab[];
  readonly height: number;
  /** From where to where anything lies along the line. */
  readonly from: number;
  readonly to: number;
}

/** Where the line is: along x it lies `at` ticks from the top of the face, along y from its left. */
export interface SectionLine {
  readonly along: 'x' | 'y';
  readonly at: number;
}

/** The line through the middle of the highest piece in front, or else inside, or else through the middle of the card. */
export function usualLine({ sketch, sight }: CardView, along: SectionLine['along']): SectionLine {
  const highest = sketch.pieces.find(({ id }) => id === (sight.front.highest ?? sight.inside.highest));
  const { card } = sketch;
  const middle = highest
    ? { x: highest.x + highest.width / 2, y: highest.y + highest.height / 2 }
    : { x: card.width / 2, y: card.height / 2 };
  return { along, at: along === 'x' ? middle.y : middle.x };
}

/**
 * The closed card along `line`: a folded one lies on its back leaf, with what is inside on that, the front leaf on the highest of it,
 * and the front on top; one without a fold has its inside under its only leaf.
 */
export function cardSection({ sketch, sight }: CardView, { along, at }: SectionLine): CardSection {
  const { card } = sketch;
  const { thickness } = sight;
  const folded = card.fold !== 'none';
  const leaf = folded ? thickness.base / 2 : thickness.base;
  const length = along === 'x' ? card.width : card.height;
  const front = (folded ? 2 : 1) * leaf + thickness.inside;
  const base = (bottom: number): Slab => ({
    piece: CARD_BASE,
    spans: [{ from: 0, to: length, bottom, top: bottom + leaf, foam: 0 }],
    bottom,
    top: bottom + leaf,
    below: true,
  });
  const inside = folded ? leaf : thickness.inside;
  const slabs = [
    ...(folded ? [base(0)] : []),
    ...slabsOf(sketch, 'inside', sight.inside, { along, at }, inside, folded),
    base(folded ? leaf + thickness.inside : thickness.inside),
    ...slabsOf(sketch, 'front', sight.front, { along, at }, front, true),
  ];
  slabs.sort((a, b) => a.bottom - b.bottom);
  const ends = slabs.flatMap(({ spans }) => spans);
  return {
    slabs,
    height: thickness.height,
    from: Math.min(...ends.map(({ from }) => from)),
    to: Math.max(...ends.map(({ to }) => to)),
  };
}

/** Where a line meets what is glued to the back of a single leaf, which is seen from behind. */
function spansBehind(sketch: Sketch, piece: Piece, along: 'x' | 'y', at: number): readonly Span[] {
  const { width } = sketch.card;
  const placed = placedPiece(sketch, piece);
  if (along === 'y') return sectionSpans(placed, along, width - at);
  return sectionSpans(placed, along, at).map(({ from, to }) => ({ from: width - to, to: width - from }));
}

/** What lies along the line so far, each with its place in the stack. */
interface LowerSpan extends LaidSpan {
  readonly piece: number;
}

/** `span` of a piece with `raise` of foam laid onto what lies along the line so far. */
function laidOn(lower: readonly LowerSpan[], span: Span, raise: number, layer: LayerHeight): readonly LaidSpan[] {
  const under = lower.filter(({ from, to }) => from < span.to && to > span.from);
  const ends = [...new Set([span.from, span.to, ...under.flatMap(({ from, to }) => [from, to])])]
    .filter((end) => end >= span.from && end <= span.to)
    .sort((a, b) => a - b);
  const { bottom, top, gluedTo, gluedToGround } = layer;
  const rigid = isRigid({ raise: ticks(raise), caliper: ticks(top - bottom) });
  const found: LaidSpan[] = [];
  ends.slice(1).forEach((to, index) => {
    const from = ends[index] ?? to;
    const below = under.filter((each) => each.from < to && each.to > from);
    const next = below.reduce<LowerSpan | null>((most, each) => (most && most.top > each.top ? most : each), null);
    const low = next?.top ?? 0;
    const glued = next ? gluedTo.includes(next.piece) : gluedToGround;
    const down = rigid || !glued ? 0 : bottom - low;
    const foam = raise > 0 && glued ? bottom - low : 0;
    const last = found.at(-1);
    if (last && last.bottom === bottom - down && last.foam === foam) found[found.length - 1] = { ...last, to };
    else found.push({ from, to, bottom: bottom - down, top: top - down, foam });
  });
  return found;
}

function slabsOf(
  sketch: Sketch,
  face: Face,
  { pieces, layers }: FaceHeights,
  { along, at }: SectionLine,
  ground: number,
  upwards: boolean,
): readonly Slab[] {
  const byId = new Map(sketch.pieces.map((piece): readonly [string, Piece] => [piece.id, piece]));
  const lower: LowerSpan[] = [];
  const placed = ({ bottom, top, ...span }: LaidSpan): LaidSpan =>
    upwards
      ? { ...span, bottom: ground + bottom, top: ground + top }
      : { ...span, bottom: ground - top, top: ground - bottom };
  return pieces.flatMap((id, index): readonly Slab[] => {
    const [piece, layer] = [byId.get(id), layers[index]];
    if (!piece || !layer || piece.face !== face) return [];
    const met = upwards ? sectionSpans(placedPiece(sketch, piece), along, at) : spansBehind(sketch, piece, along, at);
    const laid = met.flatMap((span) => laidOn(lower, span, piece.raise, layer));
    const [highest] = [...laid].sort((a, b) => b.top - a.top);
    if (!highest) return [];
    lower.push(...laid.map((each) => ({ ...each, piece: index })));
    const { bottom, top } = placed(highest);
    return [{ piece: id, spans: laid.map(placed), bottom, top, below: upwards }];
  });
}
