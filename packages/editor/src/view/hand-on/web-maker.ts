import { fileStem } from '@trimwell/handout';
import { checkLink, filesFolder, SnippetError } from '@trimwell/handout/embed';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SavedFile } from '../../session/save-file.js';
import type { MadeFor, Subject, WebChoice, Wish } from '../../session/write-messages.js';
import { tableStyles } from '../table/table-styles.js';
import { copyText } from './copy-text.js';
import { handOnStyles } from './hand-on-styles.js';
import { LENGTH_WORDS, WEB_WAY_WORDS, WEB_WORDS } from './hand-on-words.js';
import { MakerElement } from './maker-element.js';
import { pickRow } from './pick-row.js';
import { pictureAddress } from './picture-address.js';

type WebWish = Extract<Wish, { make: 'web' }>;
type Address = 'files' | 'handout';

/** What a field holds that is no address, and why. */
interface Refused {
  readonly typed: string;
  readonly problem: string;
}

const ADDRESSES: Readonly<Record<Address, { readonly label: string; readonly what: string }>> = {
  files: { label: 'Files at', what: 'The folder on your site with trimwell-sketch.js, frame.html and their parts.' },
  handout: { label: 'Handout at', what: 'Where readers find the pages to print, if you put them on the web.' },
};

/** Why `typed` is no such address; null when it is one. */
function problemOf(address: Address, typed: string): string | null {
  try {
    if (address === 'files') filesFolder(typed);
    else if (typed !== '') checkLink(typed);
    return null;
  } catch (error) {
    if (error instanceof SnippetError) return `${error.value} is no such address; allowed: ${error.allowed}.`;
    throw error;
  }
}

/** The sketch in a web page: HTML to copy, live or plain, with the card as it will stand there. */
export class WebMakerElement extends MakerElement<WebWish> {
  static override readonly styles = [
    tableStyles,
    handOnStyles,
    css`
      .page {
        display: flex;
        flex-wrap: wrap;
        gap: 18px;
        align-items: start;
      }
      img {
        padding: 10px;
        background: #fff;
        box-shadow: 0 1px 3px rgb(20 25 24 / 0.25);
      }
      pre {
        flex: 1 1 300px;
        min-width: 0;
        max-height: 52vh;
        margin: 0;
        padding: 14px 16px;
        overflow: auto;
        background: var(--slip);
        box-shadow: 0 1px 3px rgb(20 25 24 / 0.25);
        font: 12px / 1.5 ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', monospace;
        font-variant-numeric: normal;
        white-space: pre-wrap;
        overflow-wrap: anywhere;
      }
    `,
  ];

  @state() private copied = '';
  @state() private refused: Readonly<Partial<Record<Address, Refused>>> = {};

  protected override get saveLabel(): string {
    return 'Save the text (HTML)';
  }

  protected override canSave(): boolean {
    const { files, handout } = this.refused;
    // A folder is of no matter where it is not asked for.
    return !handout && (!files || this.choices.web.way === 'plain');
  }

  protected override preview(): WebWish {
    return { make: 'web', choice: this.choices.web };
  }

  protected override async file(subject: Subject): Promise<SavedFile> {
    const made = await this.writer.make(subject, this.preview());
    return { name: this.#name(subject), type: 'text/html', content: made.html };
  }

  #name({ sketch, date }: Subject): string {
    return `${fileStem(sketch.title)}-web-page-${date}.html`;
  }

  protected override renderChoices(): TemplateResult {
    const { way, unit } = this.choices.web;
    const { subject } = this;
    const photographed = subject?.sketch.papers.some(({ look }) => look.photo !== undefined) ?? false;
    return html`${pickRow('way', 'Put in as', WEB_WORDS, way, (value) => this.#choose({ way: value }))}
      <p class="under">${WEB_WAY_WORDS[way]}</p>
      ${way === 'plain' ? nothing : this.#address('files')} ${this.#address('handout')}
      ${pickRow('unit', 'Lengths in', LENGTH_WORDS, unit, (value) => this.#choose({ unit: value }))}
      ${photographed ? html`<p class="under">Your photographs of papers stay here; the page shows the prints.</p>` : nothing}
      ${subject ? html`<p class="under">The file: <span class="file">${this.#name(subject)}</span></p>` : nothing}`;
  }

  #address(address: Address): TemplateResult {
    const { label, what } = ADDRESSES[address];
    const refused = this.refused[address];
    return html`<div class="row">
        <label for=${address}>${label}</label>
        <input
          id=${address}
          type="text"
          inputmode="url"
          autocomplete="off"
          spellcheck="false"
          aria-invalid=${refused !== undefined}
          aria-describedby=${refused ? `${address}-wrong` : `${address}-what`}
          .value=${refused?.typed ?? this.choices.web[address]}
          @change=${(event: Event) => this.#addressed(address, event)}
        />
      </div>
      ${
        refused
          ? html`<p class="problem" id=${`${address}-wrong`} role="alert">${refused.problem}</p>`
          : html`<p class="under" id=${`${address}-what`}>${what}</p>`
      }`;
  }

  protected override renderPreview({ html: text, card }: MadeFor<WebWish>): TemplateResult {
    return html`<p class="of">
        <button class="act" aria-disabled=${!this.canSave()} @click=${() => this.#copy(text)}>Copy it</button>
        <span role="status">${this.copied}</span>
      </p>
      <div class="page">
        <img alt="The card as it stands in the page" src=${pictureAddress(card)} />
        <pre tabindex="0" aria-label="The text for the page">${text}</pre>
      </div>`;
  }

  async #copy(text: string): Promise<void> {
    if (!this.canSave()) return;
    this.copied = await copyText(text, 'The text is copied.', 'This page may not copy; save the text instead.');
  }

  #choose(change: Partial<WebChoice>): void {
    this.choices.web = { ...this.choices.web, ...change };
    this.copied = '';
    this.chosen();
  }

  #addressed(address: Address, { target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const typed = target.value.trim();
    const problem = problemOf(address, typed);
    const { [address]: _, ...others } = this.refused;
    this.refused = problem === null ? others : { ...others, [address]: { typed, problem } };
    if (problem === null) this.#choose({ [address]: typed });
  }
}
