import type { G, Rect } from '@svgdotjs/svg.js';
import type { Piece } from '@trimwell/sketch';
import { HANDLES, type Handle, handlePoint, turned } from '../../state/resize.js';
import { type FaceView, toStage } from './face-view.js';

/** Side of a handle's target, in pixels (WCAG 2.2, success criterion 2.5.8 asks for 24). */
const TARGET = 28;
/** How far the tilt pin stands off the piece, in pixels. */
const PIN = 34;
/** How far over the card's top edge it stands where the dimensions of an upright piece would lie under it: above their figures. */
const OVER_FIGURES = 48;
/** Shortest side, in pixels, that has room for the grips of two corners. */
const GRIPS = 30;
/** Edges shorter than this on the screen have no handle in their middle; the corners do. */
const SHORTEST_EDGE = 74;

/** A photo corner, as albums have them: its right angle on the piece's corner. */
const CORNER = 'M-3 -3H13L-3 13Z';
/** A thumb notch on an edge: half a round, looking outwards. */
const NOTCH = 'M-9 -3H9A9 9 0 0 1 -9 -3Z';

/** A stretch of a protractor with its marks, bowed away from the piece. */
const PROTRACTOR = 'M-20 3Q0 -9 20 3M-20 3L-22.5 -3M-10.5 -1.6L-12 -7M10.5 -1.6L12 -7M20 3L22.5 -3';

/** Degrees from a handle drawn for the top left corner, or the top edge, to `handle`. */
function turnOf({ x, y }: Handle): number {
  if (x !== 0 && y !== 0) return x < 0 ? (y < 0 ? 0 : 270) : y < 0 ? 90 : 180;
  return y < 0 ? 0 : x > 0 ? 90 : y > 0 ? 180 : 270;
}

const CURSORS = ['ns-resize', 'nesw-resize', 'ew-resize', 'nwse-resize'] as const;

/** The cursor that points the way `handle` of a piece tilted by `tilt` moves. */
export function cursorOf(handle: Handle, tilt: number): string {
  const way = turned({ x: handle.x, y: handle.y }, tilt);
  const degrees = (Math.atan2(way.x, -way.y) * 180) / Math.PI;
  return CURSORS[((Math.round(degrees / 45) % 4) + 4) % 4] ?? 'move';
}

interface HandleMark {
  readonly handle: Handle;
  readonly group: G;
  readonly target: Rect;
}

/** Eight handles and the tilt pin. They are made once, so that a drag of one never loses its element. */
export class Handles {
  readonly resize: readonly HandleMark[];
  readonly tilt: G;

  constructor(private readonly group: G) {
    this.resize = HANDLES.map((handle) => {
      const mark = group.group().addClass('handle').attr('part', 'handle');
      const corner = handle.x !== 0 && handle.y !== 0;
      const target = mark.rect(TARGET, TARGET).addClass('target');
      mark.path(corner ? CORNER : NOTCH).addClass('grip');
      return { handle, group: mark, target };
    });
    this.tilt = group.group().addClass('handle tilt').attr('part', 'handle');
    this.tilt
      .rect(TARGET + 20, TARGET)
      .attr({ x: -TARGET / 2 - 10, y: -TARGET / 2 })
      .addClass('target');
    this.tilt.path(PROTRACTOR).addClass('arc casing');
    this.tilt.path(PROTRACTOR).addClass('arc');
    this.tilt.path('M-6 -5H6L0 5Z').addClass('grip');
    this.show(null, { zoom: 1, left: 0, top: 0 }, false);
  }

  /** Puts the handles around `piece`, or away; while something is dragged only the frame is seen, and they stay behind. */
  show(piece: Piece | null, view: FaceView, dragging: boolean): void {
    this.group.attr('display', piece ? null : 'none');
    this.group.attr('visibility', dragging ? 'hidden' : null);
    if (!piece || dragging) return;
    const [width, height] = [piece.width * view.zoom, piece.height * view.zoom];
    for (const { handle, group, target } of this.resize) {
      const at = toStage(handlePoint(piece, piece.tilt, handle), view);
      const hidden = (handle.x === 0 && width < SHORTEST_EDGE) || (handle.y === 0 && height < SHORTEST_EDGE);
      // On a piece too small for two grips the corners stand off a little.
      const away = turned({ x: handle.x * outset(width, GRIPS), y: handle.y * outset(height, GRIPS) }, piece.tilt);
      group.attr({
        transform: `translate(${(at.x + away.x).toFixed(2)} ${(at.y + away.y).toFixed(2)}) rotate(${piece.tilt + turnOf(handle)})`,
        display: hidden ? 'none' : null,
      });
      // The targets stand off further, outwards in the handle's own frame, so that the middle can still be taken.
      const side = handle.x === 0 ? height : handle.y === 0 ? width : Math.min(width, height);
      const off = -TARGET / 2 - outset(side, 2 * TARGET);
      target.attr({ x: handle.x === 0 || handle.y === 0 ? -TARGET / 2 : off, y: off });
      group.css('cursor', cursorOf(handle, piece.tilt));
    }
    this.#standPin(piece, view);
  }

  /** The pin stands over the top edge, or under the bottom edge where there is no room above. */
  #standPin(piece: Piece, view: FaceView): void {
    const pin = ([-1, 1] as const).map((y) => {
      const edge = toStage(handlePoint(piece, piece.tilt, { x: 0, y }), view);
      const stand = turned({ x: 0, y: y * PIN }, piece.tilt);
      const among = piece.tilt === 0 && edge.y + stand.y > view.top - OVER_FIGURES && edge.y + stand.y < view.top;
      const top = among ? view.top - OVER_FIGURES : edge.y + stand.y;
      return { x: edge.x + stand.x, y: top, turn: piece.tilt + (y < 0 ? 0 : 180) };
    });
    const at = pin.find(({ y }) => y >= TARGET / 2) ?? pin[0];
    if (at) this.tilt.attr('transform', `translate(${at.x.toFixed(2)} ${at.y.toFixed(2)}) rotate(${at.turn})`);
  }
}

/** How far something stands off each end of a side so that `room` pixels are between the two. */
function outset(side: number, room: number): number {
  return Math.max(0, (room - side) / 2);
}
