import { css, html, nothing } from 'lit';
import { query, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import {
  addSupply,
  changeSupply,
  LONGEST,
  MOST_SUPPLIES,
  moveSupply,
  removeSupply,
} from '../../state/card-commands.js';
import type { Command } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { SAME_SUPPLY, USUAL_SUPPLIES } from './about-card-messages.js';
import { aboutCardStyles } from './about-card-styles.js';
import { listActs } from './list-acts.js';

/** Supplies besides paper: ink, adhesive, tools; each written in place, ordered, taken away; a new one below. */
export class SuppliesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    aboutCardStyles,
    css`
      li,
      form {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 2px 12px;
        align-items: baseline;
      }
      form {
        padding-top: 6px;
      }
      .problem {
        grid-column: 1 / -1;
      }
    `,
  ];

  /** True while the new supply that is written stands in the list already. */
  @state() private twice = false;
  @query('form input') private readonly box!: HTMLInputElement;

  protected override concerns(change: SessionChange): boolean {
    return change.document;
  }

  protected override render() {
    const { supplies } = this.session.document;
    const left = USUAL_SUPPLIES.filter((supply) => !supplies.includes(supply));
    return html`<section aria-labelledby="heading">
      <h3 id="heading">Further supplies</h3>
      <p class="quiet">${supplies.length === 0 ? 'None yet: ink, adhesive, tools.' : 'Besides the paper: ink, adhesive, tools.'}</p>
      <ol>
        ${supplies.map(
          (supply, index) => html`<li>
            <input
              aria-label="Supply ${index + 1}"
              maxlength=${LONGEST.supply}
              list="usual"
              autocomplete="off"
              .value=${supply}
              @change=${(event: Event) => this.#change(index, event)}
            />
            ${listActs({
              name: supply,
              index,
              count: supplies.length,
              move: (to) => this.#do(moveSupply(index, to)),
              remove: () => {
                this.#do(removeSupply(index));
                this.box?.focus();
              },
            })}
          </li>`,
        )}
      </ol>
      ${
        supplies.length >= MOST_SUPPLIES
          ? html`<p class="quiet">No more than ${MOST_SUPPLIES} supplies have room.</p>`
          : html`<form @submit=${this.#add}>
              <input
                aria-label="New supply"
                placeholder="Foam pads"
                maxlength=${LONGEST.supply}
                list="usual"
                autocomplete="off"
                aria-invalid=${this.twice}
                aria-describedby=${this.twice ? 'twice' : nothing}
                @input=${() => {
                  this.twice = false;
                }}
              /><button class="act">Add the supply</button>${this.twice ? html`<span class="problem" id="twice" role="alert">${SAME_SUPPLY}</span>` : nothing}
            </form>`
      }
      <datalist id="usual">${left.map((supply) => html`<option value=${supply}></option>`)}</datalist>
    </section>`;
  }

  /** Emptied, a line goes; what cannot stand there (twice) is put back. */
  #change(index: number, event: Event): void {
    if (!(event.target instanceof HTMLInputElement)) return;
    const supply = event.target.value.trim();
    this.#do(supply === '' ? removeSupply(index) : changeSupply(index, supply));
    event.target.value = this.session.document.supplies[index] ?? '';
  }

  readonly #add = (event: SubmitEvent): void => {
    event.preventDefault();
    const supply = this.box.value.trim();
    this.twice = this.session.document.supplies.includes(supply);
    if (this.#do(addSupply(supply))) this.box.value = '';
    this.box.focus();
  };

  #do(command: Command): boolean {
    return command(this.session.state, this.session.dispatch, Date.now());
  }
}
