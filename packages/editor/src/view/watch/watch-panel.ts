import { SEVERITY_WORDS } from '@trimwell/handout';
import { CARD_BASE, kindOf } from '@trimwell/sketch';
import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { SessionChange } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { WatchCard } from '../watch-card.js';
import { isOfCard, type Watched, watchedOf } from './found.js';
import { Mends } from './mends.js';
import { severityMark, severityStyles } from './severity-mark.js';
import {
  findingText,
  LOOKING_FIRST,
  NOTHING_TO_WATCH,
  notLookedAt,
  pieceName,
  unmadePieces,
  unmadeText,
} from './watch-words.js';

/** Findings that are told at once; the rest come when asked for. */
const FEW = 5;

/** What to watch: what cannot be cut, and each finding with its one-press mend. */
export class WatchElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    severityStyles,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        position: relative;
        padding: 2px 0 5px 21px;
      }
      li > .severity,
      .fine > .severity {
        position: absolute;
        left: 0;
        top: 7px;
        color: var(--muted);
      }
      li.wrong > .severity,
      li.stops > .severity {
        color: var(--accent);
      }
      li.fine > .severity {
        color: var(--good);
      }
      .says {
        min-height: 24px;
        padding: 2px 0;
        text-align: left;
        line-height: 1.35;
      }
      .lit .says {
        text-decoration: underline;
        text-underline-offset: 3px;
      }
      .act,
      .more {
        min-height: 24px;
        padding: 0;
        text-align: left;
      }
    `,
  ];

  #all = false;
  readonly #watch = new WatchCard(this);
  readonly #mends = new Mends(this, this.#watch);

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.plan;
  }

  protected override get followsPointing(): boolean {
    return true;
  }

  protected override update(changed: PropertyValues): void {
    const before = this.shadowRoot?.activeElement;
    super.update(changed);
    // What had the focus is gone with what it told of.
    if (before && !before.isConnected) this.focusHeading();
  }

  protected override render(): TemplateResult {
    const { sketch } = this.session.state;
    const { failure } = this.#watch.card;
    const findings = watchedOf(this.session, this.#watch.card);
    const told = new Set(findings.map(({ piece, code }) => `${piece} ${code}`));
    const unmade = unmadePieces(this.session.plan.batch?.papers.flatMap(({ plan }) => plan.unmade) ?? []).filter(
      // The finding says the same, and has a mend.
      ({ piece, reason }) => !(reason === 'narrower than can be held' && told.has(`${piece} too-narrow`)),
    );
    const shown = this.#all ? findings : findings.slice(0, FEW);
    const more = findings.length - shown.length;
    return html`<h2 tabindex="-1">To watch</h2>
      <ul aria-live="polite">
        ${unmade.map(
          (each) => html`<li class="stops ${this.#lit(each.piece)}">
            ${severityMark('stops the build')}${this.#says(each.piece, unmadeText(each, sketch), SEVERITY_WORDS['stops the build'])}
          </li>`,
        )}
        ${repeat(
          shown,
          (watched) => `${watched.piece} ${kindOf(watched)} ${(isOfCard(watched) ? watched.paper : null) ?? ''}`,
          (finding) => this.#finding(finding),
        )}
        ${failure === null ? nothing : html`<li class="quiet">${severityMark('worth knowing')}${notLookedAt(failure)}</li>`}
        ${unmade.length + findings.length === 0 && failure === null ? html`<li class="fine quiet">${severityMark('worth knowing')}${NOTHING_TO_WATCH}</li>` : nothing}
      </ul>
      ${more > 0 ? html`<button class="more act" @click=${this.#showAll}>and ${more} more</button>` : nothing}`;
  }

  #finding(finding: Watched): TemplateResult {
    const { sketch } = this.session.state;
    const { says, mend: word } = findingText(finding, sketch);
    const { severity, piece, fix } = finding;
    const waits = this.#mends.waits(finding) ? LOOKING_FIRST : '';
    const kind = severity === 'stops the build' ? 'stops' : severity === 'looks wrong' ? 'wrong' : '';
    return html`<li class="${kind} ${this.#lit(piece)}">
      ${severityMark(severity)}${this.#says(piece, says, SEVERITY_WORDS[severity])}
      ${fix.length > 0 ? html`<button class="act" aria-label="${word}: ${pieceName(sketch, piece)}${waits}" @click=${() => this.#mend(finding)}>${word}${waits}</button>` : nothing}
    </li>`;
  }

  #lit(piece: string): string {
    return piece === this.pointing.piece ? 'lit' : '';
  }

  #says(piece: string, text: string, severity: string): TemplateResult {
    const words = html`<span class="unseen">${severity}: </span>${text}`;
    if (piece === CARD_BASE) return html`<span class="says">${words}</span>`;
    const point = (to: string | null) => () => {
      this.pointing.piece = to;
    };
    return html`<button
      class="says"
      @click=${() => select(piece)(this.session.state, this.session.dispatch, Date.now())}
      @pointerenter=${point(piece)}
      @pointerleave=${point(null)}
      @focus=${point(piece)}
      @blur=${point(null)}
    >${words}</button>`;
  }

  readonly #showAll = async (): Promise<void> => {
    this.#all = true;
    this.requestUpdate();
    await this.updateComplete;
    // The button that had the focus is gone: it goes on to the first of what has come.
    const list = [...this.renderRoot.querySelectorAll<HTMLElement>('li .says')];
    list[FEW]?.focus();
  };

  /** Takes the focus when what had it beside this list is gone. */
  focusHeading(): void {
    this.renderRoot.querySelector('h2')?.focus({ preventScroll: true });
  }

  #mend(finding: Watched): void {
    this.#mends.press(finding, () => {
      void this.updateComplete.then(() => this.focusHeading());
    });
  }
}
