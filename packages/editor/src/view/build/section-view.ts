import { formatLength, ticks } from '@trimwell/geometry';
import { rulerStep } from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { WatchCard } from '../watch-card.js';
import { buildStyles } from './build-styles.js';
import { BUILD_WORDS as WORDS } from './build-words.js';
import { cardSection, type SectionLine, usualLine } from './card-section.js';
import { sectionPicture, sectionScale, sectionText } from './section-picture.js';
import { lineDrawing } from './step-drawing.js';

/** On a page narrower than this the tray has one column, in pixels. */
const NARROW = 760;

/** The height of the closed card: cut through along a line that can be moved, as a drawing and in words. */
export class CardSectionElement extends SessionElement {
  static override readonly styles = [tableStyles, buildStyles];

  /** Where it is cut through; null for the highest spot. */
  @state() private line: SectionLine | null = null;
  @state() private along: SectionLine['along'] = 'x';
  readonly #watch = new WatchCard(this);

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('resize', this.#resized);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('resize', this.#resized);
  }

  readonly #resized = (): void => this.requestUpdate();

  protected override concerns(): boolean {
    return false;
  }

  protected override get followsPointing(): boolean {
    return true;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this.#watch.card;
    if (!view) return nothing;
    const { sketch } = view;
    const most = this.along === 'x' ? sketch.card.height : sketch.card.width;
    // What lay on the card that was here before may lie off this one.
    const line = this.line && this.line.at <= most ? this.line : usualLine(view, this.along);
    const step = rulerStep(sketch.unit);
    const width = innerWidth < NARROW ? 360 : 620;
    const section = cardSection(view, line);
    const { times } = sectionScale(section, width);
    const from = line.along === 'x' ? 'top' : 'left edge';
    const at = formatLength(ticks(Math.round(line.at)), { unit: sketch.unit });
    return html`<section class="section" aria-labelledby="section">
      <h3 id="section">${WORDS.section}</h3>
      <div class="line">
        ${(['x', 'y'] as const).map(
          (along) =>
            html`<label><input type="radio" name="along" .checked=${along === line.along} @change=${() => this.#turn(along)} />${along === 'x' ? WORDS.sectionAcross : WORDS.sectionDown}</label>`,
        )}
        <label
          >${at} from the ${from}
          <input
            type="range"
            min="0"
            max=${most}
            step=${step}
            .value=${String(Math.round(line.at))}
            aria-label=${WORDS.place}
            aria-valuetext="${at} from the ${from}"
            @input=${(event: Event) => this.#move(event, line.along)}
          /></label>
        <button class="act" aria-disabled=${this.line === null} @click=${this.#toHighest}>${WORDS.highest}</button>
      </div>
      <p class="quiet">${times === 1 ? WORDS.trueHeights : WORDS.heights(times)}</p>
      <div class="cut">
        ${sectionPicture(sketch, section, width, this.pointing.piece, (piece) => {
          this.pointing.piece = piece;
        })}
        <trimwell-step-drawing aria-hidden="true" .drawing=${lineDrawing(view, line)} .lit=${this.pointing.piece === null ? [] : [this.pointing.piece]}></trimwell-step-drawing>
      </div>
      <p class="unseen">${sectionText(sketch, section)}</p>
    </section>`;
  }

  #turn(along: SectionLine['along']): void {
    this.along = along;
    this.line = null;
  }

  #move(event: Event, along: SectionLine['along']): void {
    if (event.target instanceof HTMLInputElement) this.line = { along, at: event.target.valueAsNumber };
  }

  readonly #toHighest = (): void => {
    this.line = null;
  };
}
