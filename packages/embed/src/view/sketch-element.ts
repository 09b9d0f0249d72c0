import type { LengthStyle } from '@trimwell/geometry';
import type { Sketch, SketchReading } from '@trimwell/sketch';
import { firstLook, plainCard } from './first-look.js';
import { FIRST_STYLES } from './first-styles.js';
import { WORDS } from './first-words.js';
import type { Live } from './live.js';
import { notNear, whenNear } from './nearness.js';
import { make, part } from './part.js';
import { readSource } from './source-text.js';

let sheetStyles: CSSStyleSheet | null = null;

function styles(): CSSStyleSheet {
  if (!sheetStyles) {
    sheetStyles = new CSSStyleSheet();
    sheetStyles.replaceSync(FIRST_STYLES);
  }
  return sheetStyles;
}

/** Height that is kept for a sketch without static content, in pixels. */
const USUAL_HEIGHT = 420;
/** Static content lower than this is a word and no picture of the sketch; no height is kept for it. */
const LEAST_KEPT = 200;

/**
 * A sketch in a page, that its reader makes their own: the card and its sizes; and, when asked for, their number of cards,
 * their paper, its cutting guide, every card, the steps, and files. What the page puts inside the element stands until the
 * sketch is shown, and stays when it cannot be. All that it loads lies beside this script; it stores nothing before
 * something is chosen.
 * @attr {string} src - Address of a sketch file. Without it and without `code`, a JSON script inside the element is read.
 * @attr {string} code - A sketch as the code of a share link.
 * @attr {'light' | 'dark'} theme - Colours by day or by night; without it the visitor's system decides.
 * @attr {'in' | 'mm'} unit - The unit of all sizes until the reader chooses; without it the sketch's own.
 * @fires {CustomEvent<SketchReading>} sketch-read - The sketch was read; `detail` is the reading.
 * @fires {CustomEvent<{problems: readonly Problem[]}>} sketch-refused - It could not be; `detail.problems` says why.
 * @fires {CustomEvent<{code: string}>} choices-change - The reader has chosen something; `detail.code` is all that they have
 *   chosen, as it stands behind `#trimwell=` in their link.
 * @slot - What is shown without scripts, before the sketch is shown, and when it cannot be.
 * @csspart sheet - All of it.
 * @csspart title - The title and number.
 * @csspart card - The picture of the card.
 * @csspart sizes - The table of sizes.
 * @csspart desk - What opens by "Make it yours".
 * @cssprop --trimwell-slip - The paper that all stands on; `transparent` lets the page show.
 * @cssprop --trimwell-ink - Text and lines; `currentcolor` is not inherited here, name the page's colour.
 * @cssprop --trimwell-muted - Lesser text.
 * @cssprop --trimwell-line - Rules and frames.
 * @cssprop --trimwell-accent - The main button and what is chosen.
 * @cssprop --trimwell-on-accent - Letters on the accent.
 * @cssprop --trimwell-table - The ground of pictures of sheets.
 * @cssprop --trimwell-focus - The ring around what has the focus.
 * @cssprop [--trimwell-font=inherit] - The font.
 * @cssprop [--trimwell-heading-font=inherit] - The font of titles.
 * @cssprop [--trimwell-radius=4px] - Corners of the paper.
 */
export class TrimwellSketch extends HTMLElement {
  static readonly observedAttributes = ['src', 'code', 'unit'];

  readonly #sheet = document.createElement('div');
  readonly #slot = document.createElement('slot');
  #sketch: Sketch | null = null;
  #begun = false;
  /** Counts readings, so that a late one is not taken for a newer. */
  #turn = 0;
  #live: Live | null = null;

