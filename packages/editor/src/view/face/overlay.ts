import type { G } from '@svgdotjs/svg.js';
import type { Point } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { HANDLES, handlePoint, type Place, turned } from '../../state/resize.js';
import { CornerGrips } from './corner-grips.js';
import { coverBox } from './cover.js';
import { DrawnMarks } from './drawn-marks.js';
import type { FaceView } from './face-view.js';
import { toStage } from './face-view.js';
import { GuidePen } from './guide-pen.js';
import { drawGuides } from './guides.js';
import { Handles } from './handles.js';
import type { GestureMoment } from './live-gesture.js';

/** All that the overlay shows. */
export interface OverlayModel {
  readonly sketch: Sketch;
  readonly view: FaceView;
  /** The selected pieces of this face, and the one that has handles: it is alone, free, and to be seen. */
  readonly selected: readonly Piece[];
  readonly handled: Piece | null;
  readonly pointed: Piece | null;
  /** The piece with the keyboard's focus, when it is to be seen. */
  readonly focused: Piece | null;
  readonly moment: GestureMoment | null;
  /** The frame that is drawn to select what lies in it, in pixels of the stage. */
  readonly drawnFrame: StageBox | null;
}

/** A box in pixels of the stage. */
export interface StageBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The corners of a tilted rectangle grown by `margin` pixels, in pixels of the stage, as path data. */
export function framePath(place: Place & { readonly tilt: number }, view: FaceView, margin: number): string {
  const centre = toStage({ x: place.x + place.width / 2, y: place.y + place.height / 2 }, view);
  const half = { x: (place.width * view.zoom) / 2 + margin, y: (place.height * view.zoom) / 2 + margin };
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([x = 0, y = 0]): Point => turned({ x: x * half.x, y: y * half.y }, place.tilt));
  return `M${corners.map(({ x, y }) => `${(centre.x + x).toFixed(2)} ${(centre.y + y).toFixed(2)}`).join('L')}Z`;
}

/** What lies over the drawing and is never part of it, in pixels of the stage. */
export class Overlay {
  readonly handles: Handles;
  readonly corners: CornerGrips;
  readonly #frames: DrawnMarks;
  readonly #guides: DrawnMarks;
  /** What is read from below to above: turned once for all, because a transform that changes is dear. */
  readonly #upwards: DrawnMarks;

  constructor(group: G) {
    group.rect(1, 1).addClass('cover').attr(coverBox(1));
    this.#frames = new DrawnMarks(group.group().addClass('frames').node);
    this.#guides = new DrawnMarks(group.group().addClass('guides').node);
    this.corners = new CornerGrips(group.group().addClass('handles'));
    this.handles = new Handles(group.group().addClass('handles'));
    const upwards = group.group().attr('transform', 'rotate(-90)');
    upwards.rect(1, 1).addClass('cover').attr(coverBox(1));
    this.#upwards = new DrawnMarks(upwards.group().node);
  }

  show(model: OverlayModel): void {
    const { view, selected, handled, pointed, focused, moment, drawnFrame } = model;
    this.#frames.begin();
    if (pointed && !selected.includes(pointed)) this.#frame(framePath(pointed, view, 0), 'pointed');
    for (const piece of selected) {
      this.#frame(framePath(piece, view, 0), piece.hidden ? 'selected away' : 'selected');
      if (piece.locked) this.#pin(piece, view);
    }
    if (focused) this.#frame(framePath(focused, view, 4), 'focused');
    if (drawnFrame) {
      const box = Object.entries(drawnFrame).map(([name, value]) => [name, String(value)] as const);
      this.#frames.draw('rect', { ...Object.fromEntries(box), class: 'drawn-frame' });
    }
    this.#frames.end();
    this.handles.show(handled, view, moment !== null);
    this.corners.show(handled, view, moment !== null);
    this.#guides.begin();
    this.#upwards.begin();
    const pen = new GuidePen();
    drawGuides(pen, model);
    pen.draw(this.#guides, this.#upwards);
    this.#guides.end();
    this.#upwards.end();
  }

  #frame(d: string, name: string): void {
    this.#frames.draw('path', { d, class: 'casing' });
    this.#frames.draw('path', { d, class: name });
  }

  /** A locked piece is held by pins in its corners. */
  #pin(piece: Piece, view: FaceView): void {
    for (const handle of HANDLES) {
      if (handle.x === 0 || handle.y === 0) continue;
      const at = toStage(handlePoint(piece, piece.tilt, handle), view);
      this.#frames.draw('circle', { r: '4.5', cx: at.x.toFixed(2), cy: at.y.toFixed(2), class: 'pin' });
    }
  }
}
