import { type Length, TICKS_PER_INCH } from '@trimwell/geometry';
import { printInks } from '@trimwell/handout';
import { type Look, PATTERNS, type Paper } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { changePaper, paperToChange } from '../../state/paper-edits.js';
import { inStyle } from '../in-style.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { COLOUR_SCHEMES, type ColourScheme } from './colour-schemes.js';
import { PHOTO_STANDS_IN, UPWARD_PRINT } from './papers-messages.js';
import { papersStyles } from './papers-styles.js';
import { drawCardPart, drawSwatch } from './swatch.js';

/** What is shown at true size: inches of the paper, and of the card beside it. */
const SHOWN = { width: 2.5, height: 2.1 };
/** Repeats of a print that its small swatch shows. */
const REPEATS = { across: 1.7, down: 1.15 };
/** Prints that look wrong upside down or lying. */
const UPWARD: ReadonlySet<Look['pattern']> = new Set([
  'heart',
  'sprig',
  'leaf',
  'blossom',
  'shell',
  'lettering',
  'music',
]);
const USUAL_INK = '#7c8a80';

function isAlready({ ground, inks }: Look, scheme: ColourScheme): boolean {
  return ground === scheme.ground && inks.join() === scheme.inks.join();
}

/** How one paper looks: its print, its colours, their repeat; at true size beside a part of the card. */
export class PaperLookElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      .true {
        display: flex;
        gap: 10px;
        margin: 0 0 4px;
      }
      .frame {
        flex: 0 1 ${SHOWN.width}in;
        min-width: 0;
        height: ${SHOWN.height}in;
        overflow: hidden;
        background: var(--shelf);
        box-shadow: inset 0 0 0 1px rgb(29 36 35 / 0.2);
      }
      .frame trimwell-drawing {
        width: ${SHOWN.width}in;
        height: ${SHOWN.height}in;
      }
      figure {
        margin: 0 0 14px;
      }
      fieldset {
        min-width: 0;
        margin: 0 0 12px;
        padding: 0;
        border: 0;
      }
      legend {
        padding: 0;
        margin-bottom: 5px;
        color: var(--muted);
        font-size: 12.5px;
      }
      .prints {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(66px, 1fr));
        gap: 8px 7px;
      }
      .print {
        position: relative;
        display: block;
        font-size: 12px;
        line-height: 1.25;
        cursor: pointer;
      }
      .print input {
        position: absolute;
        inset: 0;
        width: 100%;
        height: 100%;
        margin: 0;
        opacity: 0;
        cursor: pointer;
      }
      .print trimwell-drawing {
        height: 42px;
        margin-bottom: 2px;
        overflow: hidden;
        box-shadow: 0 0 0 1px rgb(29 36 35 / 0.22);
      }
      .print:has(:checked) {
        font-weight: 600;
      }
      .print:has(:checked) trimwell-drawing {
        box-shadow: 0 0 0 2px var(--slip), 0 0 0 4px var(--accent);
      }
      .print:has(:focus-visible) {
        outline: 2px solid var(--focus);
        outline-offset: 6px;
        border-radius: 2px;
      }
      .colours {
        display: flex;
        flex-wrap: wrap;
        gap: 6px 16px;
        margin-bottom: 8px;
      }
      .colour {
        display: flex;
        align-items: center;
        gap: 7px;
        font-size: 13px;
      }
      input[type='color'] {
        width: 38px;
        height: 28px;
        padding: 0;
        border: 1px solid var(--line);
        cursor: pointer;
      }
      .schemes {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
      }
      .scheme {
        display: grid;
        grid-template-columns: 24px repeat(4, 8px);
        height: 26px;
        min-height: 26px;
        padding: 0;
        border: 1px solid var(--line);
        border-radius: 0;
        overflow: hidden;
      }
      .scheme[aria-pressed='true'] {
        box-shadow: 0 0 0 2px var(--slip), 0 0 0 4px var(--accent);
      }
      .scheme span {
        height: 100%;
      }
      .repeat {
        display: flex;
        align-items: baseline;
        gap: 8px;
      }
    `,
  ];

  /** The id of the paper. */
  @property({ attribute: false }) paper = '';
  #gestures = 0;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document;
  }

  protected override render() {
    const paper = paperToChange(this.session.state, this.paper);
    if (!paper) return nothing;
    const { look } = paper;
    return html`<section class="slip" aria-label="How ${paper.name} looks">
      ${this.#preview(paper)}
      <trimwell-sheet-photo .session=${this.session} .pointing=${this.pointing} .paper=${this.paper}></trimwell-sheet-photo>
      <fieldset>
        <legend>${look.photo === undefined ? 'Print, drawn for you' : PHOTO_STANDS_IN}</legend>
        <div class="prints">${PATTERNS.map((pattern) => this.#print(paper, pattern))}</div>
      </fieldset>
      ${UPWARD.has(look.pattern) && !paper.directional ? html`<p class="small quiet">${UPWARD_PRINT} <button class="act" @click=${() => this.#run({ directional: true })}>Mark it</button></p>` : nothing}
      <fieldset>
        <legend>Colours</legend>
        <div class="colours">
          ${this.#colour('ground', look.ground, (ground) => ({ ...look, ground }))}
          ${Array.from({ length: printInks(look.pattern) }, (_, ink) => this.#ink(look, ink))}
        </div>
        <div class="schemes">${COLOUR_SCHEMES.map((scheme) => this.#scheme(look, scheme))}</div>
      </fieldset>
      ${look.pattern === 'plain' ? nothing : this.#repeat(look)}
    </section>`;
  }

  #run(changes: Parameters<typeof changePaper>[1], gesture?: string): void {
    changePaper(this.paper, changes, gesture)(this.session.state, this.session.dispatch, Date.now());
  }

  #preview(paper: Paper): TemplateResult {
    const [width, height] = [SHOWN.width * TICKS_PER_INCH, SHOWN.height * TICKS_PER_INCH];
    const { sketch } = this.session.state;
    return html`<figure>
      <div class="true">
        <div class="frame" role="img" aria-label="${paper.name} at true size"><trimwell-drawing .drawing=${drawSwatch(paper, width, height)}></trimwell-drawing></div>
        <div class="frame" role="img" aria-label="The card at true size"><trimwell-drawing .drawing=${drawCardPart(sketch, paper.id, width, height)}></trimwell-drawing></div>
      </div>
      <figcaption class="quiet small">At true size: the paper, and a part of the card beside it</figcaption>
    </figure>`;
  }

  #print(paper: Paper, pattern: Look['pattern']): TemplateResult {
    const { look } = paper;
    const { photo: _photo, ...printed } = look;
    const drawing = drawSwatch(
      { ...paper, look: { ...printed, pattern } },
      look.repeat * REPEATS.across,
      look.repeat * REPEATS.down,
    );
    return html`<label class="print"
      ><input type="radio" name="print" value=${pattern} .checked=${pattern === look.pattern} @change=${() => this.#run({ look: { ...look, pattern } })} /><trimwell-drawing aria-hidden="true" .drawing=${drawing}></trimwell-drawing>${pattern}</label
    >`;
  }

  /** While the colour box is open every colour is shown at once; closing it makes one step of the history. */
  #colour(label: string, value: string, change: (colour: string) => Look): TemplateResult {
    const pick = (event: Event): void => {
      if (event.target instanceof HTMLInputElement)
        this.#run({ look: change(event.target.value.toLowerCase()) }, `colour-${this.paper}-${this.#gestures}`);
    };
    const settle = (): void => {
      this.session.settle(`colour-${this.paper}-${this.#gestures}`);
      this.#gestures += 1;
    };
    return html`<label class="colour"><input type="color" .value=${value} @input=${pick} @change=${settle} @blur=${settle} />${label}</label>`;
  }

  #ink(look: Look, ink: number): TemplateResult {
    const { inks } = look;
    const value = inks[Math.min(ink, inks.length - 1)] ?? USUAL_INK;
    const change = (colour: string): Look => {
      const all = Array.from({ length: Math.max(inks.length, ink + 1) }, (_, at) => inks[at] ?? value);
      return { ...look, inks: all.map((one, at) => (at === ink ? colour : one)) };
    };
    return this.#colour(`ink ${ink + 1}`, value, change);
  }

  #scheme(look: Look, scheme: ColourScheme): TemplateResult {
    const { name, ground, inks } = scheme;
    const strip = (colour: string) => html`<span ${inStyle({ background: colour })}></span>`;
    return html`<button class="scheme" title=${name} aria-label="Colours: ${name}" aria-pressed=${isAlready(look, scheme)} @click=${() => this.#run({ look: { ...look, ground, inks } })}>${strip(ground)}${inks.map(strip)}</button>`;
  }

  #repeat(look: Look): TemplateResult {
    return html`<div class="repeat">
      <span class="quiet small">repeats every</span>
      <trimwell-length
        .value=${look.repeat}
        .unit=${this.session.state.sketch.unit}
        .least=${640}
        label="Repeat of the print"
        @length-change=${(event: CustomEvent<{ value: Length }>) => this.#run({ look: { ...look, repeat: event.detail.value } })}
      ></trimwell-length>
    </div>`;
  }
}
