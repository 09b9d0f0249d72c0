import type { Variation } from '@trimwell/sketch';
import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { createPlanPort } from '../../session/create-plan-port.js';
import type { PlanPort } from '../../session/plan-messages.js';
import type { Session, SessionChange } from '../../session/session.js';
import type { Command } from '../../state/state.js';
import { addVariation, startVariation, wearVariation } from '../../state/variation-commands.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import type { VariationSlipElement } from './variation-slip.js';
import { variationsStyles } from './variations-styles.js';
import { WAYS } from './way-words.js';
import type { Ways } from './ways.js';

/**
 * The other ways of making the card: each variation is put on and taken off, opened and written here, and says what it
 * does to the card, the sheets and the yield. Ready ones are offered where they apply.
 */
export class VariationsElement extends SessionElement {
  static override readonly styles = [tableStyles, variationsStyles];

  /** Starts the worker that counts what the other ways need. */
  @property({ attribute: false }) openPort: () => PlanPort = createPlanPort;
  @state() private opened: string | null = null;
  @state() private ways: Ways | null = null;
  #told = '';
  #counted: Session | null = null;
  #before: Session['state'] | null = null;
  #root: Node | null = null;

  protected override concerns(change: SessionChange): boolean {
    return change.document || change.variations || change.ended;
  }

