import { LitElement, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import type { Session, SessionChange } from '../session/session.js';
import type { Pointing } from './pointing.js';

/** A part of the work table: it watches one session and renders again when what it shows has changed. */
export abstract class SessionElement extends LitElement {
  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) pointing!: Pointing;
  /** A move of pieces was passed over while it went on; it is shown when it has come to rest. */
  #owed = false;
  #watching: readonly (() => void)[] = [];

  /** True when this part shows something of what changed. */
  protected abstract concerns(change: SessionChange): boolean;

  /**
   * True when this part shows every place of a piece while it is dragged. Others wait for the end of a drag that changes
   * nothing but places, so that the card itself never has to wait for them.
   */
  protected get followsPlaces(): boolean {
    return false;
  }

  /** True when this part shows which piece is pointed at: that changes with every piece that the pointer runs over. */
  protected get followsPointing(): boolean {
    return false;
  }

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
      this.session.subscribe((change) => this.#heard(change)),
      this.pointing.subscribe((changed) => {
        if (changed === 'gathering' || this.followsPointing) this.requestUpdate();
      }),
    ];
  }

  #heard(change: SessionChange): void {
    const due = this.#owed && change.settled;
    if (due) this.#owed = false;
    const more = change.plan || change.selection || change.variations;
    const waits = change.places && !more && !change.settled && !this.followsPlaces;
    const concerned = this.concerns(change);
    if (concerned && waits) this.#owed = true;
    else if (concerned || due) this.sessionChanged(change);
  }

  #unwatch(): void {
    for (const stop of this.#watching) stop();
    this.#watching = [];
  }
}
