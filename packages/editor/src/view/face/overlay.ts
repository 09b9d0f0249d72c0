import type { G } from '@svgdotjs/svg.js';
import type { Point } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { type Place, turned } from '../../state/resize.js';
import type { FaceView } from './face-view.js';
import { toStage } from './face-view.js';
import { drawGuides } from './guides.js';
import { Handles } from './handles.js';
import type { GestureMoment } from './live-gesture.js';

/** All that the overlay shows. */
export interface OverlayModel {
  readonly sketch: Sketch;
  readonly view: FaceView;
  readonly selected: Piece | null;
  readonly pointed: Piece | null;
  /** The piece with the keyboard's focus, when it is to be seen. */
  readonly focused: Piece | null;
  readonly moment: GestureMoment | null;
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
  readonly #frames: G;
  readonly #guides: G;

  constructor(group: G) {
    this.#frames = group.group().addClass('frames');
    this.#guides = group.group().addClass('guides');
    this.handles = new Handles(group.group().addClass('handles'));
  }

  show(model: OverlayModel): void {
    const { view, selected, pointed, focused, moment } = model;
    this.#frames.clear();
    const frame = (piece: Piece, name: string, margin: number): void => {
      const d = framePath(piece, view, margin);
      this.#frames.path(d).addClass('casing');
      this.#frames.path(d).addClass(name);
    };
    if (pointed && pointed !== selected) frame(pointed, 'pointed', 0);
    if (selected) frame(selected, 'selected', 0);
    if (focused) frame(focused, 'focused', 4);
    this.handles.show(selected, view, moment !== null);
    this.#guides.clear();
    drawGuides(this.#guides, model);
  }
}
