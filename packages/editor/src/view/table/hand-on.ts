import { css, html, nothing } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { trayWish } from '../trays/tray-names.js';
import { openSlipStyles, SlipElement } from './slip-element.js';
import { tableStyles } from './table-styles.js';

type Exports = typeof import('../../session/export.js') & typeof import('../../session/save-file.js');
type CopiedLink = import('../copy-link.js').CopiedLink;

/**
 * Handing on: a link, the tray with pages and files, and at once the sketch itself, piece lists and each sheet's guide. What
 * writes them is loaded when it is wanted.
 * @fires tray-wish - The tray with all that can be handed on is to be drawn out.
 */
export class HandOnElement extends SlipElement {
  static override readonly styles = [
    tableStyles,
    openSlipStyles,
    css`
      :host {
        display: flex;
      }
      .slip {
        right: 0;
        max-width: min(340px, 88vw);
      }
      @media (max-width: 640px) {
        /* Under the headline, as wide as it. */
        :host {
          position: static;
        }
        .slip {
          left: 12px;
          right: 12px;
          width: auto;
          max-width: none;
          max-height: 44vh;
        }
      }
      .slip button {
        display: block;
        width: 100%;
        text-align: left;
      }
      .slip input {
        width: 100%;
        padding: 0 6px;
      }
      .said {
        padding: 0 6px;
        color: var(--good);
      }
    `,
  ];

  @state() private exports: Exports | null = null;
  @state() private copied: CopiedLink | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.plan && this.shown;
  }

  protected override render() {
    return html`<button aria-expanded=${this.shown} @click=${this.#show}>Hand on</button>
      ${this.shown && this.exports ? this.#files(this.exports) : nothing}`;
  }

  #files({ CAUTION, exportFiles, saveFile }: Exports) {
    const { document, state, plan } = this.session;
    const files = exportFiles(document, state.sketch, plan.batch);
    return html`<div class="slip" role="group" aria-label="Hand on">
      <button @click=${this.#copyLink}>Copy a link that carries the sketch</button>
      ${this.copied ? html`<input aria-label="The link" readonly .value=${this.copied.link} @focus=${selectAll} />` : nothing}
      <p class="said" role="status">${this.copied?.says ?? ''}</p>
      <button aria-haspopup="dialog" @click=${this.#openTray}>Pages to print and other files …</button>
      ${files.map(
        ({ label, file: { name, type, text } }) =>
          html`<button @click=${() => saveFile({ name, type, content: text })}>${label}</button>`,
      )}
      <p class="quiet">${CAUTION}</p>
    </div>`;
  }

  readonly #show = async (): Promise<void> => {
    this.exports ??= {
      ...(await import('../../session/export.js')),
      ...(await import('../../session/save-file.js')),
    };
    this.copied = null;
    this.shown = !this.shown;
  };

  readonly #openTray = (): void => {
    this.shown = false;
    this.dispatchEvent(trayWish({ tray: 'hand on' }));
  };

  readonly #copyLink = async (): Promise<void> => {
    const { copyLink } = await import('../copy-link.js');
    this.copied = await copyLink(this.session.document);
  };
}

function selectAll({ target }: Event): void {
  if (target instanceof HTMLInputElement) target.select();
}
