import { SVG, type Svg } from '@svgdotjs/svg.js';
import { drawCard } from '@trimwell/handout';
import type { Piece, Sketch } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { addPiece, select } from '../../state/commands.js';
import { type Command, selectedPiece } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { FaceKeys, type KeyHost } from './face-keys.js';
import { faceMessages } from './face-messages.js';
import { faceStyles } from './face-styles.js';
import { type FaceView, FIGURE, fitCard, toCard } from './face-view.js';
import { type GestureHost, Gestures } from './gestures.js';
import { labelPieces } from './label-pieces.js';
import type { GestureMoment } from './live-gesture.js';
import { Overlay } from './overlay.js';
import { Stage } from './stage.js';

/** Size of the stage where there is no layout. */
const UNLAID = { width: 480, height: 560 };

function pieceOf(target: EventTarget | null): string | null {
  const group = target instanceof Element ? target.closest<SVGGElement>('[role="option"]') : null;
  return group?.dataset['piece'] ?? null;
}

/**
 * The card at true proportion: its pieces are picked, dragged, resized, tilted and moved by keys on it. Needs `session`
 * and `pointing`; draws the same drawing as every writer, and its own handles over it.
 * @csspart stage - The drawing with its handles.
 * @csspart handle - One of the eight handles, or the tilt pin.
 * @cssprop [--trimwell-mark=#a33b1e] - Frames, handles and snap marks, which lie on paper.
 * @cssprop [--trimwell-casing=#fffdf6] - What sets them off from the paper.
 * @cssprop [--trimwell-shadow=#1d2423] - Depth under the pieces.
 * @cssprop [--trimwell-edge=rgb(29 36 35 / 0.28)] - The cut edge of the pieces.
 */
export class FaceElement extends SessionElement implements GestureHost, KeyHost {
  static override styles = faceStyles;

  @query('svg') readonly svg!: SVGSVGElement;
  @query('[role="status"]') private readonly status!: HTMLElement;
  view: FaceView = fitCard({ width: 1, height: 1 }, UNLAID);
  #stage: Stage | null = null;
  #overlay: Overlay | null = null;
  #drawn: { readonly sketch: Sketch; readonly face: Piece['face']; readonly zoom: number } | null = null;
  #moment: GestureMoment | null = null;
  #focusNext = false;
  #pressed = false;
  readonly #gestures = new Gestures(this);
  readonly #keys = new FaceKeys(this);
  readonly #sizes = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(() => this.requestUpdate());

  protected concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override render(): TemplateResult {
    // Not right below the shadow root: svg.js would take the svg for a part of another one there.
    return html`<div class="table">
        <svg
        part="stage"
        @pointerdown=${this.#onPointerDown}
        @pointerover=${this.#onPointerOver}
        @pointerleave=${this.#onPointerLeave}
        @pointercancel=${() => this.#gestures.cancel()}
        @keydown=${(event: KeyboardEvent) => this.#keys.down(event, pieceOf(event.target))}
        @keyup=${this.#onKeyUp}
        @focusin=${this.#onFocusIn}
        @focusout=${this.#onFocusOut}
        @touchstart=${this.#onTouchStart}
        @mousedown=${this.#onMouseDown}
        @dragstart=${(event: Event) => event.preventDefault()}
        ></svg>
      </div>
      <p id="help" class="unseen">${faceMessages.help}</p>
      <p role="status" aria-live="polite" class="unseen"></p>`;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#sizes?.observe(this);
    if (this.hasUpdated) this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sizes?.disconnect();
    this.#keys.end();
    this.#gestures.dispose();
  }

  protected override updated(): void {
    if (!this.session || !this.isConnected) return;
    this.#paint();
  }

  /** True when the point of the window lies on the card. */
  containsPoint(clientX: number, clientY: number): boolean {
    const at = this.#cardPoint(clientX, clientY);
    const { width, height } = this.session.state.sketch.card;
    return at !== null && at.x >= 0 && at.y >= 0 && at.x <= width && at.y <= height;
  }

