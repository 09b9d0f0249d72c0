import type { Face } from '@trimwell/sketch';
import { css, html } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

const FACES: readonly (readonly [Face, string])[] = [
  ['front', 'Front'],
  ['inside', 'Inside'],
];

/** Which side of the card lies up: two words under each other's shoulder, the upper one underlined as by a pencil. */
export class TurnOverElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      div {
        display: inline-flex;
        gap: 2px;
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
