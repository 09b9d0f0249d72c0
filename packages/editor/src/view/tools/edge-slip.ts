import {
  type Edge,
  type Piece,
  type Punch,
  type Sketch,
  samePunch,
  USUAL_PUNCHES,
  type UsualPunch,
} from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import { property, query } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import { setPunch } from '../../state/commands.js';
import { type Command, selectedPiece } from '../../state/state.js';
import { fitRepeats, punchWith, sideOf, wholeRepeats } from '../../state/tool-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { themeStyles } from '../theme.js';
import { trayWish } from '../trays/tray-names.js';
import { edgeSlipStyles } from './edge-slip-styles.js';
import { ownTools } from './own-tools.js';
import { punchPicture } from './punch-picture.js';
import { fitText, repeatsText, toolMessages } from './tool-messages.js';
import { toolStyles } from './tool-styles.js';
import { WatchOwnTools } from './watch-own-tools.js';

/** Room to the edges of the window, in pixels. */
const MARGIN = 10;
/** Width of a window, in pixels, below which the slip lies along its bottom; as in its style. */
const NARROW = 640;

/**
 * A slip with the punches for one edge of the selected piece, as pictures of what they leave, and plain. A press punches
 * the edge at once, so that several can be tried on.
 * @fires slip-away - The slip was closed, by its button, by Escape or by a press beside it.
 */
export class EdgeSlipElement extends SessionElement {
  static override readonly styles = [themeStyles, tableStyles, toolStyles, edgeSlipStyles];

  @property() edge: Edge = 'bottom';
  @query('dialog') private readonly dialog!: HTMLDialogElement;
  readonly #own = new WatchOwnTools(this, ownTools);

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.selection;
  }

  /** Opens the slip beside `anchor`, inside the window; the focus goes to what the edge has now. */
  async openBeside(anchor: DOMRect): Promise<void> {
    await this.updateComplete;
    const { dialog } = this;
    dialog.showModal();
    const { width, height } = dialog.getBoundingClientRect();
    const [wide, high] = [window.innerWidth, window.innerHeight];
    dialog.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus();
    // On a narrow screen the slip lies at the bottom, by its style.
    if (wide < NARROW) return;
    const beside = anchor.right + MARGIN + width <= wide ? anchor.right + MARGIN : anchor.left - MARGIN - width;
    const within = (at: number, size: number, room: number): number =>
      Math.max(MARGIN, Math.min(at, room - MARGIN - size));
    dialog.style.setProperty('left', `${within(beside, width, wide)}px`);
    dialog.style.setProperty('top', `${within(anchor.top - 24, height, high)}px`);
  }

  protected override render() {
    const { sketch } = this.session.state;
    const piece = selectedPiece(this.session.state);
    return html`<dialog
      aria-labelledby="heading"
      @close=${() => this.dispatchEvent(new CustomEvent('slip-away'))}
      @click=${this.#beside}
      @keydown=${(event: Event) => event.stopPropagation()}
      @pointerdown=${(event: Event) => event.stopPropagation()}
    >
      ${piece?.shape === 'rectangle' ? this.#slip(sketch, piece) : html`<h2 id="heading">No edge is selected</h2>`}
    </dialog>`;
  }

  #slip(sketch: Sketch, piece: Piece): TemplateResult {
    const { edge } = this;
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]) ?? null;
    const known = (one: UsualPunch): boolean => sketch.punches.some((other) => samePunch(other, one));
    const own = this.#own.tools.punches.filter((one) => !known(one));
    const usual = USUAL_PUNCHES[sketch.unit].filter(
      (one) => !known(one) && !own.some((other) => samePunch(other, one)),
    );
    return html`<h2 id="heading">${toolMessages.edgeOf(edge, piece)}</h2>
      <div class="scroll">
        <div class="choices" role="group" aria-label="In this sketch">
          ${this.#choice(null, 'Plain', punch === null, setPunch(edge, null))}
          ${sketch.punches.map((one) => this.#choice(one, one.name, one === punch, setPunch(edge, one.id)))}
        </div>
        ${this.#more('From your drawer', own)}
        ${this.#more('Usual ones', usual)}
      </div>
      <p class="hint" role="status">${punch ? repeatsText(piece, edge, punch, sketch.unit) : ''} ${this.#fit(piece, punch)}</p>
      <div class="acts">
        <button @click=${this.#measure}>Measure your own</button>
        <button class="act" @click=${() => this.dialog.close()}>Done</button>
      </div>`;
  }

  #more(heading: string, punches: readonly UsualPunch[]): TemplateResult | typeof nothing {
    if (punches.length === 0) return nothing;
    return html`<h3>${heading}</h3>
      <div class="choices" role="group" aria-label=${heading}>
        ${punches.map((one) => this.#choice(one, one.name, false, punchWith(this.edge, one)))}
      </div>`;
  }

  #choice(punch: Punch | UsualPunch | null, name: string, pressed: boolean, command: Command): TemplateResult {
    return html`<button class="choice" aria-pressed=${String(pressed)} ?disabled=${!pressed && !command(this.session.state)} @click=${() => this.#do(command)}>
      ${punchPicture(punch, { width: 84, height: 28 })}<span>${name}</span>
    </button>`;
  }

  #fit(piece: Piece, punch: Punch | null): TemplateResult | typeof nothing {
    const whole = punch && wholeRepeats(piece, this.edge, punch);
    if (!whole) return nothing;
    const fit = fitRepeats(this.edge);
    const { unit } = this.session.state.sketch;
    return html`<button class="fit" ?disabled=${!fit(this.session.state)} @click=${() => this.#do(fit)}>${fitText(sideOf(this.edge), whole, unit)}</button>`;
  }

  #do(command: Command): void {
    command(this.session.state, this.session.dispatch, Date.now());
  }

  readonly #measure = (): void => {
    const wish = trayWish({ tray: 'tools', about: 'measure' });
    // From where the slip stands, before it is taken away.
    this.dispatchEvent(wish);
    this.dialog.close();
  };

  /** A press on the backdrop is a press on the dialog itself, outside its box. */
  readonly #beside = (event: MouseEvent): void => {
    if (event.target !== this.dialog) return;
    const { left, right, top, bottom } = this.dialog.getBoundingClientRect();
    const { clientX: x, clientY: y } = event;
    if (x < left || x > right || y < top || y > bottom) this.dialog.close();
  };
}
