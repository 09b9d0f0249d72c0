import { SEVERITY_WORDS } from '@trimwell/handout';
import { type Piece, SEVERITIES, type Severity } from '@trimwell/sketch';
import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { inStyle } from '../in-style.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { type Watched, watchedOf } from '../watch/found.js';
import { mendedPiece } from '../watch/mended-piece.js';
import { Mends } from '../watch/mends.js';
import { severityMark, severityStyles } from '../watch/severity-mark.js';
import { findingText, LOOKING_FIRST, pieceName } from '../watch/watch-words.js';
import { WatchCard } from '../watch-card.js';
import { type Extent, type FaceView, toStage } from './face-view.js';
import { freePlace } from './free-place.js';

/** Side of a mark's target, and how far it stays from the sides of the stage, in pixels. */
const TARGET = 26;
/** Where along the upper edge of its piece a mark stands: the first of these shares that no piece above covers. */
const SHARES = [0.72, 0.88, 0.28, 0.12, 0.5] as const;
/** Width of the slip that a mark opens, in pixels. */
const SLIP = 212;

/** The findings at one piece, with the place of their mark on the stage. */
interface Marked {
  readonly piece: string;
  readonly findings: readonly Watched[];
  readonly severity: Severity;
  readonly x: number;
  readonly y: number;
}

/** True when a point of the card lies within the untilted box of a piece that is to be seen. */
function lies(x: number, y: number, { hidden, x: left, y: top, width, height }: Piece): boolean {
  return !hidden && left < x && x < left + width && top < y && y < top + height;
}

/**
 * A small mark at each piece that something was found about; pressing it opens a slip with the words and the mend. Lies
 * over the face and lets everything but its marks through. Marks that would lie on each other are set apart.
 */
