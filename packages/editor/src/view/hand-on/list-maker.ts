import type { ListFormat } from '@trimwell/handout';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SavedFile } from '../../session/save-file.js';
import type { ListChoice, MadeFor, Subject, Wish } from '../../session/write-messages.js';
import { tableStyles } from '../table/table-styles.js';
import { copyText } from './copy-text.js';
import { handOnStyles } from './hand-on-styles.js';
import { LIST_FORMAT_WORDS, LIST_WORDS } from './hand-on-words.js';
import { MakerElement } from './maker-element.js';
import { pickRow } from './pick-row.js';

type ListWish = Extract<Wish, { make: 'list' }>;

/** What a table program reads may be pasted into it; all of them may be copied. */
const SAVE: Readonly<Record<ListFormat, string>> = {
  csv: 'Save the list (CSV)',
  json: 'Save the list (JSON)',
  markdown: 'Save the list (Markdown)',
  text: 'Save the list (text)',
};

/** The name of a file with the day it was made on before its ending. */
function dated(name: string, date: string): string {
  return name.replace(/(\.[a-z]+)$/, `-${date}$1`);
}

/** The piece list: of one card, of the batch, paper by paper, or setting by setting. */
export class ListMakerElement extends MakerElement<ListWish> {
  static override readonly styles = [
    tableStyles,
    handOnStyles,
    css`
      pre {
        margin: 0;
        padding: 14px 16px;
        overflow-x: auto;
        background: var(--slip);
        box-shadow: 0 1px 3px rgb(20 25 24 / 0.25);
        font: 12px / 1.5 ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', monospace;
        font-variant-numeric: normal;
      }
    `,
  ];

  @state() private copied = '';

  protected override get saveLabel(): string {
    return SAVE[this.choices.list.format];
  }

  protected override preview(): ListWish {
    return { make: 'list', choice: this.choices.list };
  }

  protected override async file(subject: Subject): Promise<SavedFile> {
    const { file } = await this.writer.make(subject, this.preview());
    return { name: dated(file.name, subject.date), type: file.type, content: file.text };
  }

  protected override renderChoices(): TemplateResult {
    const { format, arrange } = this.choices.list;
    const cards = Math.max(1, this.session.plan.batch?.cards ?? 1);
    return html`${pickRow('arrange', 'Of', LIST_WORDS(cards), arrange, (value) => this.#choose({ arrange: value }))}
      ${pickRow('format', 'Written as', LIST_FORMAT_WORDS, format, (value) => this.#choose({ format: value }))}
      ${this.shown && this.subject ? html`<p class="under">The file: <span class="file">${dated(this.shown.file.name, this.subject.date)}</span></p>` : nothing}
      ${
        format === 'csv'
          ? html`<p class="under">
              For table programs and cutting tools. A cell that would be taken for a formula begins with an apostrophe.
            </p>`
          : nothing
      }`;
  }

  protected override renderPreview({ file }: MadeFor<ListWish>): TemplateResult {
    return html`<p class="of">
        <button class="act" @click=${() => this.#copy(file.text)}>Copy it</button>
        <span role="status">${this.copied}</span>
      </p>
      <pre tabindex="0" aria-label="The list">${file.text}</pre>`;
  }

  async #copy(text: string): Promise<void> {
    this.copied = await copyText(text, 'The list is copied.', 'This page may not copy; save the list instead.');
  }

  #choose(change: Partial<ListChoice>): void {
    this.choices.list = { ...this.choices.list, ...change };
    this.copied = '';
    this.chosen();
  }
}
