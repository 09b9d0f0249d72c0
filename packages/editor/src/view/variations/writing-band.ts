import { css, html, nothing } from 'lit';
import { query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { renameVariation, writeVariation } from '../../state/variation-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';

/**
 * A band of paper over the card while changes go into a variation: says so, names it, and ends it.
 * @fires written - The writing was ended here; `detail` is the id of the variation.
 */
export class WritingBandElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host(:not([writing])) {
        display: none;
      }
      .band {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 2px 10px;
        padding: 5px 12px 6px 16px;
        background: var(--slip);
        box-shadow:
          inset 4px 0 0 var(--good),
          0 2px 7px rgb(20 25 24 / 0.24);
      }
      label {
        display: flex;
        flex: 1 1 190px;
        align-items: baseline;
        gap: 7px;
        min-width: 0;
        white-space: nowrap;
      }
      input {
        flex: 1;
        min-width: 60px;
        font: 500 16px / 1.2 var(--heading-font);
      }
      .count {
        font-size: 12.5px;
      }
    `,
  ];

  @query('input') private readonly box!: HTMLInputElement | null;
  #root: Node | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.variations;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#root = this.getRootNode();
    this.#root.addEventListener('name-way', this.#name);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#root?.removeEventListener('name-way', this.#name);
  }

  protected override render() {
    const { document, writing } = this.session.state;
    const variation = document.variations.find(({ id }) => id === writing);
    this.toggleAttribute('writing', variation !== undefined);
    if (!variation) return nothing;
    const { edits } = variation;
    return html`<div class="band" role="group" aria-label="A variation is being written">
      <label>Changes go into<input
        maxlength="80"
        autocomplete="off"
        .value=${variation.name}
        aria-label="Name of the variation that changes go into"
        @change=${this.#rename}
        @keydown=${this.#key}
      /></label>
      <span class="quiet count">${edits.length === 0 ? 'nothing yet' : edits.length === 1 ? '1 change' : `${edits.length} changes`}</span>
      <button class="act" @click=${this.#done}>Done</button>
    </div>`;
  }

  readonly #name = async (): Promise<void> => {
    await this.updateComplete;
    this.box?.focus({ preventScroll: true });
    this.box?.select();
  };

  readonly #rename = (): void => {
    const { writing, document } = this.session.state;
    if (writing === null || !this.box) return;
    renameVariation(writing, this.box.value)(this.session.state, this.session.dispatch, Date.now());
    // What is no name is put back.
    this.box.value = this.session.document.variations.find(({ id }) => id === writing)?.name ?? document.title;
  };

  readonly #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (event.key === 'Enter') this.#rename();
    if (event.key !== 'Escape' || !this.box) return;
    const { writing, document } = this.session.state;
    this.box.value = document.variations.find(({ id }) => id === writing)?.name ?? this.box.value;
  };

  readonly #done = (): void => {
    const { writing } = this.session.state;
    if (!writeVariation(null)(this.session.state, this.session.dispatch, Date.now())) return;
    this.dispatchEvent(new CustomEvent('written', { detail: writing, bubbles: true, composed: true }));
  };
}
