/** Room that stays between what is selected and the ticket: its lower handles, in pixels. */
const ROOM = 40;

/**
 * On a narrow table the ticket comes from below and may come over the very piece that it is about: the page is scrolled so
 * far that `selected` is seen above it, but never so far that its upper edge leaves the window.
 */
function scrollClear(selected: Element, ticket: Element): void {
  const piece = selected.getBoundingClientRect();
  const hidden = piece.bottom + ROOM - ticket.getBoundingClientRect().top;
  const free = piece.top - ROOM;
  const by = Math.min(hidden, free);
  if (by > 0) window.scrollBy({ top: by, behavior: 'instant' });
}

/** Scrolls once nothing presses the table any more, since what is under a finger must not run away from it. */
export class ClearOfTicket {
  #pressed = 0;
  #waiting: (() => void) | null = null;

  constructor(private readonly window: Window) {}

  readonly #down = (): void => {
    this.#pressed += 1;
  };

  readonly #up = (): void => {
    this.#pressed = 0;
    const waiting = this.#waiting;
    this.#waiting = null;
    if (waiting) requestAnimationFrame(waiting);
  };

  watch(): void {
    this.window.addEventListener('pointerdown', this.#down, true);
    this.window.addEventListener('pointerup', this.#up, true);
    this.window.addEventListener('pointercancel', this.#up, true);
  }

  unwatch(): void {
    this.window.removeEventListener('pointerdown', this.#down, true);
    this.window.removeEventListener('pointerup', this.#up, true);
    this.window.removeEventListener('pointercancel', this.#up, true);
    this.#waiting = null;
  }

  /** `selected` and `ticket` are asked for when it is time; null leaves the page as it is. */
  scroll(selected: () => Element | null, ticket: () => Element | null): void {
    const act = (): void => {
      const [piece, slip] = [selected(), ticket()];
      if (piece && slip) scrollClear(piece, slip);
    };
    if (this.#pressed > 0) this.#waiting = act;
    else requestAnimationFrame(() => requestAnimationFrame(act));
  }
}
