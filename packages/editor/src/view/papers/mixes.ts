import { type Mix, MOST_IN_MIX, type Paper } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { addMix, mixToChange, moveInMix, nameMix, putIntoMix, removeMix, takeOutOfMix } from '../../state/mix-edits.js';
import { isUsed, sourceUses } from '../../state/paper-uses.js';
import type { Command } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { mixText, usesText } from './papers-messages.js';
import { papersStyles } from './papers-styles.js';
import type { RemoveFormElement } from './remove-form.js';
import { drawSwatch } from './swatch.js';

/** Side of the part of a sheet that a mix shows of each of its papers, in ticks: 1.5 in. */
const SHOWN = 1.5 * 16256;

/** The mixes of a sketch: papers that take turns in the same pieces from card to card. */
export class MixesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 2px 14px;
        margin-bottom: 8px;
      }
      header h3 {
        margin: 0;
      }
      .mixes {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 340px), 1fr));
        gap: 14px;
      }
      .name {
        width: 100%;
        margin-bottom: 6px;
        font: 500 16px / 1.3 var(--heading-font);
      }
      ol {
        margin: 8px 0 6px;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 34px minmax(0, 1fr) auto;
        align-items: center;
        gap: 10px;
        padding: 2px 0;
      }
      li trimwell-drawing {
        width: 34px;
        height: 26px;
        overflow: hidden;
        box-shadow: 0 0 0 1px rgb(29 36 35 / 0.22);
      }
      li span {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      li button {
        min-width: 28px;
      }
    `,
  ];

  /** The mix that is to be taken away although pieces are cut from it. */
  @state() private leaving: string | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document;
  }

  #do(command: Command): boolean {
    return command(this.session.state, this.session.dispatch, Date.now());
  }

  protected override render() {
    const { state } = this.session;
    const { mixes } = state.sketch;
    return html`<header>
        <h3>Mixes</h3>
        <span class="quiet">Papers that take turns from card to card</span>
        <button class="act" ?disabled=${!addMix()(state)} @click=${this.#add}>Make a mix</button>
      </header>
      <div class="mixes">${mixes.map(({ id }) => this.#mix(mixToChange(state, id)))}</div>`;
  }

  #mix(mix: Mix | null): TemplateResult | typeof nothing {
    if (!mix) return nothing;
    const { state } = this.session;
    const { papers } = state.sketch;
    const others = papers.filter(({ id }) => !mix.papers.includes(id));
    const cut = state.sketch.pieces.filter(({ from }) => from === mix.id);
    return html`<section class="slip" aria-label="Mix ${mix.name}" data-mix=${mix.id}>
      <input class="name" aria-label="Name of the mix" maxlength="80" .value=${mix.name} @change=${(event: Event) => this.#name(event, mix)} />
      <p class="small quiet">${mixText(
        mix.papers.length,
        cut.map(({ name }) => name),
      )}</p>
      <ol aria-label="Papers of ${mix.name}, in turn">
        ${mix.papers.map((id, at) => this.#paper(mix, papers.find((paper) => paper.id === id) ?? null, at))}
      </ol>
      <div class="acts">
        ${
          others.length === 0 || mix.papers.length >= MOST_IN_MIX
            ? nothing
            : html`<select aria-label="Put a paper into ${mix.name}" @change=${(event: Event) => this.#put(event, mix)}>
              <option value="">Put in another paper…</option>
              ${others.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}
            </select>`
        }
        <button @click=${() => this.#remove(mix)}>Take the mix away</button>
      </div>
      ${this.leaving === mix.id ? this.#leaving(mix) : nothing}
    </section>`;
  }

  #paper(mix: Mix, paper: Paper | null, at: number): TemplateResult | typeof nothing {
    if (!paper) return nothing;
    const move = (by: number, word: string): TemplateResult =>
      html`<button aria-label="${paper.name}: ${word}" title=${word} data-by=${by} ?disabled=${at + by < 0 || at + by >= mix.papers.length} @click=${() => this.#move(mix, paper.id, by)}>${by < 0 ? '↑' : '↓'}</button>`;
    return html`<li data-paper=${paper.id}>
      <trimwell-drawing aria-hidden="true" .drawing=${drawSwatch(paper, SHOWN, SHOWN * (26 / 34))}></trimwell-drawing>
      <span title=${paper.name}>${paper.name}</span>
      <div>
        ${move(-1, 'earlier')}${move(1, 'later')}<button aria-label="${paper.name}: take out" ?disabled=${mix.papers.length === 1} @click=${() => this.#do(takeOutOfMix(mix.id, paper.id))}>take out</button>
      </div>
    </li>`;
  }

  readonly #add = async (): Promise<void> => {
    const before = new Set(this.session.state.sketch.mixes.map(({ id }) => id));
    if (!this.#do(addMix())) return;
    await this.updateComplete;
    const fresh = this.session.state.sketch.mixes.find(({ id }) => !before.has(id));
    const box = this.renderRoot.querySelector<HTMLInputElement>(`[data-mix="${fresh?.id ?? ''}"] .name`);
    box?.focus();
    box?.select();
  };

  #name(event: Event, mix: Mix): void {
    if (event.target instanceof HTMLInputElement && !this.#do(nameMix(mix.id, event.target.value))) {
      event.target.value = mix.name;
    }
  }

  #put(event: Event, mix: Mix): void {
    if (!(event.target instanceof HTMLSelectElement)) return;
    this.#do(putIntoMix(mix.id, event.target.value));
    event.target.value = '';
  }

  /** The button that was pressed keeps the focus in the paper's new place, or its neighbour when it is used up. */
  async #move(mix: Mix, paper: string, by: number): Promise<void> {
    this.#do(moveInMix(mix.id, paper, by));
    await this.updateComplete;
    const buttons = [
      ...this.renderRoot.querySelectorAll<HTMLButtonElement>(
        `[data-mix="${mix.id}"] [data-paper="${paper}"] [data-by]`,
      ),
    ];
    const same = buttons.find((button) => button.dataset['by'] === String(by) && !button.disabled);
    (same ?? buttons.find((button) => !button.disabled))?.focus();
  }

  async #remove(mix: Mix): Promise<void> {
    if (isUsed(sourceUses(this.session.state, mix.id))) {
      this.leaving = mix.id;
      await this.updateComplete;
      this.renderRoot.querySelector<RemoveFormElement>('trimwell-remove-form')?.focus();
      return;
    }
    this.#do(removeMix(mix.id));
    await this.#toHeading();
  }

  async #toHeading(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('header button')?.focus();
  }

  #leaving(mix: Mix): TemplateResult {
    const { state } = this.session;
    const { papers, mixes } = state.sketch;
    const instead = [...mix.papers, ...papers.map(({ id }) => id)];
    const sources = [...papers, ...mixes].filter(({ id }) => id !== mix.id);
    const choices = [...sources].sort((a, b) => placeIn(instead, a.id) - placeIn(instead, b.id));
    return html`<trimwell-remove-form
      .says=${usesText(mix.name, sourceUses(state, mix.id))}
      .choices=${choices}
      @take-away=${async (event: CustomEvent<{ instead: string }>) => {
        this.leaving = null;
        this.#do(removeMix(mix.id, event.detail.instead));
        await this.#toHeading();
      }}
      @leave=${() => {
        this.leaving = null;
      }}
    ></trimwell-remove-form>`;
  }
}

function placeIn(order: readonly string[], id: string): number {
  const at = order.indexOf(id);
  return at < 0 ? order.length : at;
}
