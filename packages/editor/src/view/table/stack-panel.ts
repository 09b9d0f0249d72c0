import { drawStack } from '@trimwell/handout';
import { CARD_BASE, type Face, type Sketch } from '@trimwell/sketch';
import { css, html } from 'lit';
import { styleMap } from 'lit/directives/style-map.js';
import type { SessionChange } from '../../session/session.js';
import { lowerOrder, raiseOrder, select } from '../../state/commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

/** Height of a row of the stack, in ems of its drawing: rows are at least 24 px apart on the narrowest table. */
const ROW_EMS = 3.6;

/** The stack: every piece of this face as a slip of its own paper, lifted apart, to pick and to reorder. */
export class StackElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      .stack {
        position: relative;
      }
      trimwell-drawing {
        width: 100%;
      }
      .row {
        position: absolute;
        right: 0;
        height: 24px;
        transform: translateY(-50%);
        display: flex;
        align-items: center;
      }
      .row .pick {
        flex: 1;
        min-height: 24px;
        padding: 0 4px;
        overflow: hidden;
        font-size: 13px;
        text-align: left;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .row .pick b {
        display: inline-block;
        min-width: 1.5em;
        font-weight: 600;
      }
      .row.lit .pick,
      .row.chosen .pick {
        color: var(--accent);
      }
      .row.chosen .pick {
        font-weight: 600;
      }
    `,
  ];

  #drawn: { readonly sketch: Sketch; readonly face: Face; readonly drawing: ReturnType<typeof drawStack> } | null =
    null;

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  #drawing() {
    const { sketch, face } = this.session.state;
    if (this.#drawn?.sketch !== sketch || this.#drawn.face !== face) {
      const size = (sketch.card.width + sketch.card.height / 3) / 22;
      this.#drawn = {
        sketch,
        face,
        drawing: drawStack(sketch, { face, style: { unit: sketch.unit }, size, lift: size * ROW_EMS }),
      };
    }
    return this.#drawn.drawing;
  }

  protected override render() {
    const { sketch, face, selection } = this.session.state;
    const drawing = this.#drawing();
    const { box } = drawing;
    const texts = drawing.items.filter((item) => item.kind === 'text');
    const slips = { ...drawing, items: drawing.items.filter((item) => item.kind !== 'text') };
    const rows = [CARD_BASE, ...sketch.pieces.filter((piece) => piece.face === face).map((piece) => piece.id)];
    const left = (at: number): string => `${((at - box.x) / box.width) * 100}%`;
    const top = (at: number): string => `${((at - box.y) / box.height) * 100}%`;
    return html`<h2>The stack</h2>
      <div class="stack" style=${styleMap({ 'aspect-ratio': `${box.width} / ${box.height}` })}>
        <trimwell-drawing
          .drawing=${slips}
          .lit=${this.pointing.piece ?? selection.at(-1) ?? null}
          @piece-point=${(event: CustomEvent<{ piece: string | null }>) => {
            this.pointing.piece = event.detail.piece;
          }}
          @piece-pick=${(event: CustomEvent<{ piece: string }>) => this.#pick(event.detail.piece)}
        ></trimwell-drawing>
        ${rows.map((id) => {
          const name = texts.find((item) => item.key === `slip:${id}:name`);
          const label = texts.find((item) => item.key === `slip:${id}:label`);
          if (name?.kind !== 'text' || label?.kind !== 'text') return '';
          const chosen = selection.includes(id);
          return html`<div
            class="row ${chosen ? 'chosen' : ''} ${id === this.pointing.piece ? 'lit' : ''}"
            style=${styleMap({ left: left(label.at.x), top: top(label.at.y - label.size * 0.35) })}
          >
            <button
              class="pick"
              title=${name.text}
              ?disabled=${id === CARD_BASE}
              aria-pressed=${chosen}
              @click=${() => this.#pick(id)}
              @pointerenter=${() => {
                this.pointing.piece = id;
              }}
              @pointerleave=${() => {
                this.pointing.piece = null;
              }}
              @focus=${() => {
                this.pointing.piece = id;
              }}
              @blur=${() => {
                this.pointing.piece = null;
              }}
              @keydown=${(event: KeyboardEvent) => this.#key(event, id)}
            ><b>${label.text}</b>${id === CARD_BASE ? 'Card base' : (sketch.pieces.find((piece) => piece.id === id)?.name ?? id)}</button>
          </div>`;
        })}
      </div>`;
  }

  /** Page Up and Page Down change the gluing order of the row that has the focus. */
  #key(event: KeyboardEvent, piece: string): void {
    const command = event.key === 'PageUp' ? raiseOrder : event.key === 'PageDown' ? lowerOrder : null;
    if (!command || piece === CARD_BASE) return;
    event.preventDefault();
    this.#pick(piece);
    command(this.session.state, this.session.dispatch, Date.now());
  }

  #pick(piece: string): void {
    if (piece !== CARD_BASE) select(piece)(this.session.state, this.session.dispatch, Date.now());
  }
}
