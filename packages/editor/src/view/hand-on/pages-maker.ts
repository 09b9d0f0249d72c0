import { BLADE_CAUTION, fileStem } from '@trimwell/handout';
import { css, html, nothing, type TemplateResult } from 'lit';
import { query, state } from 'lit/decorators.js';
import type { SavedFile } from '../../session/save-file.js';
import type { MadeFor, Subject, Wish } from '../../session/write-messages.js';
import { photosOnShelf } from '../photos/photos-on-shelf.js';
import { tableStyles } from '../table/table-styles.js';
import { WatchCard } from '../watch-card.js';
import { handOnStyles } from './hand-on-styles.js';
import { LANGUAGE_NAMES, LENGTH_WORDS, PAPER_NAMES, PASSWORD_WORDS, passwordProblem } from './hand-on-words.js';
import { MakerElement } from './maker-element.js';
import { loadPageFonts } from './page-fonts.js';
import { pickRow } from './pick-row.js';

type PagesWish = Extract<Wish, { make: 'pages' }>;

/** The pages to print, as a PDF: page size, language, lengths, pieces at true size, a password. */
export class PagesMakerElement extends MakerElement<PagesWish> {
  static override readonly styles = [
    tableStyles,
    handOnStyles,
    css`
      ol {
        display: grid;
        gap: 20px;
        margin: 0;
        padding: 0 4px 8px;
        list-style: none;
      }
      .note {
        margin: 0 0 12px;
        color: var(--accent);
        overflow-wrap: anywhere;
      }
    `,
  ];

  /** The country of the post is chosen where the card is looked at. */
  readonly #watch = new WatchCard(this);
  @state() private locked = false;
  @state() private legible = false;
  @state() private problem: string | null = null;
  @query('#password') private readonly password!: HTMLInputElement | null;
  @state() private fontless: string | null = null;

  protected override get saveLabel(): string {
    return 'Save the pages (PDF)';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    // Without its own fonts the preview still shows every line, in other letters; the file has them all the same.
    loadPageFonts().catch((error: unknown) => {
      this.fontless = error instanceof Error ? error.message : String(error);
    });
  }

  protected override preview(): PagesWish {
    return { make: 'pages', choice: this.choices.pages, post: this.#watch.card.post };
  }

  protected override async file(subject: Subject, progress: (done: number, of: number) => void): Promise<SavedFile> {
    const { bytes } = await this.writer.make(
      subject,
      {
        make: 'pdf',
        choice: this.choices.pages,
        post: this.#watch.card.post,
        password: this.locked ? (this.password?.value ?? '') : null,
        created: new Date(),
        photos: await photosOnShelf(subject.sketch),
      },
      { progress },
    );
    return { name: this.#name(subject), type: 'application/pdf', content: bytes };
  }

  protected override canSave(): boolean {
    return !this.locked || (this.password !== null && passwordProblem(this.password.value) === null);
  }

  protected override refuse(): void {
    this.problem = passwordProblem(this.password?.value ?? '');
    this.password?.focus();
  }

  #name({ sketch, date }: Subject): string {
    return `${fileStem(sketch.title)}-${date}.pdf`;
  }

  protected override renderChoices(): TemplateResult {
    const { paper, language, unit, templates } = this.choices.pages;
    const { subject } = this;
    return html`${pickRow('paper', 'Printed on', PAPER_NAMES, paper, (value) => this.#choose({ paper: value }))}
      ${pickRow('language', 'Language', LANGUAGE_NAMES, language, (value) => this.#choose({ language: value }))}
      ${pickRow('unit', 'Lengths in', LENGTH_WORDS, unit, (value) => this.#choose({ unit: value }))}
      <label class="pick">
        <input type="checkbox" .checked=${templates} @change=${this.#templates} />
        <span>Every piece at true size as well, with a ruler to check the print</span>
      </label>
      <label class="pick">
        <input type="checkbox" .checked=${this.locked} @change=${this.#lock} />
        <span>It opens only with a password</span>
      </label>
      ${this.locked ? this.#passwordRow() : nothing}
      ${subject ? html`<p class="under">The file: <span class="file">${this.#name(subject)}</span></p>` : nothing}
      <p class="under">${BLADE_CAUTION}</p>`;
  }

  #passwordRow(): TemplateResult {
    return html`<div class="row">
        <label for="password">Password</label>
        <input
          id="password"
          type=${this.legible ? 'text' : 'password'}
          autocomplete="new-password"
          spellcheck="false"
          autocapitalize="off"
          aria-invalid=${this.problem !== null}
          aria-describedby="protects"
          @input=${this.#typed}
        />
      </div>
      <label class="pick">
        <input type="checkbox" .checked=${this.legible} @change=${this.#legible} />
        <span>Show what is typed</span>
      </label>
      ${this.problem === null ? nothing : html`<p class="problem" role="alert">${this.problem}</p>`}
      <p class="under" id="protects">${PASSWORD_WORDS}</p>`;
  }

  protected override renderPreview({ pages, note }: MadeFor<PagesWish>): TemplateResult {
    const count = pages.pages.length;
    const { searching } = this.session.plan;
    return html`<p class="of" role="status">
        ${count === 1 ? 'One page' : `${count} pages`}${searching ? '; a better plan is still being looked for, and the pages follow' : ''}
      </p>
      ${this.fontless === null ? nothing : html`<p class="of">The fonts of the pages could not be shown here (${this.fontless}).</p>`}
      ${note === null ? nothing : html`<p class="note">${note}</p>`}
      <ol>
        ${pages.pages.map(
          (page, index) =>
            html`<li>
              <trimwell-page-picture
                .page=${page}
                .looks=${pages.looks}
                label=${`Page ${index + 1} of ${count}: ${page.marks.map(({ title }) => title).join(', ') || 'goes on from the page before'}`}
              ></trimwell-page-picture>
            </li>`,
        )}
      </ol>`;
  }

  #choose(change: Partial<typeof this.choices.pages>): void {
    this.choices.pages = { ...this.choices.pages, ...change };
    this.chosen();
  }

  readonly #templates = ({ target }: Event): void => {
    if (target instanceof HTMLInputElement) this.#choose({ templates: target.checked });
  };

  readonly #lock = async ({ target }: Event): Promise<void> => {
    if (!(target instanceof HTMLInputElement)) return;
    this.locked = target.checked;
    this.problem = null;
    await this.updateComplete;
    // The button that saves asks the field, which has only just come.
    this.requestUpdate();
    if (this.locked) this.password?.focus();
  };

  readonly #legible = ({ target }: Event): void => {
    if (target instanceof HTMLInputElement) this.legible = target.checked;
  };

  readonly #typed = (): void => {
    this.problem = this.password && this.password.value !== '' ? passwordProblem(this.password.value) : null;
    this.chosen();
  };
}
