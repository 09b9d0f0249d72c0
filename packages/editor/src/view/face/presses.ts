import type { Session } from '../../session/session.js';
import { clearSelection, piecesWithin, select, selectThese, toggleSelect } from '../../state/commands.js';
import type { Command } from '../../state/state.js';
import type { StageBox } from './overlay.js';

/** The face as presses see it. */
export interface PressHost {
  readonly session: Session;
  /** True while every press takes one more piece. */
  readonly gathering: boolean;
  run(command: Command): boolean;
  focusPiece(piece: string): void;
  /** Shows the frame that is drawn, in pixels of the stage; null when it is done. */
  showFrame(frame: StageBox | null): void;
  /** A point of the window in pixels of the stage, and a box of the stage in ticks of the card. */
  toStagePoint(clientX: number, clientY: number): { readonly x: number; readonly y: number } | null;
  toCardBox(frame: StageBox): StageBox;
}

/** How far a pointer moves before a press beside the pieces draws a frame, in pixels. */
const STEADY = 4;

interface Frame {
  readonly pointer: number;
  readonly from: { readonly x: number; readonly y: number };
  /** What was selected before, to be added to or put back. */
  readonly before: readonly string[];
  readonly adding: boolean;
  drawn: boolean;
}

/**
 * What presses on the face select. A press takes a piece; with Shift, or while gathering, one more, or puts it back when
 * it is let go without a drag. A press beside the pieces lets go of all, and a mouse or a pen draws a frame from there.
 */
export class Presses {
  #frame: Frame | null = null;
  /** What is still to be done when the pointer goes up without having dragged. */
  #onRelease: Command | null = null;

  constructor(private readonly host: PressHost) {}

  /** A pointer goes down on `piece`, or beside all. */
  down(event: PointerEvent, piece: string | null): void {
    const adding = event.shiftKey || this.host.gathering;
    this.#onRelease = null;
    if (piece === null) this.#beside(event, adding);
    else this.#on(piece, adding);
  }

  #on(piece: string, adding: boolean): void {
    const { selection } = this.host.session.state;
    if (!selection.includes(piece)) this.host.run(adding ? toggleSelect(piece) : select(piece));
    else if (adding) this.#onRelease = toggleSelect(piece);
    else if (selection.length > 1) this.#onRelease = select(piece);
    this.host.focusPiece(piece);
  }

  #beside(event: PointerEvent, adding: boolean): void {
    const before = this.host.session.state.selection;
    if (!adding) this.host.run(clearSelection);
    const from = this.host.toStagePoint(event.clientX, event.clientY);
    // A finger scrolls the page from here.
    if (!from || event.pointerType === 'touch') return;
    this.#frame = { pointer: event.pointerId, from, before, adding, drawn: false };
    window.addEventListener('pointermove', this.#draw);
    window.addEventListener('keydown', this.#key, true);
  }

  /** A drag of a piece has begun: letting go is the end of it and nothing else. */
  dragged(): void {
    this.#onRelease = null;
  }

  /** The pointer goes up. */
  up(): void {
    if (this.#onRelease) this.host.run(this.#onRelease);
    this.#onRelease = null;
    this.#done();
  }

  /** The pointer is taken away by the system, or the face goes. */
  cancel(): void {
    this.#onRelease = null;
    this.#done();
  }

  readonly #draw = (event: PointerEvent): void => {
    const frame = this.#frame;
    const to = event.pointerId === frame?.pointer ? this.host.toStagePoint(event.clientX, event.clientY) : null;
    if (!frame || !to) return;
    const [width, height] = [Math.abs(to.x - frame.from.x), Math.abs(to.y - frame.from.y)];
    if (!frame.drawn && Math.max(width, height) < STEADY) return;
    frame.drawn = true;
    const box = { x: Math.min(to.x, frame.from.x), y: Math.min(to.y, frame.from.y), width, height };
    const within = piecesWithin(this.host.session.state, this.host.toCardBox(box));
    const kept = frame.adding ? frame.before : [];
    this.host.run(selectThese([...kept, ...within.filter((id) => !kept.includes(id))]));
    this.host.showFrame(box);
  };

  readonly #key = (event: KeyboardEvent): void => {
    const frame = this.#frame;
    if (event.key !== 'Escape' || !frame?.drawn) return;
    event.preventDefault();
    event.stopPropagation();
    this.#done();
    this.host.run(selectThese(frame.before));
  };

  #done(): void {
    if (!this.#frame) return;
    this.#frame = null;
    window.removeEventListener('pointermove', this.#draw);
    window.removeEventListener('keydown', this.#key, true);
    this.host.showFrame(null);
  }
}
