import { dayOf } from '@trimwell/handout';
import type { BatchPlan, Sketch } from '@trimwell/sketch';
import { html, nothing, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { type SavedFile, saveFile } from '../../session/save-file.js';
import type { SessionChange } from '../../session/session.js';
import type { MadeFor, Subject, Wish } from '../../session/write-messages.js';
import { GivenUp, type Writer } from '../../session/writer.js';
import { SessionElement } from '../session-element.js';
import type { Choices } from './remembered-choices.js';

/** What takes longer than this gets a bar, in milliseconds. */
const SOON = 500;

/** Photographs by their hashes, which say which they are. */
function asText(_key: string, value: unknown): unknown {
  return value instanceof Map ? [...value.keys()] : value;
}

/** One way to hand a sketch on as a file: its choices, a preview that follows them, and the button that saves it. */
export abstract class MakerElement<Shown extends Wish> extends SessionElement {
  @property({ attribute: false }) writer!: Writer;
  @property({ attribute: false }) choices!: Choices;
  /** What the preview shows; null before the first. */
  @state() protected shown: MadeFor<Shown> | null = null;
  @state() private failure: string | null = null;
  @state() private said = '';
  /** How far the file is that is being saved; null while none is. */
  @state() private saving: { readonly done: number; readonly of: number; readonly slow: boolean } | null = null;
  /** What the newest preview is asked for. */
  #asked: { readonly sketch: Sketch; readonly batch: BatchPlan; readonly wish: string } | null = null;

  /** What the preview is made by. */
  protected abstract preview(): Shown;
  /** Makes the file. */
  protected abstract file(subject: Subject, progress: (done: number, of: number) => void): Promise<SavedFile>;
  protected abstract renderChoices(): TemplateResult;
  protected abstract renderPreview(shown: MadeFor<Shown>): TemplateResult;
  protected abstract get saveLabel(): string;
  /** False while a choice is such that nothing can be saved. */
  protected canSave(): boolean {
    return true;
  }

  /** Called when it is to be saved and cannot be: says why, and leads there. */
  protected refuse(): void {}

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // Nobody would see how far it is, nor could stop it.
    if (this.saving) this.writer.giveUpFiles();
  }

  protected override concerns(change: SessionChange): boolean {
    return change.sketch || change.plan || change.opened;
  }

  /** What is made of; null while there is no plan. */
  protected get subject(): Subject | null {
    const { state, plan } = this.session;
    if (!plan.batch) return null;
    return { sketch: state.sketch, batch: plan.batch, most: plan.limit, date: dayOf(new Date()) };
  }

  protected override updated(): void {
    const { subject } = this;
    if (!subject) return;
    const { sketch, batch } = subject;
    const wish = JSON.stringify([this.preview(), subject.most, subject.date], asText);
    const asked = this.#asked;
    if (asked?.sketch === sketch && asked.batch === batch && asked.wish === wish) return;
    this.#asked = { sketch, batch, wish };
    void this.#show(subject);
  }

  async #show(subject: Subject): Promise<void> {
    try {
      this.shown = await this.writer.make(subject, this.preview(), { preview: true });
      this.failure = null;
    } catch (error) {
      this.#fail(error);
    }
  }

  #fail(error: unknown): void {
    if (error instanceof GivenUp) return;
    this.failure = error instanceof Error ? error.message : String(error);
  }

  /** Called by a maker when a choice was changed. */
  protected chosen(): void {
    this.said = '';
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    return html`<div class="maker">
      <div class="choices">
        ${this.renderChoices()} ${this.#saving()}
        <p class="said" role="status">${this.said}</p>
        ${this.failure === null ? nothing : html`<p class="problem" role="alert">This could not be made: ${this.failure}</p>`}
      </div>
      <div class="preview">${this.#preview()}</div>
    </div>`;
  }

  #preview(): TemplateResult {
    const { plan } = this.session;
    if (this.shown) return this.renderPreview(this.shown);
    if (plan.failure !== null) return html`<p>There is no plan to show: ${plan.failure}</p>`;
    return html`<p class="quiet">Being laid out …</p>`;
  }

  #saving(): TemplateResult {
    const { saving } = this;
    if (!saving)
      return html`<button class="act save" aria-disabled=${!this.canSave() || !this.subject} @click=${this.#save}>${this.saveLabel}</button>`;
    return html`<div class="saving">
      ${
        saving.slow
          ? html`<progress aria-label="How far the file is" max=${saving.of} .value=${saving.done}></progress>`
          : nothing
      }
      <button class="act" @click=${this.#giveUp}>Give up</button>
    </div>`;
  }

  readonly #save = async (): Promise<void> => {
    const { subject } = this;
    if (!subject || this.saving) return;
    if (!this.canSave()) {
      this.refuse();
      return;
    }
    this.saving = { done: 0, of: 1, slow: false };
    this.said = '';
    void this.#focusOn('.saving button');
    const soon = setTimeout(() => {
      if (this.saving) this.saving = { ...this.saving, slow: true };
    }, SOON);
    try {
      const file = await this.file(subject, (done, of) => {
        if (this.saving) this.saving = { ...this.saving, done, of };
      });
      saveFile(file);
      this.failure = null;
      this.said = `${file.name} is saved.`;
    } catch (error) {
      if (error instanceof GivenUp) this.said = 'Given up; nothing was saved.';
      this.#fail(error);
    } finally {
      clearTimeout(soon);
      this.saving = null;
      void this.#focusOn('.save');
    }
  };

  readonly #giveUp = (): void => this.writer.giveUpFiles();

  /** The button that was pressed is gone; the one in its place has the focus then. */
  async #focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus();
  }
}
