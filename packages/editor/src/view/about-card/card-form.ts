import { inches, type Length, type Size, ticks, type Unit } from '@trimwell/geometry';
import {
  CARD_SIZES,
  type Card,
  type CardSize,
  ENVELOPE_SIZES,
  type EnvelopeSize,
  envelopesFor,
  type Fold,
  usualCard,
} from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { LONGEST, type Pieces, setBase, setCardSize, setEnvelope, setFold } from '../../state/card-commands.js';
import type { Command } from '../../state/state.js';
import { foldText } from '../beginnings/new-card-messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { envelopeText, POST, sizeName } from './about-card-messages.js';
import { aboutCardStyles } from './about-card-styles.js';

type Envelope = NonNullable<Card['envelope']>;

const OWN = 'own';
const NONE = 'none';
const FOLDS: readonly Fold[] = ['left', 'top', 'none'];
/** What a new envelope of one's own is larger than its card. */
const ROOM = inches(1 / 4);

/** The usual envelope of that size, whichever side is stated first. */
function usualEnvelope({ width, height }: Envelope): EnvelopeSize | undefined {
  return ENVELOPE_SIZES.find(
    (size) => (size.width === width && size.height === height) || (size.width === height && size.height === width),
  );
}

/** The card itself: its size and what becomes of the pieces at another, its fold, the paper of its base, its envelope. */
export class CardFormElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    aboutCardStyles,
    css`
      .quiet {
        font-size: 12.5px;
      }
    `,
  ];

  @state() private pieces: Pieces = 'fit';

  protected override concerns(change: SessionChange): boolean {
    return change.sketch;
  }

  protected override render() {
    return html`<section aria-labelledby="heading">
      <h3 id="heading">The card</h3>
      ${this.#size()} ${this.#pieces()} ${this.#fold()} ${this.#base()} ${this.#envelope()}
      <p class="quiet">${POST}</p>
    </section>`;
  }

  get #card(): Card {
    return this.session.state.sketch.card;
  }

  get #unit(): Unit {
    return this.session.state.sketch.unit;
  }

  /** Usual cards of the sketch's unit first, each as the card stands: upright or lying. */
  #size(): TemplateResult {
    const { width, height } = this.#card;
    const known = usualCard(this.#card);
    const lying = width > height;
    const option = (size: CardSize) => {
      const as = lying ? { width: size.height, height: size.width } : size;
      return html`<option value=${size.id} .selected=${size.id === known?.id}>${sizeName(size.name, as, size.unit)}</option>`;
    };
    const group = (label: string, unit: Unit) =>
      html`<optgroup label=${label}>${CARD_SIZES.filter((size) => size.unit === unit).map(option)}</optgroup>`;
    const groups = [group('In inches', 'in'), group('In millimetres', 'mm')];
    const choose = (id: string): void => {
      const size = CARD_SIZES.find((candidate) => candidate.id === id);
      if (!size) return;
      this.#resize(lying ? { width: size.height, height: size.width } : size);
    };
    return html`<div class="row">
      <span id="size">Size</span>
      <div class="fields" role="group" aria-labelledby="size">
        ${this.#select('Usual size', choose, html`${this.#unit === 'in' ? groups : [...groups].reverse()}<option value=${OWN} .selected=${known === null} disabled>a size of its own</option>`)}
        <span class="fields">
          ${this.#length('Width of the card', width, (value) => this.#resize({ width: value, height }))}×${this.#length('Height of the card', height, (value) => this.#resize({ width, height: value }))}
          <button ?disabled=${width === height} @click=${() => this.#resize({ width: height, height: width })}>Turn it</button>
        </span>
      </div>
    </div>`;
  }

  #pieces(): TemplateResult {
    const pick = (value: Pieces, label: string) => html`<label class="pick"
      ><input type="radio" name="pieces" .checked=${this.pieces === value} @change=${() => {
        this.pieces = value;
      }} />${label}</label
    >`;
    return html`<fieldset class="row" role="radiogroup" aria-labelledby="pieces">
      <span id="pieces">At another size</span>
      <div class="fields">${pick('fit', 'fit the pieces to it')} ${pick('leave', 'leave them where they are')}</div>
    </fieldset>`;
  }

  #fold(): TemplateResult {
    return html`<fieldset class="row" role="radiogroup" aria-labelledby="fold">
      <span id="fold">Folds</span>
      <div class="fields">
        ${FOLDS.map(
          (fold) => html`<label class="pick"
            ><input type="radio" name="fold" .checked=${this.#card.fold === fold} @change=${() => this.#do(setFold(fold))} />${foldText(fold)}</label
          >`,
        )}
      </div>
    </fieldset>`;
  }

  #base(): TemplateResult {
    const { papers } = this.session.state.sketch;
    return html`<div class="row">
      <span>Base from</span>
      ${this.#select(
        'Paper of the card base',
        (id) => this.#do(setBase(id)),
        html`${papers.map(({ id, name }) => html`<option value=${id} .selected=${id === this.#card.base}>${name}</option>`)}`,
      )}
    </div>`;
  }

  #envelope(): TemplateResult {
    const { envelope } = this.#card;
    const known = envelope ? usualEnvelope(envelope) : undefined;
    const roomy = envelopesFor(this.#card);
    const others = ENVELOPE_SIZES.filter((size) => !roomy.includes(size));
    const option = (size: EnvelopeSize) =>
      html`<option value=${size.id} .selected=${size === known}>${sizeName(size.name, size, size.unit)}</option>`;
    const group = (label: string, sizes: readonly EnvelopeSize[]) =>
      sizes.length === 0 ? nothing : html`<optgroup label=${label}>${sizes.map(option)}</optgroup>`;
    const choose = (id: string): void => this.#do(setEnvelope(this.#chosenEnvelope(id)));
    return html`<div class="row">
      <span id="envelope">Envelope</span>
      <div class="fields" role="group" aria-labelledby="envelope">
        ${this.#select(
          'Usual envelope',
          choose,
          html`<option value=${NONE} .selected=${!envelope}>none</option>
            ${group('The card goes in with room to spare', roomy)} ${group('Others', others)}
            <option value=${OWN} .selected=${envelope !== undefined && !known}>another</option>`,
        )}
        ${envelope ? this.#ownEnvelope(envelope) : nothing}
      </div>
    </div>`;
  }

  #chosenEnvelope(id: string): Envelope | null {
    if (id === NONE) return null;
    const usual = ENVELOPE_SIZES.find((size) => size.id === id);
    if (usual) return { name: usual.name, width: usual.width, height: usual.height };
    const { width, height } = this.#card;
    return { name: 'own envelope', width: ticks(width + ROOM), height: ticks(height + ROOM) };
  }

  #ownEnvelope(envelope: Envelope): TemplateResult {
    const name = (event: Event): void => {
      if (!(event.target instanceof HTMLInputElement)) return;
      this.#do(setEnvelope({ ...envelope, name: event.target.value.trim() }));
      event.target.value = this.#card.envelope?.name ?? '';
    };
    return html`<input aria-label="Name of the envelope" maxlength=${LONGEST.title} autocomplete="off" .value=${envelope.name} @change=${name} />
      <span class="fields">
        ${this.#length('Width of the envelope', envelope.width, (width) => this.#do(setEnvelope({ ...envelope, width })))}×${this.#length('Height of the envelope', envelope.height, (height) => this.#do(setEnvelope({ ...envelope, height })))}
      </span>
      <span class="quiet" role="status">${envelopeText(this.#card, envelope, this.#unit)}</span>`;
  }

  #select(label: string, choose: (value: string) => void, options: TemplateResult): TemplateResult {
    return html`<select aria-label=${label} @change=${(event: Event) => {
      if (event.target instanceof HTMLSelectElement) choose(event.target.value);
    }}>${options}</select>`;
  }

  #length(label: string, value: Length, set: (value: Length) => void): TemplateResult {
    return html`<trimwell-length
      .value=${value}
      .unit=${this.#unit}
      label=${label}
      @length-change=${(event: CustomEvent<{ value: Length }>) => set(event.detail.value)}
    ></trimwell-length>`;
  }

  #resize(size: Size): void {
    this.#do(setCardSize(size, this.pieces));
  }

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }
}
