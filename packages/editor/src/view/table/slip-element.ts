import { css } from 'lit';
import { state } from 'lit/decorators.js';
import { SessionElement } from '../session-element.js';

/** A slip of paper that lies under the button that opened it. */
export const openSlipStyles = css`
  :host {
    position: relative;
  }
  .slip {
    position: absolute;
    z-index: 5;
    top: calc(100% + 6px);
    width: max-content;
    max-height: 60vh;
    overflow: auto;
    padding: 12px 14px;
    background: var(--slip);
    box-shadow: 0 8px 22px rgb(20 25 24 / 0.3);
  }
`;

/** A part of the table with a slip that a button opens; Escape closes it, and so does the focus when it goes elsewhere. */
export abstract class SlipElement extends SessionElement {
  @state() protected shown = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#escape);
    this.addEventListener('focusout', this.#leave);
  }

  readonly #escape = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.shown = false;
  };

  readonly #leave = (event: FocusEvent): void => {
    const to = event.relatedTarget;
    if (to instanceof Node && !this.renderRoot.contains(to) && to !== this) this.shown = false;
  };
}
