import type { Point } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import type interactjs from 'interactjs';
import type { Session } from '../../session/session.js';
import { selectedBodies } from '../../state/group.js';
import { selectedPiece } from '../../state/state.js';
import type { FaceView } from './face-view.js';
import {
  type GestureKeys,
  type GestureKind,
  type GestureMoment,
  type GestureStart,
  momentsOf,
} from './live-gesture.js';

type Interact = typeof interactjs;
type Bound = ReturnType<Interact>;

/** Something to drag, and what dragging it does. */
interface Grip {
  readonly kind: GestureKind;
  readonly piece: () => string | null;
}

/** What of an interact event is used here. */
interface DragStep extends GestureKeys {
  readonly clientX: number;
  readonly clientY: number;
  readonly clientX0: number;
  readonly clientY0: number;
  readonly interaction: { stop(): void };
}

/** The face as the gestures see it. */
export interface GestureHost {
  readonly session: Session;
  readonly view: FaceView;
  readonly svg: SVGSVGElement;
  /** Sends all that the pointer does to the stage, wherever it is, until it goes up. */
  capture(): void;
  /** Sees to it that a piece is among those that are selected before it is dragged. */
  takeUp(piece: string): void;
  /** Says why a drag of `piece` does nothing: it is locked in its place. */
  held(piece: Piece): void;
  /** Shows the moment, or the end of the drag: null. */
  show(moment: GestureMoment | null): void;
  /** Called once after a drag was kept, or put back. */
  kept(moment: GestureMoment): void;
  putBack(): void;
}

interface Live {
  readonly id: string;
  readonly moments: (pull: Point, keys: GestureKeys) => GestureMoment;
  readonly toPull: (dx: number, dy: number) => Point;
  readonly interaction: { stop(): void };
  step: DragStep;
  shown: GestureMoment | null;
  /** What is shown, as text: most moves of a pointer stay within one mark of the ruler and change nothing. */
  text: string;
  frame: number;
}

/**
 * Turns drags into gestures of the session: one id from the first move to the last, at most one transaction per animation
 * frame, each counted from the start. Escape and a cancelled pointer put back what was there. Bound to elements, never to
 * selectors, so that several editors on one page do not hear each other.
 */
export class Gestures {
  readonly #grips = new Map<SVGElement, Grip>();
  readonly #bound = new Map<Element, Bound>();
  /** Comes right after the first look at the card, which is there before anybody can drag. */
  #interact: Interact | null = null;
  #asked = false;
  #live: Live | null = null;
  #count = 0;

  constructor(private readonly host: GestureHost) {}

  /** True from the first move of a drag to its end. */
  get dragging(): boolean {
    return this.#live !== null;
  }

