import { CARD_BASE, checkSketch, type Finding, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import { css, html, nothing } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { findingText, NOTHING_TO_WATCH, unmadeText } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/** What to watch: what cannot be cut, and each finding with its one-press mend. */
export class WatchElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        position: relative;
        padding: 4px 0 6px 20px;
      }
      li::before {
        content: '';
        position: absolute;
        left: 1px;
        top: 9px;
        width: 9px;
        height: 9px;
        border: 2px solid var(--muted);
        border-radius: 50%;
      }
      li.stops::before {
        border-color: var(--accent);
        background: var(--accent);
      }
      li.wrong::before {
        border-color: var(--accent);
      }
      li.fine::before {
        border-color: var(--good);
      }
      .says {
        padding: 0;
        min-height: 24px;
        text-align: left;
      }
      .act {
        padding: 0;
        min-height: 24px;
      }
    `,
  ];

  #checked: { readonly sketch: Sketch; readonly findings: readonly Finding[] } | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.plan;
  }

  #findings(): readonly Finding[] {
    const { sketch } = this.session.state;
    if (this.#checked?.sketch !== sketch) this.#checked = { sketch, findings: checkSketch(sketch) };
    return this.#checked.findings;
  }

  protected override render() {
    const { sketch } = this.session.state;
    const name = (id: string): string =>
      id === CARD_BASE ? 'Card base' : (sketch.pieces.find((piece) => piece.id === id)?.name ?? id);
    const unmade = this.session.plan.batch?.papers.flatMap(({ plan }) => plan.unmade) ?? [];
    const findings = this.#findings();
    return html`<h2 tabindex="-1">To watch</h2>
      <ul aria-live="polite">
        ${unmade.map(({ blank, quantity, reason }) => {
          const piece = pieceOfBlank(blank);
          return html`<li class="stops">${this.#says(piece, unmadeText(name(piece), quantity, reason))}</li>`;
        })}
        ${findings.map((finding) => {
          const { says, mend } = findingText(finding, name(finding.piece), { unit: sketch.unit });
          return html`<li class=${finding.severity === 'stops the build' ? 'stops' : finding.severity === 'looks wrong' ? 'wrong' : ''}>
            ${this.#says(finding.piece, says)}
            ${finding.fix.length > 0 ? html`<button class="act" aria-label="${mend}: ${name(finding.piece)}" @click=${() => this.#mend(finding)}>${mend}</button>` : nothing}
          </li>`;
        })}
        ${unmade.length + findings.length === 0 ? html`<li class="fine quiet">${NOTHING_TO_WATCH}</li>` : nothing}
      </ul>`;
  }

  #says(piece: string, text: string) {
    if (piece === CARD_BASE) return html`<span>${text}</span>`;
    return html`<button
      class="says"
      @click=${() => select(piece)(this.session.state, this.session.dispatch, Date.now())}
      @pointerenter=${() => {
        this.pointing.piece = piece;
      }}
      @pointerleave=${() => {
        this.pointing.piece = null;
      }}
    >${text}</button>`;
  }

  /** Takes the focus when what had it beside this list is gone. */
  focusHeading(): void {
    this.renderRoot.querySelector('h2')?.focus({ preventScroll: true });
  }

  #mend(finding: Finding): void {
    this.session.dispatch({ event: `mend.${finding.code}`, edits: finding.fix, at: Date.now() });
  }
}
