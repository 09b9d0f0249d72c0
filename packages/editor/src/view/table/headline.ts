import { css, html } from 'lit';
import { query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { redoEvent, undoEvent } from '../../state/history.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/** The title, the steps back and forth, the unit, and the faces of the card. Files come through the slot. */
export class HeadlineElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      :host {
        container-type: inline-size;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 14px;
      }
      .title {
        flex: 1 1 220px;
        display: flex;
        align-items: baseline;
        gap: 12px;
        min-width: 0;
      }
      input.name {
        flex: 0 1 auto;
        min-width: 60px;
        width: 17ch;
        max-width: 100%;
        border-bottom-color: transparent;
        font: 500 25px / 1.25 var(--heading-font);
      }
      @supports (field-sizing: content) {
        input.name {
          field-sizing: content;
          width: auto;
        }
      }
      input.name:hover {
        border-bottom-color: var(--line);
      }
      .number {
        white-space: nowrap;
        overflow: hidden;
        text-overflow: ellipsis;
      }
      @container (max-width: 640px) {
        .number {
          display: none;
        }
        .title {
          flex-basis: 100%;
        }
      }
      .pair {
        display: inline-flex;
        border: 1px solid var(--line);
        border-radius: 4px;
      }
      .pair button {
        border-radius: 3px;
        min-width: 34px;
      }
      .pair button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--table);
      }
    `,
  ];

  @query('input.name') private readonly nameBox!: HTMLInputElement;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override render() {
    const { state } = this.session;
    const { sketch } = state;
    const about = [sketch.credit, sketch.number].filter(Boolean).join(', ');
    return html`<header>
      <div class="title">
        <input class="name" aria-label="Title of the sketch" maxlength="80" .value=${sketch.title} @change=${this.#rename} @keydown=${stop} />
        <span class="number quiet">${about}</span>
      </div>
      <div>
        <button ?disabled=${undoEvent(state) === null} @click=${() => this.session.undo()}>Undo</button>
        <button ?disabled=${redoEvent(state) === null} @click=${() => this.session.redo()}>Redo</button>
      </div>
      <div class="pair" role="group" aria-label="Unit">
        ${(['in', 'mm'] as const).map(
          (unit) =>
            html`<button aria-pressed=${sketch.unit === unit} @click=${() => this.#unit(unit)}>${unit}</button>`,
        )}
      </div>
      <div class="pair" role="group" aria-label="Face of the card">
        ${(['front', 'inside'] as const).map(
          (face) =>
            html`<button aria-pressed=${state.face === face} @click=${() => this.#face(face)}>${face === 'front' ? 'Front' : 'Inside'}</button>`,
        )}
      </div>
      <slot></slot>
    </header>`;
  }

  readonly #rename = (): void => {
    const title = this.nameBox.value.trim();
    if (title === '') this.nameBox.value = this.session.state.sketch.title;
    else if (title !== this.session.state.sketch.title) this.#do('sketch.rename', [{ do: 'describe', title }]);
  };

  #unit(unit: 'in' | 'mm'): void {
    if (unit !== this.session.state.sketch.unit) this.#do('sketch.unit', [{ do: 'unit', unit }]);
  }

  #face(face: 'front' | 'inside'): void {
    if (face !== this.session.state.face)
      this.session.dispatch({ event: 'card.turn', edits: [], selection: [], face, at: Date.now() });
  }

  #do(event: string, edits: Parameters<typeof this.session.dispatch>[0]['edits']): void {
    this.session.dispatch({ event, edits, at: Date.now() });
  }
}

/** Keys typed into a field are for the field. */
function stop(event: Event): void {
  event.stopPropagation();
}