  /** Makes `element` drag the piece that `piece` names when the drag begins. Binding again changes nothing. */
  bind(element: SVGElement, kind: GestureKind, piece: () => string | null): void {
    if (this.#grips.has(element)) return;
    this.#grips.set(element, { kind, piece });
    if (this.#interact) this.#take(this.#interact, element, { kind, piece });
    else if (!this.#asked) void this.#fetch();
  }

  async #fetch(): Promise<void> {
    this.#asked = true;
    const { default: interact } = await import('interactjs');
    this.#interact = interact;
    for (const [element, grip] of this.#grips) this.#take(interact, element, grip);
  }

  #take(interact: Interact, element: SVGElement, { kind, piece }: Grip): void {
    const bound = interact(element).draggable({
      mouseButtons: 1,
      listeners: {
        start: (event: DragStep) => this.#start(event, kind, piece()),
        move: (event: DragStep) => this.#move(event),
        end: (event: DragStep) => this.#end(event),
      },
    });
    // The page's own style keeps its cursor; the face sets cursors itself, and sees to touch, text and native drags.
    bound.styleCursor(false).preventDefault('never');
    this.#bound.set(element, bound);
  }

  /** Unbinds every element that is not in `kept`. */
  keepOnly(kept: ReadonlySet<Element>): void {
    for (const element of this.#grips.keys()) {
      if (kept.has(element)) continue;
      this.#grips.delete(element);
      this.#bound.get(element)?.unset();
      this.#bound.delete(element);
    }
  }

  /** Puts back what was there before the drag under way. */
  cancel(): void {
    const live = this.#live;
    if (!live) return;
    this.#finish(live);
    live.interaction.stop();
    this.host.session.cancel(live.id);
    this.host.show(null);
    this.host.putBack();
  }

  /** Ends the drag under way and touches nothing: what it began on is no longer on the table. */
  drop(): void {
    const live = this.#live;
    if (!live) return;
    this.#finish(live);
    live.interaction.stop();
    this.host.show(null);
  }

  dispose(): void {
    this.cancel();
    this.keepOnly(new Set());
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.cancel();
    event.preventDefault();
    event.stopPropagation();
    if (event.key === 'Alt' || event.key === 'Shift') this.#keysChanged(event);
  };

  #keysChanged({ altKey, shiftKey }: KeyboardEvent): void {
    const live = this.#live;
    if (!live) return;
    const { clientX, clientY, clientX0, clientY0, interaction } = live.step;
    this.#move({ clientX, clientY, clientX0, clientY0, interaction, altKey, shiftKey });
  }

  /** What a drag moves; null, with a word about it, when the piece is locked. */
  #begun(kind: GestureKind, id: string | null): Pick<GestureStart, 'sketch' | 'piece' | 'bodies'> | null {
    const { state } = this.host.session;
    const { sketch } = state;
    const piece = kind.do === 'move' ? sketch.pieces.find((one) => one.id === id) : selectedPiece(state);
    if (!piece) return null;
    const all = selectedBodies(state);
    const hold = all.find(({ tied }) => tied.has(piece.id))?.locked;
    if (hold) {
      this.host.held(hold);
      return null;
    }
    return { sketch, piece, bodies: all.filter(({ locked }) => !locked) };
  }

  #start(event: DragStep, kind: GestureKind, id: string | null): void {
    const { svg, view } = this.host;
    // A second finger drags nothing.
    if (!this.#live && id !== null && kind.do === 'move') this.host.takeUp(id);
    const start = this.#live ? null : this.#begun(kind, id);
    const matrix = svg.getScreenCTM()?.inverse();
    if (!start || !matrix) {
      event.interaction.stop();
      return;
    }
    const toPull = (dx: number, dy: number): Point => ({
      x: (matrix.a * dx + matrix.c * dy) / view.zoom,
      y: (matrix.b * dx + matrix.d * dy) / view.zoom,
    });
    const corner = toPull(event.clientX0, event.clientY0);
    const moments = momentsOf(kind, {
      ...start,
      at: { x: corner.x + (matrix.e - view.left) / view.zoom, y: corner.y + (matrix.f - view.top) / view.zoom },
      ticksPerPixel: Math.hypot(toPull(1, 0).x, toPull(1, 0).y),
    });
    this.host.capture();
    this.#count += 1;
    this.#live = {
      id: `face-${this.#count}`,
      moments,
      toPull,
      interaction: event.interaction,
      step: event,
      shown: null,
      text: '',
      frame: 0,
    };
    window.addEventListener('keydown', this.#onKey, true);
    window.addEventListener('keyup', this.#onKey, true);
  }

  #move(event: DragStep): void {
    const live = this.#live;
    if (!live) return;
    live.step = event;
    if (live.frame === 0) live.frame = requestAnimationFrame(() => this.#apply(live));
  }

  #apply(live: Live): void {
    live.frame = 0;
    const { clientX, clientY, clientX0, clientY0 } = live.step;
    const moment = live.moments(live.toPull(clientX - clientX0, clientY - clientY0), live.step);
    const text = JSON.stringify(moment);
    if (text === live.text) return;
    live.text = text;
    live.shown = moment;
    this.host.session.dispatch({ event: moment.event, edits: moment.edits, gesture: live.id, at: performance.now() });
    this.host.show(moment);
  }

  #end(event: DragStep): void {
    const live = this.#live;
    if (!live) return;
    live.step = event;
    this.#finish(live);
    this.#apply(live);
    this.host.session.settle(live.id);
    this.host.show(null);
    if (live.shown) this.host.kept(live.shown);
  }

  #finish(live: Live): void {
    cancelAnimationFrame(live.frame);
    this.#live = null;
    window.removeEventListener('keydown', this.#onKey, true);
    window.removeEventListener('keyup', this.#onKey, true);
  }
}