  protected override sessionChanged(change: SessionChange): void {
    const { state: now } = this.session;
    const before = this.#before;
    this.#before = now;
    if (change.document && before && now.writing === null && now.on.length > 0 && this.session.gesture === null) {
      const last = now.document.variations.findLast(({ id }) => now.on.includes(id));
      const was = before.document.variations.find(({ id }) => id === last?.id);
      const changed = before.on === now.on && before.document.pieces === now.document.pieces && was !== last;
      if (last && was && changed) this.#tell(WAYS.changedIn(last.name));
    }
    if (this.opened !== null && !now.document.variations.some(({ id }) => id === this.opened)) this.opened = null;
    this.requestUpdate();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#root = this.getRootNode();
    this.#root.addEventListener('written', this.#written);
    if (this.hasUpdated) void this.#count();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#root?.removeEventListener('written', this.#written);
    this.ways?.dispose();
    this.ways = null;
    this.#counted = null;
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('session')) void this.#count();
  }

  /** What the ways need is counted by a bundle of its own, so that the table is there before it. */
  async #count(): Promise<void> {
    const { session } = this;
    if (!session || this.#counted === session) return;
    this.#counted = session;
    this.#before = session.state;
    this.ways?.dispose();
    this.ways = null;
    const { Ways } = await import('./ways.js');
    if (this.#counted !== session || !this.isConnected) return;
    this.ways = new Ways(session, this.openPort, () => this.requestUpdate());
  }

  #tell(words: string): void {
    // The same words twice are only read twice when something of them differs.
    this.#told = this.#told === words ? `${words}\u00a0` : words;
    this.requestUpdate();
  }

  #do(command: Command, tells: string): boolean {
    const done = command(this.session.state, this.session.dispatch, Date.now());
    if (done) this.#tell(tells);
    return done;
  }

  protected override render() {
    const { document, on } = this.session.state;
    const { variations } = document;
    const ready = this.ways?.ready ?? null;
    return html`<h2 tabindex="-1">${WAYS.heading}</h2>
      <p class="unseen" role="status">${this.#told}</p>
      ${variations.length === 0 ? html`<p class="quiet order">${WAYS.none}</p>` : nothing}
      <ol>${variations.map((variation) => this.#line(variation))}</ol>
      ${on.length > 1 ? html`<p class="quiet order">${WAYS.order}</p>` : nothing}
      <button class="act start" ?disabled=${!startVariation()(this.session.state)} @click=${this.#start}>${WAYS.start}</button>
      <details class="ready" @toggle=${this.#look}>
        <summary>${WAYS.ready}</summary>
        ${ready?.length === 0 ? html`<p class="quiet order">${WAYS.noneReady}</p>` : nothing}
        <ul>${ready?.map(({ variation }) => this.#offer(variation))}</ul>
      </details>`;
  }

  #line(variation: Variation): TemplateResult {
    const { on, writing, document } = this.session.state;
    const { id, name } = variation;
    const worn = on.includes(id);
    const can = wearVariation(id, !worn)(this.session.state);
    const open = this.opened === id;
    const why =
      writing === id
        ? 'Being written.'
        : can
          ? ''
          : `Comes after ${document.variations.find((each) => each.id === writing)?.name ?? ''}, which is being written.`;
    return html`<li data-variation=${id} class=${worn ? 'on' : ''}>
      <div class="line">
        <button
          class="wear"
          role="checkbox"
          aria-label=${name}
          aria-checked=${worn}
          aria-disabled=${can ? nothing : 'true'}
          aria-describedby="says-${id}"
          @click=${() => this.#wear(variation, !worn)}
        ><span class="notch"></span></button>
        <button class="open" aria-expanded=${open} aria-label="${open ? 'Close' : 'Open'} ${name}" @click=${() => this.#open(open ? null : id)}>${name}</button>
      </div>
      <p class="says quiet" id="says-${id}">${why || this.ways?.text(variation) || ''}</p>
      ${
        open
          ? html`<trimwell-variation-slip
              .session=${this.session}
              .pointing=${this.pointing}
              .variation=${id}
              @slip-away=${() => this.#open(null)}
              @slip-tells=${(event: CustomEvent<string>) => this.#tell(event.detail)}
            ></trimwell-variation-slip>`
          : nothing
      }
    </li>`;
  }

  #offer(variation: Variation): TemplateResult {
    const { name, note } = variation;
    const can = addVariation(variation)(this.session.state);
    return html`<li>
      <span>${name}</span>
      <button class="act" ?disabled=${!can} aria-label="Add ${name}" @click=${() => this.#add(variation)}>Add</button>
      <p class="says quiet">${this.ways?.text(variation) || note}</p>
    </li>`;
  }

  #wear(variation: Variation, on: boolean): void {
    const { id, name } = variation;
    const does = this.ways?.text(variation) ?? '';
    this.#do(wearVariation(id, on), on ? `${name} is put on. ${does}` : `${name} is taken off.`);
  }

  readonly #start = (): void => {
    if (!this.#do(startVariation(), 'Changes to the card go into a new variation from now on.')) return;
    this.dispatchEvent(new CustomEvent('name-way', { bubbles: true, composed: true }));
  };

  async #add(variation: Variation): Promise<void> {
    if (!this.#do(addVariation(variation), `${variation.name} is added and put on.`)) return;
    await this.updateComplete;
    this.#focusLine(this.session.document.variations.at(-1)?.id ?? '');
  }

  async #open(id: string | null): Promise<void> {
    const before = this.opened;
    if (id !== null) await import('./define.js');
    this.opened = id;
    await this.updateComplete;
    if (id === null && before !== null) this.#focusLine(before, '.open');
    const slip = this.renderRoot.querySelector<VariationSlipElement>('trimwell-variation-slip');
    if (!slip) return;
    await slip.updateComplete;
    slip.scrollIntoView({ block: 'nearest' });
  }

  #focusLine(id: string, what = '.wear'): void {
    const line = this.renderRoot.querySelector<HTMLElement>(`li[data-variation="${id}"] ${what}`);
    (line ?? this.renderRoot.querySelector('h2'))?.focus({ preventScroll: true });
  }

  readonly #look = (event: Event): void => {
    if (this.ways && event.target instanceof HTMLDetailsElement) this.ways.looking = event.target.open;
  };

  /** The band of the variation that was written is gone: its line takes the focus. */
  readonly #written = (event: Event): void => {
    if (!(event instanceof CustomEvent)) return;
    const variation = this.session.document.variations.find(({ id }) => id === event.detail);
    this.#tell(`Changes go to the card again.${variation ? ` ${variation.name} is put on.` : ''}`);
    void this.updateComplete.then(() => this.#focusLine(String(event.detail)));
  };
}
