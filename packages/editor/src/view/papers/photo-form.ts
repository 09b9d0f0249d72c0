import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { KeepError } from '../../keeping/keep-error.js';
import { keeperOf } from '../../keeping/keepers.js';
import type { SessionChange } from '../../session/session.js';
import { changePaper, paperToChange } from '../../state/paper-edits.js';
import { holdPhoto } from '../photos/hold-photo.js';
import { photoShelf } from '../photos/photo-shelf.js';
import { watchPhotos } from '../photos/photo-watch.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { PHOTO_HINT, PHOTO_MISSING, PHOTO_OF_PAGE_HINT, PHOTO_SHOWN } from './papers-messages.js';
import { papersStyles } from './papers-styles.js';
import { type PhotoCrop, turnsToLieAs, WHOLE_PICTURE } from './photo-crop.js';
import { cutPhoto, openPicture, PhotoProblem, paintCrop } from './take-photo.js';

/** Longest side of the picture while its part is chosen, in pixels. */
const SHOWN = 220;

type Slide = 'closer' | 'across' | 'down';

const SLIDES: readonly {
  readonly is: Slide;
  readonly name: string;
  readonly least: number;
  readonly most: number;
}[] = [
  { is: 'closer', name: 'closer', least: 1, most: 4 },
  { is: 'across', name: 'across', least: 0, most: 1 },
  { is: 'down', name: 'down', least: 0, most: 1 },
];

