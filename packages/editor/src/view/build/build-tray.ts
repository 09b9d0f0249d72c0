import { BLADE_CAUTION } from '@trimwell/handout';
import { html, type PropertyValues, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { CardView } from '../../session/card-watch.js';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { thickText } from '../stack/stack-words.js';
import { tableStyles } from '../table/table-styles.js';
import { WatchCard } from '../watch-card.js';
import { buildStyles } from './build-styles.js';
import { stepText, BUILD_WORDS as WORDS } from './build-words.js';
import { stepDrawing } from './step-drawing.js';

/** How long a step is shown while they are played, in milliseconds: at least, and for each of its words. */
const STEP_TIME = { least: 1_600, word: 240 };

/** How the card is built: its steps from the base up, one after the other; where it is thick; and its figures. */
export class BuildElement extends SessionElement {
  static override readonly styles = [tableStyles, buildStyles];

  /** The step that is shown, from 0. */
  @state() private at = 0;
  @state() private playing = false;
  readonly #watch = new WatchCard(this);
  #timer: ReturnType<typeof setTimeout> | null = null;
  #refocus = false;

  protected override concerns(change: SessionChange): boolean {
    return change.opened;
  }

  protected override sessionChanged(change: SessionChange): void {
    // Another sketch is built from its own beginning.
    this.#hold();
    this.at = 0;
    super.sessionChanged(change);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#hold();
  }

  protected override render(): TemplateResult {
    const { view, failure } = this.#watch.card;
    if (!view)
      return failure === null
        ? html`<p class="quiet" role="status">${WORDS.looking}</p>`
        : html`<p role="alert">${WORDS.none}: ${failure}</p>`;
    const { session, pointing } = this;
    return html`<div class="parts">
      <section aria-labelledby="shown">${this.#shown(view)}</section>
      <section aria-labelledby="steps">${this.#list(view)}</section>
      <trimwell-card-section class="wide" .session=${session} .pointing=${pointing}></trimwell-card-section>
      <section class="wide" aria-labelledby="facts">
        <h3 id="facts">${WORDS.facts}</h3>
        <trimwell-card-facts .session=${session} .pointing=${pointing}></trimwell-card-facts>
      </section>
    </div>`;
  }

  #step({ sight }: CardView): number {
    const last = sight.steps.length - 1;
    return Math.min(this.at, last);
  }

  #shown(view: CardView): TemplateResult {
    const step = this.#step(view);
    const last = view.sight.steps.length - 1;
    const piece = view.sight.steps[step]?.piece ?? '';
    return html`<h3 id="shown" class="unseen">${WORDS.stepOf(step + 1, last + 1)}</h3>
      <div class="picture">
        <trimwell-step-drawing .drawing=${stepDrawing(view, step)} .lit=${[piece]}></trimwell-step-drawing>
      </div>
      <div class="turns" role="group" aria-label=${WORDS.steps}>
        <button aria-disabled=${step === 0} @click=${() => this.#go(step - 1)}>${WORDS.back}</button>
        <button aria-disabled=${step === last} @click=${() => this.#go(step + 1)}>${WORDS.on}</button>
        <button class="play" @click=${this.#playOrHold}>${this.playing ? WORDS.pause : WORDS.play}</button>
        <span class="count">${WORDS.stepOf(step + 1, last + 1)}</span>
      </div>
      <p class="now" role="status">${stepText(view, step)}</p>`;
  }

  #list(view: CardView): TemplateResult {
    const step = this.#step(view);
    const { unit } = view.sketch;
    return html`<h3 id="steps">${WORDS.steps}<span class="quiet small"> ${WORDS.heightsOf}</span></h3>
      <ol @keydown=${this.#key}>
        ${view.sight.steps.map(
          ({ height, piece }, index) =>
            html`<li>
              <button
                tabindex=${index === step ? 0 : -1}
                aria-current=${index === step ? 'step' : 'false'}
                @click=${() => this.#go(index)}
                @pointerenter=${() => this.#point(piece)}
                @pointerleave=${() => this.#point(null)}
              ><span>${index + 1}</span><span>${stepText(view, index)}</span><span class="high">${thickText(height, unit)}</span></button>
            </li>`,
        )}
      </ol>
      <p class="caution">${BLADE_CAUTION} ${WORDS.glue}</p>`;
  }

  #point(piece: string | null): void {
    this.pointing.piece = piece;
  }

  /** Shows a step; what plays is held by that. */
  #go(step: number): void {
    const { view } = this.#watch.card;
    if (!view) return;
    this.#hold();
    this.at = Math.max(0, Math.min(step, view.sight.steps.length - 1));
  }

  readonly #key = (event: KeyboardEvent): void => {
    const { view } = this.#watch.card;
    if (!view || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = this.#step(view);
    const to = { ArrowDown: step + 1, ArrowUp: step - 1, Home: 0, End: view.sight.steps.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.#refocus = true;
    this.#go(to);
  };

  readonly #playOrHold = (): void => {
    const { view } = this.#watch.card;
    if (!view) return;
    if (this.playing) {
      this.#hold();
      return;
    }
    // From the end it begins anew.
    if (this.#step(view) === view.sight.steps.length - 1) this.at = 0;
    this.playing = true;
    this.#playSoon(view);
  };

  /** The next step comes when this one has been read. */
  #playSoon(view: CardView): void {
    const words = stepText(view, this.#step(view)).split(' ').length;
    this.#timer = setTimeout(this.#playOn, Math.max(STEP_TIME.least, words * STEP_TIME.word));
  }

  readonly #playOn = (): void => {
    const { view } = this.#watch.card;
    if (!view || !this.playing) {
      this.#hold();
      return;
    }
    const next = this.#step(view) + 1;
    this.at = Math.min(next, view.sight.steps.length - 1);
    if (next >= view.sight.steps.length - 1) this.#hold();
    else this.#playSoon(view);
  };

  #hold(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.playing = false;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (!changed.has('at')) return;
    const current = this.renderRoot.querySelector<HTMLElement>('[aria-current="step"]');
    const list = current?.closest('ol');
    // Only the list itself scrolls: the picture stays where it is.
    if (current && list) {
      const top = current.offsetTop - list.offsetTop;
      if (top < list.scrollTop) list.scrollTop = top;
      else if (top + current.offsetHeight > list.scrollTop + list.clientHeight)
        list.scrollTop = top + current.offsetHeight - list.clientHeight;
    }
    if (this.#refocus) current?.focus({ preventScroll: true });
    this.#refocus = false;
  }
}
