import { counted, type Problem, readSketchText, type Sketch } from '@trimwell/sketch';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { asKeepError } from '../../keeping/keep-error.js';
import type { Keeper } from '../../keeping/keeper.js';
import { keeperOf } from '../../keeping/keepers.js';
import { type KeptSketch, newKeptId, searchKept } from '../../keeping/kept-sketch.js';
import { timeWords } from '../../keeping/kept-words.js';
import { LONG_LINK } from '../../keeping/share-link.js';
import { copyKept, listKept, type TakenOff } from '../../keeping/sketch-store.js';
import { saveFile } from '../../session/save-file.js';
import type { Session } from '../../session/session.js';
import { copyLink } from '../copy-link.js';
import { tableStyles } from '../table/table-styles.js';
import type { BoardsElement } from './boards.js';
import type { FileReading } from './list-file.js';
import { shelfStyles } from './shelf-styles.js';
import { saveSketchFile } from './sketch-file.js';
import type { StorageElement } from './storage-panel.js';

/** A sketch of the shelf, or (`id` null) the one on the table when it is none of the kept. */
interface InHand {
  readonly id: string | null;
  readonly title: string;
  readonly sketch: Sketch | null;
  readonly problems: readonly Problem[];
  readonly kept: KeptSketch | null;
}

/**
 * The shelf of kept sketches: to find one again and lay it on the table, copy it, hand it on as a file or a link, take it
 * off and put it back; and to open a file. It acts on the session and its keeper itself.
 * @fires sketch-pick - The user laid a sketch on the table; `detail` is `{ sketch, kept }`, `kept` its id or null for a file.
 */
export class ShelfElement extends LitElement {
  static override readonly styles = [tableStyles, shelfStyles];

  @property({ attribute: false }) session!: Session;
  /** `storage` shows what fills the storage at once. */
  @property({ attribute: false }) about: string | null = null;
  @state() private kept: readonly KeptSketch[] | null = null;
  @state() private looked = '';
  @state() private picked: string | null = null;
  @state() private link: string | null = null;
  @state() private said = '';
  /** What is said is to be seen elsewhere on the shelf already. */
  @state() private quietly = false;
  @state() private problems: readonly Problem[] = [];
  @query('input[type=file]') private readonly picker!: HTMLInputElement;
  @query('trimwell-boards') private readonly boards!: BoardsElement | null;
  @query('trimwell-storage') private readonly storage!: StorageElement | null;
  #stop: (() => void) | null = null;

