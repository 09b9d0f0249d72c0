import { css, html, nothing, type TemplateResult } from 'lit';
import { query, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import {
  addLink,
  changeLink,
  isLink,
  type Link,
  LONGEST,
  MOST_LINKS,
  moveLink,
  removeLink,
} from '../../state/card-commands.js';
import type { Command } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { NO_ADDRESS, NO_WORDS } from './about-card-messages.js';
import { aboutCardStyles } from './about-card-styles.js';
import { listActs } from './list-acts.js';

/** What stands in the fields of one line, and what is wrong with it; `NEW` is the line that is being written. */
const NEW = -1;
const EMPTY: Link = { text: '', address: '' };

/** The closing lines of the handout with their links: each written in place, ordered, taken away; a new one below. */
export class ClosingLinesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    aboutCardStyles,
    css`
      li,
      form {
        display: grid;
        grid-template-columns: minmax(0, 2fr) minmax(0, 3fr) auto;
        gap: 2px 12px;
        align-items: baseline;
      }
      form {
        padding-top: 6px;
      }
      .problem {
        grid-column: 1 / -1;
      }
      @media (max-width: 640px) {
        li,
        form {
          grid-template-columns: minmax(0, 1fr);
        }
        form button {
          justify-self: start;
        }
      }
    `,
  ];

  /** What was typed and could not be kept, by line. */
  @state() private refused: { readonly index: number; readonly link: Link } | null = null;
  @query('form input') private readonly first!: HTMLInputElement;

  protected override concerns(change: SessionChange): boolean {
    return change.document;
  }

  protected override sessionChanged(): void {
    this.refused = null;
    this.requestUpdate();
  }

  protected override render() {
    const { links } = this.session.document;
    const full = links.length >= MOST_LINKS;
    return html`<section aria-labelledby="heading">
      <h3 id="heading">Closing lines</h3>
      <p class="quiet">${links.length === 0 ? 'None yet. They stand at the end of the handout, each with its link.' : 'They stand at the end of the handout, each with its link.'}</p>
      <ol>${links.map((link, index) => html`<li>${this.#fields(index, link)} ${this.#acts(link, index, links.length)}${this.#problem(index)}</li>`)}</ol>
      ${
        full
          ? html`<p class="quiet">No more than ${MOST_LINKS} lines have room.</p>`
          : html`<form @submit=${this.#add} novalidate>${this.#fields(NEW, EMPTY)}<button class="act">Add the line</button>${this.#problem(NEW)}</form>`
      }
    </section>`;
  }

  #acts(link: Link, index: number, count: number): TemplateResult {
    return listActs({
      name: link.text,
      index,
      count,
      move: (to) => this.#do(moveLink(index, to)),
      remove: () => {
        this.#do(removeLink(index));
        this.first?.focus();
      },
    });
  }

  #fields(index: number, link: Link): TemplateResult {
    const shown = this.refused?.index === index ? this.refused.link : link;
    const wrong = (field: keyof Link): boolean =>
      this.refused?.index === index &&
      !isLink(field === 'text' ? { ...shown, address: 'https://a' } : { ...shown, text: 'a' });
    const which = index === NEW ? 'new line' : `line ${index + 1}`;
    const change = index === NEW ? nothing : (event: Event) => this.#change(index, event);
    const box = (field: keyof Link, label: string, example: string, most: number) => html`<input
      name=${field}
      aria-label="${label}, ${which}"
      placeholder=${example}
      maxlength=${most}
      autocomplete="off"
      spellcheck=${field === 'text'}
      inputmode=${field === 'address' ? 'url' : 'text'}
      aria-invalid=${wrong(field)}
      aria-describedby=${wrong(field) ? `problem-${index}` : nothing}
      .value=${shown[field]}
      @change=${change}
    />`;
    return html`${box('text', 'What it says', 'More sketches of the club', LONGEST.linkText)}${box('address', 'Where it leads', 'https://', LONGEST.address)}`;
  }

  #problem(index: number) {
    if (this.refused?.index !== index) return nothing;
    const says = this.refused.link.text === '' ? NO_WORDS : NO_ADDRESS;
    return html`<span class="problem" id="problem-${index}" role="alert">${says}</span>`;
  }

  #read(row: Element): Link {
    const value = (name: keyof Link): string => {
      const box = row.querySelector(`input[name="${name}"]`);
      return box instanceof HTMLInputElement ? box.value.trim() : '';
    };
    return { text: value('text'), address: value('address') };
  }

  #change(index: number, event: Event): void {
    const row = event.target instanceof Element ? event.target.closest('li') : null;
    if (!row) return;
    const link = this.#read(row);
    this.refused = isLink(link) ? null : { index, link };
    this.#do(changeLink(index, link));
  }

  readonly #add = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!(event.currentTarget instanceof HTMLFormElement)) return;
    const form = event.currentTarget;
    const link = this.#read(form);
    if (!isLink(link)) {
      this.refused = { index: NEW, link };
      void this.updateComplete.then(() => {
        const wrong = form.querySelector('[aria-invalid="true"]');
        if (wrong instanceof HTMLInputElement) wrong.focus();
      });
      return;
    }
    this.#do(addLink(link));
    form.reset();
    this.first?.focus();
  };

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }
}
