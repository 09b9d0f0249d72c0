import { formatLength, type Length, readLength, ticks } from '@trimwell/geometry';
import { EDGES, type Edge, PAPER_KINDS, type Paper, usualSheetOf, usualSheets } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { changePaper, leavesSomething, type PaperChanges, paperToChange } from '../../state/paper-edits.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { MARGINS_TOO_LARGE } from './papers-messages.js';
import { papersStyles } from './papers-styles.js';

const CUSTOM = 'custom';
/** Most sheets at hand, heaviest weight and highest price, as the schema has them. */
const MOST_SHEETS = 999;
const WEIGHT = { least: 10, most: 2_000 };
const MOST_PRICE = 10_000;
/** Thickest paper, in ticks: 20 mm is far beyond any board that is cut by hand. */
const THICKEST = 20 * 640;

/** Which side of the sheet its fibres run along. */
const GRAINS = [
  ['not known', ''],
  ['along its width', 'width'],
  ['along its height', 'height'],
] as const;

/** A sheet turned by a quarter: its margins and its grain go with it. */
function turnedSheet({ width, height, margins, grain }: Paper): PaperChanges {
  const { top, right, bottom, left } = margins;
  return {
    width: height,
    height: width,
    margins: { top: left, right: top, bottom: right, left: bottom },
    ...(grain === undefined ? {} : { grain: grain === 'width' ? 'height' : 'width' }),
  };
}

