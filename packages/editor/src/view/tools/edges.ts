import { EDGES, type Edge, type Piece, type Sketch } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { selectedPiece } from '../../state/state.js';
import { wholeRepeats } from '../../state/tool-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { openEdgeSlip } from './open-edge-slip.js';
import { punchPicture } from './punch-picture.js';
import { repeatsText } from './tool-messages.js';
import { toolStyles } from './tool-styles.js';

/** The edges of the selected piece, each as it is punched; pressing one opens the slip of punches for it. */
export class EdgesElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    toolStyles,
    css`
      :host {
        min-width: 0;
        width: 100%;
      }
      .four {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: 1px 8px;
      }
      .edge-button {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        align-items: center;
        gap: 0 5px;
        min-height: 26px;
        padding: 1px 2px;
        border-bottom: 1px solid var(--line);
        border-radius: 0;
        font-size: 12.5px;
        text-align: left;
      }
      .edge-button .quiet {
        font-size: 12px;
      }
      .edge-button > span:last-child:not(.unseen) {
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      p {
        padding-top: 2px;
        color: var(--muted);
        font-size: 12px;
        line-height: 1.35;
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override render() {
    const { sketch } = this.session.state;
    const piece = selectedPiece(this.session.state);
    if (piece?.shape !== 'rectangle') return nothing;
    return html`<div class="four">${EDGES.map((edge) => this.#edge(sketch, piece, edge))}</div>
      ${EDGES.map((edge) => this.#hint(sketch, piece, edge))}`;
  }

  #edge(sketch: Sketch, piece: Piece, edge: Edge): TemplateResult {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]) ?? null;
    return html`<button
      class="edge-button"
      aria-haspopup="dialog"
      title=${punch?.name ?? 'plain'}
      @click=${() => openEdgeSlip(this, edge, this.getBoundingClientRect())}
    ><span class="quiet">${edge}</span>${
      punch
        ? html`${punchPicture(punch, { width: 34, height: 20 })}<span class="unseen">${punch.name}</span>`
        : html`<span>plain</span>`
    }</button>`;
  }

  /** Only what is not whole needs a word. */
  #hint(sketch: Sketch, piece: Piece, edge: Edge): TemplateResult | typeof nothing {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]);
    if (!punch || wholeRepeats(piece, edge, punch) === null) return nothing;
    return html`<p>${edge}: ${repeatsText(piece, edge, punch, sketch.unit)}</p>`;
  }
}
