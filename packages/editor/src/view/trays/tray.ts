import { css, html, LitElement } from 'lit';
import { property, query } from 'lit/decorators.js';
import { tableStyles } from '../table/table-styles.js';
import { themeStyles } from '../theme.js';

/**
 * A tray that is drawn out from under the near edge of the table: a dialog with a heading, and a content of its own.
 * @slot - What lies in the tray.
 * @fires tray-away - The tray was put away, by its button, by Escape or by a press beside it.
 * @csspart tray - The tray.
 */
export class TrayElement extends LitElement {
  static override readonly styles = [
    themeStyles,
    tableStyles,
    css`
      :host {
        display: contents;
      }
      dialog {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr);
        width: min(1080px, 100vw - 48px);
        max-width: none;
        max-height: min(86vh, 760px);
        margin: auto auto 0;
        padding: 0;
        border: 1px solid var(--line);
        border-bottom: 0;
        border-radius: 10px 10px 0 0;
        background: var(--table);
        color: var(--ink);
        box-shadow: 0 -10px 40px rgb(20 25 24 / 0.35);
        transition: translate 180ms ease-out;
        translate: 0 0;
      }
      dialog:not([open]) {
        display: none;
      }
      @starting-style {
        dialog[open] {
          translate: 0 40px;
        }
      }
      dialog::backdrop {
        background: rgb(24 28 27 / 0.42);
      }
      header {
        display: flex;
        align-items: baseline;
        gap: 14px;
        padding: 14px 24px 10px;
        border-bottom: 1px solid var(--line);
      }
      h2 {
        flex: 1;
        margin: 0;
        font-size: 21px;
      }
      .content {
        min-height: 0;
        padding: 14px 24px 22px;
        overflow: auto;
        overscroll-behavior: contain;
      }
      @media (max-width: 640px) {
        dialog {
          width: 100vw;
          max-height: 92vh;
        }
        header,
        .content {
          padding-left: 16px;
          padding-right: 16px;
        }
      }
      @media (prefers-reduced-motion: reduce) {
        dialog {
          transition: none;
        }
      }
    `,
  ];

  @property() heading = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement;

  protected override render() {
    return html`<dialog
      part="tray"
      aria-labelledby="heading"
      @close=${() => this.dispatchEvent(new CustomEvent('tray-away'))}
      @click=${this.#beside}
      @keydown=${(event: Event) => event.stopPropagation()}
    >
      <header>
        <h2 id="heading">${this.heading}</h2>
        <button class="act" @click=${() => this.putAway()}>Put away</button>
      </header>
      <div class="content" tabindex="0" role="group" aria-labelledby="heading"><slot></slot></div>
    </dialog>`;
  }

  /** Draws the tray out; the focus goes into it, and back to where it was when the tray is put away. */
  async drawOut(): Promise<void> {
    await this.updateComplete;
    if (!this.dialog.open) this.dialog.showModal();
  }

  putAway(): void {
    this.dialog.close();
  }

  /** A press on the backdrop is a press on the dialog itself, outside its box. */
  readonly #beside = (event: MouseEvent): void => {
    if (event.target !== this.dialog) return;
    const { left, right, top, bottom } = this.dialog.getBoundingClientRect();
    const { clientX: x, clientY: y } = event;
    if (x < left || x > right || y < top || y > bottom) this.putAway();
  };
}
