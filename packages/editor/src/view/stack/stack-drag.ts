/** A drag of rows up or down the stack, in pixels of the page. */
export interface StackDrag {
  /** The ids that are lifted. */
  readonly ids: readonly string[];
  /** How far the pointer has gone down since it was pressed, scrolling counted in. */
  readonly by: number;
  /** Where the pointer is, from the top of the stack's own picture. */
  readonly at: number;
}

export interface StackDragHost {
  /** What would be lifted by a drag of `row`; null when it stays, and the host has said why. */
  liftedFrom(row: string): readonly string[] | null;
  /** The stack's own picture. */
  readonly picture: HTMLElement;
  dragged(drag: StackDrag): void;
  dropped(): void;
  cancelled(): void;
}

/** Pixels that a pressed pointer may wander before it drags. */
const SLACK = 5;
/** How near to the edge of what scrolls the pointer starts it, and the most it scrolls in a frame, in pixels. */
const NEAR = 40;
const FASTEST = 14;

/** The nearest element around `from`, across shadow roots, that scrolls up and down; else the page. */
export function scrollerOf(from: Element): Element {
  for (let at: Node | null = from; at; at = at instanceof ShadowRoot ? at.host : at.parentNode) {
    if (!(at instanceof Element) || at.scrollHeight <= at.clientHeight + 1) continue;
    const { overflowY } = getComputedStyle(at);
    if (overflowY === 'auto' || overflowY === 'scroll') return at;
  }
  return document.scrollingElement ?? document.documentElement;
}

interface Live {
  readonly pointer: number;
  readonly ids: readonly string[];
  readonly startY: number;
  readonly startTop: number;
  readonly scroller: Element;
  y: number;
  frame: number;
}

/**
 * Turns a pressed pointer on a row into a drag along the stack: it begins after some pixels, scrolls near the edge of what
 * scrolls, and is put back by Escape or when the pointer is lost. Everything it listens to is of its own pointer.
 */
export class StackDragging {
  #pressed: { readonly row: string; readonly pointer: number; readonly y: number } | null = null;
  #live: Live | null = null;

  constructor(private readonly host: StackDragHost) {}

  get dragging(): boolean {
    return this.#live !== null;
  }

  /** The pointer was pressed on `row`. */
  press(event: PointerEvent, row: string): void {
    if (event.button !== 0 || this.#live || this.#pressed) return;
    this.#pressed = { row, pointer: event.pointerId, y: event.clientY };
    window.addEventListener('pointermove', this.#move);
    window.addEventListener('pointerup', this.#up);
    window.addEventListener('pointercancel', this.#lost);
    window.addEventListener('keydown', this.#key, true);
  }

  dispose(): void {
    this.#finish();
  }

  readonly #move = (event: PointerEvent): void => {
    if (this.#live) {
      if (event.pointerId === this.#live.pointer) this.#follow(event.clientY);
      return;
    }
    const pressed = this.#pressed;
    if (!pressed || event.pointerId !== pressed.pointer || Math.abs(event.clientY - pressed.y) < SLACK) return;
    const ids = this.host.liftedFrom(pressed.row);
    if (!ids) {
      this.#finish();
      return;
    }
    const { picture } = this.host;
    this.#live = {
      pointer: pressed.pointer,
      ids,
      startY: pressed.y,
      startTop: picture.getBoundingClientRect().top,
      scroller: scrollerOf(picture),
      y: event.clientY,
      frame: 0,
    };
    // Text that the press has begun to select would follow the drag.
    getSelection()?.removeAllRanges();
    this.#follow(event.clientY);
    this.#live.frame = requestAnimationFrame(this.#scroll);
  };

  #follow(y: number): void {
    const live = this.#live;
    if (!live) return;
    live.y = y;
    const { top } = this.host.picture.getBoundingClientRect();
    this.host.dragged({ ids: live.ids, by: y - live.startY + live.startTop - top, at: y - top });
  }

  readonly #scroll = (): void => {
    const live = this.#live;
    if (!live) return;
    live.frame = requestAnimationFrame(this.#scroll);
    const page = live.scroller === document.scrollingElement;
    const box = live.scroller.getBoundingClientRect();
    const [top, bottom] = page ? [0, innerHeight] : [Math.max(0, box.top), Math.min(innerHeight, box.bottom)];
    const over = live.y < top + NEAR ? live.y - top - NEAR : live.y > bottom - NEAR ? live.y - bottom + NEAR : 0;
    if (over === 0) return;
    const before = live.scroller.scrollTop;
    live.scroller.scrollTop += Math.max(-FASTEST, Math.min(FASTEST, over / 3));
    if (live.scroller.scrollTop !== before) this.#follow(live.y);
  };

  readonly #up = (event: PointerEvent): void => {
    const live = this.#live;
    if (event.pointerId !== (live ?? this.#pressed)?.pointer) return;
    this.#finish();
    if (live) this.host.dropped();
  };

  readonly #lost = (event: PointerEvent): void => {
    if (event.pointerId === (this.#live ?? this.#pressed)?.pointer) this.#cancel();
  };

  readonly #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.#live) return;
    event.preventDefault();
    event.stopPropagation();
    this.#cancel();
  };

  #cancel(): void {
    const live = this.#live;
    this.#finish();
    if (live) this.host.cancelled();
  }

  #finish(): void {
    if (this.#live) cancelAnimationFrame(this.#live.frame);
    this.#live = null;
    this.#pressed = null;
    window.removeEventListener('pointermove', this.#move);
    window.removeEventListener('pointerup', this.#up);
    window.removeEventListener('pointercancel', this.#lost);
    window.removeEventListener('keydown', this.#key, true);
  }
}
