import { css, html, type TemplateResult } from 'lit';
import { createWritePort } from '../../session/create-write-port.js';
import type { SessionChange } from '../../session/session.js';
import { Writer } from '../../session/writer.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { choicesOf, KINDS, type Kind } from './remembered-choices.js';

const KIND_WORDS: Readonly<Record<Kind, string>> = {
  pages: 'Pages to print',
  'cut files': 'Files for a cutting machine',
  list: 'A piece list',
  picture: 'A picture',
  web: 'In a web page',
};

/** What can be handed on as files: what it is to be, how, and how it will look. */
export class HandOnTrayElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      /* The tray keeps its height from one kind to the next. */
      :host {
        min-height: min(60vh, 540px);
      }
      fieldset {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 22px;
        margin: 0 0 14px;
        padding: 0 0 8px;
        border: 0;
        border-bottom: 1px solid var(--line);
      }
      label {
        display: inline-flex;
        gap: 7px;
        align-items: center;
        min-height: 28px;
        font: 500 15px / 1.2 var(--heading-font);
        cursor: pointer;
      }
      input {
        width: 15px;
        height: 15px;
        min-height: 0;
        margin: 0;
        accent-color: var(--accent);
      }
    `,
  ];

  readonly #writer = new Writer(createWritePort);

  protected override concerns(change: SessionChange): boolean {
    return change.opened;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#writer.dispose();
  }

  protected override render() {
    const { kind } = choicesOf(this.session);
    return html`<fieldset>
        <legend class="unseen">What is handed on</legend>
        ${KINDS.map(
          (each) =>
            html`<label><input type="radio" name="kind" value=${each} .checked=${each === kind} @change=${() => this.#choose(each)} />${KIND_WORDS[each]}</label>`,
        )}
      </fieldset>
      ${this.#maker(kind)}`;
  }

  #maker(kind: Kind): TemplateResult {
    const { session, pointing } = this;
    const choices = choicesOf(session);
    const writer = this.#writer;
    switch (kind) {
      case 'pages':
        return html`<trimwell-pages-maker .session=${session} .pointing=${pointing} .writer=${writer} .choices=${choices}></trimwell-pages-maker>`;
      case 'cut files':
        return html`<trimwell-cut-maker .session=${session} .pointing=${pointing} .writer=${writer} .choices=${choices}></trimwell-cut-maker>`;
      case 'list':
        return html`<trimwell-list-maker .session=${session} .pointing=${pointing} .writer=${writer} .choices=${choices}></trimwell-list-maker>`;
      case 'picture':
        return html`<trimwell-picture-maker .session=${session} .pointing=${pointing} .writer=${writer} .choices=${choices}></trimwell-picture-maker>`;
      case 'web':
        return html`<trimwell-web-maker .session=${session} .pointing=${pointing} .writer=${writer} .choices=${choices}></trimwell-web-maker>`;
    }
  }

  #choose(kind: Kind): void {
    choicesOf(this.session).kind = kind;
    this.requestUpdate();
  }
}
