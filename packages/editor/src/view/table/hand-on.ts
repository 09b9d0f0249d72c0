import { BLADE_CAUTION } from '@trimwell/handout';
import { type Problem, readSketchText } from '@trimwell/sketch';
import { css, html, nothing } from 'lit';
import { query, state } from 'lit/decorators.js';
import { exportFiles, saveFile } from '../../session/export.js';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/**
 * Opening and handing on: the sketch itself, the piece lists, each sheet's guide.
 * @fires sketch-opened - The user opened a sketch file.
 */
export class FilesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        position: relative;
        display: flex;
        gap: 2px;
      }
      .sheet {
        position: absolute;
        z-index: 5;
        right: 0;
        top: calc(100% + 6px);
        width: max-content;
        max-width: min(340px, 88vw);
        max-height: 60vh;
        overflow: auto;
        padding: 12px 14px;
        background: var(--slip);
        box-shadow: 0 8px 22px rgb(20 25 24 / 0.3);
      }
      .sheet button {
        display: block;
        width: 100%;
        text-align: left;
      }
      ul {
        margin: 6px 0 0;
        padding-left: 18px;
        font-size: 12.5px;
      }
      .error {
        color: var(--accent);
        font-weight: 600;
      }
    `,
  ];

  @state() private shown = false;
  @state() private problems: readonly Problem[] = [];
  @query('input[type=file]') private readonly picker!: HTMLInputElement;

  protected override concerns(change: SessionChange): boolean {
    return change.plan && this.shown;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.addEventListener('keydown', this.#escape);
    this.addEventListener('focusout', this.#leave);
  }

  protected override render() {
    return html`<button @click=${() => this.picker.click()}>Open</button>
      <button @click=${() => {
        this.shown = !this.shown;
      }} aria-expanded=${this.shown}>Hand on</button>
      <input type="file" class="unseen" tabindex="-1" aria-label="Sketch file" accept=".json,application/json" @change=${this.#open} />
      ${this.shown ? this.#files() : nothing}
      ${this.problems.length > 0 ? this.#refused() : nothing}`;
  }

  #files() {
    const files = exportFiles(this.session.state.sketch, this.session.plan.batch);
    return html`<div class="sheet" role="group" aria-label="Hand on">
      ${files.map(({ label, file }) => html`<button @click=${() => saveFile(file)}>${label}</button>`)}
      <p class="quiet">${BLADE_CAUTION}</p>
    </div>`;
  }

  #refused() {
    return html`<div class="sheet" role="alert">
      <p class="error">This file is not a sketch that can be opened. Nothing was changed.</p>
      <ul>${this.problems.slice(0, 8).map(({ message }) => html`<li>${message}</li>`)}</ul>
      <button class="act" @click=${() => {
        this.problems = [];
      }}>Close</button>
    </div>`;
  }

  readonly #open = async (): Promise<void> => {
    const [file] = this.picker.files ?? [];
    if (!file) return;
    const reading = readSketchText(await file.text());
    this.picker.value = '';
    this.problems = reading.ok ? [] : reading.problems;
    if (!reading.ok) return;
    this.session.open(reading.sketch);
    this.dispatchEvent(new CustomEvent('sketch-opened'));
  };

  readonly #escape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    this.shown = false;
    this.problems = [];
  };

  readonly #leave = (event: FocusEvent): void => {
    const to = event.relatedTarget;
    if (to instanceof Node && !this.renderRoot.contains(to) && !this.contains(to) && to !== this) this.shown = false;
  };
}
