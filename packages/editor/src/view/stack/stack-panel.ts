import { type Drawing, labelPieces } from '@trimwell/handout';
import { CARD_BASE, type Face, type Piece, type Sketch } from '@trimwell/sketch';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { SessionChange } from '../../session/session.js';
import { lowerOrder, raiseOrder, select, selectThese, toBottom, toggleSelect, toTop } from '../../state/commands.js';
import { glueOver, markPiece } from '../../state/stack-commands.js';
import type { Command } from '../../state/state.js';
import { inStyle } from '../in-style.js';
import { watchPhotos } from '../photos/photo-watch.js';
import { SessionElement } from '../session-element.js';
import { drawingStyles } from '../table/drawing-styles.js';
import { tableStyles } from '../table/table-styles.js';
import { trayWish } from '../trays/tray-names.js';
import { WatchCard } from '../watch-card.js';
import { pinMark, slipMark } from './row-marks.js';
import { type StackDrag, StackDragging, type StackDragHost } from './stack-drag.js';
import { type GridPlace, gridStep } from './stack-keys.js';
import { overAt, type RowPlace, stretchTo, withGap } from './stack-order.js';
import { liftedSlips, StackPicture, type StackSight, stackSight } from './stack-picture.js';
import { stackStyles } from './stack-styles.js';
import {
  BUILD,
  ESTIMATED,
  faceText,
  foamText,
  heldText,
  PUT_BACK,
  placedText,
  STACK_HELP,
  thicknessText,
} from './stack-words.js';

/** The buttons that do what a drag does: word, what a reader is told, command. */
const ORDERS: readonly (readonly [string, string, Command])[] = [
  ['Up', 'Up: glue later', raiseOrder],
  ['Down', 'Down: glue earlier', lowerOrder],
  ['To the top', 'To the top: glue last', toTop],
  ['To the bottom', 'To the bottom: glue first', toBottom],
];

interface Lift extends StackDrag {
  readonly over: string | null;
}

/**
 * The stack: every piece of this face as a slip of its own paper, lifted apart and seen from the side, as thick as its
 * paper and as high as its foam; to pick, to reorder, to lock and to hide. The base lies at the bottom.
 */
export class StackElement extends SessionElement implements StackDragHost {
  static override readonly styles = [tableStyles, drawingStyles, stackStyles];

  @query('.picture') private readonly place!: HTMLElement;
  @query('[role="status"]') private readonly status!: HTMLElement;
  @state() private lift: Lift | null = null;
  @state() private refused = '';
  @state() private at: GridPlace = { row: '', column: 0 };
  #slips: StackPicture | null = null;
  #seen: { readonly sketch: Sketch; readonly face: Face; readonly sight: StackSight } | null = null;
  readonly #watch = new WatchCard(this);
  #refocus = false;
  #held = false;
  /** The press that ends a drag, or that has taken a piece already, is no click. */
  #pressed = false;
  readonly #dragging = new StackDragging(this);

  constructor() {
    super();
    watchPhotos(this, () => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#dragging.dispose();
  }

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  protected override get followsPointing(): boolean {
    return true;
  }

  protected override sessionChanged(change: SessionChange): void {
    if (change.sketch || change.selection) this.refused = '';
    super.sessionChanged(change);
  }

  get picture(): HTMLElement {
    return this.place;
  }

  /** The stack at rest. */
  #sight(): StackSight {
    const { sketch, face } = this.session.state;
    if (this.#seen?.sketch !== sketch || this.#seen.face !== face)
      this.#seen = { sketch, face, sight: stackSight(sketch, face) };
    return this.#seen.sight;
  }

  /** What is on the screen: with a gap where the lifted slips would lie, and those at the pointer. */
  #shown(): { readonly drawing: Drawing; readonly rows: readonly RowPlace[]; readonly height: number } {
    const rest = this.#sight();
    const { lift } = this;
    if (!lift) return rest;
    const { sketch, face } = this.session.state;
    const gap = stackSight(withGap(sketch, lift.ids, lift.over), face);
    const middles = new Map(rest.rows.map(({ id, middle }) => [id, middle + lift.by]));
    const rows = gap.rows.map((row) =>
      lift.ids.includes(row.id) ? { ...row, middle: middles.get(row.id) ?? row.middle } : row,
    );
    return { ...gap, rows, drawing: liftedSlips(gap.drawing, lift.ids, rest.levels, lift.by / rest.zoom) };
  }