  constructor() {
    super();
    const root = this.attachShadow({ mode: 'open' });
    root.adoptedStyleSheets = [styles()];
    this.#sheet.className = 'sheet';
    this.#sheet.setAttribute('part', 'sheet');
    this.#sheet.lang = 'en';
    this.#sheet.hidden = true;
    root.append(this.#slot, this.#sheet);
  }

  /** The sketch as it is shown, with what the reader has chosen; null before it is read and when it cannot be. */
  get sketch(): Sketch | null {
    return this.#live?.shown ?? this.#sketch;
  }

  connectedCallback(): void {
    if (!this.#begun && !this.#hasStatic()) {
      this.#say(WORDS.loading);
      this.#sheet.style.minHeight = `${USUAL_HEIGHT}px`;
    }
    whenNear(this, () => {
      if (this.#begun) return;
      this.#begun = true;
      void this.#read();
    });
  }

  disconnectedCallback(): void {
    notNear(this);
    this.#live?.rest();
  }

  attributeChangedCallback(name: string): void {
    if (!this.#begun) return;
    if (name !== 'unit') void this.#read();
    else if (this.#sketch) this.#live?.restyle(this.#style(this.#sketch));
  }

  #hasStatic(): boolean {
    return [...this.children].some(({ localName }) => localName !== 'script');
  }

  #style({ unit }: Sketch): LengthStyle {
    const asked = this.getAttribute('unit');
    return { unit: asked === 'in' || asked === 'mm' ? asked : unit, form: 'fraction' };
  }

  #say(word: string): void {
    this.#sheet.hidden = false;
    this.#sheet.replaceChildren(...make([part('p', { class: 'quiet', role: 'note' }, word)]));
  }

  /** Reads the sketch, while what is live is loaded. */
  async #read(): Promise<void> {
    this.#turn += 1;
    const turn = this.#turn;
    // What does not load is told of quietly; the browser has said in its console which it was.
    const loading = import('./live.js').catch(() => null);
    const reading = await readSource(this).catch((error: unknown) => {
      if (error instanceof TypeError) return null;
      throw error;
    });
    if (turn !== this.#turn) return;
    this.#live?.end();
    this.#live = null;
    if (reading?.ok) await this.#take(reading, loading, turn);
    else this.#refuse(reading);
  }

  /** Leaves the static content, with a quiet word below it. */
  #refuse(reading: Extract<SketchReading, { ok: false }> | null): void {
    this.#sketch = null;
    this.#slot.hidden = false;
    this.#sheet.removeAttribute('style');
    this.#say(reading ? WORDS.notRead : WORDS.notLoaded);
    if (reading) this.#tell('sketch-refused', { problems: reading.problems });
  }

  async #take(
    reading: Extract<SketchReading, { ok: true }>,
    loading: Promise<typeof import('./live.js') | null>,
    turn: number,
  ): Promise<void> {
    const { sketch } = reading;
    this.#sketch = sketch;
    const style = this.#style(sketch);
    if (!this.#hasStatic()) this.#showFirst(sketch, style);
    const live = await loading;
    if (turn !== this.#turn) return;
    if (live) {
      this.#live = new live.Live({
        document: sketch,
        style,
        element: this,
        sheet: this.#sheet,
        reveal: () => this.#reveal(),
        tell: (code) => this.#tell('choices-change', { code }),
      });
    } else if (this.#hasStatic()) this.#say(WORDS.notLoaded);
    this.#tell('sketch-read', reading);
  }

  #tell(name: string, detail: object): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }

  /** The card in plain shapes and its sizes, with room for the controls that are on their way. */
  #showFirst(sketch: Sketch, style: LengthStyle): void {
    this.#reveal();
    this.#sheet.replaceChildren(
      ...make([...firstLook(sketch, style, plainCard(sketch, style)), part('div', { class: 'bar' })]),
    );
  }

  /** The live sketch takes the very height of what stood there, so that nothing on the page moves. */
  #reveal(): void {
    const { height } = this.getBoundingClientRect();
    if (this.#slot.hidden) return;
    this.#slot.hidden = true;
    this.#sheet.hidden = false;
    if (this.#hasStatic() && height >= LEAST_KEPT) this.#sheet.style.height = `${height}px`;
  }
}
