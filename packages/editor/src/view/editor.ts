import type { BatchPlan, Problem, Sketch, SketchReading } from '@trimwell/sketch';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { createPlanPort } from '../session/create-plan-port.js';
import type { PlanView } from '../session/plan-messages.js';
import { Session, type SessionChange } from '../session/session.js';
import type { EditorState } from '../state/state.js';
import { ClearOfTicket } from './clear-of-ticket.js';
import { editorStyles } from './editor-styles.js';
import type { FaceElement } from './face/face.js';
import { bindingOf } from './keymap.js';
import { LateParts } from './late-parts.js';
import { PICK_A_PIECE } from './messages.js';
import { fetchOpening, inlineOpening, type Opening } from './opening.js';
import { Pointing } from './pointing.js';
import type { PaperCut } from './table/sheets-panel.js';
import { tableStyles } from './table/table-styles.js';
import { TableKeeping } from './table-keeping.js';
import { themeStyles } from './theme.js';
import type { TrayHostElement } from './trays/tray-host.js';
import type { TrayWish } from './trays/tray-names.js';
import type { WatchElement } from './watch/watch-panel.js';

/** Width below which the parts lie under each other and the ticket comes from below. */
const NARROW = 900;
/** Width below which what is to watch gives its column to the card. */
const MIDDLING = 1180;
/** Room around the card on a narrow table, in pixels: dimensions and handles. */
const AROUND = 84;

/**
 * A work table for one layered card: the face, the stack, the sheets with their live cutting guides, the yield ruler.
 *
 * @tag trimwell-editor
 * @fires sketch-change - The user changed the sketch; `detail` is `{ sketch, settled }`, `settled` false while dragging.
 * @fires plan-change - Another plan is shown; `detail` is `{ plan, searching }`, `plan` a `BatchPlan` or null.
 * @slot - A sketch as `<script type="application/json">`.
 * @slot actions - Buttons of the page's own, at the end of the headline.
 * @csspart ticket - The slip at the selected piece.
 * @csspart proof - The words that say what is proven.
 * @csspart sheets - The edge of the table that the sheets lie on.
 * @cssprop --trimwell-table - The table's surface.
 * @cssprop --trimwell-shelf - Its edge, where the sheets lie.
 * @cssprop --trimwell-ink - Text and lines.
 * @cssprop --trimwell-muted - Text of less weight.
 * @cssprop --trimwell-slip - Paper slips: the ticket, open lists.
 * @cssprop --trimwell-line - Thin lines.
 * @cssprop --trimwell-accent - What is selected, and what wants attention.
 * @cssprop --trimwell-good - What is proven.
 * @cssprop --trimwell-rule - The yield ruler.
 * @cssprop --trimwell-rule-ink - Its figures.
 * @cssprop --trimwell-focus - The ring around what has the focus.
 * @cssprop --trimwell-font - Text.
 * @cssprop --trimwell-heading-font - Headings.
 */
export class TrimwellEditor extends LitElement {
  static override readonly styles = [themeStyles, tableStyles, editorStyles];

