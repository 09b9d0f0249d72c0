import type { Face } from '@trimwell/sketch';
import { css, html } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

const FACES: readonly (readonly [Face, string])[] = [
  ['front', 'Front'],
  ['inside', 'Inside'],
];

/** Which side of the card lies up: two words, the one that does underlined as by a pencil. Beside the card they stand under each other. */
export class TurnOverElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      div {
        display: grid;
        justify-items: start;
        gap: 2px;
      }
      :host([narrow]) div {
        display: inline-flex;
      }
      button {
        min-width: 40px;
        font: 500 15px / 1.2 var(--heading-font);
        color: var(--muted);
      }
      button[aria-pressed='true'] {
        border-radius: 0;
        color: var(--ink);
        box-shadow: inset 0 -2px 0 var(--accent);
      }
      /* Shadows are not drawn there. */
      @media (forced-colors: active) {
        button[aria-pressed='true'] {
          border-bottom: 2px solid Highlight;
        }
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.selection;
  }

  protected override render() {
    const { face } = this.session.state;
    return html`<div role="group" aria-label="Face of the card">
      ${FACES.map(
        ([side, name]) => html`<button aria-pressed=${side === face} @click=${() => this.#turn(side)}>${name}</button>`,
      )}
    </div>`;
  }

  #turn(face: Face): void {
    if (face === this.session.state.face) return;
    this.session.dispatch({ event: 'card.turn', edits: [], selection: [], face, at: Date.now() });
  }
}
