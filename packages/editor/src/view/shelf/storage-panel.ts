import { counted } from '@trimwell/sketch';
import { css, html, LitElement, nothing } from 'lit';
import { property, state } from 'lit/decorators.js';
import { asKeepError } from '../../keeping/keep-error.js';
import type { Keeper } from '../../keeping/keeper.js';
import { bytesWords } from '../../keeping/kept-words.js';
import { clearUnusedPhotos } from '../../keeping/photo-store.js';
import { type StorageUse, type StoredThing, storageUse } from '../../keeping/storage-use.js';
import { tableStyles } from '../table/table-styles.js';

/** How many of the largest are listed. */
const LISTED = 8;

function roomText({ used, most, lasting }: StorageUse): string {
  const room =
    used === null || most === null
      ? 'The browser does not say how much it holds.'
      : `About ${bytesWords(used)} of at most ${bytesWords(most)} are in use by this site.`;
  return lasting ? room : `${room} When the disk gets full, the browser may clear it: save what matters as a file too.`;
}

/**
 * What takes room in the browser's storage, the largest first, and how to make room.
 * @fires room-made - Photographs were cleared that no kept sketch uses.
 * @fires kept-off - A sketch is to be taken off the shelf; `detail.id`.
 */
export class StorageElement extends LitElement {
  static override readonly styles = [
    tableStyles,
    css`
      summary {
        min-height: 28px;
        padding: 4px 0;
        cursor: pointer;
      }
      table {
        width: 100%;
        margin-top: 6px;
        border-collapse: collapse;
        font-size: 12.5px;
      }
      th {
        font-weight: 500;
        text-align: left;
        overflow-wrap: anywhere;
      }
      td:not(:first-of-type) {
        width: 1%;
      }
      td,
      th {
        padding: 1px 8px 1px 0;
        border-bottom: 1px solid var(--line);
      }
      .size {
        text-align: right;
        white-space: nowrap;
      }
      td button {
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) keeper!: Keeper;
  @property({ type: Boolean }) open = false;
  @state() private use: StorageUse | null = null;
  @state() private failure: string | null = null;

  /** Looks again what is there. */
  async refresh(): Promise<void> {
    if (!this.open) return;
    try {
      this.use = await storageUse();
      this.failure = null;
    } catch (error) {
      this.failure = asKeepError(error).message;
    }
  }

  protected override firstUpdated(): void {
    if (!this.open) return;
    void this.refresh().then(() => this.scrollIntoView?.({ block: 'nearest' }));
  }

  protected override render() {
    return html`<details ?open=${this.open} @toggle=${this.#toggle}>
      <summary>What fills the storage</summary>
      ${this.failure === null ? nothing : html`<p class="act">${this.failure}</p>`} ${this.use ? this.#things(this.use) : nothing}
    </details>`;
  }

  #things(use: StorageUse) {
    const unused = use.things.filter(({ kind, usedBy }) => kind === 'photograph' && usedBy.length === 0);
    const bytes = unused.reduce((sum, thing) => sum + thing.bytes, 0);
    return html`<p class="quiet">${roomText(use)}</p>
      ${
        unused.length === 0
          ? nothing
          : html`<button class="act" @click=${this.#clear}>
            Clear ${counted(unused.length, 'photograph')} that no kept sketch uses (${bytesWords(bytes)})
          </button>
          <p class="quiet">A sketch that you saved as a file may show one of them: it then shows the print in its place.</p>`
      }
      <table>
        <tbody>${use.things.slice(0, LISTED).map((thing) => this.#thing(thing))}</tbody>
      </table>`;
  }

  #thing(thing: StoredThing) {
    const used = thing.usedBy.length > 0 ? `in ${thing.usedBy.join(', ')}` : 'in no kept sketch';
    return html`<tr>
      <th scope="row">${thing.name}</th>
      <td class="quiet">${thing.kind === 'photograph' ? `photograph ${used}` : 'sketch'}</td>
      <td class="size">${bytesWords(thing.bytes)}</td>
      <td>
        ${
          thing.kind === 'sketch'
            ? html`<button aria-label="Take ${thing.name} off the shelf" @click=${() => this.#off(thing.id)}>Take off</button>`
            : nothing
        }
      </td>
    </tr>`;
  }

  readonly #toggle = (event: Event): void => {
    this.open = event.target instanceof HTMLDetailsElement && event.target.open;
    void this.refresh();
  };

  readonly #clear = async (): Promise<void> => {
    try {
      await clearUnusedPhotos();
      await this.keeper.keepNow();
    } catch (error) {
      this.failure = asKeepError(error).message;
    }
    await this.refresh();
    this.dispatchEvent(new CustomEvent('room-made'));
  };

  #off(id: string): void {
    this.dispatchEvent(new CustomEvent('kept-off', { detail: { id } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-storage': StorageElement;
  }
}
