import type { Paper } from '@trimwell/sketch';
import { drawSwatch } from '../papers/swatch.js';

/** Pixels that the pointer must go before a press becomes a drag. */
const START = 6;
/** The slip under the pointer, in pixels, and ticks of its paper in one of them: a little larger than on the table. */
const SLIP = { width: 68, height: 48 };
const TICKS = 1100;

/** Takes a sheet from the table: a slip of its paper follows the pointer until it is let go, or put back by Escape. */
export class PaperDrag {
  #end: (() => void) | null = null;

  constructor(private readonly host: HTMLElement) {}

  /** Begins on a press of the sheet. On a touch screen a sideways stroke scrolls the sheets instead. */
  take(event: PointerEvent, paper: Paper): void {
    if (!event.isPrimary || event.button !== 0) return;
    this.#end?.();
    const { clientX, clientY, pointerId } = event;
    let slip: HTMLElement | null = null;
    const move = (now: PointerEvent): void => {
      if (now.pointerId !== pointerId) return;
      const far = Math.hypot(now.clientX - clientX, now.clientY - clientY) > START;
      if (!slip && far) slip = this.#slip(paper);
      if (slip) slip.style.translate = `${now.clientX - SLIP.width / 2}px ${now.clientY - SLIP.height / 2}px`;
    };
    const drop = (now: PointerEvent): void => {
      if (now.pointerId !== pointerId) return;
      const dragged = slip !== null;
      finish();
      if (dragged) {
        const detail = { paper: paper.id, clientX: now.clientX, clientY: now.clientY };
        this.host.dispatchEvent(new CustomEvent('paper-drop', { detail, bubbles: true, composed: true }));
      }
    };
    const key = (pressed: KeyboardEvent): void => {
      if (pressed.key === 'Escape') finish();
    };
    const finish = (): void => {
      slip?.remove();
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', drop);
      window.removeEventListener('pointercancel', finish);
      window.removeEventListener('keydown', key);
      this.#end = null;
    };
    this.#end = finish;
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', drop);
    window.addEventListener('pointercancel', finish);
    window.addEventListener('keydown', key);
  }

  /** A slip of the paper as it looks, at the scale of the sheets along the table's edge. */
  #slip(paper: Paper): HTMLElement {
    const slip = document.createElement('trimwell-drawing');
    Object.assign(slip, { drawing: drawSwatch(paper, SLIP.width * TICKS, SLIP.height * TICKS) });
    Object.assign(slip.style, {
      position: 'fixed',
      left: '0',
      top: '0',
      width: `${SLIP.width}px`,
      height: `${SLIP.height}px`,
      zIndex: '10',
      pointerEvents: 'none',
      overflow: 'hidden',
      boxShadow: '0 6px 14px rgb(20 25 24 / 0.35)',
    });
    this.host.shadowRoot?.append(slip);
    return slip;
  }
}
