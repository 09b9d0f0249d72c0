import { SVG, type Svg } from '@svgdotjs/svg.js';
import type { Length } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import { query, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { addPiece, select } from '../../state/commands.js';
import { holdOf } from '../../state/group.js';
import { type Command, selectedPiece, selectedPieces } from '../../state/state.js';
import { watchPhotos } from '../photos/photo-watch.js';
import { SessionElement } from '../session-element.js';
import { roundersFor } from '../tools/own-tools.js';
import { announcement, type Done, refusal } from './announcement.js';
import { FaceClipboard } from './clipboard.js';
import type { EdgeMarksElement } from './edge-marks.js';
import { FaceKeys, type KeyHost } from './face-keys.js';
import { faceMessages } from './face-messages.js';
import { FacePainter } from './face-painter.js';
import { faceStyles } from './face-styles.js';
import { type Extent, type FaceView, fitCard, toCard } from './face-view.js';
import { type GestureHost, Gestures } from './gestures.js';
import type { GestureMoment } from './live-gesture.js';
import { Overlay, type StageBox } from './overlay.js';
import { Presses, type PressHost } from './presses.js';
import { Stage } from './stage.js';
import type { WatchMarksElement } from './watch-marks.js';

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
export class FaceElement extends SessionElement implements GestureHost, KeyHost, PressHost {
  static override styles = faceStyles;

  @query('svg') readonly svg!: SVGSVGElement;
  @query('[role="status"]') private readonly status!: HTMLElement;
  @query('trimwell-edge-marks') private readonly marks!: EdgeMarksElement;
  @query('trimwell-watch-marks') private readonly watched!: WatchMarksElement;
  view: FaceView = fitCard({ width: 1, height: 1 }, UNLAID);
  /** Why something was refused, to be read beside the card until the next press or key. */
  @state() private refused = '';
  #size: Extent = UNLAID;
  #stage: Stage | null = null;
  #overlay: Overlay | null = null;
  #painter: FacePainter | null = null;
  #moment: GestureMoment | null = null;
  #frame: StageBox | null = null;
  #focusNext = false;
  #pressed = false;
  /** The pointer that is down and may be captured. */
  #capturable: number | null = null;
  /** The pieces that were there at the last change, to tell what others have added. */
  #known: ReadonlySet<string> | null = null;
  /** True while the face itself changes the sketch: it announces that in its own words. */
  #running = false;
  readonly #gestures = new Gestures(this);
  readonly #keys = new FaceKeys(this);
  readonly #presses = new Presses(this);
  readonly #clipboard = new FaceClipboard(this);
  readonly #sizes = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(() => this.requestUpdate());

  constructor() {
    super();
    watchPhotos(this, () => {
      this.#painter?.forget();
      this.requestUpdate();
    });
  }

  protected concerns(change: SessionChange): boolean {
    return change.sketch || change.selection || change.opened;
  }

  /** A piece that was cut from a sheet beside the table, or put back, is told of here, where its place is known. */
  protected override sessionChanged(change: SessionChange): void {
    const { sketch, selection } = this.session.state;
    if (change.opened) this.#letGo();
    if (change.sketch && !change.places) {
      const known = this.#known;
      const added = known !== null && selection.some((id) => !known.has(id));
      if (added && !this.#running) this.#announce('piece.add');
      this.#known = new Set(sketch.pieces.map(({ id }) => id));
    }
    super.sessionChanged(change);
  }

  /** Another sketch is on the table: a drag or a frame that was begun on the one before is over, and nothing of it was added. */
  #letGo(): void {
    this.#gestures.drop();
    this.#presses.cancel();
    this.#known = null;
  }

  protected override get followsPlaces(): boolean {
    return true;
  }

  protected override get followsPointing(): boolean {
    return true;
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
        @copy=${(event: ClipboardEvent) => this.#clipboard.copy(event)}
        @cut=${(event: ClipboardEvent) => this.#clipboard.cut(event)}
        @paste=${(event: ClipboardEvent) => this.#clipboard.paste(event)}
        @keydown=${this.#onKeyDown}
        @keyup=${this.#onKeyUp}
        @focusin=${this.#onFocusIn}
        @focusout=${this.#onFocusOut}
        @touchstart=${this.#onTouchStart}
        @mousedown=${this.#onMouseDown}
        @dragstart=${(event: Event) => event.preventDefault()}
        ></svg>
      </div>
      <trimwell-edge-marks .session=${this.session} .pointing=${this.pointing}></trimwell-edge-marks>
      <trimwell-watch-marks .session=${this.session} .pointing=${this.pointing} @mended=${this.#onMended}></trimwell-watch-marks>
      ${this.refused === '' ? nothing : html`<p class="refused">${this.refused}</p>`}
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
    this.#presses.cancel();
    this.#gestures.dispose();
  }

  protected override updated(): void {
    if (!this.session || !this.isConnected) return;
    this.#known ??= new Set(this.session.state.sketch.pieces.map(({ id }) => id));
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

  /** Cuts a new piece from a paper or a mix in the middle of the card, and goes to it. */
  cutPaper(paper: string, byKey: boolean): boolean {
    this.#focusNext = true;
    this.#keys.used = byKey;
    return this.run(addPiece(paper));
  }

  /** Puts the focus on the card itself. */
  focusCard(): void {
    this.#stage?.list.focus({ preventScroll: true });
  }

  /**
   * Runs a command and announces what it did, or that locked pieces kept it from doing anything; with `gesture` as part
   * of it. False when it does not apply.
   */
  run(command: Command, gesture?: string): boolean {
    let done: Done | null = null;
    this.#running = true;
    const applies = command(
      this.session.state,
      (transaction) => {
        done = transaction;
        this.session.dispatch(gesture === undefined ? transaction : { ...transaction, gesture });
      },
      performance.now(),
    );
    this.#running = false;
    if (done) this.say(announcement(done, this.session.state) ?? '');
    return applies;
  }

  /** As `run`, for what the user asks for by a key: a command that does nothing because pieces are locked says so. */
  ask(command: Command, gesture?: string): boolean {
    const applies = this.run(command, gesture);
    const words = applies ? null : refusal(this.session.state);
    if (words) this.refuse(words);
    return applies;
  }

  take(piece: string): void {
    this.run(select(piece));
  }

  takeUp(piece: string): void {
    this.#presses.dragged();
    if (!this.session.state.selection.includes(piece)) this.take(piece);
  }

  capture(): void {
    // Beside the order this brings, the browser need not look what is under the pointer at every move.
    if (this.#capturable !== null) this.svg.setPointerCapture(this.#capturable);
  }

  held(piece: Piece): void {
    this.refuse(faceMessages.locked([piece.name]));
  }

  refuse(words: string): void {
    this.refused = words;
    this.say(words);
  }

  get gathering(): boolean {
    return this.pointing.gathering;
  }

  showFrame(frame: StageBox | null): void {
    this.#frame = frame;
    this.requestUpdate();
  }

  toStagePoint(clientX: number, clientY: number): { readonly x: number; readonly y: number } | null {
    const matrix = this.svg.getScreenCTM()?.inverse();
    if (!matrix) return null;
    return {
      x: matrix.a * clientX + matrix.c * clientY + matrix.e,
      y: matrix.b * clientX + matrix.d * clientY + matrix.f,
    };
  }

  toCardBox({ x, y, width, height }: StageBox): StageBox {
    const { zoom } = this.view;
    return { ...toCard({ x, y }, this.view), width: width / zoom, height: height / zoom };
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

  /** The drawing of a piece, or null when it is not shown. */
  pieceShown(piece: string): Element | null {
    return this.#stage?.pieces().get(piece)?.querySelector('[data-role="outline"]') ?? null;
  }

  focusPiece(piece: string): void {
    this.#stage?.pieces().get(piece)?.focus({ preventScroll: true });
  }

  followSelection(): void {
    this.#focusNext = true;
  }

  /** Announces; the same words twice are only read twice when something of them differs. */
  say(words: string): void {
    if (words === '') return;
    this.status.textContent = this.status.textContent === words ? `${words}\u00a0` : words;
  }

  #announce(event: string): void {
    this.say(announcement({ event }, this.session.state) ?? '');
  }

  #cardPoint(clientX: number, clientY: number): { readonly x: number; readonly y: number } | null {
    const at = this.toStagePoint(clientX, clientY);
    return at && toCard(at, this.view);
  }

  #prepare(): { readonly stage: Stage; readonly overlay: Overlay; readonly painter: FacePainter } {
    if (this.#stage && this.#overlay && this.#painter)
      return { stage: this.#stage, overlay: this.#overlay, painter: this.#painter };
    const root = SVG(this.svg) as Svg;
    const stage = new Stage(root.group().addClass('drawing'), 'face', { laid: true });
    const overlay = new Overlay(root.group().addClass('overlay').attr('aria-hidden', 'true'));
    const painter = new FacePainter(stage);
    this.#stage = stage;
    this.#overlay = overlay;
    this.#painter = painter;
    return { stage, overlay, painter };
  }

  #paint(): void {
    const { stage, overlay, painter } = this.#prepare();
    const { state } = this.session;
    const { sketch, face } = state;
    // From the press to the end of a drag the view stands still, whatever the room does that the face is given.
    if (!this.#pressed && !this.#gestures.dragging) {
      this.#size = this.#extent();
      this.view = fitCard(sketch.card, this.#size);
    }
    const focused = this.#focusedPiece();
    painter.show(state, this.view, focused);
    this.#bind(stage, overlay);
    const byId = (id: string | null): Piece | null =>
      id === null ? null : (sketch.pieces.find((piece) => piece.id === id && piece.face === face) ?? null);
    const only = selectedPiece(state);
    overlay.show({
      sketch,
      view: this.view,
      selected: selectedPieces(state),
      handled: only && !only.hidden && holdOf(sketch, only) === null ? only : null,
      pointed: byId(this.pointing.piece),
      focused: byId(this.#visibleFocus()),
      moment: this.#moment,
      drawnFrame: this.#frame,
    });
    this.svg.classList.toggle('dragging', this.#gestures.dragging);
    Object.assign(this.marks, { view: this.view, away: this.#gestures.dragging });
    Object.assign(this.watched, { view: this.view, stage: this.#size });
    // After the update, since a change of focus asks for one more.
    queueMicrotask(() => this.#keepFocus(stage, focused));
  }

  #extent(): Extent {
    const { clientWidth, clientHeight } = this;
    return clientWidth > 0 && clientHeight > 0 ? { width: clientWidth, height: clientHeight } : UNLAID;
  }

  #bind(stage: Stage, overlay: Overlay): void {
    // Taking a binding away in the middle of a drag would end the drag without its end.
    if (this.#gestures.dragging) return;
    const pieces = stage.pieces();
    const { resize, tilt } = overlay.handles;
    const { grips } = overlay.corners;
    const selection = (): string | null => selectedPiece(this.session.state)?.id ?? null;
    this.#gestures.keepOnly(
      new Set<Element>([...pieces.values(), tilt.node, ...[...resize, ...grips].map(({ group }) => group.node)]),
    );
    for (const [id, group] of pieces) this.#gestures.bind(group, { do: 'move' }, () => id);
    for (const { handle, group } of resize) this.#gestures.bind(group.node, { do: 'resize', handle }, selection);
    this.#gestures.bind(tilt.node, { do: 'tilt' }, selection);
    const rounders = (): readonly Length[] => roundersFor(this.session.state.sketch.unit);
    for (const { corner, group } of grips)
      this.#gestures.bind(group.node, { do: 'round', corner, rounders }, selection);
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
    this.#hold(event);
    if (event.button !== 0 || (event.target as Element).closest('.handles')) return;
    if (this.#gestures.dragging) return;
    this.refused = '';
    const piece = pieceOf(event.target);
    this.#presses.down(event, piece);
    if (piece === null) this.#stage?.list.focus({ preventScroll: true });
  };

  #hold({ pointerId, pointerType, isTrusted }: PointerEvent): void {
    this.#pressed = true;
    // A finger is captured by what it pressed anyway; an event that a script made up belongs to no pointer.
    this.#capturable = isTrusted && pointerType !== 'touch' ? pointerId : null;
    const release = (event: Event): void => {
      this.#pressed = false;
      this.#capturable = null;
      if (event.type === 'pointerup') this.#presses.up();
      else this.#presses.cancel();
      window.removeEventListener('pointerup', release);
      window.removeEventListener('pointercancel', release);
      this.requestUpdate();
    };
    window.addEventListener('pointerup', release);
    window.addEventListener('pointercancel', release);
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    this.refused = '';
    this.#keys.down(event, pieceOf(event.target));
  };

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

  /** The mark that was pressed is gone with what it told of: the focus goes to its piece, or to the card. */
  readonly #onMended = ({ detail: { piece } }: CustomEvent<{ piece: string | null }>): void => {
    const there = (piece === null ? null : this.#stage?.pieces().get(piece)) ?? this.#stage?.list;
    there?.focus({ preventScroll: true });
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