  get #keeper(): Keeper | null {
    return keeperOf(this.session);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.session) this.#watch();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    this.#stop = null;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('session') && this.isConnected) this.#watch();
  }

  #watch(): void {
    this.#stop?.();
    const keeper = this.#keeper;
    if (!keeper) return;
    const stopLooking = keeper.takenOff.look();
    const stopHearing = keeper.subscribe(() => void this.#list());
    this.#stop = () => {
      stopLooking();
      stopHearing();
    };
    this.picked = keeper.keptId;
    // What was changed a moment ago is on the shelf when it is looked at.
    void keeper.keepNow().then(() => this.#list());
  }

  async #list(): Promise<void> {
    const keeper = this.#keeper;
    if (!keeper) return;
    try {
      this.kept = await listKept(keeper.place);
      this.picked ??= keeper.keptId;
    } catch (error) {
      this.#failed(error);
    }
    void this.storage?.refresh();
    this.requestUpdate();
  }

  get #shown(): readonly KeptSketch[] {
    return searchKept(this.kept ?? [], this.looked);
  }

  get #hand(): InHand {
    const kept = this.#shown.find(({ id }) => id === this.picked) ?? null;
    if (!kept) {
      const { document } = this.session;
      return { id: null, title: document.title, sketch: document, problems: [], kept: null };
    }
    const reading = readSketchText(kept.document);
    return {
      id: kept.id,
      title: kept.title,
      sketch: reading.ok ? reading.sketch : null,
      problems: reading.ok ? [] : reading.problems,
      kept,
    };
  }

  protected override render() {
    const keeper = this.#keeper;
    return html`<div class="head">
        ${keeper ? this.#finder() : html`<p class="quiet">This page keeps nothing in the browser. Files and links work.</p>`}
        <button class="act" @click=${() => this.picker.click()}>Open a file…</button>
        <input type="file" class="unseen" tabindex="-1" aria-label="Sketch or piece list" accept=".json,application/json,.csv,text/csv,.tsv,text/tab-separated-values" @change=${this.#openFile} />
      </div>
      <p class=${this.said === '' || this.quietly ? 'unseen' : ''} role="status">${this.said}</p>
      ${this.problems.length > 0 ? this.#refused() : nothing}
      ${keeper?.takenOff.all.map((taken) => this.#away(taken))} ${keeper ? this.#cards(keeper) : nothing} ${this.#slip()}
      ${
        keeper
          ? html`<trimwell-storage .keeper=${keeper} ?open=${this.about === 'storage'} @kept-off=${this.#offAsked} @room-made=${() => this.#list()}></trimwell-storage>`
          : nothing
      }`;
  }

  #finder() {
    const count = this.kept?.length ?? 0;
    const found =
      this.looked.trim() === '' ? counted(count, 'sketch', 'sketches') : `${this.#shown.length} of ${count}`;
    return html`<label class="find">Look for
        <input type="search" .value=${this.looked} @input=${this.#look} placeholder="title, number, paper, piece" />
      </label>
      <span class="quiet" aria-live="polite">${this.kept ? found : ''}</span>`;
  }

  #cards(keeper: Keeper) {
    if (this.kept === null) return nothing;
    const shown = this.#shown;
    if (shown.length > 0) {
      return html`<trimwell-boards
        .kept=${shown}
        .picked=${this.picked}
        .onTable=${keeper.keptId}
        @kept-pick=${(event: CustomEvent<{ id: string }>) => this.#take(event.detail.id)}
        @kept-open=${(event: CustomEvent<{ id: string }>) => this.#openKept(event.detail.id)}
        @kept-off=${this.#offAsked}
      ></trimwell-boards>`;
    }
    return html`<p class="none">${
      this.kept.length === 0
        ? 'Nothing stands here yet. What you change on the table is put here by itself.'
        : 'No sketch on the shelf has all these words.'
    }</p>`;
  }

  #away(taken: TakenOff) {
    const { title } = taken.kept;
    return html`<div class="away">
      <span>${title} is off the shelf.</span>
      <button class="act" aria-label="Put ${title} back" @click=${() => this.#putBack(taken)}>Put it back</button>
    </div>`;
  }

  #slip() {
    const hand = this.#hand;
    const { id, sketch, kept } = hand;
    const onTable = kept === null || id === this.#keeper?.keptId;
    return html`<section class="hand" aria-label="In hand">
      <h3>${hand.title}</h3>
      <p class="quiet">${kept === null ? 'On the table, and not on the shelf' : `${onTable ? 'On the table; kept' : 'Kept'} ${timeWords(kept.keptAt, Date.now())}`}</p>
      ${
        hand.problems.length === 0
          ? nothing
          : html`<p>This version cannot read it. It stays as it is, and can be saved as a file.</p>
            <ul class="problems">${hand.problems.slice(0, 4).map(({ message }) => html`<li>${message}</li>`)}</ul>`
      }
      <div class="ways">
        ${onTable || !sketch ? nothing : html`<button class="act" @click=${() => id !== null && this.#openKept(id)}>Lay it on the table</button>`}
        ${kept === null && this.#keeper ? html`<button class="act" @click=${this.#keepTable}>Put it on the shelf</button>` : nothing}
        ${kept === null ? nothing : html`<button @click=${() => this.#copy(kept)}>Stand a copy beside it</button>`}
        <button @click=${() => this.#save(hand)}>Save as a file</button>
        ${sketch ? html`<button @click=${() => this.#copyLink(sketch)}>Copy a link</button>` : nothing}
        ${kept === null ? nothing : html`<button @click=${() => this.#takeOff(kept.id)}>Take it off the shelf</button>`}
      </div>
      ${this.link === null ? nothing : this.#linkText(this.link)}
    </section>`;
  }

  #linkText(link: string) {
    const long =
      link.length > LONG_LINK
        ? html`<p class="act">Links of more than ${LONG_LINK.toLocaleString('en')} characters are cut by some programs: rather send it as a file.</p>`
        : nothing;
    return html`<div class="link">
      <label>The link
        <input readonly .value=${link} @focus=${(event: Event) => event.target instanceof HTMLInputElement && event.target.select()} />
      </label>
      <p class="quiet">${link.length.toLocaleString('en')} characters. It carries the sketch itself as it is now, without photographs; no server keeps it.</p>
      ${long}
    </div>`;
  }

  #refused() {
    return html`<div class="away" role="alert">
      <div>
        <p class="act">This file is not a sketch that can be opened. Nothing was changed.</p>
        <ul class="problems">${this.problems.slice(0, 8).map(({ message }) => html`<li>${message}</li>`)}</ul>
      </div>
      <button @click=${() => {
        this.problems = [];
      }}>Close</button>
    </div>`;
  }

  readonly #look = (event: Event): void => {
    if (event.target instanceof HTMLInputElement) this.looked = event.target.value;
  };

  #take(id: string): void {
    if (id === this.picked) return;
    this.picked = id;
    this.link = null;
    this.said = '';
  }

  #openKept(id: string): void {
    const kept = this.kept?.find((other) => other.id === id);
    const reading = kept ? readSketchText(kept.document) : null;
    this.picked = id;
    if (!kept || !reading?.ok) return;
    if (id !== this.#keeper?.keptId) this.#keeper?.lay(reading.sketch, kept);
    this.#picked(reading.sketch, id);
  }

  #picked(sketch: Sketch, kept: string | null): void {
    this.dispatchEvent(new CustomEvent('sketch-pick', { detail: { sketch, kept }, bubbles: true, composed: true }));
  }

  /** A sketch, or a piece list that becomes one: a card of the size of the one on the table where the list has none. */
  async #readFile(file: File): Promise<FileReading> {
    const text = await file.text();
    if (!/\.(csv|tsv)$/i.test(file.name)) {
      const reading = readSketchText(text);
      return reading.ok ? { ...reading, told: [] } : reading;
    }
    const { readListFile } = await import('./list-file.js');
    return readListFile(text, file.name, this.session.document);
  }

  readonly #openFile = async (): Promise<void> => {
    const [file] = this.picker.files ?? [];
    if (!file) return;
    const reading = await this.#readFile(file);
    this.picker.value = '';
    this.problems = reading.ok ? [] : reading.problems;
    if (!reading.ok) return;
    if (reading.told.length > 0) this.#say(reading.told.join(' '));
    if (this.#keeper) this.#keeper.adopt(reading.sketch);
    else this.session.open(reading.sketch);
    this.picked = null;
    this.#picked(reading.sketch, null);
  };

  readonly #keepTable = async (): Promise<void> => {
    await this.#keeper?.keepTable();
    this.picked = this.#keeper?.keptId ?? null;
    this.#say(`${this.session.document.title} is on the shelf.`);
  };

  async #copy(kept: KeptSketch): Promise<void> {
    try {
      const copy = await copyKept(kept, newKeptId(), Date.now());
      this.picked = copy.id;
      this.#say(`A copy of ${kept.title} stands on the shelf.`);
    } catch (error) {
      this.#failed(error);
    }
    await this.#list();
  }

  /** What this version cannot read is saved as it lies in the database. */
  #save({ sketch, kept, title }: InHand): void {
    if (sketch) saveSketchFile(sketch);
    else if (kept) saveFile({ name: 'sketch-unread.json', type: 'application/json', content: kept.document });
    this.#say(`${title} is saved as a file.`);
  }

  async #copyLink(sketch: Sketch): Promise<void> {
    const { link, says } = await copyLink(sketch);
    this.link = link;
    this.#say(says);
  }

  readonly #offAsked = (event: CustomEvent<{ id: string }>): void => {
    void this.#takeOff(event.detail.id);
  };

  async #takeOff(id: string): Promise<void> {
    const shown = this.#shown;
    const at = shown.findIndex((kept) => kept.id === id);
    try {
      const taken = await this.#keeper?.takeOff(id);
      if (!taken) return;
      // The next card comes to hand, so that the keyboard stays where it was.
      this.picked = (shown[at + 1] ?? shown[at - 1])?.id ?? null;
      this.link = null;
      this.#say(`${taken.kept.title} is off the shelf. It can be put back as long as the shelf is open.`, true);
    } catch (error) {
      this.#failed(error);
    }
    await this.#list();
    await this.updateComplete;
    await this.boards?.updateComplete;
    this.boards?.focusCard();
  }

  async #putBack(taken: TakenOff): Promise<void> {
    try {
      const back = await this.#keeper?.putBack(taken);
      this.picked = taken.kept.id;
      const { title } = taken.kept;
      this.#say(back ? `${title} is on the shelf again.` : `${title} was kept anew meanwhile; that one stays.`);
    } catch (error) {
      this.#failed(error);
    }
    await this.#list();
  }

  #say(words: string, quietly = false): void {
    this.said = words;
    this.quietly = quietly;
  }

  #failed(error: unknown): void {
    const { trouble, message } = asKeepError(error);
    this.#say(
      trouble === 'full'
        ? 'The storage is full. Take something off the shelf, or clear photographs below.'
        : `The browser could not do it: ${message}`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-shelf': ShelfElement;
  }
}
