import { formatLength, type Length, ticks } from '@trimwell/geometry';
import { labelPieces } from '@trimwell/handout';
import { EDGES, type Edge, type Piece, SHAPES, type Sketch } from '@trimwell/sketch';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { SessionChange } from '../../session/session.js';
import {
  type Corner,
  clearSelection,
  cutFrom,
  duplicate,
  lowerOrder,
  matPiece,
  raiseOrder,
  remove,
  resizeTo,
  setCorners,
  setName,
  setPunch,
  setRaise,
  tiltTo,
} from '../../state/commands.js';
import { type Command, selectedPiece } from '../../state/state.js';
import { PICK_A_PIECE } from '../messages.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from './table-styles.js';

const CORNERS: readonly (readonly [Corner, string])[] = [
  ['tl', 'top left'],
  ['tr', 'top right'],
  ['br', 'bottom right'],
  ['bl', 'bottom left'],
];

/** The ticket at the selected piece: its sizes, place, reveals, corners, edges and paper, all to be changed in place. */
export class TicketElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      .slip {
        position: relative;
        padding: 12px 12px 6px 14px;
        background: var(--slip);
        box-shadow: 0 1px 0 rgb(20 25 24 / 0.12), 0 5px 14px rgb(20 25 24 / 0.14);
        clip-path: none;
      }
      .slip::before {
        content: '';
        position: absolute;
        right: 13px;
        top: 13px;
        width: 11px;
        height: 11px;
        border: 1px solid var(--line);
        border-radius: 50%;
        background: var(--table);
      }
      .empty {
        padding: 10px 4px;
        color: var(--muted);
        font: italic 15px / 1.5 var(--heading-font);
      }
      .top {
        display: flex;
        align-items: baseline;
        gap: 8px;
        padding-right: 24px;
        margin-bottom: 6px;
      }
      .top b {
        font: 600 17px var(--heading-font);
      }
      .top input {
        flex: 1;
        min-width: 0;
        border-bottom-color: transparent;
        font: 500 17px / 1.2 var(--heading-font);
      }
      .top input:hover {
        border-bottom-color: var(--line);
      }
      dl {
        display: grid;
        grid-template-columns: 52px minmax(0, 1fr);
        gap: 1px 8px;
        margin: 0;
        align-items: baseline;
      }
      dt {
        color: var(--muted);
        font-size: 12.5px;
      }
      dd {
        display: flex;
        flex-wrap: wrap;
        gap: 2px 6px;
        align-items: baseline;
        margin: 0;
        min-width: 0;
      }
      dd.pair {
        flex-wrap: nowrap;
      }
      trimwell-length {
        width: 68px;
      }
      .pair trimwell-length {
        flex: 1 1 0;
        width: 0;
        min-width: 0;
      }
      input.number {
        width: 40px;
      }
      select {
        max-width: 100%;
      }
      details[open] {
        width: 100%;
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
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 0 4px;
        margin: 4px -6px 0;
      }
    `,
  ];

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }

  protected override render() {
    const { state } = this.session;
    const piece = selectedPiece(state);
    if (!piece) return html`<p class="empty">${PICK_A_PIECE}</p>`;
    const { sketch } = state;
    const can = (command: Command): boolean => command(state);
    return html`<section class="slip" aria-label="The selected piece" part="ticket">
      <div class="top">
        <b>${labelPieces(sketch).get(piece.id)}</b>
        <input aria-label="Name of the piece" maxlength="80" .value=${piece.name} @keydown=${stop} @change=${(event: Event) => this.#name(event, piece)} />
      </div>
      <dl>
        <dt>size</dt>
        <dd class="pair">${this.#length('Width', piece.width, 1, (width) => resizeTo({ width }))}×${this.#length('Height', piece.height, 1, (height) => resizeTo({ height }))}</dd>
        <dt>lies</dt>
        <dd class="pair">${this.#length('From the left', piece.x, -LARGE, (x) => resizeTo({ x }))}→${this.#length('From the top', piece.y, -LARGE, (y) => resizeTo({ y }))}↓</dd>
        <dt>shows</dt>
        <dd>${shows(sketch, piece)}</dd>
        ${piece.shape === 'rectangle' ? html`<dt>corners</dt><dd>${this.#corners(piece)}</dd><dt>edges</dt><dd>${this.#edges(sketch, piece)}</dd>` : nothing}
        <dt>shape</dt>
        <dd>
          <select aria-label="Shape" @change=${(event: Event) => this.#shape(event, piece)}>
            ${SHAPES.map((shape) => html`<option ?selected=${shape === piece.shape}>${shape}</option>`)}
          </select>
        </dd>
        <dt>paper</dt>
        <dd>
          <select aria-label="Paper" @change=${(event: Event) => {
            if (event.target instanceof HTMLSelectElement) this.#do(cutFrom(event.target.value));
          }}>
            ${[...sketch.papers, ...sketch.mixes].map(({ id, name }) => html`<option value=${id} ?selected=${id === piece.from}>${name}</option>`)}
          </select>
        </dd>
        <dt>tilt</dt>
        <dd class="pair">
          <input class="number" type="number" step="1" min="-180" max="180" aria-label="Tilt in degrees" .value=${String(piece.tilt)} @keydown=${stop} @change=${(event: Event) => this.#tilt(event)} />°
          <span class="quiet">raised</span>${this.#length('Raised by', piece.raise, 0, (raise) => setRaise(raise))}
        </dd>
      </dl>
      <div class="acts">
        <button ?disabled=${!can(raiseOrder)} @click=${() => this.#do(raiseOrder)}>Glue later</button>
        <button ?disabled=${!can(lowerOrder)} @click=${() => this.#do(lowerOrder)}>Glue earlier</button>
        <button ?disabled=${!can(matPiece())} @click=${() => this.#do(matPiece())}>Mat it</button>
        <button ?disabled=${!can(duplicate)} @click=${() => this.#do(duplicate)}>Cut again</button>
        <button class="act" @click=${() => this.#do(remove)}>Take away</button>
        <button @click=${() => this.#do(clearSelection)}>Done</button>
      </div>
    </section>`;
  }

  #length(label: string, value: Length, least: number, command: (value: Length) => Command): TemplateResult {
    return html`<trimwell-length
      .value=${value}
      .unit=${this.session.state.sketch.unit}
      .least=${least}
      label=${label}
      @length-change=${(event: CustomEvent<{ value: Length }>) => this.#do(command(event.detail.value))}
    ></trimwell-length>`;
  }

  #corners(piece: Piece): TemplateResult {
    const radii = Object.values(piece.corners);
    const same = radii.every((radius) => radius === radii[0]);
    return html`${this.#length('Radius of all corners', same ? piece.corners.tl : ticks(Math.max(...radii)), 0, (radius) => setCorners(radius))}
      <details ?open=${!same}>
        <summary>${same ? 'each corner' : 'corners differ'}</summary>
        <div class="four">
          ${CORNERS.map(([corner, name]) => html`<span>${name}</span>${this.#length(`Radius, ${name}`, piece.corners[corner], 0, (radius) => setCorners(radius, corner))}`)}
        </div>
      </details>`;
  }

  #edges(sketch: Sketch, piece: Piece): TemplateResult {
    const punched = EDGES.filter((edge) => piece.punched[edge]);
    if (sketch.punches.length === 0) return html`<span class="quiet">plain; this sketch has no punch</span>`;
    return html`<details ?open=${punched.length > 0}>
      <summary>${punched.length === 0 ? 'plain' : `punched: ${punched.join(', ')}`}</summary>
      <div class="four">
        ${EDGES.map(
          (edge) => html`<span>${edge}</span>
            <select aria-label="Edge, ${edge}" @change=${(event: Event) => this.#punch(event, edge)}>
              <option value="" ?selected=${!piece.punched[edge]}>plain</option>
              ${sketch.punches.map(({ id, name }) => html`<option value=${id} ?selected=${piece.punched[edge] === id}>${name}</option>`)}
            </select>`,
        )}
      </div>
    </details>`;
  }

  #name(event: Event, piece: Piece): void {
    if (!(event.target instanceof HTMLInputElement)) return;
    const name = event.target.value.trim();
    if (name === '') event.target.value = piece.name;
    else this.#do(setName(name));
  }

  #shape(event: Event, piece: Piece): void {
    const shape = SHAPES.find((known) => event.target instanceof HTMLSelectElement && known === event.target.value);
    if (shape && shape !== piece.shape) {
      this.session.dispatch({
        event: 'piece.shape',
        edits: [{ do: 'alter-piece', piece: piece.id, shape }],
        at: Date.now(),
      });
    }
  }

  #tilt(event: Event): void {
    if (!(event.target instanceof HTMLInputElement)) return;
    const degrees = event.target.valueAsNumber;
    if (Number.isFinite(degrees) && Math.abs(degrees) <= 180) this.#do(tiltTo(degrees));
    else event.target.value = String(selectedPiece(this.session.state)?.tilt ?? 0);
  }

  #punch(event: Event, edge: Edge): void {
    if (event.target instanceof HTMLSelectElement)
      this.#do(setPunch(edge, event.target.value === '' ? null : event.target.value));
  }
}

/** A place may lie off the card, but not beyond what a sketch can hold. */
const LARGE = 2_000 * 640;

/** What shows around the piece: of what it is matted by, else to the four edges of the card. */
function shows(sketch: Sketch, piece: Piece): string {
  const style = { unit: sketch.unit, bare: true } as const;
  const mat = sketch.pieces.find((other) => other.mats?.piece === piece.id);
  if (mat?.mats) return `${formatLength(mat.mats.reveal, { unit: sketch.unit })} of ${mat.name} all round`;
  const { card } = sketch;
  const right = ticks(card.width - piece.x - piece.width);
  const bottom = ticks(card.height - piece.y - piece.height);
  const [l, t, r, b] = [piece.x, piece.y, right, bottom].map((length) => formatLength(length, style));
  if (l === r && t === b && l === t) return `${l} ${sketch.unit} of the card all round`;
  return `${l} left, ${r} right, ${t} above, ${b} below`;
}

/** Keys typed into a field are for the field. */
function stop(event: Event): void {
  event.stopPropagation();
}
