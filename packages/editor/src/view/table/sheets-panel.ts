import type { SheetLayout } from '@trimwell/geometry';
import { type Drawing, drawPlainSheet, drawSheet, labelPieces } from '@trimwell/handout';
import { centreOf, type Paper } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { inStyle } from '../in-style.js';
import { atHandText, centresText, copiesText } from '../messages.js';
import { ANOTHER_PAPER } from '../papers/another-paper.js';
import { SessionElement } from '../session-element.js';
import { trayWish } from '../trays/tray-names.js';
import { PaperDrag } from './paper-drag.js';
import { tableStyles } from './table-styles.js';

/** Height of a 12 in sheet on the table, in pixels; others keep their proportion to it. */
const SHEET_HEIGHT = 126;
const SHEET_TICKS = 12 * 16256;
/** Height of letters on a sheet, in pixels. */
const LETTERS = 11.5;

/** What is asked for by “Cut a piece”. */
export interface PaperCut {
  readonly paper: string;
  readonly byKey: boolean;
}

interface Drawn {
  readonly layout: SheetLayout | null;
  readonly paper: Paper;
  readonly names: string;
  readonly unit: string;
  readonly drawing: Drawing;
}

/**
 * The sheets along the table's edge: each layout of each paper as its own cutting guide. A sheet can be taken and dropped
 * on the card, or asked for a piece by its button; its name opens its paper.
 * @fires paper-drop - A sheet was let go; `detail` is `{ paper, clientX, clientY }`.
 * @fires paper-cut - A piece of a paper is asked for; `detail` is a `PaperCut`.
 * @fires tray-wish - A paper, or a new one, is to be opened in the tray of papers.
 */
