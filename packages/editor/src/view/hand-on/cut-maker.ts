import { formatSize, inches, type Length, ticks, toInches, toMillimetres, type Unit } from '@trimwell/geometry';
import { fileStem, MACHINE_CAUTION } from '@trimwell/handout';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { SavedFile } from '../../session/save-file.js';
import type { CutChoice, CutFilePreview, MadeFor, Subject, Wish } from '../../session/write-messages.js';
import type { LengthField } from '../table/length-field.js';
import { tableStyles } from '../table/table-styles.js';
import { handOnStyles } from './hand-on-styles.js';
import { CARDS_WORDS, CUT_FORMAT_WORDS, CUT_GROUP_WORDS, LENGTH_WORDS } from './hand-on-words.js';
import { MakerElement } from './maker-element.js';
import { pickRow } from './pick-row.js';
import { pictureAddress } from './picture-address.js';

type CutWish = Extract<Wish, { make: 'cut files' }>;

/** The widest gap and margin that the files take. */
const WIDEST = inches(4);

/** Lines in a small picture are this share of its longer side. */
const LINE_SHARE = 1 / 180;

/** An SVG whose figures are in `unit` with lines that are seen in a small picture; in the file they are as thin as hairs. */
function boldly(svg: string, side: number, unit: Unit): string {
  const width = (unit === 'mm' ? toMillimetres(ticks(side)) : toInches(ticks(side))) * LINE_SHARE;
  return svg.replace('<title>', `<style>g{stroke-width:${width.toFixed(4)}}</style><title>`);
}

/** Outlines for a cutting machine, a file for each sheet or each piece, all in one zip. */
export class CutMakerElement extends MakerElement<CutWish> {
  static override readonly styles = [
    tableStyles,
    handOnStyles,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
        gap: 20px 24px;
        margin: 0;
        padding: 0 4px 8px;
        list-style: none;
      }
      img {
        display: block;
        max-width: 100%;
        width: auto;
        height: auto;
        max-height: 190px;
        background: #fff;
        box-shadow: 0 1px 3px rgb(20 25 24 / 0.25);
      }
      .title {
        margin-top: 6px;
        font-weight: 600;
      }
      .name {
        color: var(--muted);
        font-size: 12px;
        overflow-wrap: anywhere;
      }
      .short {
        margin: 0 0 12px;
        padding: 0 0 0 16px;
        color: var(--accent);
      }
    `,
  ];

  protected override get saveLabel(): string {
    return 'Save the files (zip)';
  }

  protected override preview(): CutWish {
    return { make: 'cut files', choice: this.choices.cut };
  }

  protected override async file(subject: Subject): Promise<SavedFile> {
    const { bytes } = await this.writer.make(subject, { make: 'cut zip', choice: this.choices.cut });
    return { name: this.#name(subject), type: 'application/zip', content: bytes };
  }

  /** The first length that is wrong, if any: what stands in its field is not what would be cut. */
  get #wrong(): LengthField | undefined {
    return [...this.renderRoot.querySelectorAll<LengthField>('trimwell-length')].find(({ refused }) => refused);
  }

  protected override refuse(): void {
    this.#wrong?.focus();
  }

  protected override canSave(): boolean {
    return this.#wrong === undefined;
  }

  #name({ sketch, date }: Subject): string {
    return `${fileStem(sketch.title)}-${date}-cut-files-${this.choices.cut.format}.zip`;
  }

  protected override renderChoices(): TemplateResult {
    const { format, each, whole, unit, gap, margin } = this.choices.cut;
    const { subject } = this;
    const cards = Math.max(1, this.session.plan.batch?.cards ?? 1);
    return html`${pickRow('format', 'Written as', CUT_FORMAT_WORDS, format, (value) => this.#choose({ format: value }))}
      ${pickRow('each', 'A file for', CUT_GROUP_WORDS, each, (value) => this.#choose({ each: value }))}
      ${pickRow('cards', 'Pieces for', CARDS_WORDS(cards), whole ? 'whole' : 'one', (value) => this.#choose({ whole: value === 'whole' }))}
      ${pickRow('unit', 'Lengths in', LENGTH_WORDS, unit, (value) => this.#choose({ unit: value }))}
      ${each === 'sheet' ? this.#length('gap', 'Gap', 'Between two pieces', gap) : nothing}
      ${this.#length('margin', 'Margin', each === 'sheet' ? 'To every edge of the sheet' : 'Around the piece', margin)}
      ${subject ? html`<p class="under">The file: <span class="file">${this.#name(subject)}</span></p>` : nothing}
      <p class="under">${MACHINE_CAUTION}</p>`;
  }

  #length(name: 'gap' | 'margin', label: string, what: string, value: Length): TemplateResult {
    return html`<div class="row">
      <span aria-hidden="true">${label}</span>
      <div>
        <trimwell-length
          .value=${value}
          .unit=${this.choices.cut.unit}
          .least=${ticks(0)}
          .most=${WIDEST}
          label=${`${label}: ${what.toLowerCase()}`}
          @length-change=${({ detail }: CustomEvent<{ value: Length }>) => this.#choose({ [name]: detail.value })}
        ></trimwell-length>
        <p class="under">${what}</p>
      </div>
    </div>`;
  }

  protected override renderPreview({ files, cards, papers }: MadeFor<CutWish>): TemplateResult {
    const short = papers.flatMap(({ name, unmade }) => unmade.map((each) => ({ paper: name, ...each })));
    return html`<p class="of" role="status">
        ${files.length === 1 ? 'One file' : `${files.length} files`} for ${cards === 1 ? 'one card' : `${cards} cards`}, and a note with what is cut how often
      </p>
      ${
        short.length === 0
          ? nothing
          : html`<ul class="short">
              ${short.map(({ paper, name, quantity, reason }) => html`<li>${paper}: ${quantity} of ${name} cannot be cut: ${reason}.</li>`)}
            </ul>`
      }
      <ul>
        ${files.map((file) => this.#picture(file))}
      </ul>`;
  }

  #picture({ name, title, copies, width, height, svg }: CutFilePreview): TemplateResult {
    const { unit } = this.choices.cut;
    const size = formatSize({ width, height }, { unit });
    const short = title.replace(`${this.session.state.sketch.title}: `, '');
    return html`<li>
      <img alt=${`The outlines of ${short}`} src=${pictureAddress(boldly(svg, Math.max(width, height), unit))} />
      <div class="title">${short}</div>
      <div>${size}${copies === 1 ? '' : `, cut ${copies} times`}</div>
      <div class="name">${name}</div>
    </li>`;
  }

  #choose(change: Partial<CutChoice>): void {
    this.choices.cut = { ...this.choices.cut, ...change };
    this.chosen();
  }
}
