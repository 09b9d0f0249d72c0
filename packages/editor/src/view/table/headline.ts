import type { Edit } from '@trimwell/sketch';
import { css, html } from 'lit';
import { query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { type TrayName, trayWish } from '../trays/tray-names.js';
import { tableStyles } from './table-styles.js';

/** The title, what goes with it, the steps back and forth, the unit, and the trays. More comes through the slot. */
export class HeadlineElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        position: relative;
        container-type: inline-size;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 2px 12px;
      }
      .title {
        flex: 1 1 300px;
        display: flex;
        align-items: baseline;
        gap: 10px;
        min-width: 0;
      }
      input.name {
        flex: 0 1 auto;
        min-width: 60px;
        width: 17ch;
        max-width: 100%;
        border-bottom-color: transparent;
        font: 500 25px / 1.25 var(--heading-font);
      }
      @supports (field-sizing: content) {
        input.name {
          field-sizing: content;
          width: auto;
        }
      }
      input.name:hover {
        border-bottom-color: var(--line);
      }
      .about {
        flex: 0 1 auto;
        min-width: 0;
        overflow: hidden;
        color: var(--muted);
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      ::slotted(*) {
        flex: none;
      }
      @container (max-width: 640px) {
        .title {
          flex-basis: 100%;
          flex-wrap: wrap;
          gap: 0 10px;
        }
      }
      .pair {
        display: inline-flex;
        border: 1px solid var(--line);
        border-radius: 4px;
      }
      .pair button {
        border-radius: 3px;
        min-width: 34px;
      }
      .pair button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--table);
      }
      @media (forced-colors: active) {
        .pair button[aria-pressed='true'] {
          forced-color-adjust: none;
          background: Highlight;
          color: HighlightText;
        }
      }
      .trays {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 0 2px;
      }
    `,
  ];

  @query('input.name') private readonly nameBox!: HTMLInputElement;

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.selection;
  }

  protected override render() {
    const { document: sketch } = this.session;
    const about = [sketch.credit, sketch.number].filter(Boolean).join(', ');
    return html`<header>
      <div class="title">
        <input class="name" aria-label="Title of the sketch" maxlength="80" .value=${sketch.title} @change=${this.#rename} @keydown=${stop} />
        <button class="about" title="The card and its words" @click=${() => this.#wish('card')}>${about || 'Words and card size'}</button>
        <slot name="kept"></slot>
      </div>
      <trimwell-steps-slip .session=${this.session} .pointing=${this.pointing}></trimwell-steps-slip>
      <div class="pair" role="group" aria-label="Unit">
        ${(['in', 'mm'] as const).map(
          (unit) =>
            html`<button aria-pressed=${sketch.unit === unit} @click=${() => this.#unit(unit)}>${unit}</button>`,
        )}
      </div>
      <div class="trays">
        <button @click=${() => this.#wish('new card')}>New card</button>
        <button @click=${() => this.#wish('shelf')}>Shelf</button>
        <slot></slot>
        <button @click=${() => this.#wish('tools')}>Tools</button>
        <button @click=${() => this.#wish('keys')}>Keys</button>
      </div>
    </header>`;
  }

  #wish(tray: TrayName): void {
    this.dispatchEvent(trayWish({ tray }));
  }

  readonly #rename = (): void => {
    const title = this.nameBox.value.trim();
    if (title === '') this.nameBox.value = this.session.document.title;
    else if (title !== this.session.document.title) this.#do('sketch.rename', { do: 'describe', title });
  };

  #unit(unit: 'in' | 'mm'): void {
    if (unit !== this.session.document.unit) this.#do('sketch.unit', { do: 'unit', unit });
  }

  #do(event: string, edit: Edit): void {
    this.session.dispatch({ event, edits: [edit], at: Date.now() });
  }
}

/** Keys typed into a field are for the field. */
function stop(event: Event): void {
  event.stopPropagation();
}
