import { css, html, nothing } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

type Exports = typeof import('../../session/export.js');

/** Handing on: the sketch itself, the piece lists, each sheet's guide. What writes them is loaded when it is wanted. */
export class HandOnElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        position: relative;
        display: flex;
      }
      .slip {
        position: absolute;
        z-index: 5;
        right: 0;
        top: calc(100% + 6px);
        width: max-content;
        max-width: min(340px, 88vw);
        max-height: 60vh;
        overflow: auto;
        padding: 12px 14px;
        background: var(--slip);
        box-shadow: 0 8px 22px rgb(20 25 24 / 0.3);
      }
      .slip button {
        display: block;
        width: 100%;
        text-align: left;
      }
    `,
  ];

  @state() private shown = false;
  @state() private exports: Exports | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.plan && this.shown;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#escape);
    this.addEventListener('focusout', this.#leave);
  }

  protected override render() {
    return html`<button aria-expanded=${this.shown} @click=${this.#show}>Hand on</button>
      ${this.shown && this.exports ? this.#files(this.exports) : nothing}`;
  }

  #files({ CAUTION, exportFiles, saveFile }: Exports) {
    const files = exportFiles(this.session.state.sketch, this.session.plan.batch);
    return html`<div class="slip" role="group" aria-label="Hand on">
      ${files.map(({ label, file }) => html`<button @click=${() => saveFile(file)}>${label}</button>`)}
      <p class="quiet">${CAUTION}</p>
    </div>`;
  }

  readonly #show = async (): Promise<void> => {
    this.exports ??= await import('../../session/export.js');
    this.shown = !this.shown;
  };

  readonly #escape = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.shown = false;
  };

  readonly #leave = (event: FocusEvent): void => {
    const to = event.relatedTarget;
    if (to instanceof Node && !this.renderRoot.contains(to) && to !== this) this.shown = false;
  };
}
