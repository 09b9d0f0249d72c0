import { flatCardBase, inches, type Length, type Size, ticks, type Unit } from '@trimwell/geometry';
import { type Drawing, drawCard } from '@trimwell/handout';
import {
  BEGINNINGS,
  beginSketch,
  CARD_SIZES,
  type CardSize,
  cardSides,
  envelopeOf,
  type Fold,
  foldsOf,
  type Layout,
  type Sketch,
  usualCard,
} from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { inStyle } from '../in-style.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { figureText, foldText, KEPT, sizeLabel, sizeText, tooLongText, wishText } from './new-card-messages.js';
import { newCardStyles } from './new-card-styles.js';

/** The event by which a new sketch comes onto the table; what lay there is kept by whoever answers it. */
export type SketchBegin = CustomEvent<{ readonly sketch: Sketch }>;

const OWN = 'own';
const FIRST: Readonly<Record<Unit, string>> = { in: 'us-a2', mm: 'iso-a6' };
const FOLDS: readonly Fold[] = ['left', 'top', 'none'];
/** Pixels of an inch among the sizes, and the largest picture of a layout. */
const SCALE = 7.5;
const PICTURE = { width: 116, height: 122 };

interface Picture {
  readonly layout: Layout;
  readonly drawing: Drawing;
  readonly width: number;
}

/**
 * A new card: its size among the usual ones or one of its own, its fold, its unit, and the layout it begins from.
 * @fires sketch-begin - The card is to be laid out; `detail.sketch` is a whole sketch. Bubbles through every shadow root.
 */
export class NewCardElement extends SessionElement {
  static override readonly styles = [tableStyles, newCardStyles];

  @state() private unit: Unit | null = null;
  @state() private chosen: string | null = null;
  @state() private own: Size = { width: inches(4), height: inches(6) };
  @state() private lying = false;
  @state() private wanted: Fold | null = null;
  @state() private layout = 'window-and-mat';
  #drawn: { readonly key: string; readonly pictures: readonly Picture[] } = { key: '', pictures: [] };

  protected override concerns(): boolean {
    return false;
  }

