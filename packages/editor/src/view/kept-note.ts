import type { Problem } from '@trimwell/sketch';
import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Keeper } from '../keeping/keeper.js';
import type { Choice, KeptState } from '../keeping/kept-state.js';
import { keptAdvice, keptWords } from '../keeping/kept-words.js';
import { saveSketchFile } from './shelf/sketch-file.js';
import { tableStyles } from './table/table-styles.js';
import { trayWish } from './trays/tray-names.js';

/** How often the time since the last keeping is said anew, in milliseconds. */
const ANEW = 30_000;

/**
 * Whether the sketch on the table is kept, in a few words; when it cannot be, or two tabs changed it, what to do about it.
 * @fires tray-wish - The user wants to see the shelf, to make room on it.
 */
export class KeptNoteElement extends LitElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        position: relative;
        font-size: 12.5px;
      }
      .words {
        color: var(--muted);
        white-space: nowrap;
      }
      summary {
        display: inline-block;
        padding: 4px 2px;
        color: var(--accent);
        font-weight: 600;
        cursor: pointer;
      }
      summary::after {
        content: ' ▾';
      }
      .slip {
        position: absolute;
        z-index: 5;
        left: 0;
        top: calc(100% + 4px);
        width: max-content;
        max-width: min(330px, 86vw);
        padding: 10px 14px;
        background: var(--slip);
        box-shadow: 0 8px 22px rgb(20 25 24 / 0.3);
        font-size: 13px;
      }
      .slip button {
        display: block;
        margin: 4px 0 0 -6px;
        text-align: left;
      }
    `,
  ];

  @property({ attribute: false }) keeper: Keeper | null = null;
  /** Why the other tab's sketch cannot be taken. */
  @state() private problems: readonly Problem[] = [];
  #stop: (() => void) | null = null;
  #ticking: ReturnType<typeof setInterval> | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#ticking = setInterval(() => this.requestUpdate(), ANEW);
    this.#watch();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#ticking !== null) clearInterval(this.#ticking);
    this.#stop?.();
    this.#stop = null;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('keeper')) this.#watch();
  }

  #watch(): void {
    this.#stop?.();
    this.#stop = this.isConnected ? (this.keeper?.subscribe(() => this.requestUpdate()) ?? null) : null;
  }

  protected override render() {
    const kept = this.keeper?.state;
    if (!kept) return nothing;
    const now = Date.now();
    const words = keptWords(kept, now);
    const advice = keptAdvice(kept, now);
    // Every keeping would be too much to hear; what wants attention is said.
    return html`${
      advice === null
        ? html`<span class="words">${words}</span>`
        : // What is new to say opens by itself; what was put away stays so.
          keyed(
            kept.kind,
            html`<details open>
              <summary>${words}</summary>
              <div class="slip">
                <p>${advice}</p>
                ${this.#refused()}
                ${this.#ways(kept)}
              </div>
            </details>`,
          )
    }
      <span class="unseen" role="status">${advice === null ? '' : `${words}. ${advice}`}</span>`;
  }

  #ways(kept: KeptState) {
    if (kept.kind === 'not kept') {
      return html`<button class="act" @click=${this.#save}>Save as a file</button>
        ${kept.trouble === 'full' ? html`<button class="act" @click=${this.#makeRoom}>Make room…</button>` : nothing}`;
    }
    const way = (choice: Choice, label: string) =>
      html`<button class="act" @click=${() => this.#choose(choice)}>${label}</button>`;
    return html`${way('theirs', 'Take the one from the other tab')} ${way('both', 'Keep both: mine as a copy')}
      ${way('mine', 'Keep mine in its place')}`;
  }

  #refused() {
    if (this.problems.length === 0) return nothing;
    return html`<p role="alert">
      This page cannot read the other one; both stay on the shelf. ${this.problems[0]?.message}
    </p>`;
  }

  async #choose(choice: Choice): Promise<void> {
    this.problems = (await this.keeper?.choose(choice)) ?? [];
  }

  /** All that waits is saved: what lay on the table before may be among it. */
  readonly #save = (): void => {
    for (const sketch of this.keeper?.waiting ?? []) saveSketchFile(sketch);
  };

  readonly #makeRoom = (): void => {
    this.dispatchEvent(trayWish({ tray: 'shelf', about: 'storage' }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-kept-note': KeptNoteElement;
  }
}
