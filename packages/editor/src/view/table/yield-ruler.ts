import { AS_MANY_AS_POSSIBLE } from '@trimwell/sketch';
import { css, html, nothing } from 'lit';
import { property } from 'lit/decorators.js';
import { RULER_CARDS } from '../../session/plan-messages.js';
import type { SessionChange } from '../../session/session.js';
import { inStyle } from '../in-style.js';
import { cardsText, proofText, rulerText, sheetsText } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/**
 * The tally and the yield ruler: cards along a ruler, a band for every number of sheets, a pin at the size of the batch.
 * The pin is a slider: it is dragged, pressed anywhere on the ruler, or moved by the arrow keys.
 */
export class YieldElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      .yield {
        display: grid;
        grid-template-columns: 190px minmax(0, 1fr);
        gap: 2px 28px;
        align-items: center;
      }
      .cards {
        font: 500 29px / 1.1 var(--heading-font);
      }
      .tally p {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 8px;
        align-items: baseline;
      }
      .proof {
        color: var(--accent);
        font-weight: 600;
      }
      .proof.proven {
        color: var(--good);
      }
      .proven::before {
        content: '';
        display: inline-block;
        width: 0.5em;
        height: 0.8em;
        margin-right: 5px;
        border: solid currentColor;
        border-width: 0 2px 2px 0;
        transform: rotate(40deg) translate(-1px, -1px);
      }
      .ruler {
        position: relative;
        /* A layer of its own: what changes elsewhere, as at every move of a drag, does not compose this one anew. */
        will-change: opacity;
        height: 58px;
        cursor: pointer;
        touch-action: none;
        user-select: none;
        -webkit-user-select: none;
      }
      .cells {
        position: absolute;
        inset: 18px 0 0;
        display: grid;
        grid-template-rows: 26px 14px;
        grid-auto-flow: column;
        grid-auto-columns: minmax(0, 1fr);
        border-radius: 2px;
        box-shadow: 0 2px 5px rgb(20 25 24 / 0.22);
      }
      .cell {
        position: relative;
        padding-top: 7px;
        background: var(--rule);
        color: var(--rule-ink);
        text-align: center;
        font-size: 12px;
        font-variant-numeric: tabular-nums;
      }
      .cell::after {
        content: '';
        position: absolute;
        right: 0;
        top: 0;
        height: 8px;
        border-right: 1px solid currentColor;
      }
      .cell:nth-of-type(6n + 5)::after {
        height: 14px;
      }
      .cell.on {
        font-weight: 700;
      }
      .band {
        overflow: visible;
        background: var(--band);
        color: #fffaf0;
        font-size: 11px;
        line-height: 14px;
        padding-left: 4px;
        white-space: nowrap;
      }
      .pin {
        position: absolute;
        top: 0;
        width: 18px;
        height: 19px;
        translate: -50% 0;
        background: var(--accent);
        clip-path: polygon(0 0, 100% 0, 100% 45%, 50% 100%, 0 45%);
        transition: left 120ms;
      }
      .stop {
        position: absolute;
        top: 18px;
        bottom: 0;
        border-left: 2px dashed var(--accent);
      }
      .note {
        grid-column: 2;
      }
      :host([narrow]) .yield {
        grid-template-columns: minmax(0, 1fr);
      }
      :host([narrow]) .note {
        grid-column: 1;
      }
      :host([narrow]) .cell {
        font-size: 10px;
      }
      :host([narrow]) .cell:nth-of-type(4n + 3),
      :host([narrow]) .band {
        font-size: 0;
      }
      /* Without their colour the bands begin with a line. */
      @media (forced-colors: active) {
        .band {
          border-left: 1px solid CanvasText;
          color: CanvasText;
        }
      }
      @media (prefers-reduced-motion: reduce) {
        .pin {
          transition: none;
        }
      }
    `,
  ];

  /** Whether the cards of the batch are laid out. */
  @property({ type: Boolean }) laid = false;
  #dragging = false;

  protected override concerns(change: SessionChange): boolean {
    return change.plan || change.sketch;
  }

  protected override render() {
    const { plan } = this.session;
    const { sketch } = this.session.state;
    const most = sketch.batch.cards === AS_MANY_AS_POSSIBLE;
    const cards = most ? (plan.batch?.cards ?? 1) : sketch.batch.cards;
    const numbers = Array.from({ length: RULER_CARDS }, (_, index) => index + 1);
    return html`<div class="yield">
      <div class="tally" aria-live="polite">
        <div class="cards">${cardsText(plan)}</div>
        <p>
          <span>${sheetsText(plan)}</span>
          <span class="proof ${plan.batch?.fewestSheets && plan.batch.complete ? 'proven' : ''}" part="proof">${proofText(plan)}</span>
        </p>
      </div>
      <div
        class="ruler"
        role="slider"
        tabindex="0"
        aria-label="Cards in the batch"
        aria-valuemin="1"
        aria-valuemax=${RULER_CARDS}
        aria-valuenow=${Math.min(cards, RULER_CARDS)}
        aria-valuetext=${rulerText(cards, plan.curve[cards - 1])}
        @pointerdown=${this.#press}
        @pointermove=${this.#move}
        @pointerup=${this.#release}
        @pointercancel=${this.#release}
        @keydown=${this.#key}
      >
        <div class="cells">
          ${numbers.map((n) => html`<div class="cell ${n === cards ? 'on' : ''}">${n}</div>${this.#band(n, plan.curve)}`)}
        </div>
        ${plan.limit && plan.limit.cards < RULER_CARDS ? html`<div class="stop" ${inStyle({ left: `${(plan.limit.cards / RULER_CARDS) * 100}%` })}></div>` : nothing}
        <div class="pin" ${inStyle({ left: `${((Math.min(cards, RULER_CARDS) - 0.5) / RULER_CARDS) * 100}%` })}></div>
      </div>
      <trimwell-yield-note class="note" .session=${this.session} .pointing=${this.pointing} ?laid=${this.laid}></trimwell-yield-note>
    </div>`;
  }

  #band(cards: number, curve: readonly number[]) {
    const sheets = curve[cards - 1];
    const before = curve[cards - 2];
    const tint = sheets === undefined ? 0 : new Set(curve.slice(0, cards)).size;
    const colour =
      sheets === undefined ? 'var(--line)' : `color-mix(in srgb, #8a5a1c, #4f3413 ${Math.min(100, tint * 9)}%)`;
    const shown = sheets !== undefined && sheets !== before ? sheets : '';
    return html`<div class="band" ${inStyle({ '--band': colour })}>${shown}</div>`;
  }

  #set(cards: number, gesture?: string): void {
    const wanted = Math.min(RULER_CARDS, Math.max(1, cards));
    const { batch } = this.session.document;
    if (wanted === batch.cards) return;
    this.session.dispatch({
      event: 'batch.cards',
      edits: [{ do: 'batch', batch: { ...batch, cards: wanted } }],
      at: Date.now(),
      ...(gesture === undefined ? {} : { gesture }),
    });
  }

  #at(event: PointerEvent): number {
    const box = this.renderRoot.querySelector('.ruler')?.getBoundingClientRect();
    if (!box) return 1;
    return Math.ceil(((event.clientX - box.left) / box.width) * RULER_CARDS);
  }

  readonly #press = (event: PointerEvent): void => {
    if (!event.isPrimary || event.button !== 0) return;
    this.#dragging = true;
    if (event.currentTarget instanceof HTMLElement) event.currentTarget.setPointerCapture(event.pointerId);
    this.#set(this.#at(event), 'ruler');
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.#dragging) this.#set(this.#at(event), 'ruler');
  };

  readonly #release = (): void => {
    if (!this.#dragging) return;
    this.#dragging = false;
    this.session.settle('ruler');
  };

  readonly #key = (event: KeyboardEvent): void => {
    const { cards } = this.session.state.sketch.batch;
    const now = cards === AS_MANY_AS_POSSIBLE ? (this.session.plan.batch?.cards ?? 1) : cards;
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: now + 1,
      ArrowUp: now + 1,
      ArrowLeft: now - 1,
      ArrowDown: now - 1,
      PageUp: now + 6,
      PageDown: now - 6,
      Home: 1,
      End: RULER_CARDS,
    };
    const wanted = steps[event.key];
    if (wanted === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    this.#set(wanted);
  };
}
