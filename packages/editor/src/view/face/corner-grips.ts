import type { G } from '@svgdotjs/svg.js';
import type { Length } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import { turned } from '../../state/resize.js';
import { CORNERS, type CornerName, INWARD, restingRadii, roundBy } from '../../state/round-drag.js';
import { toolMessages } from '../tools/tool-messages.js';
import { type FaceView, toStage } from './face-view.js';
import type { GestureKeys, GestureMoment, GestureStart } from './live-gesture.js';

/** Side of a grip's target, in pixels. */
const TARGET = 24;
/** How far inside a square corner its grip stands along each side, clear of the corner's handle, in pixels. */
const STAND = 28;
/** Sides shorter than this on the screen have no room for two grips; the ticket rounds their corners. */
const SHORTEST = 2 * (STAND + TARGET / 2) + TARGET;
/** Snapping reaches this far, in pixels, as for a drag of the whole piece. */
const REACH = 6;

/** The bite of a corner rounder, drawn for the top left corner about the grip: a quarter round between two short straights. */
const BITE = 'M-6 8V1Q-6 -6 1 -6H8';

/** Degrees from a grip drawn for the top left corner to each one. */
const TURN: Readonly<Record<CornerName, number>> = { tl: 0, tr: 90, br: 180, bl: 270 };

/**
 * Where a grip stands from its corner along each side, in pixels: `STAND` when square, the middle of the shorter side when
 * as round as can be, evenly in between. So it never leaves the piece, and its drag is never faster than the hand.
 */
function standOf(radius: number, { width, height }: Pick<Piece, 'width' | 'height'>, zoom: number): number {
  const half = (Math.min(width, height) * zoom) / 2;
  return STAND + Math.min(1, (radius * zoom) / half) * (half - STAND);
}

interface Grip {
  readonly corner: CornerName;
  readonly group: G;
}

/** Four grips inside the corners of the selected rectangle. They are made once, so that a drag of one never loses its element. */
export class CornerGrips {
  readonly grips: readonly Grip[];

  constructor(private readonly group: G) {
    this.grips = CORNERS.map((corner) => {
      const grip = group.group().addClass('handle round').attr('part', 'grip');
      grip
        .rect(TARGET, TARGET)
        .attr({ x: -TARGET / 2, y: -TARGET / 2 })
        .addClass('target');
      grip.path(BITE).addClass('bite casing');
      grip.path(BITE).addClass('bite');
      return { corner, group: grip };
    });
    this.show(null, { zoom: 1, left: 0, top: 0 }, false);
  }

  /** Puts the grips into the corners of `piece`, or away; while something is dragged only the frame stays. */
  show(piece: Piece | null, view: FaceView, dragging: boolean): void {
    const shown = piece?.shape === 'rectangle' && Math.min(piece.width, piece.height) * view.zoom >= SHORTEST;
    this.group.attr('display', shown ? null : 'none');
    this.group.attr('visibility', dragging ? 'hidden' : null);
    if (!piece || !shown || dragging) return;
    const middle = toStage({ x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 }, view);
    for (const { corner, group } of this.grips) {
      const stand = standOf(piece.corners[corner], piece, view.zoom);
      const { x, y } = INWARD[corner];
      const own = { x: x * (stand - (piece.width * view.zoom) / 2), y: y * (stand - (piece.height * view.zoom) / 2) };
      const from = turned(own, piece.tilt);
      group.attr(
        'transform',
        `translate(${(middle.x + from.x).toFixed(2)} ${(middle.y + from.y).toFixed(2)}) rotate(${piece.tilt + TURN[corner]})`,
      );
    }
  }
}

/**
 * One moment of a drag of a corner's grip. It comes to rest at the radii of the designer's rounders and where it is
 * concentric, else at marks of the ruler. Corners as round as this one go along; Shift rounds only this one, Alt suspends
 * snapping.
 */
export function roundMoment(
  start: GestureStart,
  corner: CornerName,
  owned: readonly Length[],
  pull: { readonly x: number; readonly y: number },
  keys: GestureKeys,
): GestureMoment {
  const { piece, sketch, ticksPerPixel } = start;
  const half = Math.min(piece.width, piece.height) / 2;
  const gain = half / Math.max(1, half - STAND * ticksPerPixel);
  const { corners, radius, why } = roundBy(piece, corner, pull, gain, {
    resting: restingRadii(sketch, piece, corner, owned),
    tolerance: REACH * ticksPerPixel,
    snaps: !keys.altKey,
    alone: keys.shiftKey,
    unit: sketch.unit,
  });
  return {
    event: 'piece.round',
    edits: [{ do: 'round', piece: piece.id, corners }],
    marks: [],
    figure: toolMessages.radiusFigure(radius, sketch.unit, why === 'square' ? null : why),
  };
}
