import { fileStem } from '@trimwell/handout';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SavedFile } from '../../session/save-file.js';
import type { MadeFor, Subject, Wish } from '../../session/write-messages.js';
import { photosOnShelf } from '../photos/photos-on-shelf.js';
import { tableStyles } from '../table/table-styles.js';
import { handOnStyles } from './hand-on-styles.js';
import {
  OTHER_SIZE,
  PICTURE_FORMAT_WORDS,
  PICTURE_SIZE_WORDS,
  PICTURE_SIZES,
  PICTURE_WORDS,
  pictureSizeName,
  readSides,
} from './hand-on-words.js';
import { MakerElement } from './maker-element.js';
import { paintPicture } from './paint-picture.js';
import { pickRow } from './pick-row.js';
import { pictureAddress } from './picture-address.js';
import type { Choices } from './remembered-choices.js';

type PictureWish = Extract<Wish, { make: 'picture' }>;

/** A picture of the card, of all cards, or of one cutting guide, in the sizes that pages and posts take. */
export class PictureMakerElement extends MakerElement<PictureWish> {
  static override readonly styles = [
    tableStyles,
    handOnStyles,
    css`
      img {
        display: block;
        max-width: 100%;
        max-height: 66vh;
        box-shadow: 0 1px 3px rgb(20 25 24 / 0.25), 0 6px 18px rgb(20 25 24 / 0.14);
      }
    `,
  ];

  /** What was typed for a size and is none, in words. */
  @state() private problem: string | null = null;
  @state() private otherSize = false;
  #photos: ReadonlyMap<string, Blob> = new Map();

  protected override get saveLabel(): string {
    return `Save the picture (${this.choices.picture.format.toUpperCase()})`;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#bring();
  }

  async #bring(): Promise<void> {
    this.#photos = await photosOnShelf(this.session.state.sketch);
    if (this.#photos.size > 0) this.chosen();
  }

  protected override preview(): PictureWish {
    const { format: _, ...choice } = this.choices.picture;
    return { make: 'picture', choice, photos: this.#photos };
  }

  protected override async file(subject: Subject): Promise<SavedFile> {
    const { format, width, height } = this.choices.picture;
    const { svg } = await this.writer.make(subject, this.preview());
    const name = this.#name(subject);
    if (format === 'svg') return { name, type: 'image/svg+xml', content: svg };
    return { name, type: 'image/png', content: await paintPicture(svg, { width, height }) };
  }

  protected override canSave(): boolean {
    return this.problem === null;
  }

  protected override refuse(): void {
    this.renderRoot.querySelector<HTMLElement>('#sides')?.focus();
  }

  #name({ sketch, date }: Subject): string {
    const { of, sheet, format } = this.choices.picture;
    return `${fileStem(sketch.title)}-${date}-${of === 'guide' ? `guide-${sheet}` : of}.${format}`;
  }

  protected override renderChoices(): TemplateResult {
    const { of, width, height, titled, format } = this.choices.picture;
    const { subject } = this;
    const size = this.otherSize ? OTHER_SIZE : pictureSizeName({ width, height });
    return html`${pickRow('of', 'Of', PICTURE_WORDS, of, (value) => this.#choose({ of: value }))}
      ${of === 'guide' ? this.#sheets() : nothing}
      ${pickRow('size', 'Size', PICTURE_SIZE_WORDS, size, (value) => this.#size(value))}
      ${size === OTHER_SIZE ? this.#sides() : nothing}
      ${pickRow('format', 'Written as', PICTURE_FORMAT_WORDS, format, (value) => this.#choose({ format: value }))}
      <label class="pick">
        <input type="checkbox" .checked=${titled} @change=${this.#titled} />
        <span>The title below it</span>
      </label>
      ${subject ? html`<p class="under">The file: <span class="file">${this.#name(subject)}</span></p>` : nothing}`;
  }

  /** Which sheet a guide is of, by the names of the papers. */
  #sheets(): TemplateResult {
    const names = this.shown?.sheets ?? [];
    const { sheet } = this.choices.picture;
    const words = Object.fromEntries(names.map((name, index) => [String(index + 1), `${index + 1}: ${name}`]));
    return pickRow('sheet', 'Sheet', words, String(sheet), (value) => this.#choose({ sheet: Number(value) }));
  }

  #sides(): TemplateResult {
    const { width, height } = this.choices.picture;
    return html`<div class="row">
        <label for="sides">Pixels</label>
        <input
          id="sides"
          inputmode="text"
          autocomplete="off"
          aria-invalid=${this.problem !== null}
          aria-describedby=${this.problem === null ? nothing : 'wrong'}
          .value=${`${width} x ${height}`}
          @change=${this.#sided}
        />
      </div>
      ${this.problem === null ? nothing : html`<p class="problem" id="wrong" role="alert">${this.problem}</p>`}`;
  }

  protected override renderPreview({ svg }: MadeFor<PictureWish>): TemplateResult {
    const { width, height } = this.choices.picture;
    return html`<p class="of">${width} x ${height} pixels</p>
      <img alt=${`The picture as it will be: ${PICTURE_WORDS[this.choices.picture.of]}`} src=${pictureAddress(svg)} />`;
  }

  #choose(change: Partial<Choices['picture']>): void {
    this.choices.picture = { ...this.choices.picture, ...change };
    this.chosen();
  }

  #size(name: keyof typeof PICTURE_SIZE_WORDS): void {
    this.problem = null;
    this.otherSize = name === OTHER_SIZE;
    if (name === OTHER_SIZE) this.chosen();
    else this.#choose(PICTURE_SIZES[name]);
  }

  readonly #sided = ({ target }: Event): void => {
    if (!(target instanceof HTMLInputElement)) return;
    const reading = readSides(target.value);
    this.problem = typeof reading === 'string' ? reading : null;
    if (typeof reading !== 'string') this.#choose(reading);
  };

  readonly #titled = ({ target }: Event): void => {
    if (target instanceof HTMLInputElement) this.#choose({ titled: target.checked });
  };
}