  get #unit(): Unit {
    return this.unit ?? this.session.state.sketch.unit;
  }

  get #sizes(): readonly CardSize[] {
    return CARD_SIZES.filter(({ unit }) => unit === this.#unit);
  }

  get #named(): CardSize | null {
    const id = this.chosen ?? FIRST[this.#unit];
    return this.#sizes.find((size) => size.id === id) ?? null;
  }

  get #size(): Size {
    const named = this.#named;
    return named ? this.#turned(named) : this.own;
  }

  #turned({ width, height }: Size): Size {
    return this.lying ? { width: height, height: width } : { width, height };
  }

  get #fold(): Fold {
    const folds = foldsOf(this.#size, this.#unit);
    const [usual = 'none'] = folds;
    return this.wanted !== null && folds.includes(this.wanted) ? this.wanted : usual;
  }

  #begin(layout: string, id: string): Sketch {
    const usual = usualCard(this.#size);
    const envelope = usual && this.#fold !== 'none' ? envelopeOf(usual) : null;
    return beginSketch({
      layout,
      ...this.#size,
      unit: this.#unit,
      fold: this.#fold,
      id,
      ...(envelope ? { envelope: { name: envelope.name, width: envelope.width, height: envelope.height } } : {}),
    });
  }

  /** Every layout on the card that is wanted; drawn anew only when the card is another one. */
  #pictures(): readonly Picture[] {
    const { width, height } = this.#size;
    const key = [this.#unit, width, height, this.#fold].join(' ');
    if (this.#drawn.key === key) return this.#drawn.pictures;
    const pictures = BEGINNINGS.map((layout): Picture => {
      const sketch = this.#begin(layout.id, layout.id);
      const drawing = drawCard(sketch, { face: 'front', style: { unit: this.#unit }, dimensions: false });
      const { box } = drawing;
      return { layout, drawing, width: Math.min(PICTURE.width, (PICTURE.height * box.width) / box.height) };
    });
    this.#drawn = { key, pictures };
    return pictures;
  }

  protected override render() {
    return html`<div class="parts">
        <div>
          ${this.#line('Unit', 'unit', ['in', 'mm'] as const, this.#unit, (unit) => (unit === 'in' ? 'inches' : 'millimetres'), this.#measure)}
          ${this.#sizesField()} ${this.#named ? nothing : this.#ownField()}
          ${
            this.#named?.form === 'square' || !this.#named
              ? nothing
              : this.#line(
                  'Stands',
                  'way',
                  ['upright', 'lying'] as const,
                  this.lying ? 'lying' : 'upright',
                  (way) => way,
                  (way) => {
                    this.lying = way === 'lying';
                  },
                )
          }
          ${this.#folds()}
        </div>
        <fieldset>
          <legend>Begin from</legend>
          <div class="layouts">${this.#pictures().map((picture) => this.#layoutChoice(picture))}</div>
        </fieldset>
      </div>
      ${this.#footer()}`;
  }

  /** One line of radio buttons. */
  #line<T extends string>(
    legend: string,
    name: string,
    values: readonly T[],
    chosen: T,
    label: (value: T) => string,
    choose: (value: T) => void,
    refused: (value: T) => string | null = () => null,
  ): TemplateResult {
    return html`<fieldset class="line">
      <legend>${legend}</legend>
      ${values.map((value) => {
        const why = refused(value);
        return html`<label title=${why ?? nothing}
          ><input type="radio" name=${name} .checked=${value === chosen} ?disabled=${why !== null} @change=${() => choose(value)} />${label(value)}${why === null ? nothing : html`<span class="unseen">: ${why}</span>`}</label
        >`;
      })}
    </fieldset>`;
  }

  readonly #measure = (unit: Unit): void => {
    this.unit = unit;
    const { least, most } = cardSides(unit);
    const bounded = (length: Length): Length => ticks(Math.max(least, Math.min(most, length)));
    this.own = { width: bounded(this.own.width), height: bounded(this.own.height) };
    if (this.chosen !== OWN) this.chosen = null;
  };

  #sizesField(): TemplateResult {
    const own = { ...this.own, name: 'Another size' };
    return html`<fieldset>
      <legend>Size</legend>
      <div class="sizes">
        ${this.#sizes.map((size) => this.#sizeChoice(size.id, size.name, this.#turned(size), sizeLabel(size, this.#turned(size))))}
        ${this.#sizeChoice(OWN, own.name, own, `${own.name}, ${sizeText(own, this.#unit)}`)}
      </div>
    </fieldset>`;
  }

  #sizeChoice(id: string, name: string, figure: Size, label: string): TemplateResult {
    const [width, height] = [figure.width, figure.height].map((length) => (length / inches(1)) * SCALE);
    const checked = id === OWN ? this.#named === null : this.#named?.id === id;
    return html`<label class="size"
      ><input class="unseen" type="radio" name="size" aria-label=${label} .checked=${checked} @change=${() => {
        this.chosen = id;
      }} /><svg aria-hidden="true" width=${width ?? 0} height=${height ?? 0}
        ><rect class="leaf" x="3" y="2" width="100%" height="100%"></rect><rect class="front" width="100%" height="100%"></rect></svg
      ><span aria-hidden="true"><b>${name}</b>${figureText(figure, this.#unit)}</span></label
    >`;
  }

  #ownField(): TemplateResult {
    const { least, most } = cardSides(this.#unit);
    const field = (label: string, side: keyof Size) => html`<trimwell-length
      .value=${this.own[side]}
      .unit=${this.#unit}
      .least=${least}
      .most=${most}
      label=${label}
      @length-change=${(event: CustomEvent<{ value: Length }>) => {
        this.own = { ...this.own, [side]: ticks(event.detail.value) };
      }}
    ></trimwell-length>`;
    return html`<div class="own" role="group" aria-label="Another size">
      ${field('Width of the card', 'width')} × ${field('Height of the card', 'height')}
      <span class="quiet">wide × high</span>
    </div>`;
  }

  #folds(): TemplateResult {
    const [size, unit] = [this.#size, this.#unit];
    const possible = foldsOf(size, unit);
    const refused = (fold: Fold): string | null => {
      if (possible.includes(fold)) return null;
      const flat = flatCardBase({ ...size, fold });
      return tooLongText(ticks(Math.max(flat.width, flat.height)), unit);
    };
    const choose = (fold: Fold): void => {
      this.wanted = fold;
    };
    return this.#line('Folds', 'fold', FOLDS, this.#fold, foldText, choose, refused);
  }

  #layoutChoice({ layout, drawing, width }: Picture): TemplateResult {
    return html`<label class="layout"
      ><input class="unseen" type="radio" name="layout" aria-label=${`${layout.name}: ${layout.about}`} .checked=${layout.id === this.layout} @change=${() => {
        this.layout = layout.id;
      }} /><span class="picture" aria-hidden="true"><trimwell-drawing .drawing=${drawing} ${inStyle({ width: `${Math.round(width)}px` })}></trimwell-drawing></span
      ><span aria-hidden="true">${layout.name}</span></label
    >`;
  }

  #footer(): TemplateResult {
    const layout = BEGINNINGS.find(({ id }) => id === this.layout);
    return html`<footer>
      <p><strong role="status">${wishText(layout?.name ?? '', this.#size, this.#unit, this.#fold)}</strong><br /><span class="quiet"><span class="about">${layout?.about}</span> ${KEPT}</span></p>
      <button class="lay" @click=${this.#lay}>Lay it out</button>
    </footer>`;
  }

  readonly #lay = (): void => {
    // An id of its own, so that a second card of the same layout does not take the place of the first on the shelf.
    const sketch = this.#begin(this.layout, `${this.layout}-${Date.now().toString(36)}`);
    const begin: SketchBegin = new CustomEvent('sketch-begin', { detail: { sketch }, bubbles: true, composed: true });
    this.dispatchEvent(begin);
  };
}
