import { css, html, nothing } from 'lit';
import { query, state } from 'lit/decorators.js';
import { SessionElement } from '../session-element.js';
import type { TrayElement } from './tray.js';
import { TRAYS, type TrayContent, type TrayEntry } from './tray-contents.js';
import type { TrayName, TrayWish } from './tray-names.js';

/**
 * Draws trays out when they are wished for, one at a time, and loads what lies in them.
 * @fires tray-shown - A tray has been drawn out and its content is there.
 */
export class TrayHostElement extends SessionElement {
  static override readonly styles = css`
    :host {
      display: contents;
    }
    p {
      margin: 0;
      color: var(--ink);
    }
  `;

  @state() private entry: TrayEntry | null = null;
  @state() private content: TrayContent | null = null;
  @state() private failure: string | null = null;
  @query('trimwell-tray') private readonly tray!: TrayElement | null;
  #wanted: TrayName | null = null;

  /** What lies in a tray watches the session itself. */
  protected override concerns(): boolean {
    return false;
  }

  /** Draws a tray out; does nothing for one that is not there. */
  async show({ tray, about }: TrayWish): Promise<void> {
    const entry = TRAYS[tray];
    if (!entry) return;
    this.#wanted = tray;
    this.entry = entry;
    this.content = null;
    this.failure = null;
    await this.updateComplete;
    try {
      await import('./define.js');
      await this.tray?.drawOut();
      await entry.load();
    } catch (error) {
      this.failure = error instanceof Error ? error.message : String(error);
      return;
    }
    if (this.#wanted !== tray) return;
    const content = document.createElement(entry.tag) as TrayContent;
    Object.assign(content, { session: this.session, pointing: this.pointing, about: about ?? null });
    this.content = content;
    await this.updateComplete;
    this.dispatchEvent(new CustomEvent('tray-shown', { detail: tray }));
  }

  putAway(): void {
    this.tray?.putAway();
  }

  protected override render() {
    const { entry } = this;
    if (!entry) return nothing;
    return html`<trimwell-tray heading=${entry.heading} @tray-away=${this.#away} @sketch-pick=${this.putAway}>
      ${this.failure === null ? this.content : html`<p role="alert">This part could not be loaded (${this.failure}). Put the tray away and try again.</p>`}
    </trimwell-tray>`;
  }

  readonly #away = (): void => {
    this.#wanted = null;
    this.entry = null;
    this.content = null;
  };
}
