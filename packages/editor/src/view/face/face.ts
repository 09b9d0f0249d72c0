import { SVG, type Svg } from '@svgdotjs/svg.js';
import { drawCard } from '@trimwell/handout';
import type { Piece, Sketch } from '@trimwell/sketch';
import { html, type TemplateResult } from 'lit';
import { query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { addPiece, facePieces, select } from '../../state/commands.js';
import { type Command, selectedPiece } from '../../state/state.js';
import { bindingOf, type SessionAct } from '../keymap.js';
import { SessionElement } from '../session-element.js';
import { faceMessages } from './face-messages.js';
import { faceStyles } from './face-styles.js';
import { type FaceView, FIGURE, fitCard, toCard } from './face-view.js';
import { type GestureHost, Gestures } from './gestures.js';
import { HeldKey } from './held-key.js';
import type { GestureMoment } from './live-gesture.js';
import { Overlay } from './overlay.js';
import { Stage } from './stage.js';

/** Size of the stage where there is no layout. */
const UNLAID = { width: 480, height: 560 };

const WAYS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

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
export class FaceElement extends SessionElement implements GestureHost {
  static override styles = faceStyles;

  @query('svg') readonly svg!: SVGSVGElement;
  @query('[role="status"]') private readonly status!: HTMLElement;
  view: FaceView = fitCard({ width: 1, height: 1 }, UNLAID);
  #stage: Stage | null = null;
  #overlay: Overlay | null = null;
  #drawn: { readonly sketch: Sketch; readonly face: Piece['face']; readonly zoom: number } | null = null;
  #moment: GestureMoment | null = null;
  #focusNext = false;
  /** The last thing the user touched was the keyboard, so the focus is to be seen. */
  #byKeys = true;
  readonly #gestures = new Gestures(this);
  readonly #held = new HeldKey((gesture) => this.session.settle(gesture));
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
        @keydown=${this.#onKeyDown}
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
    this.#held.end();
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
    if (this.session.state.selection !== piece) this.run(select(piece));
  }

  show(moment: GestureMoment | null): void {
    this.#moment = moment;
    this.requestUpdate();
  }

  kept(moment: GestureMoment): void {
    this.#announce(moment.event);
  }

  #announce(event: string): void {
    const { state } = this.session;
    const words = faceMessages.after(event, state.sketch, selectedPiece(state));
    if (words) this.#say(words);
  }

  /** The same words twice are only read twice when something of them differs. */
  #say(words: string): void {
    this.status.textContent = this.status.textContent === words ? `${words}\u00a0` : words;
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
    // While something is dragged the view stands still, since the drag is counted in it.
    if (!this.#gestures.dragging) this.view = fitCard(sketch.card, this.#extent());
    const { zoom, left, top } = this.view;
    const focused = this.#focusedPiece();
    if (sketch !== this.#drawn?.sketch || face !== this.#drawn.face || zoom !== this.#drawn.zoom) {
      stage.show(drawCard(sketch, { face, style: { unit: sketch.unit }, size: FIGURE / zoom }));
      this.#drawn = { sketch, face, zoom };
    }
    stage.scale(zoom, left, top);
    this.#label(stage);
    this.#bind(stage, overlay);
    const byId = (id: string | null): Piece | null =>
      sketch.pieces.find((piece) => piece.id === id && piece.face === face) ?? null;
    overlay.show({
      sketch,
      view: this.view,
      selected: byId(state.selection),
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

  /** Names and states for those who do not see the face; one piece at a time is a stop of the Tab key. */
  #label(stage: Stage): void {
    const { sketch, selection, face } = this.session.state;
    const pieces = stage.pieces();
    const stop =
      selection && pieces.has(selection) ? selection : (this.#focusedPiece() ?? pieces.keys().next().value ?? null);
    const { list } = stage;
    list.setAttribute('role', 'listbox');
    list.setAttribute('aria-label', face === 'front' ? faceMessages.front(sketch) : faceMessages.inside(sketch));
    list.setAttribute('aria-describedby', 'help');
    list.setAttribute('tabindex', pieces.size === 0 ? '0' : '-1');
    for (const child of list.children)
      if (!pieces.has((child as SVGElement).dataset['piece'] ?? '')) child.setAttribute('aria-hidden', 'true');
    for (const piece of facePieces(this.session.state)) {
      const group = pieces.get(piece.id);
      if (!group) continue;
      group.setAttribute('role', 'option');
      group.setAttribute('aria-label', faceMessages.piece(sketch, piece));
      group.setAttribute('aria-selected', String(piece.id === selection));
      group.setAttribute('tabindex', piece.id === stop ? '0' : '-1');
    }
  }

  #bind(stage: Stage, overlay: Overlay): void {
    // Taking a binding away in the middle of a drag would end the drag without its end.
    if (this.#gestures.dragging) return;
    const pieces = stage.pieces();
    const { resize, tilt } = overlay.handles;
    const selection = (): string | null => this.session.state.selection;
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
    return this.#byKeys ? this.#focusedPiece() : null;
  }

  /** Puts the focus where it was when its element was moved or is gone, or on what was just made. */
  #keepFocus(stage: Stage, before: string | null): void {
    const pieces = stage.pieces();
    const selection = this.session.state.selection;
    const wanted = this.#focusNext ? selection : before;
    this.#focusNext = false;
    if (wanted === null || wanted === this.#focusedPiece()) return;
    (pieces.get(wanted) ?? stage.list).focus({ preventScroll: true });
  }

  readonly #onPointerDown = (event: PointerEvent): void => {
    this.#byKeys = false;
    if (event.button !== 0 || (event.target as Element).closest('.handles')) return;
    const piece = pieceOf(event.target);
    if (this.#gestures.dragging) return;
    if (piece === null) {
      this.run(select(null));
      this.#stage?.list.focus({ preventScroll: true });
      return;
    }
    this.take(piece);
    this.#stage?.pieces().get(piece)?.focus({ preventScroll: true });
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
      this.#held.end();
      if (this.pointing.piece === left) this.pointing.piece = null;
      this.requestUpdate();
    });
  };

  readonly #onKeyUp = (event: KeyboardEvent): void => {
    // Tab comes in from elsewhere: only its end is heard here.
    if (event.key === 'Tab') this.#byKeys = true;
    this.#held.release(event.code);
    this.requestUpdate();
  };

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    this.#byKeys = true;
    if (this.#gestures.dragging || event.defaultPrevented) return;
    const focused = pieceOf(event.target);
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
    const way = plain && this.session.state.selection === null ? WAYS[event.key] : undefined;
    const taken = plain && focused !== null && (event.key === 'Enter' || event.key === ' ');
    const binding = bindingOf(event);
    if (way !== undefined) this.#focusAlong(focused, way);
    else if (taken) this.take(focused);
    else if (!binding || !this.#press(binding.command, binding.held ? event : null)) return;
    event.preventDefault();
  };

  /** Does what a key is for. True when it is a key of the face, whether or not it applies just now. */
  #press(command: Command | SessionAct, held: KeyboardEvent | null): boolean {
    if (command === 'undo' || command === 'redo') {
      this.#held.end();
      this.session[command]();
      this.#say(command === 'undo' ? faceMessages.undone : faceMessages.redone);
      return true;
    }
    if (held !== null) {
      // Asked first, so that a key that does not apply begins no gesture.
      if (command(this.session.state)) this.run(command, this.#held.press(held.code, held.repeat));
      return true;
    }
    this.#held.end();
    const before = this.session.state.selection;
    this.run(command);
    this.#focusNext = this.session.state.selection !== null && this.session.state.selection !== before;
    return true;
  }

  #focusAlong(from: string | null, by: 1 | -1): void {
    const ids = facePieces(this.session.state).map(({ id }) => id);
    const start = from === null ? (by > 0 ? -1 : ids.length) : ids.indexOf(from);
    const next = ids[(start + by + ids.length) % Math.max(1, ids.length)];
    if (next !== undefined) this.#stage?.pieces().get(next)?.focus({ preventScroll: true });
  }
}
