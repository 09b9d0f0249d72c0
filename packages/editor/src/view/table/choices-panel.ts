import { BLADE_CAUTION, KNIFE_CAUTION } from '@trimwell/handout';
import { css, html } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

type Choice = 'stoppedCuts' | 'hiddenCentres';

const CHOICES: readonly {
  readonly is: Choice;
  readonly name: string;
  readonly means: string;
  readonly caution: string;
}[] = [
  {
    is: 'stoppedCuts',
    name: 'Stopped cuts',
    means: 'A cut may end inside the sheet. Needs a sliding blade that you can stop there.',
    caution: BLADE_CAUTION,
  },
  {
    is: 'hiddenCentres',
    name: 'Hidden centres',
    means: 'Paper that gets covered is cut out first and used. Needs a craft knife.',
    caution: KNIFE_CAUTION,
  },
];

/** Two ways to save paper that are offered, never assumed: each a switch that says what it needs and, once it is on, what to take care of. */
export class ChoicesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      h2 {
        margin-bottom: 2px;
      }
      button {
        display: flex;
        align-items: center;
        gap: 8px;
        padding: 0;
        font-weight: 600;
      }
      /* A slot with a slider in it, as on a trimmer's rail: at the right end when on. */
      .rail {
        position: relative;
        flex: none;
        width: 30px;
        height: 14px;
        border: 1px solid var(--muted);
        border-radius: 2px;
        background: linear-gradient(var(--muted), var(--muted)) center / 100% 1px no-repeat;
      }
      .rail::after {
        content: '';
        position: absolute;
        left: 2px;
        top: -3px;
        width: 9px;
        height: 18px;
        border-radius: 1px;
        background: var(--muted);
        transition: left 120ms;
      }
      [aria-checked='true'] .rail {
        border-color: var(--good);
      }
      [aria-checked='true'] .rail::after {
        left: 17px;
        background: var(--good);
      }
      p {
        font-size: 12px;
        min-height: 2.7em;
        line-height: 1.35;
      }
      .choice + .choice {
        margin-top: 5px;
      }
      @media (prefers-reduced-motion: reduce) {
        .rail::after {
          transition: none;
        }
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.sketch;
  }

  protected override render() {
    const { batch } = this.session.state.sketch;
    return html`<h2>To save paper</h2>
      ${CHOICES.map(({ is, name, means, caution }) => {
        const on = batch[is];
        return html`<div class="choice">
          <button role="switch" aria-checked=${on} aria-describedby=${is} @click=${() => this.#turn(is)}><span class="rail"></span>${name}</button>
          <p id=${is} class=${on ? 'caution' : 'quiet'}>${on ? caution : means}</p>
        </div>`;
      })}`;
  }

  #turn(is: Choice): void {
    const { batch } = this.session.document;
    this.session.dispatch({
      event: `batch.${is === 'stoppedCuts' ? 'stopped-cuts' : 'hidden-centres'}`,
      edits: [{ do: 'batch', batch: { ...batch, [is]: !batch[is] } }],
      at: Date.now(),
    });
  }
}
