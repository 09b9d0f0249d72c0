import { css, html, LitElement } from 'lit';
import { property, query } from 'lit/decorators.js';
import { tableStyles } from '../table/table-styles.js';
import { papersStyles } from './papers-styles.js';

/** What could be cut from instead. */
export interface Instead {
  readonly id: string;
  readonly name: string;
}

/**
 * Says what still needs a paper or a mix, and offers to cut it from another one in the same step.
 * @fires take-away - `detail.instead` is the id of the paper or mix to cut from instead.
 * @fires leave - It is to stay.
 */
export class RemoveFormElement extends LitElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      :host {
        margin-top: 10px;
        padding: 10px 12px;
        border-left: 3px solid var(--accent);
        background: var(--table);
      }
      .acts {
        align-items: baseline;
        margin: 6px 0 0;
      }
      label {
        display: inline-flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 8px;
      }
    `,
  ];

  /** What needs it, as a sentence. */
  @property({ attribute: false }) says = '';
  @property({ attribute: false }) choices: readonly Instead[] = [];
  @query('select') private readonly choice!: HTMLSelectElement;

  override focus(): void {
    this.choice.focus();
  }

  protected override render() {
    return html`<p role="alert">${this.says}</p>
      <p class="acts">
        <label>Cut all that from <select aria-label="Cut all that from">${this.choices.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}</select></label>
        <button class="act" @click=${() => this.dispatchEvent(new CustomEvent('take-away', { detail: { instead: this.choice.value } }))}>Take away</button>
        <button @click=${() => this.dispatchEvent(new CustomEvent('leave'))}>Leave it</button>
      </p>`;
  }
}
