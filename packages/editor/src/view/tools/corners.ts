import { type Length, ticks } from '@trimwell/geometry';
import { type Corners, isConcentric, type Piece, type Sketch } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { canRound, setCorners } from '../../state/commands.js';
import { type Command, selectedPiece } from '../../state/state.js';
import { evenUnder, roundWithin, setConcentric } from '../../state/tool-commands.js';
import { SessionElement } from '../session-element.js';
import { selectionField } from '../table/selection-field.js';
import { tableStyles } from '../table/table-styles.js';
import { trayWish } from '../trays/tray-names.js';
import { cornerStyle } from './corner-style.js';
import { ownTools, roundersFor } from './own-tools.js';
import { CORNER_NAMES, noRounderText, radiusText, toolMessages, withinRevealText } from './tool-messages.js';
import { toolStyles } from './tool-styles.js';
import { WatchOwnTools } from './watch-own-tools.js';

const CORNERS = Object.keys(CORNER_NAMES) as readonly (keyof Corners)[];

function all(radius: Length): Corners {
  return { tl: radius, tr: radius, br: radius, bl: radius };
}

/**
 * The corners of the selected piece: one radius for all or one for each, from the designer's own rounders (the usual ones
 * as long as none are named), and concentric with what the piece mats or lies on.
 */
export class CornersElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    toolStyles,
    css`
      :host {
        min-width: 0;
      }
      .radii {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 1px;
        margin: 2px 0;
      }
      .corner {
        flex: 0 0 auto;
      }
      .first {
        display: flex;
        align-items: baseline;
        gap: 8px;
      }
      trimwell-length {
        width: 68px;
      }
      label {
        display: flex;
        align-items: center;
        gap: 6px;
        min-height: 24px;
        font-size: 12.5px;
      }
      label input {
        flex: none;
        width: 16px;
        min-height: 16px;
        margin: 0;
        accent-color: var(--accent);
      }
      summary {
        min-height: 24px;
        cursor: pointer;
        color: var(--muted);
        font-size: 12.5px;
      }
      .four {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 2px 8px;
        align-items: baseline;
        font-size: 12.5px;
      }
      .word {
        color: var(--muted);
        font-size: 12px;
        line-height: 1.35;
      }
      .small {
        min-height: 24px;
        padding: 0 2px;
        margin-left: -2px;
        font-size: 12.5px;
        text-align: left;
      }
    `,
  ];

  readonly #own = new WatchOwnTools(this, ownTools);

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override render() {
    const { state } = this.session;
    const piece = selectedPiece(state);
    if (piece?.shape !== 'rectangle') return nothing;
    const { unit } = state.sketch;
    const { corners } = piece;
    const same = CORNERS.every((corner) => corners[corner] === corners.tl);
    const largest = ticks(Math.max(...CORNERS.map((corner) => corners[corner])));
    const word = noRounderText(corners, this.#own.tools.radii, unit);
    return html`<div class="first">
        ${this.#field('Radius of all corners', same ? corners.tl : largest, piece, all, (radius) => setCorners(radius))}
        ${same ? nothing : html`<span class="word">the largest; they differ</span>`}
      </div>
      <div class="radii" role="group" aria-label="Round all corners">
        ${[ticks(0), ...roundersFor(unit, this.#own.tools)].map((radius) => this.#choice(radius, piece, same && corners.tl === radius, unit))}
      </div>
      ${this.#concentric(state.sketch, piece)}
      ${word === '' ? nothing : html`<p class="word">${word} <button class="small act" @click=${() => this.dispatchEvent(trayWish({ tray: 'tools' }))}>Your tools</button></p>`}
      <details ?open=${!same}>
        <summary>each corner</summary>
        <div class="four">
          ${CORNERS.map(
            (corner) =>
              html`<span>${CORNER_NAMES[corner]}</span>${this.#field(
                `Radius, ${CORNER_NAMES[corner]}`,
                corners[corner],
                piece,
                (radius) => ({ ...corners, [corner]: radius }),
                (radius) => setCorners(radius, corner),
              )}`,
          )}
        </div>
      </details>`;
  }

  #choice(radius: Length, piece: Piece, pressed: boolean, unit: Sketch['unit']): TemplateResult {
    const words = radiusText(radius, unit);
    const figure = radius === 0 ? '0' : words.replace(` ${unit}`, '');
    return html`<button
      class="corner"
      aria-label=${radius === 0 ? '0, square corners' : `Round by ${words}`}
      title=${words}
      aria-pressed=${String(pressed)}
      ?disabled=${!canRound(piece, all(radius))}
      .style=${cornerStyle(radius)}
      @click=${() => this.#do(setCorners(radius))}
    >${figure}</button>`;
  }

  #concentric(sketch: Sketch, piece: Piece): TemplateResult | typeof nothing {
    const inner = sketch.pieces.find(({ id }) => id === piece.mats?.piece);
    if (inner) {
      const change = (event: Event): void => {
        if (event.target instanceof HTMLInputElement) this.#do(setConcentric(event.target.checked));
      };
      return html`<label><input type="checkbox" .checked=${piece.mats?.concentric === true} @change=${change} />${toolMessages.concentric(inner.name)}</label>`;
    }
    const under = evenUnder(sketch, piece);
    if (!under || !roundWithin(this.session.state)) return nothing;
    return html`<button class="small" @click=${() => this.#do(roundWithin)}>${toolMessages.roundWithin(under.piece.name)}</button>`;
  }

  #field(
    label: string,
    value: Length,
    piece: Piece,
    corners: (radius: Length) => Corners,
    command: (radius: Length) => Command,
  ): unknown {
    const { unit } = this.session.state.sketch;
    const reveal = isConcentric(piece) ? piece.mats?.reveal : undefined;
    const check = (radius: Length): string | null =>
      reveal === undefined || canRound(piece, corners(radius)) ? null : withinRevealText(reveal, unit);
    return selectionField(
      this.session,
      (run) => html`<trimwell-length
      .value=${value}
      .unit=${unit}
      .least=${0}
      .check=${check}
      label=${label}
      @length-change=${(event: CustomEvent<{ value: Length }>) => run(command(event.detail.value))}
    ></trimwell-length>`,
    );
  }

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }
}
