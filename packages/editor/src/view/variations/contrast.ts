import type { Piece } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { apartFrom, areApart, cutFromPapers, keepApart, letPiecesShare } from '../../state/contrast-commands.js';
import { type Command, selectedPieces } from '../../state/state.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { listed, mayContrast, turnsAmong, whyNotApart, whyNotKept } from './contrast-words.js';

/**
 * For the ticket: which papers the selected piece or pieces take turns among, and which pieces must never share a paper on
 * one card; both are set here. Shows nothing while nothing is selected.
 */
export class ContrastElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      dl {
        display: grid;
        grid-template-columns: 52px minmax(0, 1fr);
        gap: 2px 8px;
        align-items: baseline;
        margin: 0;
      }
      dt {
        color: var(--muted);
        font-size: 12.5px;
      }
      dd {
        margin: 0;
        min-width: 0;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .apart li {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 8px;
      }
      .apart li button {
        min-height: 24px;
        padding: 0;
        color: var(--muted);
        font-size: 12px;
        text-decoration: underline;
        text-decoration-color: var(--line);
        text-underline-offset: 3px;
      }
      select {
        max-width: 100%;
      }
      .switch {
        display: flex;
        align-items: baseline;
        gap: 7px;
        padding: 2px 0;
        text-align: left;
      }
      /* Two slips, one over the other while they may share, side by side while they may not. */
      .slips {
        position: relative;
        flex: none;
        width: 22px;
        height: 13px;
        translate: 0 2px;
      }
      .slips::before,
      .slips::after {
        content: '';
        position: absolute;
        top: 0;
        left: 4px;
        width: 10px;
        height: 13px;
        border: 1px solid var(--muted);
        background: var(--slip);
      }
      .slips::after {
        left: 8px;
      }
      [aria-checked='true'] .slips::before {
        left: 0;
        border-color: var(--good);
        background: var(--good);
      }
      [aria-checked='true'] .slips::after {
        left: 12px;
        border-color: var(--good);
      }
      [aria-checked='true'] {
        font-weight: 600;
      }
      .reason {
        margin-top: 2px;
        color: var(--accent);
        font-size: 12.5px;
        line-height: 1.35;
      }
      .hint {
        font-size: 12.5px;
        line-height: 1.35;
      }
      summary {
        min-height: 24px;
        cursor: pointer;
        color: var(--muted);
        font-size: 12.5px;
      }
      .papers label {
        display: flex;
        align-items: center;
        gap: 7px;
        min-height: 26px;
      }
      .papers input {
        min-height: 0;
        width: 15px;
        height: 15px;
        margin: 0;
        accent-color: var(--good);
      }
    `,
  ];

  /** Papers that are ticked for a mix, in the order in which they were; null before any of the piece's own is changed. */
  @state() private ticked: readonly string[] | null = null;
  #about = '';
  #told = '';

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.document || change.selection || (change.plan && !this.session.plan.stale);
  }

  #do(command: Command, tells: string): boolean {
    const done = command(this.session.state, this.session.dispatch, Date.now());
    if (!done) return false;
    this.#told = tells;
    this.requestUpdate();
    return true;
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const about = this.session?.state.selection.join(' ') ?? '';
    if (about === this.#about) return;
    this.#about = about;
    this.ticked = null;
    this.#told = '';
  }

  protected override render() {
    const { state: now } = this.session;
    const pieces = selectedPieces(now);
    const [first] = pieces;
    if (!first) return nothing;
    return html`<p class="unseen" role="status">${this.#told}</p>
      <dl>
        ${pieces.length === 1 ? this.#turns(first) : nothing}
        ${pieces.length === 1 ? this.#apartOne(first) : this.#apartMany(pieces)}
        <dt></dt>
        <dd>${this.#mix(pieces)}</dd>
      </dl>`;
  }

  #turns(piece: Piece): TemplateResult | typeof nothing {
    const papers = turnsAmong(this.session.state.sketch, piece);
    return papers.length === 0 ? nothing : html`<dt>turns</dt><dd class="hint">among ${listed(papers)}</dd>`;
  }

  #name(id: string): string {
    return this.session.document.pieces.find((piece) => piece.id === id)?.name ?? id;
  }

  #reasons(pieces: readonly string[]): TemplateResult | typeof nothing {
    const { sketch } = this.session.state;
    const { cards } = this.session.plan.batch ?? sketch.batch;
    if (typeof cards !== 'number' || cards === 0) return nothing;
    const reasons = whyNotKept(sketch, pieces, cards);
    return html`${reasons.map((reason) => html`<p class="reason">${reason}</p>`)}`;
  }

  #apartOne(piece: Piece): TemplateResult | typeof nothing {
    const { state: now } = this.session;
    const others = apartFrom(now.document.batch.contrast, piece.id);
    const may = mayContrast(now, piece);
    if (others.length === 0 && may.length === 0) return nothing;
    return html`<dt>apart</dt>
      <dd class="apart">
        ${others.length === 0 ? nothing : html`<p class="hint">Never the same paper on one card as</p>`}
        <ul>
          ${others.map(
            (id) => html`<li><span>${this.#name(id)}</span>
              <button aria-label="Let ${piece.name} and ${this.#name(id)} share a paper" @click=${() => this.#share([piece.id, id])}>let them share</button></li>`,
          )}
        </ul>
        ${
          may.length === 0
            ? nothing
            : html`<select aria-label="Never the same paper on one card as" @change=${(event: Event) => this.#keep(event, piece)}>
          <option value="" selected>${others.length === 0 ? 'never the paper of …' : 'nor as …'}</option>
          ${may.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}
        </select>`
        }
        ${this.#reasons([piece.id])}
      </dd>`;
  }

  #apartMany(pieces: readonly Piece[]): TemplateResult {
    const { state: now } = this.session;
    const ids = pieces.map(({ id }) => id);
    const apart = areApart(now.document.batch.contrast, ids);
    const why = apart ? '' : whyNotApart(now, pieces);
    return html`<dt>apart</dt>
      <dd>
        <button
          class="switch"
          role="switch"
          aria-checked=${apart}
          aria-describedby=${why === '' ? nothing : 'why'}
          ?disabled=${!apart && !keepApart()(now)}
          @click=${() => (apart ? this.#share(ids) : this.#do(keepApart(), `${listed(ids.map((id) => this.#name(id)))} never share a paper on one card.`))}
        ><span class="slips"></span>Never the same paper on one card</button>
        ${why === '' ? nothing : html`<p class="hint quiet" id="why">${why}</p>`}
        ${this.#reasons(ids)}
      </dd>`;
  }

  #mix(pieces: readonly Piece[]): TemplateResult {
    const { papers } = this.session.state.sketch;
    const ticked = this.#ticked(pieces);
    const can = cutFromPapers(ticked)(this.session.state);
    return html`<details class="papers">
      <summary>Cut from several papers in turn</summary>
      <ul>
        ${papers.map(
          ({ id, name }) =>
            html`<li><label><input type="checkbox" .checked=${ticked.includes(id)} @change=${() => this.#tick(id, ticked)} />${name}</label></li>`,
        )}
      </ul>
      <p class="hint quiet">${ticked.length < 2 ? 'Tick two papers or more: they take turns from card to card.' : `${ticked.length} papers take turns from card to card.`}</p>
      <button class="act" ?disabled=${!can} @click=${() => this.#cut(pieces, ticked)}>${pieces.length === 1 ? 'Cut it from these' : 'Cut them from these'}</button>
    </details>`;
  }

  /** What is ticked, or the papers that all selected pieces take turns among already. */
  #ticked(pieces: readonly Piece[]): readonly string[] {
    if (this.ticked) return this.ticked;
    const { mixes, papers } = this.session.state.sketch;
    const [first] = pieces;
    if (!first || pieces.some(({ from }) => from !== first.from)) return [];
    const own = mixes.find(({ id }) => id === first.from)?.papers ?? [first.from];
    return papers.map(({ id }) => id).filter((id) => own.includes(id));
  }

  #tick(paper: string, before: readonly string[]): void {
    const now = this.ticked ?? before;
    this.ticked = now.includes(paper) ? now.filter((id) => id !== paper) : [...now, paper];
  }

  #cut(pieces: readonly Piece[], papers: readonly string[]): void {
    const names = papers.map((id) => this.session.state.sketch.papers.find((paper) => paper.id === id)?.name ?? id);
    const cut = listed(pieces.map(({ name }) => name));
    if (
      this.#do(cutFromPapers(papers), `${cut} ${pieces.length === 1 ? 'takes' : 'take'} turns among ${listed(names)}.`)
    )
      this.ticked = null;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('summary')?.focus({ preventScroll: true }),
    );
  }

  #share(ids: readonly string[]): void {
    this.#do(letPiecesShare(ids), `${listed(ids.map((id) => this.#name(id)))} may share a paper.`);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('select, .switch')?.focus({ preventScroll: true }),
    );
  }

  #keep(event: Event, piece: Piece): void {
    const box = event.target;
    if (!(box instanceof HTMLSelectElement) || box.value === '') return;
    const other = box.value;
    box.value = '';
    this.#do(keepApart([piece.id, other]), `${piece.name} and ${this.#name(other)} never share a paper on one card.`);
  }
}
