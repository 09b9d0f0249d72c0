import { unit } from '@trimwell/handout';
import { batchRecipe, counted, type MixPlan, mixPlan, type Sketch } from '@trimwell/sketch';
import { html, nothing, svg, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import type { SessionChange } from '../../session/session.js';
import { select, toggleSelect } from '../../state/commands.js';
import { cardText, differText, mixes, mixReasons, roleText } from '../batch-messages.js';
import { inStyle } from '../in-style.js';
import { watchPhotos } from '../photos/photo-watch.js';
import { SessionElement } from '../session-element.js';
import { type BatchPicture, type CardPart, drawBatch } from './batch-picture.js';
import { batchStyles } from './batch-styles.js';
import { drawingStyles } from './drawing-styles.js';
import { tableStyles } from './table-styles.js';

/** Cards that are laid out at most; the rest is only counted. */
const MOST_LAID = 60;
/** Area of a card on the table in square pixels: up to two dozen, and of more. */
const ROOMY = 92 * 118;
const DENSE = 64 * 84;

interface Laid {
  readonly sketch: Sketch;
  readonly plan: MixPlan;
  readonly picture: BatchPicture;
}

/**
 * The batch: every card small, each piece in the paper that it gets on that card, and in words why cards are alike. Drawn
 * only when laid out and at rest, so that a drag is not slowed down.
 * @fires lay-out - The cards are to be put away.
 */
export class BatchElement extends SessionElement {
  static override readonly styles = [tableStyles, drawingStyles, batchStyles];

  /** Whether the cards are laid out; nothing is drawn before. */
  @property({ type: Boolean, reflect: true }) laid = false;
  #laid: Laid | null = null;
  #lit: ReadonlySet<Element> = new Set();

  constructor() {
    super();
    watchPhotos(this, () => {
      this.#laid = null;
      this.requestUpdate();
    });
  }

  protected override concerns(change: SessionChange): boolean {
    return this.laid && (change.plan || change.sketch || change.selection || change.ended);
  }

  protected override get followsPointing(): boolean {
    return true;
  }

  /** The cards as they are at rest; during a drag, and until the plan has followed, those from before. */
  #current(): Laid | null {
    const { plan, gesture } = this.session;
    const { sketch } = this.session.state;
    const known = this.#laid;
    if (gesture !== null || plan.stale || !plan.batch) return known;
    const mix = mixPlan(batchRecipe(sketch), plan.batch.cards);
    if (known && known.sketch === sketch && known.plan === mix) return known;
    this.#laid = { sketch, plan: mix, picture: drawBatch(sketch, mix, MOST_LAID) };
    return this.#laid;
  }

  protected override render() {
    const shows = this.laid && mixes(this.session.state.sketch);
    this.toggleAttribute('empty', !shows);
    if (!shows) return nothing;
    const laid = this.#current();
    const fresh = laid?.sketch === this.session.state.sketch;
    return html`<header>
        <h2>The batch</h2>
        ${laid ? html`<p class="differ">${differText(laid.plan)}</p>` : nothing}
        <button class="act" @click=${this.#putAway}>Put away</button>
      </header>
      ${laid ? this.#cards(laid, fresh) : nothing}`;
  }

  #cards({ sketch, plan, picture }: Laid, fresh: boolean): TemplateResult {
    const count = picture.first.length;
    const { width, height } = sketch.card;
    const wide = Math.round(Math.sqrt(((count * picture.faces.length > 24 ? DENSE : ROOMY) * width) / height));
    const more = plan.cards - count;
    return html`<div class="words">
        ${mixReasons(sketch, plan).map((reason) => html`<p class="reason">${reason}</p>`)}
        ${plan.roles.map((role) => html`<p class="quiet">${roleText(sketch, role)}.</p>`)}
      </div>
      <svg class="templates" aria-hidden="true">${picture.templates}</svg>
      <ol
        class=${fresh ? '' : 'stale'}
        ${inStyle({ '--card': `${wide}px` })}
        @pointerover=${this.#over}
        @pointerleave=${this.#leave}
        @click=${this.#pick}
      >
        ${guard([sketch, plan, picture], () => picture.first.map((_, card) => this.#card(sketch, plan, picture, card)))}
      </ol>
      ${more > 0 ? html`<p class="quiet">and ${counted(more, 'card')} more</p>` : nothing}`;
  }

  #card(sketch: Sketch, plan: MixPlan, { faces, first }: BatchPicture, card: number): TemplateResult {
    const clashes = plan.clashes.some((clash) => clash.card === card);
    const like = first[card] ?? card;
    const part = ({ piece, template }: CardPart) => svg`<use href="#${template}" data-piece=${piece ?? nothing}></use>`;
    return html`<li>
      <div role="img" aria-label=${cardText(sketch, plan, card)}>
        ${faces.map(
          ({ viewBox, cards }) =>
            html`<svg viewBox=${viewBox.map(unit).join(' ')} ${inStyle({ 'aspect-ratio': `${viewBox[2]} / ${viewBox[3]}` })}>${cards[card]?.map(part)}</svg>`,
        )}
      </div>
      <p aria-hidden="true"><b>${card + 1}</b>${like === card ? nothing : html` <span class="quiet">as ${like + 1}</span>`}${clashes ? html` <span class="clash">same paper</span>` : nothing}</p>
    </li>`;
  }

  protected override updated(): void {
    this.#light();
  }

  /**
   * Lights up what is pointed at, or else what is selected, in every card. Done at the elements themselves: laying sixty
   * cards out again at every turn of the pointer would be felt.
   */
  #light(): void {
    const { selection } = this.session.state;
    const wanted = this.pointing.piece === null ? selection : [this.pointing.piece];
    const names = wanted.map((piece) => `use[data-piece="${piece}"]`);
    const lit = new Set<Element>(names.length === 0 ? [] : this.renderRoot.querySelectorAll(names.join()));
    for (const part of this.#lit) if (!lit.has(part)) part.classList.remove('lit');
    for (const part of lit) part.classList.add('lit');
    this.#lit = lit;
  }

  #pieceAt(event: Event): string | null {
    const [target] = event.composedPath();
    return target instanceof SVGElement ? (target.dataset['piece'] ?? null) : null;
  }

  readonly #over = (event: Event): void => {
    this.pointing.piece = this.#pieceAt(event);
  };

  readonly #leave = (): void => {
    this.pointing.piece = null;
  };

  readonly #pick = (event: MouseEvent): void => {
    const piece = this.#pieceAt(event);
    const more = event.shiftKey || event.ctrlKey || event.metaKey || this.pointing.gathering;
    if (piece !== null) (more ? toggleSelect : select)(piece)(this.session.state, this.session.dispatch, Date.now());
  };

  readonly #putAway = (): void => {
    this.dispatchEvent(new CustomEvent('lay-out', { bubbles: true, composed: true }));
  };
}
