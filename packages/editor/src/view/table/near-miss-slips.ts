import { counted, type NearMiss } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import type { Offer, Trial } from '../../session/trial.js';
import { missChange, missGain, NOT_PROVEN, offeredMisses } from '../near-miss-messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/** Slips that lie on the table at once; the others come out on request. */
const AT_ONCE = 3;

/**
 * Near misses as slips of paper: a small change of one piece that saves sheets or adds cards. A slip is tried on, then
 * kept or put back. There is nothing here while nothing is offered.
 */
export class NearMissesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        /* What is told unseen scrolls with the column, and makes no page longer. */
        position: relative;
      }
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 232px), 1fr));
        gap: 12px;
        margin: 0;
        padding: 0 2px 6px 0;
        list-style: none;
      }
      .slip {
        position: relative;
        padding: 9px 11px 5px;
        /* The corner is turned down, as on a slip that was set aside. */
        background: linear-gradient(225deg, var(--line) 0 9px, var(--slip) 9.5px);
        box-shadow: 0 2px 6px rgb(20 25 24 / 0.22);
        font-size: 13px;
      }
      .slip.on {
        box-shadow:
          inset 3px 0 0 var(--good),
          0 2px 6px rgb(20 25 24 / 0.22);
      }
      .gain {
        margin-top: 3px;
        font-weight: 600;
        color: var(--good);
      }
      .unsure {
        margin-top: 2px;
        font-size: 12px;
      }
      .slip div {
        display: flex;
        flex-wrap: wrap;
        gap: 0 4px;
        margin: 3px 0 0 -6px;
      }
    `,
  ];

  @state() private all = false;
  #told = '';
  #offered = 0;

  #dragged = false;

  protected override concerns(change: SessionChange): boolean {
    return change.plan || change.sketch || change.ended;
  }

  protected override get followsPlaces(): boolean {
    return true;
  }

  /** The first move of a drag takes the slips away; the others change nothing. */
  protected override sessionChanged(change: SessionChange): void {
    const dragged = this.session.gesture !== null;
    if (dragged && this.#dragged && !change.plan) return;
    this.#dragged = dragged;
    this.requestUpdate();
  }

  protected override render() {
    const { trial, gesture } = this.session;
    const { offer } = this.session.plan;
    const misses = offer && gesture === null ? offeredMisses(offer) : [];
    this.#tellOf(misses.length);
    const shown = this.all ? misses : misses.slice(0, AT_ONCE);
    const rest = misses.length - shown.length;
    return html`<p class="unseen" role="status">${this.#told}</p>
      ${
        misses.length === 0 && !trial
          ? nothing
          : html`<h2>Near misses</h2>
      <ul>
        ${trial ? this.#tried(trial) : nothing}
        ${offer ? shown.map((miss) => this.#offer(offer, miss)) : nothing}
      </ul>
      ${rest > 0 ? html`<button class="act" @click=${this.#showAll}>${counted(rest, 'more slip')}</button>` : nothing}`
      }`;
  }

  /** Slips that come out while nothing is tried on are told of; those that go are not. */
  #tellOf(offered: number): void {
    if (offered > this.#offered && !this.session.trial)
      this.#told = `${counted(offered, 'near miss', 'near misses')} to try on.`;
    this.#offered = offered;
  }

  #words(offer: Offer, miss: NearMiss): TemplateResult {
    return html`<p>${missChange(offer, miss)}:</p>
      <p class="gain">${missGain(offer, miss)}</p>
      ${miss.proven ? nothing : html`<p class="unsure quiet">${NOT_PROVEN}</p>`}`;
  }

  #slip(kind: string, miss: NearMiss, inside: TemplateResult): TemplateResult {
    return html`<li
      class="slip ${kind}"
      @pointerenter=${() => {
        this.pointing.piece = miss.piece;
      }}
      @pointerleave=${() => {
        this.pointing.piece = null;
      }}
      @focusin=${() => {
        this.pointing.piece = miss.piece;
      }}
      @focusout=${() => {
        this.pointing.piece = null;
      }}
    >${inside}</li>`;
  }

  #offer(offer: Offer, miss: NearMiss): TemplateResult {
    return this.#slip(
      'offered',
      miss,
      html`${this.#words(offer, miss)}
        <div><button class="act" aria-label="Try on: ${missChange(offer, miss)}" @click=${() => this.#tryOn(miss, offer)}>Try on</button></div>`,
    );
  }

  #tried({ miss, offer }: Trial): TemplateResult {
    return this.#slip(
      'on',
      miss,
      html`<p class="quiet">Tried on</p>
        ${this.#words(offer, miss)}
        <div>
          <button class="act keep" @click=${this.#keep}>Keep</button>
          <button class="put-back" @click=${this.#putBack}>Put back</button>
        </div>`,
    );
  }

  #tryOn(miss: NearMiss, offer: Offer): void {
    this.session.tryOn(miss, Date.now());
    this.requestUpdate();
    this.#told = `Tried on: ${missChange(offer, miss)}: ${missGain(offer, miss)}. Keep it or put it back.`;
    this.#focus('.keep');
  }

  readonly #keep = (): void => {
    this.session.keep();
    this.#told = 'Kept.';
    this.#focus('.offered button');
  };

  readonly #putBack = (): void => {
    this.session.putBack();
    this.#told = 'Put back: the sketch is as it was before.';
    this.#focus('.offered button');
  };

  readonly #showAll = (): void => {
    this.all = true;
  };

  /** The button that was pressed is gone: what is pressed next, if there is any, takes the focus. */
  #focus(next: string): void {
    void this.updateComplete.then(() => {
      const button = this.renderRoot.querySelector<HTMLElement>(next);
      if (button) button.focus({ preventScroll: true });
      else this.dispatchEvent(new CustomEvent('focus-lost', { bubbles: true, composed: true }));
    });
  }
}
