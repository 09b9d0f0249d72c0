import { css, html, nothing } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { redoLabel, undoLabel } from '../step-names.js';
import { tableStyles } from './table-styles.js';

/** A step back, a step forward, and the list of all that was done; each says what it would undo or do again. */
export class StepsSlipElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        position: relative;
        display: inline-flex;
      }
      .slip {
        position: absolute;
        z-index: 5;
        left: 0;
        top: calc(100% + 6px);
        width: max-content;
        min-width: 220px;
        max-width: min(320px, 88vw);
        max-height: 60vh;
        overflow: auto;
        padding: 12px 14px;
        background: var(--slip);
        box-shadow: 0 8px 22px rgb(20 25 24 / 0.3);
      }
    `,
  ];

  @state() private shown = false;

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.ended;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#escape);
    this.addEventListener('focusout', this.#leave);
  }

  protected override render() {
    const { state: now } = this.session;
    const [back, forward] = [undoLabel(now), redoLabel(now)];
    return html`<button aria-disabled=${String(back === null)} title=${back ?? nothing} @click=${() => this.session.undo()}>Undo</button>
      <button aria-disabled=${String(forward === null)} title=${forward ?? nothing} @click=${() => this.session.redo()}>Redo</button>
      <button aria-expanded=${this.shown} @click=${this.#show}>Steps</button>
      ${this.shown ? html`<div class="slip" role="group" aria-label="What was done" tabindex="0"><trimwell-steps-done .session=${this.session} .pointing=${this.pointing}></trimwell-steps-done></div>` : nothing}`;
  }

  readonly #show = async (): Promise<void> => {
    await import('../define-steps-done.js');
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