  protected override render(): TemplateResult {
    const { state } = this.session;
    const { face } = state;
    const { rows, height } = this.#shown();
    const { view } = this.#watch.card;
    return html`<header>
        <h2>The stack</h2>
        <span class="quiet">${faceText(face)}</span>
        <button class="act build" aria-haspopup="dialog" @click=${() => this.dispatchEvent(trayWish({ tray: 'build' }))}>${BUILD}</button>
      </header>
      <p class="thick quiet" title=${view?.sight.thickness.estimated ? ESTIMATED : nothing}>${thicknessText(view, face)}</p>
      <div class="order" role="group" aria-label="Gluing order of what is taken">
        ${ORDERS.map(
          ([word, says, command]) =>
            html`<button aria-label=${says} aria-disabled=${String(!command(state))} @click=${() => this.#reorder(command)}>${word}</button>`,
        )}
      </div>
      <div class="body ${this.lift ? 'dragging' : ''}" ${inStyle({ height: `${height.toFixed(1)}px` })}>
        <div
          class="picture"
          @pointerdown=${(event: PointerEvent) => this.#press(event, this.#slips?.pieceAt(event) ?? null)}
          @pointerover=${(event: PointerEvent) => this.#point(this.#slips?.pieceAt(event) ?? null)}
          @pointerleave=${() => this.#point(null)}
          @click=${(event: MouseEvent) => this.#click(event, this.#slips?.pieceAt(event) ?? null)}
        ></div>
        <div role="grid" aria-label="The stack ${faceText(face)}, topmost first" aria-multiselectable="true" aria-describedby="help" @keydown=${this.#key}>
          ${repeat(
            [...rows].reverse(),
            ({ id }) => id,
            ({ id, middle }) => this.#row(id, middle),
          )}
        </div>
      </div>
      ${this.refused === '' ? nothing : html`<p class="refused">${this.refused}</p>`}
      <p id="help" class="unseen">${STACK_HELP}</p>
      <p role="status" aria-live="polite" class="unseen"></p>`;
  }

  #row(id: string, middle: number): TemplateResult {
    const { sketch } = this.session.state;
    const piece = sketch.pieces.find((other) => other.id === id);
    const letter = labelPieces(sketch).get(id) ?? '?';
    const classes = Object.entries(this.#classes(id)).flatMap(([name, on]) => (on ? [name] : []));
    const top = inStyle({ top: `${middle.toFixed(1)}px` });
    if (!piece)
      return html`<div role="row" class=${classes.join(' ')} ${top}>
        <div role="gridcell" class="name"><span class="base" tabindex=${this.#stop(CARD_BASE, 0)} data-column="0" data-row=${CARD_BASE}><b>${letter}</b>Card base</span></div>
      </div>`;
    const foam = foamText(piece, { unit: sketch.unit });
    const { locked = false, hidden = false } = piece;
    return html`<div
      role="row"
      class=${classes.join(' ')}
      aria-selected=${this.session.state.selection.includes(id)}
      ${top}
      @pointerenter=${() => this.#point(id)}
      @pointerleave=${() => this.#point(null)}
      @pointerdown=${(event: PointerEvent) => this.#pressRow(event, id)}
    >
      <div role="gridcell" class="name">
        <button class="pick" title=${piece.name} data-row=${id} data-column="0" tabindex=${this.#stop(id, 0)} @focus=${() => this.#focused(id, 0)} @blur=${() => this.#point(null)} @click=${(event: MouseEvent) => this.#click(event, id)}
          ><b>${letter}</b><span class="says">${piece.name}${foam === '' ? nothing : html`<span class="foam">${foam}</span>`}</span></button>
      </div>
      ${this.#mark(piece, 1, 'locked', locked)}${this.#mark(piece, 2, 'hidden', hidden)}
    </div>`;
  }

  #mark(piece: Piece, column: 1 | 2, mark: 'locked' | 'hidden', on: boolean): TemplateResult {
    const word = mark === 'locked' ? 'Lock' : 'Hide';
    return html`<div role="gridcell">
      <button class="mark" aria-label="${word} ${piece.name}" title=${word} aria-pressed=${on} data-row=${piece.id} data-column=${column} tabindex=${this.#stop(piece.id, column)} @focus=${() => this.#focused(piece.id, column)} @blur=${() => this.#point(null)} @click=${() => this.#run(markPiece(piece.id, mark, !on))}
      >${mark === 'locked' ? pinMark(on) : slipMark(on)}</button>
    </div>`;
  }

  #classes(id: string): Readonly<Record<string, boolean>> {
    const { sketch, selection } = this.session.state;
    return {
      lit: id === this.pointing.piece,
      chosen: selection.includes(id),
      hidden: sketch.pieces.find((piece) => piece.id === id)?.hidden === true,
      lifted: this.lift?.ids.includes(id) === true,
    };
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.#held = this.#active() !== null;
  }

  /** The cell that has the focus, or null. */
  #active(): Element | null {
    const active = this.renderRoot instanceof ShadowRoot ? this.renderRoot.activeElement : null;
    return active?.closest('[data-row]') ?? null;
  }

  protected override updated(_changed: PropertyValues): void {
    if (!this.session || !this.place) return;
    this.#slips ??= new StackPicture(this.place);
    this.#slips.show(this.#shown().drawing, (piece) => this.#classes(piece));
    // A row that was moved in the page, as by Undo, has lost the focus on its way.
    if (!this.#refocus && !(this.#held && this.#active() === null)) return;
    this.#refocus = false;
    this.#cell(this.#stopPlace())?.focus({ preventScroll: false });
  }

  /** The rows, topmost first, the base last. */
  #rows(): readonly string[] {
    return this.#sight()
      .rows.map(({ id }) => id)
      .reverse();
  }

  /** The one cell that the Tab key stops at: the one with the focus last, else the piece taken last, else the topmost. */
  #stopPlace(): GridPlace {
    const rows = this.#rows();
    if (rows.includes(this.at.row)) return this.at;
    const taken = this.session.state.selection.at(-1);
    return { row: taken !== undefined && rows.includes(taken) ? taken : (rows[0] ?? CARD_BASE), column: 0 };
  }

  #stop(row: string, column: number): string {
    const stop = this.#stopPlace();
    const here = stop.row === row && (stop.column === column || (row === CARD_BASE && column === 0));
    return here ? '0' : '-1';
  }

  #cell({ row, column }: GridPlace): HTMLElement | null {
    const at = row === CARD_BASE ? 0 : column;
    return this.renderRoot.querySelector(`[data-row="${row}"][data-column="${at}"]`);
  }

  #focused(row: string, column: number): void {
    this.at = { row, column };
    this.#point(row);
  }

  #point(piece: string | null): void {
    if (!this.lift) this.pointing.piece = piece === CARD_BASE ? null : piece;
  }

  readonly #key = (event: KeyboardEvent): void => {
    const place = this.#stopPlace();
    const next = event.ctrlKey || event.metaKey || event.altKey ? null : gridStep(event.key, place, this.#rows());
    if (next) {
      event.preventDefault();
      this.at = next;
      this.#cell(next)?.focus();
      if (event.shiftKey && next.row !== place.row) this.#take(next.row, { stretch: true, more: false });
      return;
    }
    if (place.row === CARD_BASE) return;
    if ((event.key === ' ' || event.key === 'Enter') && place.column === 0) {
      event.preventDefault();
      this.#take(place.row, { stretch: event.shiftKey, more: event.ctrlKey || event.metaKey });
    } else if (event.key === 'PageUp' || event.key === 'PageDown') {
      event.preventDefault();
      if (!this.session.state.selection.includes(place.row)) this.#run(select(place.row));
      const up = event.key === 'PageUp';
      this.#reorder(event.shiftKey ? (up ? toTop : toBottom) : up ? raiseOrder : lowerOrder);
      this.#refocus = true;
    }
  };

  #pressRow(event: PointerEvent, row: string): void {
    const target = event.composedPath()[0];
    const mark = target instanceof Element && target.closest('.mark') !== null;
    // A finger scrolls the list beside the letters, which are what it drags by.
    const byLetter = target instanceof Element && target.closest('b') !== null;
    if (!mark && (event.pointerType === 'mouse' || byLetter)) this.#press(event, row);
  }

  #press(event: PointerEvent, row: string | null): void {
    this.#pressed = false;
    if (row !== null && row !== CARD_BASE) this.#dragging.press(event, row);
  }

  #click(event: MouseEvent, row: string | null): void {
    const dragged = this.#pressed;
    this.#pressed = false;
    if (row !== null && row !== CARD_BASE && !dragged)
      this.#take(row, { stretch: event.shiftKey, more: event.ctrlKey || event.metaKey || this.pointing.gathering });
  }

  #take(row: string, { stretch, more }: { readonly stretch: boolean; readonly more: boolean }): void {
    const { sketch, face, selection } = this.session.state;
    if (stretch) this.#run(selectThese([...stretchTo(sketch, face, selection[0], row)]));
    else this.#run(more ? toggleSelect(row) : select(row));
  }

  #run(command: Command): boolean {
    return command(this.session.state, this.session.dispatch, Date.now());
  }

  #reorder(command: Command): void {
    if (this.#run(command)) this.#say(placedText(this.session.state.sketch, this.session.state.selection));
    else this.#refuse(this.session.state.selection);
  }

  #refuse(ids: readonly string[]): void {
    const held = this.session.state.sketch.pieces.find(({ id, locked }) => locked && ids.includes(id));
    if (!held) return;
    this.refused = heldText(held.name);
    this.#say(this.refused);
  }

  #say(words: string): void {
    this.status.textContent = this.status.textContent === words ? `${words}\u00a0` : words;
  }

  liftedFrom(row: string): readonly string[] | null {
    const { sketch, selection } = this.session.state;
    const ids = selection.includes(row) ? selection : [row];
    if (!sketch.pieces.some(({ id, locked }) => locked && ids.includes(id))) return ids;
    this.#refuse(ids);
    return null;
  }

  dragged(drag: StackDrag): void {
    this.pointing.piece = null;
    this.#pressed = true;
    this.lift = { ...drag, over: overAt(this.#sight().rows, drag.ids, drag.at) };
  }

  dropped(): void {
    const { lift } = this;
    this.lift = null;
    if (!lift) return;
    // The row was moved in the page and has lost the focus that the press gave it.
    this.at = { row: lift.ids.at(-1) ?? '', column: 0 };
    this.#refocus = true;
    if (this.#run(glueOver(lift.ids, lift.over))) this.#say(placedText(this.session.state.sketch, lift.ids));
    else this.#say(PUT_BACK);
  }

  cancelled(): void {
    this.lift = null;
    this.#say(PUT_BACK);
  }
}
