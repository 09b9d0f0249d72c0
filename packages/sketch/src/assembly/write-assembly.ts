import { placedBounds, TICKS_PER_INCH } from '@trimwell/geometry';
import { overlapsOf, regionArea, visibleRegions } from '@trimwell/geometry/regions';
import { isOpaque, placedPiece } from '../batch/hidden-centres.js';
import type { Finding } from '../check/finding.js';
import type { Sketch } from '../model/sketch.js';
import { writeEdit } from '../read/write-sketch.js';
import type { Assembly } from './assembly.js';
import type { CardPlace } from './card-finding.js';
import type { FaceStack } from './face-stack.js';

/** Areas as square inches, to a millionth: more than that no curve is worth. */
function squareInches(area: number): number {
  return Math.round((area / TICKS_PER_INCH ** 2) * 1e6) / 1e6;
}

/** Grams to a hundredth. */
function grams(weight: number): number {
  return Math.round(weight * 100) / 100;
}

function writeFace(sketch: Sketch, { pieces, placed, heights }: FaceStack): object {
  const showing = visibleRegions(
    pieces.map((piece) => ({ placed: placedPiece(sketch, piece), opaque: isOpaque(sketch, piece) })),
  );
  return {
    height: heights.height,
    pieces: pieces.map(({ id }, at) => {
      const [shown, layer] = [showing[at], heights.layers[at]];
      return {
        piece: id,
        area: squareInches(shown ? regionArea(shown.whole) : 0),
        visible: squareInches(shown ? regionArea(shown.visible) : 0),
        hidden: squareInches(shown ? regionArea(shown.hidden) : 0),
        bottom: layer?.bottom ?? 0,
        top: layer?.top ?? 0,
      };
    }),
    overlaps: overlapsOf(placed).map(({ lower, upper, area }) => ({
      lower: pieces[lower]?.id,
      upper: pieces[upper]?.id,
      area: squareInches(area),
    })),
  };
}

/** Where on the card something about a piece is: the box around it, or around what it shares with the other piece of a lap. */
function placeOf(sketch: Sketch, { code, piece: id, other }: Finding): CardPlace | null {
  const [piece, upper] = [id, other].map((each) => sketch.pieces.find((candidate) => candidate.id === each));
  if (!piece) return null;
  const box = placedBounds(placedPiece(sketch, piece));
  if (code !== 'overlap-too-small' || !upper) return { face: piece.face, ...box };
  const over = placedBounds(placedPiece(sketch, upper));
  return {
    face: piece.face,
    left: Math.max(box.left, over.left),
    top: Math.max(box.top, over.top),
    right: Math.min(box.right, over.right),
    bottom: Math.min(box.bottom, over.bottom),
  };
}

/** An assembly with what is to be watched about pieces, as JSON: `"trimwellCheck": 1` (see FORMATS.md). */
export function writeAssembly(found: Assembly, pieces: readonly Finding[]): object {
  const { sketch, thickness, weight, batchWeight, envelopes, fold, posted, post } = found;
  return {
    trimwellCheck: 1,
    ticksPerInch: TICKS_PER_INCH,
    title: sketch.title,
    findings: [...pieces.map((each) => ({ ...each, place: placeOf(sketch, each) })), ...found.findings].map(
      ({ fix, ...finding }) => ({ ...finding, fix: fix.map((edit) => writeEdit(edit, sketch.unit)) }),
    ),
    steps: found.steps,
    faces: { front: writeFace(sketch, found.front), inside: writeFace(sketch, found.inside) },
    profiles: found.profiles,
    thickness,
    weight: { grams: grams(weight.grams), estimated: weight.estimated, batch: batchWeight && grams(batchWeight.grams) },
    papers: weight.shares.map(({ from, area, grams: each, estimated }) => ({
      from,
      area: squareInches(area),
      grams: grams(each),
      estimated,
    })),
    envelopes,
    fold,
    post: {
      notice: found.notice,
      item: { ...posted, weight: grams(posted.weight) },
      countries: post.map(({ country, class: taken, surcharges, refused }) => ({
        country: country.code,
        edition: country.edition,
        source: country.source,
        class: taken?.id ?? null,
        name: taken?.name ?? null,
        surcharges,
        refused: refused.map((each) => ({ class: each.class.id, reasons: each.reasons })),
      })),
    },
  };
}
