import type { Length } from '@trimwell/geometry';
import { type Punch, USUAL_PUNCHES, USUAL_RADII, type UsualPunch } from '@trimwell/sketch';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { SessionChange } from '../../session/session.js';
import type { Command } from '../../state/state.js';
import { addPunch, changePunch, punchFor, removePunch, usesOf } from '../../state/tool-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { cornerStyle } from './corner-style.js';
import { ownTools } from './own-tools.js';
import { punchPicture } from './punch-picture.js';
import { punchText, radiusText, repeatText, takeAwayText, toolMessages, usesText } from './tool-messages.js';
import { toolStyles } from './tool-styles.js';
import { toolsStyles } from './tools-styles.js';
import { WatchOwnTools } from './watch-own-tools.js';

/** What the tray asks or shows in place of the list: a punch to be changed, a new one, or one to be taken away. */
type Open = { readonly what: 'change' | 'leave'; readonly punch: Punch } | { readonly what: 'measure' } | null;

/**
 * The tray of hand tools: the corner rounders that the designer owns, the border punches of the sketch, and more to put
 * in, out of the designer's own drawer, from the usual ones, or measured with a ruler.
 */
export class ToolsElement extends SessionElement {
  static override readonly styles = [tableStyles, toolStyles, toolsStyles];

  /** The id of the punch that is shown first, or `measure` for the slip on which one is measured. */
  @property() about: string | null = null;
  @state() private open: Open = null;
  @state() private said = '';
  readonly #own = new WatchOwnTools(this, ownTools);

