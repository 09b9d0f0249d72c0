import { drawPlainSheet } from '@trimwell/handout';
import type { Paper } from '@trimwell/sketch';
import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { addPaper, paperToChange, removePaper } from '../../state/paper-edits.js';
import { isUsed, sourceUses } from '../../state/paper-uses.js';
import { inStyle } from '../in-style.js';
import { bindingOf } from '../keymap.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { ANOTHER_PAPER } from './another-paper.js';
import type { PaperFormElement } from './paper-form.js';
import { cutText, LAST_PAPER, sheetsAtHandText, sizeText, usesText } from './papers-messages.js';
import { papersStyles } from './papers-styles.js';
import type { RemoveFormElement } from './remove-form.js';

/** Pixels of a tick: a 12 in sheet is 100 pixels wide, others keep their proportion to it. */
const ZOOM = 100 / (12 * 16256);

/**
 * The papers of a sketch: every sheet side by side, one of them open to be changed, and the mixes below.
 */
export class PapersElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    papersStyles,
    css`
      .sheets {
        display: flex;
        flex-wrap: wrap;
        align-items: flex-start;
        gap: 16px 9px;
        margin: 0 0 18px;
        padding: 0;
        list-style: none;
      }
      .sheet {
        display: grid;
        justify-items: start;
        width: 119px;
        padding: 8px 7px;
        text-align: left;
        line-height: 1.3;
      }
      .sheet:hover {
        text-decoration: none !important;
      }
      .lies {
        display: grid;
        align-items: end;
      }
      .sheet trimwell-drawing {
        transition: translate 140ms;
      }
      .sheet:hover trimwell-drawing {
        translate: 0 -3px;
      }
      .sheet b {
        display: -webkit-box;
        overflow: hidden;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 2;
        max-width: 100%;
        margin-top: 5px;
        font: 500 14px / 1.25 var(--heading-font);
        overflow-wrap: anywhere;
      }
      .sheet span {
        font-size: 12px;
        color: var(--muted);
      }
      .sheet[aria-pressed='true'] {
        background: var(--slip);
        box-shadow: inset 0 -3px 0 var(--accent);
      }
      .new {
        display: grid;
        place-content: center;
        width: 100px;
        margin: 8px 7px;
        border: 1px dashed var(--muted);
        color: var(--accent);
        font-weight: 600;
        text-align: center;
      }
      .open {
        display: grid;
        grid-template: 'form look' auto 'mixes look' 1fr / minmax(0, 0.8fr) minmax(0, 1fr);
        gap: 20px 16px;
        align-items: start;
      }
      trimwell-paper-look {
        grid-area: look;
      }
      trimwell-mixes {
        grid-area: mixes;
      }
      @media (max-width: 760px) {
        .open {
          grid-template: 'form' auto 'look' auto 'mixes' auto / minmax(0, 1fr);
        }
        .sheets {
          flex-wrap: nowrap;
          gap: 0 4px;
          margin: 0 -16px 14px;
          padding: 2px 10px 6px;
          overflow-x: auto;
          scrollbar-width: thin;
        }
      }
      @media (prefers-reduced-motion: reduce) {
        .sheet trimwell-drawing {
          transition: none;
        }
      }
    `,
  ];

  /** The paper to open first, or what asks for a new one. */
  @property({ attribute: false }) about: string | null = null;
  @state() private open: string | null = null;
  @state() private leaving = false;
  @state() private said = '';
  #begun = false;

  constructor() {
    super();
    this.addEventListener('keydown', this.#key);
  }

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document || change.variations;
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { papers } = this.session.state.sketch;
    if (!this.#begun) this.open = this.about === ANOTHER_PAPER ? null : this.about;
    // What was open may have gone by an undo.
    if (!papers.some(({ id }) => id === this.open)) {
      this.open = papers[0]?.id ?? null;
      this.leaving = false;
    }
  }

  protected override firstUpdated(): void {
    this.#begun = true;
    if (this.about === ANOTHER_PAPER) void this.#add();
    else
      this.renderRoot.querySelector('[aria-pressed="true"]')?.scrollIntoView?.({ block: 'nearest', inline: 'nearest' });
  }

  protected override render() {
    const { sketch } = this.session.state;
    const paper = this.open === null ? null : paperToChange(this.session.state, this.open);
    const tallest = Math.max(...sketch.papers.map(({ height }) => height)) * ZOOM;
    return html`<ul class="sheets" aria-label="Papers of ${sketch.title}">
        ${sketch.papers.map(({ id }) => this.#sheet(paperToChange(this.session.state, id), tallest))}
        <li><button class="new" ${inStyle({ height: `${Math.max(80, tallest)}px` })} ?disabled=${!addPaper()(this.session.state)} @click=${() => this.#add()}>Another paper</button></li>
      </ul>
      <div class="open">
        ${paper ? this.#opened(paper) : nothing}
        <trimwell-mixes .session=${this.session} .pointing=${this.pointing}></trimwell-mixes>
      </div>
      <p class="unseen" role="status">${this.said}</p>`;
  }

  #sheet(paper: Paper | null, tallest: number): TemplateResult | typeof nothing {
    if (!paper) return nothing;
    const { state } = this.session;
    const drawing = drawPlainSheet(paper, 0);
    const size = { width: `${paper.width * ZOOM}px`, height: `${paper.height * ZOOM}px` };
    return html`<li>
      <button class="sheet" data-paper=${paper.id} aria-pressed=${paper.id === this.open} @click=${() => this.#show(paper.id)}>
        <div class="lies" ${inStyle({ height: `${tallest}px` })}><trimwell-drawing aria-hidden="true" ${inStyle(size)} .drawing=${drawing}></trimwell-drawing></div>
        <b>${paper.name}</b>
        <span>${sizeText(paper, state.sketch)}</span>
        <span>${sheetsAtHandText(paper.sheets)}</span>
        <span>${cutText(sourceUses(state, paper.id))}</span>
      </button>
    </li>`;
  }

  #opened(paper: Paper): TemplateResult {
    const { session, pointing } = this;
    const only = session.state.sketch.papers.length === 1;
    return html`<div>
        <trimwell-paper-form .session=${session} .pointing=${pointing} .paper=${paper.id}></trimwell-paper-form>
        <div class="acts">
          <button ?disabled=${!addPaper(paper.id)(session.state)} @click=${() => this.#add(paper.id)}>Another like this</button>
          <button class="leave" ?disabled=${only} title=${only ? LAST_PAPER : nothing} @click=${() => this.#remove(paper)}>Take away</button>
        </div>
        ${this.leaving ? this.#leaving(paper) : nothing}
      </div>
      <trimwell-paper-look .session=${session} .pointing=${pointing} .paper=${paper.id}></trimwell-paper-look>`;
  }

  #leaving(paper: Paper): TemplateResult {
    const { state } = this.session;
    return html`<trimwell-remove-form
      .says=${usesText(paper.name, sourceUses(state, paper.id))}
      .choices=${state.sketch.papers.filter(({ id }) => id !== paper.id)}
      @take-away=${(event: CustomEvent<{ instead: string }>) => this.#takeAway(paper, event.detail.instead)}
      @leave=${this.#keep}
    ></trimwell-remove-form>`;
  }

  #show(id: string): void {
    this.open = id;
    this.leaving = false;
  }

  async #add(like?: string): Promise<void> {
    const before = new Set(this.session.state.sketch.papers.map(({ id }) => id));
    if (!addPaper(like)(this.session.state, this.session.dispatch, Date.now())) return;
    const fresh = this.session.state.sketch.papers.find(({ id }) => !before.has(id));
    if (!fresh) return;
    this.#show(fresh.id);
    this.said = `${fresh.name} is new`;
    await this.updateComplete;
    await this.renderRoot.querySelector<PaperFormElement>('trimwell-paper-form')?.focusName();
  }

  async #remove(paper: Paper): Promise<void> {
    if (!isUsed(sourceUses(this.session.state, paper.id))) return this.#takeAway(paper);
    this.leaving = true;
    await this.updateComplete;
    this.renderRoot.querySelector<RemoveFormElement>('trimwell-remove-form')?.focus();
  }

  async #takeAway(paper: Paper, instead?: string): Promise<void> {
    const { papers } = this.session.state.sketch;
    const at = papers.findIndex(({ id }) => id === paper.id);
    if (!removePaper(paper.id, instead)(this.session.state, this.session.dispatch, Date.now())) return;
    const left = this.session.state.sketch.papers;
    const next = instead ?? left[Math.min(at, left.length - 1)]?.id ?? null;
    this.leaving = false;
    this.open = next;
    this.said = `${paper.name} is taken away`;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`.sheet[data-paper="${next}"]`)?.focus();
  }

  readonly #keep = async (): Promise<void> => {
    this.leaving = false;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.leave')?.focus();
  };

  /** Undo and redo work here as on the table, but in a box for text they are the box's. */
  readonly #key = (event: KeyboardEvent): void => {
    const [target] = event.composedPath();
    if (target instanceof HTMLInputElement && !['checkbox', 'radio', 'range', 'file'].includes(target.type)) return;
    const command = event.defaultPrevented ? null : bindingOf(event)?.command;
    if (command !== 'undo' && command !== 'redo') return;
    event.preventDefault();
    this.session[command]();
  };
}