export class SheetsElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      ul {
        display: flex;
        align-items: flex-end;
        gap: 26px;
        margin: 0;
        padding: 6px 4px 2px;
        list-style: none;
        overflow-x: auto;
        scrollbar-width: thin;
        /* A layer of its own: what changes elsewhere, as at every move of a drag, does not compose this one anew. */
        will-change: opacity;
      }
      li {
        flex: none;
      }
      .sheet {
        cursor: grab;
        touch-action: pan-x;
        user-select: none;
        -webkit-user-select: none;
        transition: translate 140ms;
      }
      .sheet:hover {
        translate: 0 -4px;
      }
      .stale trimwell-drawing {
        opacity: 0.8;
      }
      .name {
        display: block;
        min-height: 24px;
        margin-top: 3px;
        padding: 3px 0 0;
        font: 500 14px / 1.25 var(--heading-font);
      }
      .another {
        align-self: stretch;
        display: grid;
        padding: 0 4px 44px 0;
      }
      .another button {
        width: 92px;
        padding: 4px 10px;
        border: 1px dashed var(--muted);
        border-radius: 0;
      }
      .facts {
        font-size: 12px;
        white-space: nowrap;
      }
      .facts button {
        min-height: 24px;
        padding: 0 2px;
        margin-left: 4px;
      }
      .none .sheet {
        opacity: 0.62;
      }
      .none .name {
        color: var(--muted);
      }
      @media (prefers-reduced-motion: reduce) {
        .sheet {
          transition: none;
        }
      }
    `,
  ];

  readonly #drawings = new Map<string, Drawn>();
  readonly #drag = new PaperDrag(this);

  protected override concerns(change: SessionChange): boolean {
    return change.plan || change.sketch || change.selection;
  }

  protected override get followsPointing(): boolean {
    return true;
  }

  /** The drawing of one layout, made anew only when something of it changed. */
  #drawing(key: string, layout: SheetLayout | null, paper: Paper, names: string): Drawing {
    const { sketch } = this.session.state;
    const known = this.#drawings.get(key);
    const same =
      known &&
      known.paper === paper &&
      known.names === names &&
      known.unit === sketch.unit &&
      JSON.stringify(known.layout) === JSON.stringify(layout);
    if (known && same) return known.drawing;
    const size = (LETTERS / SHEET_HEIGHT) * SHEET_TICKS;
    const drawing = layout
      ? drawSheet(layout, paper, { style: { unit: sketch.unit }, labels: labelPieces(sketch), size, kerf: 0 })
      : drawPlainSheet(paper, size);
    this.#drawings.set(key, { layout, paper, names, unit: sketch.unit, drawing });
    return drawing;
  }

  protected override render() {
    const { sketch } = this.session.state;
    const { batch, stale } = this.session.plan;
    const names = sketch.pieces.map((piece) => piece.id).join();
    return html`<ul class=${stale ? 'stale' : ''} aria-label="Sheets">
      ${sketch.papers.flatMap((paper) => {
        const plan = batch?.papers.find((candidate) => candidate.paper === paper.id)?.plan;
        const layouts: readonly (SheetLayout | null)[] = plan && plan.sheets.length > 0 ? plan.sheets : [null];
        return layouts.map((layout, index) =>
          this.#sheet(paper, layout, index, this.#drawing(`${paper.id} ${index}`, layout, paper, names)),
        );
      })}
      <li class="another"><button class="act" @click=${() => this.#open(ANOTHER_PAPER)}>Another paper</button></li>
    </ul>`;
  }

  /** Without a pointer, the focus that goes to the piece is to be seen. */
  #cut(paper: Paper, { detail: presses }: MouseEvent): void {
    const detail: PaperCut = { paper: paper.id, byKey: presses === 0 };
    this.dispatchEvent(new CustomEvent('paper-cut', { detail, bubbles: true, composed: true }));
  }

  /** Draws out the tray of papers, with this one open or with a new one. */
  #open(about: string): void {
    this.dispatchEvent(trayWish({ tray: 'papers', about }));
  }

  /** The name of the piece whose centre a layout is cut from; null for a sheet. */
  #centre({ paper }: SheetLayout): string | null {
    const piece = centreOf(paper);
    return piece === null ? null : (this.session.state.sketch.pieces.find(({ id }) => id === piece)?.name ?? piece);
  }

  #sheet(paper: Paper, layout: SheetLayout | null, index: number, drawing: Drawing): TemplateResult {
    const height = (drawing.box.height / SHEET_TICKS) * SHEET_HEIGHT;
    const width = (drawing.box.width / SHEET_TICKS) * SHEET_HEIGHT;
    const centre = layout && this.#centre(layout);
    const copies = layout && (centre ? centresText(layout.copies, centre) : copiesText(layout.copies));
    const facts = [copies ?? 'not used', index === 0 ? atHandText(paper.sheets) : ''].filter(Boolean).join(', ');
    return html`<li class=${layout ? '' : 'none'}>
      <div
        class="sheet"
        role="img"
        aria-label="${centre ? `${paper.name}, ${copies}` : drawing.title}. ${drawing.description}"
        @pointerdown=${(event: PointerEvent) => this.#drag.take(event, paper)}
      >
        <trimwell-drawing
          ${inStyle({ width: `${width}px`, height: `${height}px` })}
          .drawing=${drawing}
          .lit=${this.pointing.piece === null ? this.session.state.selection : [this.pointing.piece]}
          @piece-point=${(event: CustomEvent<{ piece: string | null }>) => {
            this.pointing.piece = event.detail.piece;
          }}
          @piece-pick=${(event: CustomEvent<{ piece: string }>) => select(event.detail.piece)(this.session.state, this.session.dispatch, Date.now())}
        ></trimwell-drawing>
      </div>
      ${index === 0 ? html`<button class="name" title="Open this paper" @click=${() => this.#open(paper.id)}>${paper.name}</button>` : html`<div class="name">${paper.name}</div>`}
      <div class="facts quiet">${facts}${
        index === 0
          ? html`<button class="act" aria-label="Cut a piece from ${paper.name}" @click=${(event: MouseEvent) => this.#cut(paper, event)}>Cut a piece</button>`
          : nothing
      }</div>
    </li>`;
  }
}