  /** Cuts a new piece from a paper or a mix where it was dropped on the card; false when it was dropped beside it. */
  dropPaper(paper: string, clientX: number, clientY: number): boolean {
    const at = this.#cardPoint(clientX, clientY);
    if (!at || !this.containsPoint(clientX, clientY)) return false;
    this.#focusNext = true;
    return this.run(addPiece(paper, at));
  }

  /** Runs a command and announces what it did; with `gesture` as part of it. False when it does not apply. */
  run(command: Command, gesture?: string): boolean {
    let event = '';
    const applies = command(
      this.session.state,
      (transaction) => {
        event = transaction.event;
        this.session.dispatch(gesture === undefined ? transaction : { ...transaction, gesture });
      },
      performance.now(),
    );
    if (applies) this.#announce(event);
    return applies;
  }

  take(piece: string): void {
    this.run(select(piece));
  }

  show(moment: GestureMoment | null): void {
    this.#moment = moment;
    this.requestUpdate();
  }

  kept(moment: GestureMoment): void {
    this.#announce(moment.event);
  }

  putBack(): void {
    this.say(faceMessages.cancelled);
  }

  get dragging(): boolean {
    return this.#gestures.dragging;
  }

  focusPiece(piece: string): void {
    this.#stage?.pieces().get(piece)?.focus({ preventScroll: true });
  }

  followSelection(): void {
    this.#focusNext = true;
  }

  /** Announces; the same words twice are only read twice when something of them differs. */
  say(words: string): void {
    this.status.textContent = this.status.textContent === words ? `${words}\u00a0` : words;
  }

