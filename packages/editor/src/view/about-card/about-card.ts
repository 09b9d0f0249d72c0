import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { describeSketch, LONGEST } from '../../state/card-commands.js';
import type { Command } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { NO_TITLE } from './about-card-messages.js';
import { aboutCardStyles } from './about-card-styles.js';

type Field = 'title' | 'number' | 'credit' | 'notes';

/** The card and its words: title, credit and notes, closing lines, further supplies, size, fold, base and envelope. */
export class AboutCardElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    aboutCardStyles,
    css`
      .parts {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: 22px 44px;
        align-items: start;
      }
      .column {
        display: grid;
        gap: 22px;
      }
      .title input {
        font: 500 17px / 1.3 var(--heading-font);
      }
      @media (max-width: 760px) {
        .parts {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @state() private untitled = false;

  protected override concerns(change: SessionChange): boolean {
    return change.document;
  }

  protected override render() {
    const { session, pointing } = this;
    return html`<div class="parts">
      <div class="column">
        <section aria-labelledby="words">
          <h3 id="words">Its words</h3>
          ${this.#line('title', 'Title')} ${this.#line('number', 'Number', 'sketch 14')} ${this.#line('credit', 'Credit', 'who it is by')}
          <div class="row">
            <label for="notes">Notes to the makers</label>
            <textarea
              id="notes"
              maxlength=${LONGEST.notes}
              .value=${session.document.notes ?? ''}
              @change=${(event: Event) => this.#write('notes', event)}
            ></textarea>
          </div>
        </section>
        <trimwell-closing-lines .session=${session} .pointing=${pointing}></trimwell-closing-lines>
      </div>
      <div class="column">
        <trimwell-card-form .session=${session} .pointing=${pointing}></trimwell-card-form>
        <trimwell-supplies .session=${session} .pointing=${pointing}></trimwell-supplies>
      </div>
    </div>`;
  }

  #line(field: Exclude<Field, 'notes'>, label: string, example = ''): TemplateResult {
    const problem = field === 'title' && this.untitled;
    return html`<div class="row ${field}">
      <label for=${field}>${label}</label>
      <div>
        <input
          id=${field}
          maxlength=${LONGEST[field]}
          placeholder=${example}
          autocomplete="off"
          aria-invalid=${problem}
          aria-describedby=${problem ? 'untitled' : nothing}
          .value=${this.session.document[field] ?? ''}
          @change=${(event: Event) => this.#write(field, event)}
        />
        ${problem ? html`<span class="problem" id="untitled" role="alert">${NO_TITLE}</span>` : nothing}
      </div>
    </div>`;
  }

  #write(field: Field, event: Event): void {
    const { target } = event;
    if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return;
    const text = field === 'notes' ? target.value : target.value.trim();
    if (field === 'title') this.untitled = text === '';
    this.#do(describeSketch({ [field]: text }));
  }

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }
}
