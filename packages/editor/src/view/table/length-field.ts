import { formatLength, type Length, readLength, ticks, type Unit } from '@trimwell/geometry';
import { css, html, LitElement, nothing } from 'lit';
import { property, state } from 'lit/decorators.js';
import { tableStyles } from './table-styles.js';

/**
 * A text field for one length; accepts `3 1/8`, `3.125in` or `80 mm`. What it cannot read it keeps, and says what would be read.
 * @fires length-change - The user committed another length; `detail.value` is in ticks.
 * @csspart input - The text box.
 */
export class LengthField extends LitElement {
  static override readonly shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        display: inline-block;
        position: relative;
      }
      input {
        width: 100%;
        min-width: 0;
        font-variant-numeric: tabular-nums;
      }
      input[aria-invalid='true'] {
        border-bottom: 2px solid var(--accent);
      }
      .error {
        position: absolute;
        z-index: 3;
        top: calc(100% + 2px);
        right: 0;
        width: max-content;
        max-width: 210px;
        padding: 6px 8px;
        border: 1px solid var(--accent);
        background: var(--slip);
        color: var(--accent);
        font-size: 12px;
      }
    `,
  ];

  /** Current length in ticks. Setting it never fires `length-change`. */
  @property({ type: Number }) value: Length = ticks(0);
  @property() unit: Unit = 'in';
  /** What the length is, for those who cannot see the words beside it. */
  @property() label = '';
  /** Least and most that are accepted, in ticks. */
  @property({ type: Number }) least = 1;
  @property({ type: Number }) most = 2_000 * 640;
  @state() private problem = '';

  protected override render() {
    const shown = formatLength(this.value, { unit: this.unit });
    return html`<input
        part="input"
        .value=${shown}
        aria-label=${this.label}
        aria-invalid=${this.problem === '' ? 'false' : 'true'}
        aria-describedby=${this.problem === '' ? nothing : 'problem'}
        autocomplete="off"
        inputmode="text"
        @change=${this.#commit}
        @keydown=${this.#key}
      />${this.problem === '' ? nothing : html`<span class="error" id="problem" role="alert">${this.problem}</span>`}`;
  }

  readonly #key = (event: KeyboardEvent): void => {
    // Keys in a field are for the field, not for the piece.
    event.stopPropagation();
    if (event.key === 'Enter') this.#commit(event);
    if (event.key === 'Escape') this.#restore(event.currentTarget);
  };

  #restore(box: EventTarget | null): void {
    this.problem = '';
    if (box instanceof HTMLInputElement) box.value = formatLength(this.value, { unit: this.unit });
  }

  readonly #commit = (event: Event): void => {
    const box = event.currentTarget;
    if (!(box instanceof HTMLInputElement)) return;
    // The figure that stands there, read back, would lose what `≈` says; untouched, it means the length itself.
    if (box.value === formatLength(this.value, { unit: this.unit })) {
      this.problem = '';
      return;
    }
    const reading = readLength(box.value, this.unit);
    const style = { unit: this.unit };
    if (!reading.ok) {
      this.problem = `Not a length. Allowed: ${reading.allowed}.`;
    } else if (reading.length < this.least || reading.length > this.most) {
      this.problem = `Allowed: ${formatLength(ticks(this.least), style)} to ${formatLength(ticks(this.most), style)}.`;
    } else {
      this.problem = '';
      this.dispatchEvent(new CustomEvent('length-change', { detail: { value: reading.length } }));
      box.value = formatLength(this.value, style);
    }
  };
}