/** The user's own photograph of a sheet: picked or taken, turned, cut to the sheet, and kept on their machine or for this page. */
export class SheetPhotoElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      :host {
        margin-bottom: 14px;
      }
      .picks {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 14px;
      }
      .file {
        position: relative;
        display: inline-flex;
        align-items: center;
        min-height: 28px;
        color: var(--accent);
        font-weight: 600;
        cursor: pointer;
      }
      .file:hover {
        text-decoration: underline;
        text-underline-offset: 3px;
      }
      .file input {
        position: absolute;
        inset: 0;
        width: 100%;
        opacity: 0;
        cursor: pointer;
      }
      .file:has(:focus-visible) {
        outline: 2px solid var(--focus);
        outline-offset: 3px;
        border-radius: 3px;
      }
      .take {
        display: none;
      }
      @media (pointer: coarse) {
        .take {
          display: inline-flex;
        }
      }
      .crop {
        display: flex;
        flex-wrap: wrap;
        gap: 12px 18px;
        align-items: flex-start;
      }
      canvas {
        display: block;
        max-width: 100%;
        box-shadow: 0 0 0 1px rgb(29 36 35 / 0.3), 0 4px 12px rgb(20 25 24 / 0.2);
      }
      .slides {
        display: grid;
        grid-template-columns: auto minmax(90px, 150px);
        gap: 4px 10px;
        align-items: center;
        font-size: 12.5px;
      }
      input[type='range'] {
        min-height: 24px;
        accent-color: var(--accent);
      }
    `,
  ];

  /** The id of the paper. */
  @property({ attribute: false }) paper = '';
  @state() private picture: ImageBitmap | null = null;
  @state() private crop: PhotoCrop = WHOLE_PICTURE;
  @state() private problem = '';
  @state() private busy = false;
  @query('canvas') private readonly canvas!: HTMLCanvasElement | null;

  constructor() {
    super();
    watchPhotos(this, () => this.requestUpdate());
  }

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#putDown();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (!changed.has('paper')) return;
    this.#putDown();
    this.problem = '';
    const photo = this.#sheet()?.look.photo;
    if (photo !== undefined) void photoShelf.bring([photo]);
  }

  #sheet() {
    return this.session ? paperToChange(this.session.state, this.paper) : null;
  }

  protected override render() {
    const paper = this.#sheet();
    if (!paper) return nothing;
    return html`${this.picture ? this.#chooser(this.picture) : this.#picks(paper.look.photo)}
    ${this.problem === '' ? nothing : html`<p class="problem" role="alert">${this.problem}</p>`}`;
  }

  #picks(photo: string | undefined): TemplateResult {
    const missing = photo !== undefined && photoShelf.isMissing(photo);
    const hint = keeperOf(this.session) ? PHOTO_HINT : PHOTO_OF_PAGE_HINT;
    return html`<div class="picks">
        ${this.#file(photo === undefined ? 'Use a picture of the sheet' : 'Another picture', false)}
        ${this.#file('Take a picture', true)}
        ${photo === undefined ? nothing : html`<button @click=${this.#takeOff}>Take the photograph off</button>`}
      </div>
      <p class="small quiet" role="status">${photo === undefined ? hint : missing ? PHOTO_MISSING : `${PHOTO_SHOWN} ${hint}`}</p>`;
  }

  #file(label: string, camera: boolean): TemplateResult {
    return html`<label class="file ${camera ? 'take' : ''}"
      >${label}<input type="file" accept="image/*" capture=${camera ? 'environment' : nothing} ?disabled=${this.busy} @change=${this.#open}
    /></label>`;
  }

  #chooser({ width, height }: ImageBitmap): TemplateResult {
    return html`<div class="crop" role="group" aria-label="Which part of the picture is the sheet">
      <canvas role="img" aria-label="The part of the picture that becomes the sheet; the picture is ${width} by ${height} pixels"></canvas>
      <div>
        <div class="slides">
          ${SLIDES.map(
            ({ is, name, least, most }) =>
              html`<label for=${is}>${name}</label
                ><input id=${is} type="range" min=${least} max=${most} step="0.01" .value=${String(this.crop[is])} @input=${(event: Event) => this.#slide(is, event)} />`,
          )}
        </div>
        <div class="acts">
          <button @click=${this.#turn}>Turn a quarter</button>
          <button class="act" ?disabled=${this.busy} @click=${this.#use}>Use this part</button>
          <button ?disabled=${this.busy} @click=${this.#leave}>Leave it</button>
        </div>
      </div>
    </div>`;
  }

  protected override updated(): void {
    const paper = this.#sheet();
    const { canvas, picture } = this;
    if (!paper || !canvas || !picture) return;
    const scale = SHOWN / Math.max(paper.width, paper.height);
    const dense = Math.max(1, Math.min(3, globalThis.devicePixelRatio || 1));
    canvas.width = Math.round(paper.width * scale * dense);
    canvas.height = Math.round(paper.height * scale * dense);
    canvas.style.setProperty('width', `${Math.round(paper.width * scale)}px`);
    paintCrop(canvas, picture, paper, this.crop);
  }

  readonly #open = async (event: Event): Promise<void> => {
    const box = event.target;
    const paper = this.#sheet();
    if (!(box instanceof HTMLInputElement) || !paper) return;
    const [file] = box.files ?? [];
    // The same file can be picked again.
    box.value = '';
    if (!file) return;
    await this.#working(async () => {
      const picture = await openPicture(file);
      if (this.paper !== paper.id) return picture.close();
      this.#putDown();
      this.picture = picture;
      this.crop = { ...WHOLE_PICTURE, turns: turnsToLieAs(picture, paper) };
    });
    // Not before the work is done: until then the button cannot be pressed and takes no focus.
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.acts .act')?.focus();
  };

  #slide(is: Slide, event: Event): void {
    if (event.target instanceof HTMLInputElement) this.crop = { ...this.crop, [is]: event.target.valueAsNumber };
  }

  readonly #turn = (): void => {
    this.crop = { ...this.crop, turns: (this.crop.turns + 1) % 4 };
  };

  readonly #use = async (): Promise<void> => {
    const { picture, crop } = this;
    const paper = this.#sheet();
    if (!picture || !paper) return;
    await this.#working(async () => {
      const { blob, colour } = await cutPhoto(picture, paper, crop);
      const id = await holdPhoto(this.session, blob);
      // What else has been changed of the paper in the meantime stays.
      const look = { ...(paperToChange(this.session.state, paper.id) ?? paper).look, ground: colour, photo: id };
      changePaper(paper.id, { look })(this.session.state, this.session.dispatch, Date.now());
      this.#putDown();
    });
    if (!this.picture) await this.#back();
  };

  readonly #leave = (): Promise<void> => this.#back();

  readonly #takeOff = (): void => {
    const paper = this.#sheet();
    if (!paper) return;
    const { photo: _photo, ...look } = paper.look;
    changePaper(paper.id, { look })(this.session.state, this.session.dispatch, Date.now());
  };

  /** Does `work` and says what goes wrong in it. */
  async #working(work: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.problem = '';
    try {
      await work();
    } catch (error) {
      if (!(error instanceof PhotoProblem) && !(error instanceof KeepError)) throw error;
      this.problem = error instanceof KeepError ? `The picture could not be kept: ${error.message}` : error.message;
    } finally {
      this.busy = false;
    }
  }

  #putDown(): void {
    this.picture?.close();
    this.picture = null;
  }

  async #back(): Promise<void> {
    this.#putDown();
    this.problem = '';
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.file input')?.focus();
  }
}
