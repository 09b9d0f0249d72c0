import type { LengthStyle } from '@trimwell/geometry';
import { writeSvg } from '@trimwell/handout';
import { css, html, nothing, type TemplateResult } from 'lit';
import { rememberPost } from '../../keeping/post-choice.js';
import { saveFile } from '../../session/save-file.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { trayWish } from '../trays/tray-names.js';
import { WatchCard } from '../watch-card.js';
import { envelopeDrawing } from './envelope-drawing.js';
import {
  closedText,
  envelopeText,
  FACT_WORDS,
  foldText,
  letterText,
  linerText,
  paperEnvelopeText,
  postedText,
  sourceText,
  thicknessParts,
  weightText,
} from './facts-words.js';

/** The card in figures: how large, thick and heavy it is, its fold, its envelope, and the letter that it goes as. */
export class CardFactsElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: 6px 18px;
        align-items: baseline;
        margin: 0;
      }
      dt {
        color: var(--muted);
      }
      dd {
        margin: 0;
        min-width: 0;
      }
      dt:has(+ .paper),
      .paper {
        align-self: center;
      }
      .paper {
        display: flex;
        flex-wrap: wrap;
        gap: 8px 16px;
        align-items: center;
      }
      trimwell-step-drawing {
        width: 96px;
        height: 96px;
        padding: 4px;
        background: #fffdf7;
      }
      ul {
        margin: 2px 0 6px;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 2px 0;
      }
      .small {
        font-size: 12px;
      }
      @media (max-width: 480px) {
        dl {
          grid-template-columns: minmax(0, 1fr);
          gap: 0;
        }
        dd {
          padding-bottom: 8px;
        }
      }
    `,
  ];

  readonly #watch = new WatchCard(this);

  protected override concerns(): boolean {
    return false;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this.#watch.card;
    if (!view) return nothing;
    const style: LengthStyle = { unit: view.sketch.unit };
    const { cut } = view.sight.envelopes;
    const liner = linerText(view, style);
    const { heavy, dark, flat } = view.sight.fold;
    return html`<dl>
      <dt>${view.sketch.card.fold === 'none' ? FACT_WORDS.flat : FACT_WORDS.closed}</dt>
      <dd>${closedText(view, style)}</dd>
      <dt>${FACT_WORDS.thick}</dt>
      <dd>${thicknessParts(view)}</dd>
      <dt>${FACT_WORDS.weight}</dt>
      <dd>${weightText(view)}</dd>
      <dt>${FACT_WORDS.fold}</dt>
      <dd>${foldText(view, style)} ${view.sight.fold.grain === 'unknown' && flat.score ? html`<button class="act" @click=${this.#stateGrain}>${FACT_WORDS.stateGrain}</button>` : nothing}${flat.score && (heavy || dark) ? html`<br />${FACT_WORDS.heavy}` : nothing}</dd>
      ${liner === null ? nothing : html`<dt>${FACT_WORDS.liner}</dt><dd>${liner}</dd>`}
      <dt>${FACT_WORDS.envelope}</dt>
      <dd>${envelopeText(view, style)}</dd>
      <dt>${FACT_WORDS.paperEnvelope}</dt>
      <dd class="paper">
        <trimwell-step-drawing aria-hidden="true" .drawing=${envelopeDrawing(cut, style)}></trimwell-step-drawing>
        <span>${paperEnvelopeText(view, style)}<br /><button class="act" @click=${this.#saveEnvelope}>${FACT_WORDS.saveEnvelope}</button></span>
      </dd>
      <dt>${FACT_WORDS.post}</dt>
      <dd>${this.#post()}</dd>
    </dl>`;
  }

  #post(): TemplateResult | typeof nothing {
    const { card } = this.#watch;
    const { view } = card;
    if (!view) return nothing;
    const { post, countries, notice } = view.sight;
    const choose = ({ target }: Event): void => {
      if (!(target instanceof HTMLSelectElement)) return;
      card.post = target.value === '' ? null : target.value;
      rememberPost(card.post);
    };
    return html`<select aria-label=${FACT_WORDS.country} @change=${choose}>
        <option value="" .selected=${card.post === null}>${FACT_WORDS.everyCountry}</option>
        ${countries.map(({ code, name }) => html`<option value=${code} .selected=${code === card.post}>${name}</option>`)}
      </select>
      <div>${postedText(view)}</div>
      <ul aria-live="polite">
        ${post.map(
          (answer) =>
            html`<li>${post.length > 1 ? `${answer.country.name}: ` : ''}${letterText(answer)} ${post.length > 1 ? nothing : html`<div class="quiet small">${sourceText(answer)}</div>`}</li>`,
        )}
      </ul>
      <div class="quiet small">${notice}</div>`;
  }

  readonly #stateGrain = (): void => {
    this.dispatchEvent(trayWish({ tray: 'papers', about: this.session.state.sketch.card.base }));
  };

  readonly #saveEnvelope = (): void => {
    const { view } = this.#watch.card;
    if (!view) return;
    const { unit } = view.sketch;
    const drawing = envelopeDrawing(view.sight.envelopes.cut, { unit });
    saveFile({ name: 'envelope.svg', type: 'image/svg+xml', content: writeSvg(drawing, { unit }) });
  };
}