/** What one paper is: its name, kind, size, sheets at hand, direction, margins, weight, thickness and price. */
export class PaperFormElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      .name {
        width: 100%;
        margin-bottom: 8px;
        font: 500 18px / 1.3 var(--heading-font);
      }
      .figure {
        width: 88px;
      }
    `,
  ];

  /** The id of the paper. */
  @property({ attribute: false }) paper = '';
  @state() private problem: { readonly of: string; readonly says: string } | null = null;
  @query('.name') private readonly nameBox!: HTMLInputElement | null;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document;
  }

  /** Puts the focus on the name, all of it selected, so that a new paper can be named at once. */
  async focusName(): Promise<void> {
    await this.updateComplete;
    this.nameBox?.focus();
    this.nameBox?.select();
  }

  protected override render() {
    const paper = paperToChange(this.session.state, this.paper);
    if (!paper) return nothing;
    return html`<section class="slip" aria-label="What ${paper.name} is">
      <input class="name" aria-label="Name of the paper" maxlength="80" .value=${paper.name} @change=${(event: Event) => this.#name(event, paper)} />
      <dl>
        <dt>kind</dt>
        <dd>
          <select aria-label="Kind of paper" @change=${this.#kind}>
            ${PAPER_KINDS.map((kind) => html`<option .selected=${kind === paper.kind}>${kind}</option>`)}
          </select>
        </dd>
        <dt>size</dt>
        <dd>${this.#size(paper)}</dd>
        <dt>at hand</dt>
        <dd>${this.#sheets(paper)}</dd>
        <dt>print</dt>
        <dd>
          ${this.#tick('has an up, is not turned', paper.directional, (directional) => ({ directional }))}
          ${this.#tick('on both sides', paper.doubleSided, (doubleSided) => ({ doubleSided }))}
        </dd>
        <dt>grain</dt>
        <dd>${this.#grain(paper)}</dd>
        <dt>margins</dt>
        <dd>${this.#margins(paper)}</dd>
        <dt>weight</dt>
        <dd>${this.#number('weight', 'Weight in grams per square metre', paper.gsm, WEIGHT.least, WEIGHT.most, '1', (gsm) => ({ gsm }))}<span class="quiet">g/m²</span></dd>
        <dt>thickness</dt>
        <dd>${this.#caliper(paper)}</dd>
        <dt>price</dt>
        <dd>${this.#number('price', 'Price of a sheet', paper.price, 0, MOST_PRICE, '0.01', (price) => ({ price }))}<span class="quiet">for a sheet</span></dd>
      </dl>
    </section>`;
  }

  /** Makes the change; says under the field `of` when it cannot be made. */
  #change(changes: PaperChanges, of = ''): void {
    const paper = paperToChange(this.session.state, this.paper);
    this.problem =
      paper && !leavesSomething({ ...paper, ...(changes as Partial<Paper>) }) ? { of, says: MARGINS_TOO_LARGE } : null;
    changePaper(this.paper, changes)(this.session.state, this.session.dispatch, Date.now());
    this.requestUpdate();
  }

  #says(of: string): TemplateResult | typeof nothing {
    return this.problem?.of === of ? html`<span class="problem" role="alert">${this.problem.says}</span>` : nothing;
  }

  #name(event: Event, paper: Paper): void {
    if (!(event.target instanceof HTMLInputElement)) return;
    const name = event.target.value.trim();
    if (name === '') event.target.value = paper.name;
    else this.#change({ name });
  }

  readonly #kind = (event: Event): void => {
    const kind = PAPER_KINDS.find((known) => event.target instanceof HTMLSelectElement && known === event.target.value);
    if (kind) this.#change({ kind });
  };

  #tick(label: string, on: boolean, changes: (on: boolean) => PaperChanges): TemplateResult {
    return html`<label class="tick"
      ><input
        type="checkbox"
        .checked=${on}
        @change=${(event: Event) => {
          if (event.target instanceof HTMLInputElement) this.#change(changes(event.target.checked));
        }}
      />${label}</label
    >`;
  }

  #grain({ grain }: Paper): TemplateResult {
    const take = ({ target }: Event): void => {
      const side = target instanceof HTMLSelectElement ? GRAINS.find(([, value]) => value === target.value) : undefined;
      if (side) this.#change({ grain: side[1] === '' ? null : side[1] });
    };
    return html`<select aria-label="Grain: which side the fibres run along" @change=${take}>
        ${GRAINS.map(([words, value]) => html`<option value=${value} .selected=${value === (grain ?? '')}>${words}</option>`)}
      </select>
      <span class="quiet small">bend the sheet gently both ways: it gives more easily where the bend runs along the grain</span>`;
  }

  #length(label: string, value: Length, least: number, change: (value: Length) => void): TemplateResult {
    return html`<trimwell-length
      .value=${value}
      .unit=${this.session.state.sketch.unit}
      .least=${least}
      label=${label}
      @length-change=${(event: CustomEvent<{ value: Length }>) => change(event.detail.value)}
    ></trimwell-length>`;
  }

  #size(paper: Paper): TemplateResult {
    const sheets = usualSheets(this.session.state.sketch.unit);
    const usual = usualSheetOf(paper);
    return html`<select aria-label="Usual size" @change=${this.#usual}>
        ${sheets.map((sheet) => html`<option value=${sheet.name} .selected=${sheet.name === usual?.name}>${sheet.name}</option>`)}
        <option value=${CUSTOM} .selected=${usual === null}>its own size</option>
      </select>
      <span class="pair">
        ${this.#length('Width of the sheet', paper.width, 1, (width) => this.#change({ width }, 'size'))} ×
        ${this.#length('Height of the sheet', paper.height, 1, (height) => this.#change({ height }, 'size'))}
      </span>
      ${paper.width === paper.height ? nothing : html`<button class="act" @click=${() => this.#change(turnedSheet(paper), 'size')}>Turn the sheet</button>`}
      ${this.#says('size')}`;
  }

  readonly #usual = (event: Event): void => {
    const { unit } = this.session.state.sketch;
    const sheet = usualSheets(unit).find(
      ({ name }) => event.target instanceof HTMLSelectElement && name === event.target.value,
    );
    if (sheet) this.#change({ width: sheet.width, height: sheet.height }, 'size');
    else this.renderRoot.querySelector<HTMLElement>('.pair trimwell-length')?.focus();
  };

  #sheets({ sheets }: Paper): TemplateResult {
    return html`<label class="tick"
        ><input
          type="checkbox"
          .checked=${sheets === undefined}
          @change=${(event: Event) => {
            if (event.target instanceof HTMLInputElement) this.#change({ sheets: event.target.checked ? null : 1 });
          }}
        />as many as needed</label
      >
      ${sheets === undefined ? nothing : html`<span>${this.#number('sheets', 'Sheets at hand', sheets, 0, MOST_SHEETS, '1', (count) => (count === null ? {} : { sheets: count }))} ${sheets === 1 ? 'sheet' : 'sheets'}</span>`}
      ${this.#says('sheets')}`;
  }

  /** A field for a number that may be unknown; what is not allowed is said and not taken. */
  #number(
    of: string,
    label: string,
    value: number | undefined,
    least: number,
    most: number,
    step: string,
    changes: (value: number | null) => PaperChanges,
  ): TemplateResult {
    const take = (event: Event): void => {
      if (!(event.target instanceof HTMLInputElement)) return;
      const { value: text, valueAsNumber: typed, validity } = event.target;
      const whole = step !== '1' || Number.isInteger(typed) || of === 'weight';
      if (text === '' && !validity.badInput) this.#change(changes(null), of);
      else if (Number.isFinite(typed) && typed >= least && typed <= most && whole) this.#change(changes(typed), of);
      else this.problem = { of, says: `Allowed: ${whole ? '' : 'whole numbers, '}${least} to ${most}.` };
    };
    return html`<input class="number" type="number" inputmode="decimal" aria-label=${label} min=${least} max=${most} step=${step === '1' ? 'any' : step} .value=${value === undefined ? '' : String(value)} @change=${take} />${of === 'sheets' ? nothing : this.#says(of)}`;
  }

  #caliper({ caliper }: Paper): TemplateResult {
    const { unit } = this.session.state.sketch;
    const shown = caliper === undefined ? '' : formatLength(caliper, { unit, form: 'decimal' });
    const take = (event: Event): void => {
      if (!(event.target instanceof HTMLInputElement)) return;
      const text = event.target.value.trim();
      if (text === shown) return;
      const reading = text === '' ? null : readLength(text, unit);
      if (!reading) this.#change({ caliper: null }, 'thickness');
      else if (reading.ok && reading.length > 0 && reading.length <= THICKEST)
        this.#change({ caliper: reading.length }, 'thickness');
      else this.problem = { of: 'thickness', says: 'Allowed: up to 20 mm, such as 0.3 mm or 0.012 in.' };
    };
    return html`<input class="figure" aria-label="Thickness of a sheet" autocomplete="off" placeholder=${unit === 'in' ? '0.012 in' : '0.3 mm'} .value=${shown} @change=${take} />${this.#says('thickness')}`;
  }

  #margins({ margins }: Paper): TemplateResult {
    const same = EDGES.every((edge) => margins[edge] === margins.top);
    const set = (edge: Edge, value: Length): void =>
      this.#change({ margins: { ...margins, [edge]: value } }, 'margins');
    const all = (value: Length): void =>
      this.#change({ margins: { top: value, right: value, bottom: value, left: value } }, 'margins');
    const largest = ticks(Math.max(...EDGES.map((edge) => margins[edge])));
    return html`${this.#length('Margin on all sides', largest, 0, all)}
      <span class="quiet small">all round, not used</span>
      <details ?open=${!same}>
        <summary>${same ? 'each side' : 'sides differ'}</summary>
        <div class="four">${EDGES.map((edge) => html`<span>${edge}</span>${this.#length(`Margin, ${edge}`, margins[edge], 0, (value) => set(edge, value))}`)}</div>
      </details>
      ${this.#says('margins')}`;
  }
}
