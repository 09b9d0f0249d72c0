import { css, html, nothing } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { redoLabel, undoLabel } from '../step-names.js';
import { openSlipStyles, SlipElement } from './slip-element.js';
import { tableStyles } from './table-styles.js';

/** A step back, a step forward, and the list of all that was done; each says what it would undo or do again. */
export class StepsSlipElement extends SlipElement {
  static override readonly styles = [
    tableStyles,
    openSlipStyles,
    css`
      :host {
        display: inline-flex;
      }
      .slip {
        left: 0;
        min-width: 220px;
        max-width: min(320px, 88vw);
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.ended;
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
}