  #announce(event: string): void {
    const { state } = this.session;
    const words = faceMessages.after(event, state.sketch, selectedPiece(state));
    if (words) this.say(words);
  }

  #cardPoint(clientX: number, clientY: number): { readonly x: number; readonly y: number } | null {
    const matrix = this.svg.getScreenCTM()?.inverse();
    if (!matrix) return null;
    const x = matrix.a * clientX + matrix.c * clientY + matrix.e;
    const y = matrix.b * clientX + matrix.d * clientY + matrix.f;
    return toCard({ x, y }, this.view);
  }

  #prepare(): { readonly stage: Stage; readonly overlay: Overlay } {
    if (this.#stage && this.#overlay) return { stage: this.#stage, overlay: this.#overlay };
    const root = SVG(this.svg) as Svg;
    const stage = new Stage(root.group().addClass('drawing'), 'face');
    const overlay = new Overlay(root.group().addClass('overlay').attr('aria-hidden', 'true'));
    this.#stage = stage;
    this.#overlay = overlay;
    return { stage, overlay };
  }

  #paint(): void {
    const { stage, overlay } = this.#prepare();
    const { state } = this.session;
    const { sketch, face } = state;
    // From the press to the end of a drag the view stands still, whatever the room does that the face is given.
    if (!this.#pressed && !this.#gestures.dragging) this.view = fitCard(sketch.card, this.#extent());
    const { zoom, left, top } = this.view;
    const focused = this.#focusedPiece();
    if (sketch !== this.#drawn?.sketch || face !== this.#drawn.face || zoom !== this.#drawn.zoom) {
      stage.show(drawCard(sketch, { face, style: { unit: sketch.unit }, size: FIGURE / zoom }));
      this.#drawn = { sketch, face, zoom };
    }
    stage.scale(zoom, left, top);
    labelPieces(stage, state, this.#focusedPiece());
    this.#bind(stage, overlay);
    const byId = (id: string | null): Piece | null =>
      sketch.pieces.find((piece) => piece.id === id && piece.face === face) ?? null;
    overlay.show({
      sketch,
      view: this.view,
      selected: byId(selectedPiece(state)?.id ?? null),
      pointed: byId(this.pointing.piece),
      focused: byId(this.#visibleFocus()),
      moment: this.#moment,
    });
    this.svg.classList.toggle('dragging', this.#gestures.dragging);
    // After the update, since a change of focus asks for one more.
    queueMicrotask(() => this.#keepFocus(stage, focused));
  }

  #extent(): { readonly width: number; readonly height: number } {
    const { clientWidth, clientHeight } = this;
    return clientWidth > 0 && clientHeight > 0 ? { width: clientWidth, height: clientHeight } : UNLAID;
  }

  #bind(stage: Stage, overlay: Overlay): void {
    // Taking a binding away in the middle of a drag would end the drag without its end.
    if (this.#gestures.dragging) return;
    const pieces = stage.pieces();
    const { resize, tilt } = overlay.handles;
    const selection = (): string | null => selectedPiece(this.session.state)?.id ?? null;
    this.#gestures.keepOnly(
      new Set<Element>([...pieces.values(), tilt.node, ...resize.map(({ group }) => group.node)]),
    );
    for (const [id, group] of pieces) this.#gestures.bind(group, { do: 'move' }, () => id);
    for (const { handle, group } of resize) this.#gestures.bind(group.node, { do: 'resize', handle }, selection);
    this.#gestures.bind(tilt.node, { do: 'tilt' }, selection);
  }

  #focusedPiece(): string | null {
    return pieceOf(this.renderRoot instanceof ShadowRoot ? this.renderRoot.activeElement : null);
  }

  #visibleFocus(): string | null {
    return this.#keys.used ? this.#focusedPiece() : null;
  }

  /** Puts the focus where it was when its element was moved or is gone, or on what was just made. */
  #keepFocus(stage: Stage, before: string | null): void {
    const pieces = stage.pieces();
    const selection = this.session.state.selection.at(-1) ?? null;
    const wanted = this.#focusNext ? selection : before;
    this.#focusNext = false;
    if (wanted === null || wanted === this.#focusedPiece()) return;
    (pieces.get(wanted) ?? stage.list).focus({ preventScroll: true });
  }

  readonly #onPointerDown = (event: PointerEvent): void => {
    this.#keys.used = false;
    this.#hold();
    if (event.button !== 0 || (event.target as Element).closest('.handles')) return;
    const piece = pieceOf(event.target);
    if (this.#gestures.dragging) return;
    if (piece === null) {
      this.run(select(null));
      this.#stage?.list.focus({ preventScroll: true });
      return;
    }
    this.take(piece);
    this.focusPiece(piece);
  };

  #hold(): void {
    this.#pressed = true;
    const release = (): void => {
      this.#pressed = false;
      window.removeEventListener('pointerup', release);
      window.removeEventListener('pointercancel', release);
      this.requestUpdate();
    };
    window.addEventListener('pointerup', release);
    window.addEventListener('pointercancel', release);
  }

  readonly #onKeyUp = (event: KeyboardEvent): void => {
    this.#keys.up(event);
    this.requestUpdate();
  };

  /**
   * A finger on a piece or a handle drags it; beside them it scrolls the page. `touch-action` cannot say so, since it has no
   * effect on the shapes within an SVG.
   */
  readonly #onTouchStart = (event: TouchEvent): void => {
    if ((event.target as Element).closest('.handles, [role="option"]')) event.preventDefault();
  };

  /** Pressing a handle leaves the focus on its piece. */
  readonly #onMouseDown = (event: MouseEvent): void => {
    if ((event.target as Element).closest('.handles')) event.preventDefault();
  };

  readonly #onPointerOver = (event: PointerEvent): void => {
    if (this.#gestures.dragging || (event.target as Element).closest('.handles')) return;
    this.pointing.piece = pieceOf(event.target) ?? this.#visibleFocus();
  };

  readonly #onPointerLeave = (): void => {
    if (!this.#gestures.dragging) this.pointing.piece = this.#visibleFocus();
  };

  readonly #onFocusIn = (event: FocusEvent): void => {
    const piece = pieceOf(event.target);
    if (piece !== null) this.pointing.piece = piece;
    this.requestUpdate();
  };

  readonly #onFocusOut = (event: FocusEvent): void => {
    const left = pieceOf(event.target);
    // A piece that is taken away loses the focus in the middle of an update; another one is asked for after it.
    queueMicrotask(() => {
      this.#keys.end();
      if (this.pointing.piece === left) this.pointing.piece = null;
      this.requestUpdate();
    });
  };
}
