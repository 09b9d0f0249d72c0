import { counted, type Variation } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import type { Command } from '../../state/state.js';
import {
  describeVariation,
  dropEdit,
  duplicateVariation,
  moveVariation,
  removeVariation,
  renameVariation,
  takeIntoCard,
  writeVariation,
} from '../../state/variation-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { type EditWords, editWords } from './edit-words.js';

/**
 * The slip of one variation: its name, what it is for, every change that it makes, and what can be done with it.
 * @fires slip-away - The slip is to be put away.
 * @fires slip-tells - Something to be announced; `detail` is the sentence.
 */
export class VariationSlipElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        margin: 4px 0 8px -10px;
        padding: 8px 10px 6px;
        background: var(--slip);
        box-shadow: 0 2px 7px rgb(20 25 24 / 0.22);
        font-size: 13px;
      }
      label {
        display: block;
        color: var(--muted);
        font-size: 12px;
      }
      input,
      textarea {
        display: block;
        width: 100%;
        color: var(--ink);
      }
      input {
        font: 500 15px / 1.2 var(--heading-font);
      }
      textarea {
        min-height: 40px;
        padding: 3px 0;
        border: 0;
        border-bottom: 1px solid var(--line);
        background: transparent;
        font: inherit;
        font-size: 13px;
        resize: vertical;
        field-sizing: content;
      }
      .note {
        margin-top: 6px;
      }
      h3 {
        margin: 9px 0 1px;
        font: 500 14px / 1.2 var(--heading-font);
      }
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 3px 0 1px;
        border-bottom: 1px solid var(--line);
        line-height: 1.35;
        overflow-wrap: break-word;
      }
      li button {
        min-height: 24px;
        padding: 0;
        color: var(--muted);
        font-size: 12px;
      }
      .unfit {
        color: var(--accent);
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 2px;
        margin: 4px -6px 0;
      }
    `,
  ];

  /** Id of the variation. */
  @property() variation = '';

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.variations;
  }

  get #shown(): Variation | undefined {
    return this.session.document.variations.find(({ id }) => id === this.variation);
  }

  #can(command: Command): boolean {
    return command(this.session.state);
  }

  #do(command: Command, tells = ''): boolean {
    const done = command(this.session.state, this.session.dispatch, Date.now());
    if (done && tells !== '') this.dispatchEvent(new CustomEvent('slip-tells', { detail: tells }));
    return done;
  }

  protected override firstUpdated(): void {
    this.renderRoot.querySelector('input')?.focus({ preventScroll: true });
  }

  protected override render() {
    const variation = this.#shown;
    if (!variation) return nothing;
    const { id, name } = variation;
    const { document, writing } = this.session.state;
    const words = editWords(document, variation);
    const unfit = words.filter((each) => each.unfit).length;
    const place = document.variations.indexOf(variation);
    return html`<section aria-label="Variation ${name}" @keydown=${this.#key}>
      <label>name<input maxlength="80" autocomplete="off" .value=${name} @change=${this.#rename} /></label>
      <label class="note">what it is for<textarea rows="2" maxlength="400" .value=${variation.note} @change=${this.#describe}></textarea></label>
      <h3 tabindex="-1">${words.length === 0 ? 'Changes nothing yet' : `Changes`}</h3>
      ${unfit > 0 ? html`<p class="unfit">${counted(unfit, 'change')} ${unfit === 1 ? 'does' : 'do'} not fit this card any more.</p>` : nothing}
      <ol>${words.map((each) => this.#change(each))}</ol>
      <div class="acts">
        ${
          writing === id
            ? html`<span class="quiet">Changes on the card go in here.</span>`
            : html`<button class="act" @click=${this.#write}>Change it on the card</button>`
        }
        <button aria-disabled=${String(!this.#can(moveVariation(id, place - 1)))} @click=${() => this.#move(place - 1)}>Earlier</button>
        <button aria-disabled=${String(!this.#can(moveVariation(id, place + 1)))} @click=${() => this.#move(place + 1)}>Later</button>
        <button ?disabled=${!this.#can(duplicateVariation(id))} @click=${this.#duplicate}>Copy</button>
        <button ?disabled=${!this.#can(takeIntoCard(id))} @click=${() => this.#take(unfit)}>Make it part of the card</button>
        <button class="act" @click=${this.#remove}>Take away</button>
      </div>
    </section>`;
  }

  #change({ index, piece, says, unfit }: EditWords): TemplateResult {
    const point = (to: string | null) => () => {
      this.pointing.piece = to;
    };
    return html`<li class=${unfit ? 'unfit' : ''} @pointerenter=${point(piece)} @pointerleave=${point(null)}>
      ${says}${unfit ? ' (does not fit)' : ''}
      <button aria-label="Leave out: ${says}" @click=${() => this.#drop(index, says)}>leave out</button>
    </li>`;
  }

  readonly #key = (event: KeyboardEvent): void => {
    // Keys typed here are for the slip, not for the piece; undo and redo go on to the table.
    const typing =
      event.composedPath()[0] instanceof HTMLInputElement || event.composedPath()[0] instanceof HTMLTextAreaElement;
    if (typing || event.key === 'Escape') event.stopPropagation();
    if (event.key === 'Enter' && event.target instanceof HTMLInputElement) this.#rename(event);
    if (event.key === 'Escape') this.dispatchEvent(new CustomEvent('slip-away'));
  };

  readonly #rename = (event: Event): void => {
    const box = event.target;
    if (!(box instanceof HTMLInputElement)) return;
    this.#do(renameVariation(this.variation, box.value));
    box.value = this.#shown?.name ?? box.value;
  };

  readonly #describe = (event: Event): void => {
    if (event.target instanceof HTMLTextAreaElement) this.#do(describeVariation(this.variation, event.target.value));
  };

  #drop(index: number, says: string): void {
    if (!this.#do(dropEdit(this.variation, index), `Left out: ${says}.`)) return;
    void this.updateComplete.then(() => {
      const buttons = this.renderRoot.querySelectorAll<HTMLElement>('li button');
      (buttons[Math.min(index, buttons.length - 1)] ?? this.renderRoot.querySelector('h3'))?.focus();
    });
  }

  #move(to: number): void {
    const { name } = this.#shown ?? { name: '' };
    const count = this.session.document.variations.length;
    this.#do(moveVariation(this.variation, to), `${name} is number ${to + 1} of ${count} now.`);
  }

  readonly #write = (): void => {
    const name = this.#shown?.name ?? '';
    if (!this.#do(writeVariation(this.variation), `Changes to the card go into ${name} from now on.`)) return;
    this.dispatchEvent(new CustomEvent('name-way', { bubbles: true, composed: true }));
  };

  readonly #duplicate = (): void => {
    const name = this.#shown?.name ?? '';
    this.#do(duplicateVariation(this.variation), `A copy of ${name} comes after it.`);
  };

  #take(unfit: number): void {
    const name = this.#shown?.name ?? '';
    const without = unfit > 0 ? `, without ${counted(unfit, 'change')} that did not fit` : '';
    if (this.#do(takeIntoCard(this.variation), `${name} is part of the card now${without}.`))
      this.dispatchEvent(new CustomEvent('slip-away'));
  }

  readonly #remove = (): void => {
    const name = this.#shown?.name ?? '';
    if (this.#do(removeVariation(this.variation), `${name} is taken away.`))
      this.dispatchEvent(new CustomEvent('slip-away'));
  };
}
