import { type Length, nearestStep, repeatsAlong, ticks, tightEdges } from '@trimwell/geometry';
import { rulerStep } from '../batch/recipe.js';
import { EDGES, type Edit, type Piece, type Sketch } from '../model/sketch.js';

/** How bad a finding is: it stops the build, it looks wrong, or it is worth knowing. */
export type Severity = 'stops the build' | 'looks wrong' | 'worth knowing';

/** Something about a piece that its maker should look at, with the edits that mend it where there are some. */
export interface Finding {
  readonly code: 'radius-too-large' | 'off-the-card' | 'off-the-ruler' | 'part-repeats' | 'punch-too-deep';
  readonly severity: Severity;
  readonly piece: string;
  /** The figure that matters: how far off, which rest; in ticks. */
  readonly amount: Length;
  readonly fix: readonly Edit[];
}

type Check = (sketch: Sketch, piece: Piece) => Finding | null;

/** Radii of two corners that need more than their edge; mended by the largest equal radius that fits everywhere. */
const radiusTooLarge: Check = (_sketch, piece) => {
  const tight = piece.shape === 'rectangle' ? tightEdges(piece, piece.corners) : [];
  const [worst] = tight;
  if (!worst) return null;
  const most = ticks(Math.floor(Math.min(piece.width, piece.height) / 2));
  const within = (radius: Length): Length => (radius > most ? most : radius);
  const { tl, tr, br, bl } = piece.corners;
  const corners = { tl: within(tl), tr: within(tr), br: within(br), bl: within(bl) };
  return {
    code: 'radius-too-large',
    severity: 'stops the build',
    piece: piece.id,
    amount: ticks(worst.needed - worst.length),
    fix: [{ do: 'round', piece: piece.id, corners }],
  };
};

/** An untilted piece that reaches over the edge of its face; mended by moving it in, where it is not larger than the card. */
const offTheCard: Check = ({ card }, piece) => {
  if (piece.tilt !== 0) return null;
  const over = Math.max(-piece.x, -piece.y, piece.x + piece.width - card.width, piece.y + piece.height - card.height);
  if (over <= 0) return null;
  const inside = (start: number, size: number, whole: number): Length =>
    ticks(Math.max(0, Math.min(start, whole - size)));
  const fits = piece.width <= card.width && piece.height <= card.height;
  const place: Edit = {
    do: 'place',
    piece: piece.id,
    x: inside(piece.x, piece.width, card.width),
    y: inside(piece.y, piece.height, card.height),
  };
  return {
    code: 'off-the-card',
    severity: 'looks wrong',
    piece: piece.id,
    amount: ticks(over),
    fix: fits ? [place] : [],
  };
};

/** A size that lies on no 1/16 in or 1 mm mark; mended by the nearest one. What a mat follows is mended instead of it. */
const offTheRuler: Check = (sketch, piece) => {
  const step = rulerStep(sketch.unit);
  const off = (length: Length): number => Math.abs(length - nearestStep(length, step));
  const amount = Math.max(off(piece.width), off(piece.height));
  if (amount === 0 || piece.mats) return null;
  const side = (length: Length): Length => ticks(Math.max(step, nearestStep(length, step)));
  const fix: Edit = {
    do: 'resize',
    piece: piece.id,
    x: piece.x,
    y: piece.y,
    width: side(piece.width),
    height: side(piece.height),
  };
  return { code: 'off-the-ruler', severity: 'worth knowing', piece: piece.id, amount: ticks(amount), fix: [fix] };
};

/** A punched edge that ends in part of a repeat at both ends; mended by the nearest whole number of repeats. */
const partRepeats: Check = (sketch, piece) => {
  for (const edge of EDGES) {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]);
    if (!punch || piece.shape !== 'rectangle') continue;
    const level = edge === 'top' || edge === 'bottom';
    const length = level ? piece.width : piece.height;
    const { rest } = repeatsAlong(length, punch);
    if (rest === 0) continue;
    const whole = ticks(Math.max(1, Math.round(length / punch.repeat)) * punch.repeat);
    // Grown or shortened about its middle, but never over an edge of the card that it did not cross before.
    const start = (at: Length, card: Length): Length => {
      const middled = Math.round(at + (length - whole) / 2);
      const within = at >= 0 && at + length <= card && whole <= card;
      return ticks(within ? Math.max(0, Math.min(middled, card - whole)) : middled);
    };
    const fix: Edit = level
      ? {
          do: 'resize',
          piece: piece.id,
          x: start(piece.x, sketch.card.width),
          y: piece.y,
          width: whole,
          height: piece.height,
        }
      : {
          do: 'resize',
          piece: piece.id,
          x: piece.x,
          y: start(piece.y, sketch.card.height),
          width: piece.width,
          height: whole,
        };
    return {
      code: 'part-repeats',
      severity: 'looks wrong',
      piece: piece.id,
      amount: ticks(Math.round(rest)),
      fix: [fix],
    };
  }
  return null;
};

/** A punch that cuts deeper than the piece it is used on. */
const punchTooDeep: Check = (sketch, piece) => {
  for (const edge of EDGES) {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]);
    const across = edge === 'top' || edge === 'bottom' ? piece.height : piece.width;
    if (punch && punch.depth >= across) {
      return {
        code: 'punch-too-deep',
        severity: 'stops the build',
        piece: piece.id,
        amount: ticks(punch.depth - across),
        fix: [{ do: 'punch', piece: piece.id, edge, punch: null }],
      };
    }
  }
  return null;
};

const CHECKS: readonly Check[] = [radiusTooLarge, punchTooDeep, offTheCard, partRepeats, offTheRuler];

/** Everything to watch in a sketch, worst first, then in gluing order. */
export function checkSketch(sketch: Sketch): readonly Finding[] {
  const order: readonly Severity[] = ['stops the build', 'looks wrong', 'worth knowing'];
  const found = sketch.pieces.flatMap((piece) => CHECKS.flatMap((check) => check(sketch, piece) ?? []));
  return order.flatMap((severity) => found.filter((finding) => finding.severity === severity));
}
