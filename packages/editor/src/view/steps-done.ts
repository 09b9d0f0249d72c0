import { css, html, nothing } from 'lit';
import type { SessionChange } from '../session/session.js';
import { SessionElement } from './session-element.js';
import { historySteps, stepName } from './step-names.js';
import { tableStyles } from './table/table-styles.js';

/** What was done to the sketch since it was opened, newest first, to go back several steps at once, or forward again. */
export class StepsDoneElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      ol {
        margin: 0;
        padding: 0 0 0 14px;
        border-left: 2px solid var(--line);
        list-style: none;
      }
      button {
        position: relative;
        width: 100%;
        text-align: left;
      }
      /* A stitch on the thread for every step; the last one done is a knot. */
      button::before {
        content: '';
        position: absolute;
        left: -19px;
        top: 50%;
        width: 8px;
        height: 2px;
        background: var(--muted);
      }
      .undone {
        color: var(--muted);
        text-decoration: line-through;
      }
      [aria-current] {
        font-weight: 600;
      }
      [aria-current]::before {
        left: -20px;
        width: 10px;
        height: 10px;
        margin-top: -5px;
        border-radius: 50%;
        background: var(--accent);
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.ended;
  }

  protected override render() {
    const { done, undone } = historySteps(this.session.state);
    if (done.length === 0 && undone.length === 0) return html`<p class="quiet">Nothing was done yet.</p>`;
    return html`<ol aria-label="What was done, newest first">
      ${undone
        .map(
          (step, index) =>
            html`<li><button class="undone" @click=${() => this.#go(index + 1)}>${stepName(step)}<span class="unseen">, undone</span></button></li>`,
        )
        .reverse()}
      ${done
        .map((step, index) => {
          const back = index + 1 - done.length;
          return html`<li><button aria-current=${back === 0 ? 'step' : nothing} @click=${() => this.#go(back)}>${stepName(step)}</button></li>`;
        })
        .reverse()}
      <li><button aria-current=${done.length === 0 ? 'step' : nothing} @click=${() => this.#go(-done.length)}>As it was opened</button></li>
    </ol>`;
  }

  /** Takes steps back (below 0) or does them again (above). */
  #go(steps: number): void {
    if (steps < 0) this.session.undo(-steps);
    else if (steps > 0) this.session.redo(steps);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-steps-done': StepsDoneElement;
  }
}