  /** `light` or `dark`; without it the visitor's system decides. */
  @property({ reflect: true }) theme: 'light' | 'dark' | null = null;
  /** Address of a sketch to open. Without it, a `<script type="application/json">` within the element is opened. */
  @property() src: string | null = null;
  /**
   * Name of a place in this browser to keep sketches in: what is changed is kept there by itself and lies on the table again
   * next time. Without it nothing is stored. With it, the sketch that the page sets first lies there only when none is kept.
   */
  @property() keep: string | null = null;
  @state() private problems: readonly Pick<Problem, 'message'>[] = [];
  @state() private laid = false;
  /** What is said when a part of the table could not be loaded. */
  @state() private missing: string | null = null;
  @query('trimwell-face') private readonly face!: FaceElement;
  @query('trimwell-tray-host') private readonly trays!: TrayHostElement;
  @query('trimwell-watch') private readonly watch!: WatchElement;
  #session: Session | null = null;
  /** What lay on the table when the element was taken out of its page. */
  #left: EditorState | null = null;
  readonly #keeping = new TableKeeping({
    open: (session, sketch) => this.#quietly(() => session.open(sketch)),
    keepingChanged: () => this.requestUpdate(),
  });
  #stop: (() => void) | null = null;
  #wanted: Sketch | null = null;
  #fetching: AbortController | null = null;
  readonly #pointing = new Pointing();
  readonly #room = new ResizeObserver(([entry]) => {
    if (entry) {
      const { width } = entry.contentRect;
      this.toggleAttribute('narrow', width < NARROW);
      this.toggleAttribute('middling', width >= NARROW && width < MIDDLING);
      this.#fitFace(width);
    }
    for (const part of this.renderRoot.querySelectorAll('trimwell-yield, trimwell-turn-over'))
      part.toggleAttribute('narrow', this.hasAttribute('narrow'));
  });

  /** The sketch on the table, or null before the first. Setting it opens it: its history starts anew, no event is fired. */
  get sketch(): Sketch | null {
    return this.#session?.document ?? this.#left?.document ?? this.#wanted;
  }

  set sketch(sketch: Sketch | null) {
    this.#wanted = sketch;
    this.#left = null;
    if (sketch && this.isConnected) this.#open(sketch);
    this.requestUpdate();
  }

  /** The plan that is shown, or null. */
  get plan(): BatchPlan | null {
    return this.#session?.plan.batch ?? null;
  }

  /** The session on the table, for pages that drive the editor themselves; null before the first sketch. */
  get session(): Session | null {
    return this.#session;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#room.observe(this);
    this.#clear.watch();
    this.addEventListener('keydown', this.#key);
    this.addEventListener('tray-wish', this.#wish);
    this.addEventListener('sketch-begin', this.#lay);
    if (this.#session) return;
    const left = this.#left;
    this.#left = null;
    if (left) this.#begin(new Session(left, createPlanPort()), true);
    else if (this.#wanted) this.#open(this.#wanted);
    else if (this.src !== null) void this.#fetch();
    else this.#take(inlineOpening(this));
    // A page may still lay a sketch on the table in the task in which it made it; else a blank card lies there.
    setTimeout(() => void this.#layFirst());
  }

  async #layFirst(): Promise<void> {
    const waits = (): boolean => this.isConnected && !this.#session && this.src === null && this.problems.length === 0;
    if (!waits()) return;
    const { firstCard } = await import('./first-card.js');
    if (waits()) this.#open(firstCard());
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('src') && this.hasUpdated) void this.#fetch();
    if (changed.has('keep')) this.#keeping.follow(this.#session, this.keep);
  }

  async #fetch(): Promise<void> {
    this.#fetching?.abort();
    if (this.src === null) return;
    const fetching = new AbortController();
    this.#fetching = fetching;
    const opening = await fetchOpening(this.src, fetching.signal);
    if (this.#fetching === fetching && !fetching.signal.aborted) this.#take(opening);
  }

  #take(opening: Opening | null): void {
    if (!opening) return;
    this.problems = opening.ok ? [] : opening.problems;
    if (opening.ok) this.sketch = opening.sketch;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#room.disconnect();
    this.#clear.unwatch();
    this.#fetching?.abort();
    this.removeEventListener('keydown', this.#key);
    this.removeEventListener('tray-wish', this.#wish);
    this.removeEventListener('sketch-begin', this.#lay);
    // An element that is only moved is connected again within the same task, and nothing is to be lost by that.
    setTimeout(() => {
      if (!this.isConnected) this.#rest();
    });
  }

  /** Lets go of workers and watchers; the state waits for the element to be put into a page again. */
  #rest(): void {
    this.#left = this.#session?.state ?? this.#left;
    this.#stop?.();
    this.#keeping.dispose();
    this.#session?.dispose();
    this.#session = null;
  }

  #open(sketch: Sketch): void {
    const session = this.#session;
    if (session) this.#quietly(() => this.#keeping.lay(session, sketch));
    else this.#begin(new Session(sketch, createPlanPort()), false);
  }

  #begin(session: Session, resumed: boolean): void {
    this.#session = session;
    this.toggleAttribute('picked', session.state.selection.length > 0);
    this.#stop = session.subscribe((change) => this.#changed(change));
    this.#keeping.follow(session, this.keep, resumed);
    this.requestUpdate();
  }

  /**
   * Opens the sketch that a share code carries, as from the fragment of a link; with `keep` it is kept at once. A code that
   * is none comes back with its problems, and the table stays as it is.
   */
  async openShared(code: string): Promise<SketchReading> {
    const { readShareCode } = await import('@trimwell/sketch/share-code');
    const reading = readShareCode(code);
    if (!reading.ok) return reading;
    const { sketch } = reading;
    if (!this.#session) this.sketch = sketch;
    if (this.#session) await this.#keeping.adopt(this.#session, sketch);
    return reading;
  }

  #quietly(work: () => void): void {
    this.#quiet = true;
    try {
      work();
    } finally {
      this.#quiet = false;
    }
  }

  /** On a narrow table what was just selected is not to lie under its ticket. */
  #keepSeen(piece: string | undefined): void {
    if (piece === undefined || !this.hasAttribute('narrow')) return;
    this.#clear.scroll(
      () => this.face?.pieceShown(piece) ?? null,
      () => this.renderRoot.querySelector('trimwell-ticket'),
    );
  }

  readonly #clear = new ClearOfTicket(window);
  readonly #late = new LateParts((words) => {
    this.missing = words;
  });
  #quiet = false;
  #told: Pick<PlanView, 'batch' | 'searching'> | null = null;

  #changed(change: SessionChange): void {
    const session = this.#session;
    if (!session) return;
    if (change.selection) {
      this.toggleAttribute('picked', session.state.selection.length > 0);
      this.#keepSeen(session.state.selection.at(-1));
      if (session.state.selection.length > 0) void this.#late.fetch('ticket');
    }
    if (change.variations) this.toggleAttribute('writing', session.state.writing !== null);
    const sketch = session.document;
    if (change.sketch && !session.gesture) this.#fitFace(this.clientWidth);
    if ((change.document || change.ended) && !this.#quiet) {
      this.dispatchEvent(new CustomEvent('sketch-change', { detail: { sketch, settled: change.settled } }));
    }
    if (change.plan) this.#tellPlan(session.plan);
  }

  /** What else is learnt of the same plan, such as its near misses, is no other plan. */
  #tellPlan({ batch, searching }: PlanView): void {
    if (this.#told?.batch === batch && this.#told.searching === searching) return;
    this.#told = { batch, searching };
    if (batch !== null || !searching) this.#late.fetchSoon();
    this.dispatchEvent(new CustomEvent('plan-change', { detail: { plan: batch, searching } }));
  }

  protected override render() {
    const session = this.#session;
    if (this.problems.length > 0)
      return html`<div class="refused" role="alert">
        <h2>This sketch cannot be opened.</h2>
        <ul>${this.problems.slice(0, 8).map(({ message }) => html`<li>${message}</li>`)}</ul>
      </div>`;
    if (!session) return nothing;
    const pointing = this.#pointing;
    return html`<div class="table">
      <trimwell-headline .session=${session} .pointing=${pointing}>
        ${this.#keptNote()}
        <trimwell-hand-on .session=${session} .pointing=${pointing}></trimwell-hand-on>
        <slot name="actions"></slot>
      </trimwell-headline>
      <trimwell-turn-over .session=${session} .pointing=${pointing}></trimwell-turn-over>
      <trimwell-face .session=${session} .pointing=${pointing}></trimwell-face>
      <trimwell-writing-band .session=${session} .pointing=${pointing}></trimwell-writing-band>
      <trimwell-ticket .session=${session} .pointing=${pointing} @focus-lost=${this.#focusCard}><p class="prompt">${PICK_A_PIECE}</p></trimwell-ticket>
      <trimwell-yield .session=${session} .pointing=${pointing} ?laid=${this.laid} @lay-out=${this.#layOut}></trimwell-yield>
      <div class="shelf" part="sheets">
        <trimwell-sheets .session=${session} .pointing=${pointing} @paper-drop=${this.#drop} @paper-cut=${this.#cut}></trimwell-sheets>
        <trimwell-choices .session=${session} .pointing=${pointing}></trimwell-choices>
      </div>
      <trimwell-batch .session=${session} .pointing=${pointing} ?laid=${this.laid} @lay-out=${this.#layOut}></trimwell-batch>
      <trimwell-stack .session=${session} .pointing=${pointing}></trimwell-stack>
      <div class="aside">
        <trimwell-watch .session=${session} .pointing=${pointing}></trimwell-watch>
        <trimwell-variations .session=${session} .pointing=${pointing}></trimwell-variations>
        <trimwell-near-misses .session=${session} .pointing=${pointing} @focus-lost=${this.#takeFocus}></trimwell-near-misses>
      </div>
      <trimwell-tray-host .session=${session} .pointing=${pointing}></trimwell-tray-host>
    </div>`;
  }

  #keptNote() {
    const { keeper, trouble } = this.#keeping;
    if (keeper) return html`<trimwell-kept-note slot="kept" .keeper=${keeper}></trimwell-kept-note>`;
    const words = trouble === null ? this.missing : `Nothing is kept here: ${trouble}`;
    return words === null ? nothing : html`<span slot="kept" class="missing" role="status">${words}</span>`;
  }

  /** Undo and redo work wherever on the table the focus is; fields, the page's own too, keep their keys to themselves. */
  readonly #key = (event: KeyboardEvent): void => {
    if (isField(event.composedPath()[0])) return;
    const command = event.defaultPrevented ? null : bindingOf(event)?.command;
    if (command !== 'undo' && command !== 'redo') return;
    event.preventDefault();
    this.#session?.[command]();
  };

  /** On a narrow table the face is as high as the card needs at the table's width; elsewhere its row decides. */
  #fitFace(width: number): void {
    const card = this.#session?.state.sketch.card;
    const { face } = this;
    if (!face || !card) return;
    const height = ((width - AROUND) * card.height) / card.width + AROUND;
    face.style.height = this.hasAttribute('narrow') ? `${Math.round(Math.min(height, width * 1.4))}px` : '';
  }

  protected override updated(): void {
    this.#fitFace(this.clientWidth);
  }

  /** The cards come below the sheets; what lies above them keeps its place, and the table grows. */
  readonly #layOut = async (): Promise<void> => {
    const { face } = this;
    if (!this.laid && face) this.style.setProperty('--face-least', `${face.clientHeight}px`);
    if (!(await this.#late.fetch('batch'))) return;
    this.laid = !this.laid;
    if (!this.laid) this.style.removeProperty('--face-least');
    await this.updateComplete;
    const batch = this.renderRoot.querySelector('trimwell-batch');
    if (!this.laid || !(batch instanceof LitElement)) return;
    await batch.updateComplete;
    batch.scrollIntoView({ block: batch.offsetHeight > innerHeight / 2 ? 'start' : 'nearest' });
  };

  readonly #wish = (event: Event): void => {
    if (event instanceof CustomEvent) void this.trays?.show(event.detail as TrayWish);
  };

  /** A new card comes on the table; with `keep`, what lay there stays on the shelf. */
  readonly #lay = (event: Event): void => {
    if (!(event instanceof CustomEvent)) return;
    const { sketch } = event.detail as { readonly sketch: Sketch };
    this.trays.putAway();
    if (this.#session) this.#keeping.lay(this.#session, sketch);
    this.face.focusCard();
    this.face.scrollIntoView({ block: 'nearest' });
  };

  readonly #takeFocus = (): void => {
    this.watch.focusHeading();
  };

  readonly #focusCard = (): void => {
    this.face.focusCard();
  };

  readonly #drop = (event: CustomEvent<{ paper: string; clientX: number; clientY: number }>): void => {
    const { paper, clientX, clientY } = event.detail;
    if (this.face.containsPoint(clientX, clientY)) this.face.dropPaper(paper, clientX, clientY);
  };

  /** On a narrow table the sheets lie below the card, which is then brought back to where the new piece is seen. */
  readonly #cut = ({ detail: { paper, byKey } }: CustomEvent<PaperCut>): void => {
    if (this.face.cutPaper(paper, byKey))
      this.face.scrollIntoView({ block: this.hasAttribute('narrow') ? 'start' : 'nearest' });
  };
}

function isField(target: EventTarget | undefined): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.matches('input, textarea, select') || target.isContentEditable;
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-editor': TrimwellEditor;
  }
}
