import { LitElement, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import type { Session, SessionChange } from '../session/session.js';
import type { Pointing } from './pointing.js';

/** A part of the work table: it watches one session and renders again when what it shows has changed. */
export abstract class SessionElement extends LitElement {
  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) pointing!: Pointing;
  #watching: readonly (() => void)[] = [];

  /** True when this part shows something of what changed. */
  protected abstract concerns(change: SessionChange): boolean;

  /** Called at every change that concerns this part, before it renders; a part that paints by itself overrides it. */
  protected sessionChanged(_change: SessionChange): void {
    this.requestUpdate();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#unwatch();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('session') || changed.has('pointing')) this.#watch();
  }

  #watch(): void {
    this.#unwatch();
    if (!this.isConnected || !this.session || !this.pointing) return;
    this.#watching = [
      this.session.subscribe((change) => {
        if (this.concerns(change)) this.sessionChanged(change);
      }),
      this.pointing.subscribe(() => this.requestUpdate()),
    ];
  }

  #unwatch(): void {
    for (const stop of this.#watching) stop();
    this.#watching = [];
  }
}
