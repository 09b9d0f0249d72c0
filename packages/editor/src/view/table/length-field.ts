import { formatLength, type Length, LONGEST_SUM, readSum, type SumReading, ticks, type Unit } from '@trimwell/geometry';
import { rulerStep } from '@trimwell/sketch';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { lengthFieldStyles } from './length-field-styles.js';
import { tableStyles } from './table-styles.js';

/** One long step: 1/4 in (four marks of 1/16 in) or 5 mm. */
const LONG = { in: 4, mm: 5 } as const;

/** The next mark of a ruler from `value` up or down, `marks` marks away; between two marks the nearer one comes first. */
export function markBeside(value: Length, step: Length, marks: number): Length {
  const next = marks > 0 ? Math.floor(value / step) : Math.ceil(value / step);
  return ticks((next + marks) * step);
}

/** What a sum comes to, in the words of the field: `= 5 in`, or `≈` where it is no whole tick. */
export function workedText(reading: Extract<SumReading, { ok: true }>, unit: Unit): string {
  const figure = formatLength(reading.length, { unit });
  if (reading.rounded) return figure.startsWith('≈') ? figure : `≈ ${figure}`;
  return `= ${figure}`;
}

/**
 * A text field for one length; accepts `3 1/8`, `3.125in`, `80 mm`, and little sums such as `5 1/4 - 2*1/8`, whose result
 * stands under the field while it is typed. What it cannot read it keeps, and says what is wrong with it. The up and down
 * arrow keys go to the next mark of the ruler, with Shift farther; Enter commits, Escape puts back what was there.
 * @fires length-change - The user committed another length; `detail.value` is in ticks.
 * @csspart input - The text box.
 */
export class LengthField extends LitElement {
  static override readonly shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };
  static override readonly styles = [tableStyles, lengthFieldStyles];

  /** Current length in ticks. Setting it never fires `length-change`. */
  @property({ type: Number }) value: Length = ticks(0);
  @property() unit: Unit = 'in';
  /** What the length is, for those who cannot see the words beside it. */
  @property() label = '';
  /** Least and most that are accepted, in ticks. */
  @property({ type: Number }) least = 1;
  @property({ type: Number }) most = 2_000 * 640;
  /** Shows nothing for 0: a field that asks for a length and has none yet. */
  @property({ type: Boolean }) blank = false;
  /** What else is wrong with a length within those, as a sentence, or null. */
  @property({ attribute: false }) check: (value: Length) => string | null = () => null;
  @property({ type: Boolean }) disabled = false;
  @state() private problem = '';
  @state() private worked = '';
  @query('input') private readonly box!: HTMLInputElement;
  /** The arrow keys have changed the text and it is not committed yet: a key that is held down commits once. */
  #stepped = false;

  /** True while what stands in the box was refused. */
  get refused(): boolean {
    return this.problem !== '';
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // Whatever was said was about another value.
    if (changed.has('value') && changed.get('value') !== undefined) this.problem = '';
  }

  protected override render() {
    const said = this.problem === '' ? (this.worked === '' ? nothing : 'worked') : 'problem';
    return html`<input
        part="input"
        .value=${this.#shown}
        aria-label=${this.label}
        aria-invalid=${this.problem === '' ? 'false' : 'true'}
        aria-describedby=${said}
        autocomplete="off"
        ?disabled=${this.disabled}
        autocapitalize="off"
        spellcheck="false"
        inputmode="text"
        maxlength=${LONGEST_SUM}
        @input=${this.#typed}
        @change=${this.#commit}
        @blur=${this.#left}
        @keydown=${this.#key}
        @keyup=${this.#keyUp}
      />${this.problem === '' ? html`<span class="worked" id="worked" role="status">${this.worked}</span>` : html`<span class="error" id="problem" role="alert">${this.problem}</span>`}`;
  }

  get #shown(): string {
    return this.blank && this.value === 0 ? '' : formatLength(this.value, { unit: this.unit });
  }

  readonly #typed = (): void => {
    this.#stepped = false;
    this.problem = '';
    const reading = this.box.value === this.#shown ? null : readSum(this.box.value, this.unit);
    this.worked = reading?.ok ? workedText(reading, this.unit) : '';
  };

  readonly #key = (event: KeyboardEvent): void => {
    // Keys in a field are for the field, not for the piece.
    event.stopPropagation();
    if (event.key === 'Enter') this.#commit();
    if (event.key === 'Escape') this.#restore(event);
    const way = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (way === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    this.#step(way * (event.shiftKey ? LONG[this.unit] : 1), event.repeat);
  };

  readonly #keyUp = (event: KeyboardEvent): void => {
    event.stopPropagation();
    if (this.#stepped && event.key.startsWith('Arrow')) this.#commit();
  };

  /** Steps from what stands in the box, if that is a length; a key held down shows where it has come to, and commits when let go. */
  #step(marks: number, held: boolean): void {
    const reading = this.box.value === this.#shown ? null : readSum(this.box.value, this.unit);
    const from = reading?.ok ? reading.length : this.value;
    const to = markBeside(from, rulerStep(this.unit), marks);
    const within = ticks(Math.min(Math.max(to, Math.min(this.least, from)), Math.max(this.most, from)));
    this.box.value = formatLength(within, { unit: this.unit });
    this.problem = '';
    this.#stepped = true;
    if (!held) this.#take(within, false);
  }

  /** A first Escape puts back what was there; with nothing to put back the key is for what the field stands in. */
  #restore(event: KeyboardEvent): void {
    if (this.box.value !== this.#shown || this.problem !== '') event.preventDefault();
    this.problem = '';
    this.worked = '';
    this.#stepped = false;
    this.box.value = this.#shown;
  }

  readonly #left = (): void => {
    if (this.#stepped) this.#commit();
    if (this.problem === '') this.worked = '';
  };

  readonly #commit = (): void => {
    this.#stepped = false;
    // The figure that stands there, read back, would lose what `≈` says; untouched, it means the length itself.
    if (this.box.value === this.#shown) {
      this.problem = '';
      return;
    }
    const reading = readSum(this.box.value, this.unit);
    if (reading.ok) this.#take(reading.length, reading.rounded);
    else {
      this.worked = '';
      this.problem = reading.problem;
    }
  };

  #take(length: Length, rounded: boolean): void {
    const style = { unit: this.unit };
    const outside = length < this.least || length > this.most;
    this.problem = outside
      ? `Allowed: ${formatLength(ticks(this.least), style)} to ${formatLength(ticks(this.most), style)}.`
      : (this.check(length) ?? '');
    this.worked = '';
    if (this.problem !== '') return;
    // That a result was no whole tick is still said when its figure stands in the box.
    if (rounded) this.worked = workedText({ ok: true, length, rounded, sum: true }, this.unit);
    if (length !== this.value) this.dispatchEvent(new CustomEvent('length-change', { detail: { value: length } }));
    this.box.value = this.#shown;
  }
}
