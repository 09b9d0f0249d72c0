import { type Point, ticks } from '@trimwell/geometry';
import { EDGES, type Edge, type Piece, type Punch } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { holdOf } from '../../state/group.js';
import { turned } from '../../state/resize.js';
import { selectedPiece } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { openEdgeSlip } from '../tools/open-edge-slip.js';
import { edgePath } from '../tools/punch-picture.js';
import { toolMessages } from '../tools/tool-messages.js';
import { type FaceView, toStage } from './face-view.js';

/** How far inside its edge a mark stands, in pixels: clear of the handle on the edge. */
const INSIDE = 28;
/** A piece must be this high for two marks to stand inside it one over the other. */
const ROOMY = 88;
/** On a thin piece a mark stands outside, beside the handle in the middle of the edge, by so many pixels. */
const BESIDE = { along: 46, out: 16 };
/** The shortest edge with room for a mark outside, and for one inside. */
const SHORTEST = { outside: 150, inside: 56 };

/** Which way each edge looks from the middle of the piece. */
const OUTWARD: Readonly<Record<Edge, Point>> = {
  top: { x: 0, y: -1 },
  right: { x: 1, y: 0 },
  bottom: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
};

/** Degrees from a mark drawn for the bottom edge to each one. */
const TURN: Readonly<Record<Edge, number>> = { bottom: 0, left: 90, top: 180, right: 270 };

const MARK = { width: 22, height: 10 };

/** Where the mark of an edge stands, in pixels of the stage; null where there is no room for it. */
export function markPlace(piece: Piece, edge: Edge, view: FaceView): Point | null {
  const out = OUTWARD[edge];
  const [width, height] = [piece.width * view.zoom, piece.height * view.zoom];
  const [length, across] = out.x === 0 ? [width, height] : [height, width];
  const roomy = across >= ROOMY;
  if (length < (roomy ? SHORTEST.inside : SHORTEST.outside)) return null;
  const away = across / 2 + (roomy ? -INSIDE : BESIDE.out);
  const along = roomy ? 0 : BESIDE.along;
  const own = { x: out.x * away + Math.abs(out.y) * along, y: out.y * away + Math.abs(out.x) * along };
  const middle = toStage({ x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 }, view);
  const from = turned(own, piece.tilt);
  return { x: middle.x + from.x, y: middle.y + from.y };
}

/**
 * A small mark at each edge of the selected rectangle: a short stretch of the edge as it is. Pressing it opens the slip
 * of punches for that edge. They are buttons of the page, so that fingers and keys reach them too.
 * @csspart mark - The mark of an edge.
 */
export class EdgeMarksElement extends SessionElement {
  static override readonly styles = css`
    :host {
      display: contents;
    }
    button {
      position: absolute;
      display: grid;
      place-items: center;
      width: 28px;
      height: 28px;
      margin: -14px 0 0 -14px;
      padding: 0;
      border: 0;
      border-radius: 50%;
      background: none;
      cursor: pointer;
    }
    button:focus-visible {
      outline: 2.5px solid var(--trimwell-focus, #1d5fa8);
      outline-offset: 0;
    }
    svg {
      display: block;
      overflow: visible;
    }
    path {
      fill: none;
      stroke-linecap: round;
      stroke-linejoin: round;
    }
    .casing {
      stroke: var(--trimwell-casing, #fffdf6);
      stroke-width: 5.5;
      stroke-opacity: 0.92;
    }
    .edge {
      stroke: var(--trimwell-mark, #a33b1e);
      stroke-width: 1.75;
    }
    button:hover .edge {
      stroke: #22302f;
    }
  `;

  @property({ attribute: false }) view: FaceView | null = null;
  /** While something is dragged the marks are away. */
  @property({ type: Boolean }) away = false;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override render() {
    const { state } = this.session;
    const piece = selectedPiece(state);
    const { view } = this;
    const shown =
      piece?.shape === 'rectangle' && piece.face === state.face && !piece.hidden && !holdOf(state.sketch, piece);
    if (!piece || !view || !shown || this.away) return nothing;
    return EDGES.map((edge) => this.#mark(piece, edge, view));
  }

  #mark(piece: Piece, edge: Edge, view: FaceView): TemplateResult | typeof nothing {
    const at = markPlace(piece, edge, view);
    if (!at) return nothing;
    const punch = this.session.state.sketch.punches.find(({ id }) => id === piece.punched[edge]) ?? null;
    return html`<button
      part="mark"
      aria-haspopup="dialog"
      aria-label=${toolMessages.edgeMark(edge, punch)}
      title=${toolMessages.edgeMark(edge, punch)}
      .style=${`left: ${at.x.toFixed(1)}px; top: ${at.y.toFixed(1)}px; rotate: ${piece.tilt + TURN[edge]}deg`}
      @keydown=${(event: Event) => event.stopPropagation()}
      @click=${(event: Event) => openEdgeSlip(this, edge, this.#beside(event.currentTarget, piece, view))}
    >${stretch(punch)}</button>`;
  }

  /** Where the slip stands off: at the height of the mark, but beside the whole piece, so that the edge stays in sight. */
  #beside(mark: EventTarget | null, piece: Piece, view: FaceView): DOMRect {
    const face = this.parentNode instanceof ShadowRoot ? this.parentNode.host.getBoundingClientRect() : new DOMRect();
    const { top = face.top, height = 0 } = mark instanceof Element ? mark.getBoundingClientRect() : {};
    const half = ((piece.tilt === 0 ? piece.width : Math.hypot(piece.width, piece.height)) * view.zoom) / 2;
    const middle = face.left + toStage({ x: piece.x + piece.width / 2, y: 0 }, view).x;
    return new DOMRect(middle - half, top, 2 * half, height);
  }
}

/** A short stretch of the edge as it is; a profile is shown by two and a half repeats, whatever their size. */
function stretch(punch: Punch | null): TemplateResult {
  const { width, height } = MARK;
  const bottom = height - 2;
  const scale = punch ? Math.min(width / (2.5 * punch.repeat), 6 / punch.depth) : 1;
  // Of a fine profile no more than six repeats, so that they can still be told apart.
  const drawn = punch ? { ...punch, repeat: ticks(Math.max(punch.repeat, Math.round(width / scale / 6))) } : null;
  const edge = edgePath(drawn, width, bottom, scale);
  return html`<svg viewBox="0 0 ${width} ${height}" width=${width} height=${height} aria-hidden="true">
    <path class="casing" d=${edge}></path>
    <path class="edge" d=${edge}></path>
  </svg>`;
}
