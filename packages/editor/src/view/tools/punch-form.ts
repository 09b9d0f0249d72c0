import { type Length, millimetres, ticks, type Unit } from '@trimwell/geometry';
import { PROFILES, type Punch, USUAL_PUNCHES, type UsualPunch } from '@trimwell/sketch';
import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { tableStyles } from '../table/table-styles.js';
import { punchDrawing } from './punch-drawing.js';
import { punchFormStyles } from './punch-form-styles.js';
import { punchPicture } from './punch-picture.js';
import { toolStyles } from './tool-styles.js';

/** A punch's largest size: no hand punch is anywhere near it. */
const MOST = millimetres(250);

type Size = 'repeat' | 'depth' | 'bite';

/** How each size is measured with a ruler. */
const HOW: Readonly<Record<Size, string>> = {
  repeat:
    'Punch a strip of scrap. Measure from one valley to the eighth one after it, and type that with “/ 8” behind it: 4 in / 8.',
  depth: 'Lay the ruler along the outermost points, and measure from it down to the bottom of a valley.',
  bite: 'Measure how wide the strip is before it is punched, and after, at its outermost points. Type the one less the other: 2 in - 1 15/16.',
};

const LEAST: Readonly<Record<Size, Length>> = { repeat: millimetres(1), depth: ticks(1), bite: ticks(0) };

/**
 * A border punch to be measured: its name, its profile and its three sizes, with a drawing that follows.
 * @fires punch-keep - The user is done; `detail.punch` has all but an id.
 * @fires punch-leave - The user does without it.
 */
export class PunchFormElement extends LitElement {
  static override readonly styles = [tableStyles, toolStyles, punchFormStyles];

  /** What the form begins with. */
  @property({ attribute: false }) punch!: Punch | UsualPunch;
  @property() unit: Unit = 'in';
  /** The word on the button that keeps it. */
  @property() keep = 'Put it in this sketch';
  @state() private now!: UsualPunch;
  @state() private problem = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('punch')) return;
    const { name, profile, repeat, depth, bite } = this.punch;
    this.now = { name, profile, repeat, depth, bite };
    this.problem = '';
  }

  protected override render() {
    const { now } = this;
    return html`<form @submit=${this.#submit} novalidate>
      <div class="words">
        <label class="name">
          <span>Name</span>
          <input name="name" maxlength="80" autocomplete="off" .value=${now.name} aria-invalid=${this.problem === '' ? 'false' : 'true'} aria-describedby="problem" @input=${this.#rename} />
        </label>
        <p id="problem" class="problem" role="alert">${this.problem}</p>
        <fieldset>
          <legend>Profile</legend>
          ${PROFILES.map((profile) => this.#profile(profile))}
        </fieldset>
      </div>
      ${punchDrawing(now, this.unit)}
      <div class="sizes">
        ${(['repeat', 'depth', 'bite'] as const).map((size) => this.#size(size))}
      </div>
      <div class="acts">
        <button type="submit" class="act">${this.keep}</button>
        <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('punch-leave'))}>Never mind</button>
      </div>
    </form>`;
  }

  #profile(profile: Punch['profile']): TemplateResult {
    const sizes = USUAL_PUNCHES[this.unit].find((usual) => usual.profile === profile) ?? this.now;
    return html`<label class="profile">
      <input type="radio" name="profile" .checked=${profile === this.now.profile} @change=${() => this.#set({ profile })} />
      ${punchPicture(profile === this.now.profile ? this.now : sizes, { width: 74, height: 26 })}
      <span>${profile}</span>
    </label>`;
  }

  #size(size: Size): TemplateResult {
    const label = `${size[0]?.toUpperCase()}${size.slice(1)}`;
    return html`<div class="size">
      <span aria-hidden="true">${label}</span>
      <trimwell-length
        .value=${this.now[size]}
        .unit=${this.unit}
        .least=${LEAST[size]}
        .most=${MOST}
        label="${label} of the punch"
        @length-change=${(event: CustomEvent<{ value: Length }>) => this.#set({ [size]: event.detail.value })}
      ></trimwell-length>
      <p>${HOW[size]}</p>
    </div>`;
  }

  #set(change: Partial<UsualPunch>): void {
    this.now = { ...this.now, ...change };
  }

  readonly #rename = (event: Event): void => {
    if (event.target instanceof HTMLInputElement) this.#set({ name: event.target.value });
    this.problem = '';
  };

  readonly #submit = (event: Event): void => {
    event.preventDefault();
    const name = this.now.name.trim();
    if (name === '') {
      this.problem = 'A punch needs a name: 1 to 80 characters.';
      this.renderRoot.querySelector<HTMLInputElement>('input[name="name"]')?.focus();
      return;
    }
    this.dispatchEvent(new CustomEvent('punch-keep', { detail: { punch: { ...this.now, name } } }));
  };
}