export class WatchMarksElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    severityStyles,
    css`
      :host {
        position: absolute;
        inset: 0;
        overflow: visible;
        pointer-events: none;
      }
      .mark {
        position: absolute;
        width: 26px;
        height: 26px;
        min-height: 26px;
        margin: -13px 0 0 -13px;
        padding: 6px;
        border-radius: 50%;
        color: #97371c;
        pointer-events: auto;
      }
      .mark.known {
        color: #22302f;
      }
      .mark .severity {
        overflow: visible;
        paint-order: stroke;
        filter: drop-shadow(0 0 2px #fffdf6) drop-shadow(0 0 2px #fffdf6);
      }
      .mark :is(path, circle):not(.full, .cut) {
        fill: #fffdf7;
      }
      .slip {
        position: absolute;
        z-index: 3;
        width: 212px;
        padding: 8px 10px 6px;
        background: var(--slip);
        color: var(--ink);
        border-radius: 2px;
        box-shadow: 0 3px 14px rgb(29 36 35 / 0.3);
        pointer-events: auto;
        scroll-margin-bottom: calc(var(--under, 0px) + 8px);
      }
      .slip p {
        padding-bottom: 2px;
        line-height: 1.35;
      }
      .foot {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 8px;
      }
      .foot button,
      .slip .act {
        min-height: 26px;
        padding: 0;
        text-align: left;
      }
    `,
  ];

  /** Where the card lies on the stage. */
  @property({ attribute: false }) view: FaceView | null = null;
  /** Size of the stage in pixels; it is told, because asking for it lays out the whole page at once. */
  @property({ attribute: false }) stage: Extent | null = null;
  @state() private opened: string | null = null;
  #marks: readonly Marked[] = [];
  readonly #watch = new WatchCard(this);
  readonly #mends = new Mends(this, this.#watch);

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('pointerdown', this.#elsewhere, true);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('pointerdown', this.#elsewhere, true);
  }

  readonly #elsewhere = (event: Event): void => {
    if (this.opened !== null && !event.composedPath().includes(this)) this.opened = null;
  };

  /** The focus has gone on from the slip and its mark: the slip would lie open behind it. */
  readonly #left = ({ relatedTarget: to }: FocusEvent): void => {
    if (this.opened === null || !(to instanceof Element)) return;
    const own = this.renderRoot.contains(to) && to.closest(`.slip, .mark[data-piece="${this.opened}"]`);
    if (!own) this.opened = null;
  };

  /** One mark for each piece of this face, within its upper edge right of the middle, clear of corners and handles. */
  #marked(view: FaceView): readonly Marked[] {
    const { sketch, face } = this.session.state;
    const findings = watchedOf(this.session, this.#watch.card);
    const taken: { readonly x: number; readonly y: number }[] = [];
    return sketch.pieces.flatMap((piece): readonly Marked[] => {
      const mine = findings.filter((finding) => finding.piece === piece.id);
      if (mine.length === 0 || piece.face !== face || piece.hidden) return [];
      const severity = SEVERITIES.find((each) => mine.some((finding) => finding.severity === each)) ?? 'worth knowing';
      const high = piece.height * view.zoom;
      const down = piece.y + Math.min(15 / view.zoom, piece.height / 2);
      const above = sketch.pieces.slice(sketch.pieces.indexOf(piece) + 1).filter((other) => other.face === face);
      const seen = SHARES.find((share) => !above.some((other) => lies(piece.x + piece.width * share, down, other)));
      const start = toStage({ x: piece.x + piece.width * (seen ?? SHARES[0]), y: piece.y }, view);
      const wanted = { x: start.x, y: start.y + Math.min(15, high / 2) };
      const { x, y } = freePlace(wanted, taken, TARGET, this.stage);
      taken.push({ x, y });
      return [{ piece: piece.id, findings: mine, severity, x, y }];
    });
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (!this.view || this.session.gesture !== null) return;
    this.#marks = this.#marked(this.view);
    const { opened } = this;
    const stays =
      this.#marks.some(({ piece }) => piece === opened) && this.session.state.selection.includes(opened ?? '');
    if (opened === null || stays) return;
    this.opened = null;
    // Whoever is in the slip goes on at its piece.
    if (this.shadowRoot?.activeElement?.closest('.slip')) void this.updateComplete.then(() => this.#goTo(opened));
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.view || this.session.gesture !== null) return nothing;
    const open = this.#marks.find(({ piece }) => piece === this.opened);
    return html`${this.#marks.map((mark) => this.#mark(mark))}${open ? this.#slip(open) : nothing}`;
  }

  #mark({ piece, severity, findings, x, y }: Marked): TemplateResult {
    const name = pieceName(this.session.state.sketch, piece);
    const more = findings.length > 1 ? `, ${findings.length} findings` : '';
    return html`<button
      class="mark ${severity === 'worth knowing' ? 'known' : ''}"
      data-piece=${piece}
      aria-label="To watch at ${name}: ${SEVERITY_WORDS[severity]}${more}"
      aria-expanded=${piece === this.opened}
      ${inStyle({ left: `${x.toFixed(1)}px`, top: `${y.toFixed(1)}px` })}
      @click=${() => this.#open(piece)}
      @pointerenter=${() => this.#point(piece)}
      @pointerleave=${() => this.#point(null)}
      @focus=${() => this.#point(piece)}
      @blur=${() => this.#point(null)}
      @focusout=${this.#left}
    >${severityMark(severity)}</button>`;
  }

  #slip({ piece, findings, x, y }: Marked): TemplateResult {
    const { sketch } = this.session.state;
    const most = Math.max(4, (this.stage?.width ?? Infinity) - SLIP - 4);
    const left = Math.min(Math.max(4, x - SLIP / 2), most);
    const high = this.stage?.height ?? Infinity;
    const low = y > high * 0.6;
    const place = low ? { bottom: `${(high - y + 18).toFixed(1)}px` } : { top: `${(y + 18).toFixed(1)}px` };
    return html`<div
      class="slip"
      role="dialog"
      aria-label="To watch at ${pieceName(sketch, piece)}"
      ${inStyle({ left: `${left.toFixed(1)}px`, ...place })}
      @keydown=${(event: KeyboardEvent) => this.#key(event, piece)}
      @focusout=${this.#left}
    >
      ${findings.map((finding) => {
        const { says, mend: word } = findingText(finding, sketch);
        return html`<p>${says} ${
          finding.fix.length > 0
            ? html`<button class="act" @click=${() => this.#mend(finding)}>${word}${this.#mends.waits(finding) ? LOOKING_FIRST : nothing}</button>`
            : nothing
        }</p>`;
      })}
      <div class="foot"><button class="quiet" @click=${() => this.#close(piece)}>Leave it</button></div>
    </div>`;
  }

  #point(piece: string | null): void {
    this.pointing.piece = piece;
  }

  #open(piece: string): void {
    this.opened = this.opened === piece ? null : piece;
    if (this.opened === null) return;
    select(piece)(this.session.state, this.session.dispatch, Date.now());
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector<HTMLElement>('.slip button')?.focus();
      // On a phone the ticket comes up from below now, over what may stand there.
      setTimeout(() => this.renderRoot.querySelector('.slip')?.scrollIntoView?.({ block: 'nearest' }));
    });
  }

  #close(piece: string): void {
    this.opened = null;
    this.renderRoot.querySelector<HTMLElement>(`.mark[data-piece="${piece}"]`)?.focus();
  }

  #key(event: KeyboardEvent, piece: string): void {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    this.#close(piece);
  }

  #mend(finding: Watched): void {
    this.#mends.press(finding, () => {
      this.opened = null;
      this.#goTo(mendedPiece(this.session.state.sketch, finding)?.id ?? null);
    });
  }

  /** Hands the focus on to a piece, or to the card. */
  #goTo(piece: string | null): void {
    this.dispatchEvent(new CustomEvent('mended', { detail: { piece } }));
  }
}