  protected override concerns(change: SessionChange): boolean {
    return change.sketch;
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (!changed.has('about') || this.about === null) return;
    const punch = this.session.state.sketch.punches.find(({ id }) => id === this.about);
    this.open = punch ? { what: 'change', punch } : this.about === 'measure' ? { what: 'measure' } : null;
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('open') && this.open) {
      const form = this.renderRoot.querySelector('trimwell-punch-form, .asked');
      form?.scrollIntoView?.({ block: 'nearest' });
    }
  }

  protected override render() {
    const { trouble, kept } = this.#own.tools;
    return html`<p class="unseen" role="status">${this.said}</p>
      <div class="columns">
        <section aria-labelledby="rounders">
          <h3 id="rounders">Corner rounders</h3>
          <p class="quiet">Press the ones you have. They come first wherever a corner is rounded.</p>
          ${this.#rounders()}
          <p class="caution">${toolMessages.caution}</p>
          ${trouble === null && kept ? nothing : html`<p class="caution" role="status">${toolMessages.notKept(kept ? trouble : null)}</p>`}
        </section>
        <section aria-labelledby="punches">
          <h3 id="punches">Border punches of this sketch</h3>
          ${this.#punches()}
          ${this.open?.what === 'measure' ? this.#measuring() : html`<button class="act measure" @click=${() => this.#show({ what: 'measure' })}>Measure one of your own</button>`}
          ${this.#more('Out of your drawer', this.#own.tools.punches)}
          ${this.#more('Usual ones, of common sizes', USUAL_PUNCHES[this.#unit])}
        </section>
      </div>`;
  }

  get #unit() {
    return this.session.state.sketch.unit;
  }

  #rounders(): TemplateResult {
    const { radii } = this.#own.tools;
    const shown = [...new Set([...USUAL_RADII[this.#unit], ...radii])].sort((a, b) => a - b);
    return html`<div class="rounders" role="group" aria-label="Corner rounders you have">
        ${shown.map((radius) => this.#rounder(radius, radii.includes(radius)))}
      </div>
      <div class="another">
        <span id="another">Another radius</span>
        <trimwell-length
          .value=${0 as Length}
          blank
          .unit=${this.#unit}
          .least=${1}
          label="Radius of another rounder you have"
          @length-change=${(event: CustomEvent<{ value: Length }>) => this.#own.tools.setRadius(event.detail.value, true)}
        ></trimwell-length>
      </div>`;
  }

  #rounder(radius: Length, owned: boolean): TemplateResult {
    const words = radiusText(radius, this.#unit);
    return html`<button
      class="corner rounder"
      aria-pressed=${String(owned)}
      aria-label="Corner rounder, ${words}"
      .style=${cornerStyle(radius, 72)}
      @click=${() => this.#own.tools.setRadius(radius, !owned)}
    >${words}</button>`;
  }

  #punches(): TemplateResult {
    const { punches } = this.session.state.sketch;
    if (punches.length === 0) return html`<p class="quiet">None yet: every edge is cut plain.</p>`;
    return html`<ul class="punches">${punches.map((punch) => html`<li>${this.#punch(punch)}</li>`)}</ul>`;
  }

  #punch(punch: Punch): TemplateResult {
    const { open } = this;
    if (open?.what === 'change' && open.punch.id === punch.id) return this.#changing(punch);
    const { sketch } = this.session.state;
    const kept = this.#own.tools.samePunch(punch) !== null;
    const name = html`<span class="unseen">, ${punch.name}</span>`;
    return html`<div class="punch">
      ${punchPicture(punch, { width: 132, height: 38 })}
      <div class="about">
        <b>${punch.name}</b>
        <span class="quiet">${punchText(punch, sketch.unit)}</span>
        <span class="quiet">${usesText(usesOf(sketch, punch.id))}</span>
      </div>
      <div class="acts">
        <button @click=${() => this.#show({ what: 'change', punch })}>Change${name}</button>
        <button aria-pressed=${String(kept)} @click=${() => this.#own.tools.setPunch(punch, !kept)}>${kept ? 'In your drawer ✓' : 'Keep in your drawer'}${name}</button>
        <button @click=${() => this.#leave(punch)}>Take away${name}</button>
      </div>
      ${open?.what === 'leave' && open.punch.id === punch.id ? this.#asked(punch) : nothing}
    </div>`;
  }

  #asked(punch: Punch): TemplateResult {
    const uses = usesOf(this.session.state.sketch, punch.id);
    return html`<div class="asked" role="group" aria-label="Take ${punch.name} away?">
      <p>${takeAwayText(punch, uses)}</p>
      <button class="act" @click=${() => this.#remove(punch)}>Take it away</button>
      <button @click=${() => this.#show(null)}>Keep it</button>
    </div>`;
  }

  #changing(punch: Punch): TemplateResult {
    const own = this.#own.tools.samePunch(punch);
    return html`<trimwell-punch-form
      .punch=${punch}
      .unit=${this.#unit}
      keep="Change it"
      @punch-leave=${() => this.#show(null)}
      @punch-keep=${({ detail }: CustomEvent<{ punch: UsualPunch }>) => {
        const changed = { ...detail.punch, id: punch.id };
        this.#do(changePunch(changed), `${changed.name} changed`);
        // The one in the drawer is the same tool, so it is the same measurements.
        if (own) void this.#own.tools.setPunch(own, false).then(() => this.#own.tools.setPunch(changed, true));
        this.#show(null);
      }}
    ></trimwell-punch-form>`;
  }

  /** A punch measured with a ruler is one that the designer owns: it goes into the drawer as well. */
  #measuring(): TemplateResult {
    const [first] = USUAL_PUNCHES[this.#unit];
    return html`<trimwell-punch-form
      .punch=${{ ...first, name: 'My border punch' } as UsualPunch}
      .unit=${this.#unit}
      @punch-leave=${() => this.#show(null)}
      @punch-keep=${({ detail }: CustomEvent<{ punch: UsualPunch }>) => {
        const punch = punchFor(this.session.state.sketch, detail.punch);
        this.#do(addPunch(detail.punch), `${detail.punch.name} is in this sketch and in your drawer`);
        void this.#own.tools.setPunch({ ...punch, name: detail.punch.name }, true);
        this.#show(null);
      }}
    ></trimwell-punch-form>`;
  }

  #more(heading: string, punches: readonly UsualPunch[]): TemplateResult | typeof nothing {
    const offered = punches.filter((punch) => addPunch(punch)(this.session.state));
    if (offered.length === 0) return nothing;
    return html`<h4>${heading}</h4>
      <div class="more" role="group" aria-label="${heading}: put into this sketch">
        ${offered.map(
          (punch) => html`<button @click=${() => this.#do(addPunch(punch), `${punch.name} is in this sketch`)}>
            ${punchPicture(punch, { width: 104, height: 32 })}
            <span>${punch.name}</span>
            <span class="quiet">${repeatText(punch, this.#unit)}</span>
          </button>`,
        )}
      </div>`;
  }

  #leave(punch: Punch): void {
    if (usesOf(this.session.state.sketch, punch.id).length === 0) this.#remove(punch);
    else this.#show({ what: 'leave', punch });
  }

  #remove(punch: Punch): void {
    this.#do(removePunch(punch.id), `${punch.name} taken away`);
    this.#show(null);
  }

  #show(open: Open): void {
    this.open = open;
  }

  #do(command: Command, words: string): void {
    if (command(this.session.state, this.session.dispatch, Date.now())) this.said = words;
  }
}
