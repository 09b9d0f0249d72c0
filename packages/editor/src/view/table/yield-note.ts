import { AS_MANY_AS_POSSIBLE } from '@trimwell/sketch';
import { css, html, nothing, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { layOutText, mixes } from '../batch-messages.js';
import { limitText, oneMoreText } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/**
 * Under the yield ruler: the most that the sheets at hand give, what runs out first, and what one more sheet would give.
 * @fires lay-out - The cards of the batch are to be laid out, or put away.
 */
export class YieldNoteElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 14px;
        min-height: 24px;
        font-size: 12.5px;
      }
      div {
        display: flex;
        flex-wrap: wrap;
        gap: 0 4px;
        margin: 0 -4px;
      }
      p {
        min-height: 24px;
        padding-top: 3px;
        transition: opacity 200ms;
      }
      .stale {
        opacity: 0.72;
      }
      button {
        min-height: 24px;
        padding: 0 4px;
      }
      @media (prefers-reduced-motion: reduce) {
        p {
          transition: none;
        }
      }
    `,
  ];

  /** Whether the cards of the batch are laid out. */
  @property({ type: Boolean }) laid = false;

  protected override concerns(change: SessionChange): boolean {
    return change.plan || change.sketch;
  }

  protected override render() {
    const { batch, limit, oneMore, stale } = this.session.plan;
    const { sketch } = this.session.state;
    const most = sketch.batch.cards === AS_MANY_AS_POSSIBLE;
    const { cards = 1 } = batch ?? {};
    return html`<p class=${stale ? 'quiet stale' : 'quiet'}>
        <span class="limit">${limitText(limit, sketch)}</span>
        <span class="one-more">${oneMoreText(oneMore, limit, sketch)}</span>
      </p>
      <div>
        ${limit ? html`<button class="act" aria-pressed=${most} @click=${this.#asMany}>${most ? 'As many as they give' : 'Make as many'}</button>` : nothing}
        ${mixes(sketch) && batch ? html`<button class="act" aria-expanded=${this.laid} @click=${this.#lay}>${layOutText(cards)}</button>` : nothing}
      </div>`;
  }

  /** Cards that are put away take the button that did it along: the focus goes back to the one that laid them out. */
  protected override updated(changed: PropertyValues): void {
    if (changed.get('laid') === true) this.renderRoot.querySelector<HTMLElement>('[aria-expanded]')?.focus();
  }

  readonly #lay = (): void => {
    this.dispatchEvent(new CustomEvent('lay-out', { bubbles: true, composed: true }));
  };

  readonly #asMany = (): void => {
    const { batch } = this.session.document;
    const most = batch.cards === AS_MANY_AS_POSSIBLE;
    const cards = most ? (this.session.plan.batch?.cards ?? 1) : AS_MANY_AS_POSSIBLE;
    this.session.dispatch({
      event: 'batch.cards',
      edits: [{ do: 'batch', batch: { ...batch, cards: cards === 0 ? 1 : cards } }],
      at: Date.now(),
    });
  };
}
