import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { whenKept } from '../keeping/keepers.js';
import { rememberedPost } from '../keeping/post-choice.js';
import type { CardWatch } from '../session/card-watch.js';
import { cardWatchOf } from '../session/card-watch-of.js';
import type { Session } from '../session/session.js';

/** Renders its host again whenever something else is known of the card as a whole. */
export class WatchCard implements ReactiveController {
  #watched: CardWatch | null = null;
  #stop: (() => void) | null = null;
  #connected = false;

  constructor(private readonly host: ReactiveControllerHost & { readonly session: Session }) {
    host.addController(this);
  }

  /** What looks at the card; there is one as soon as the host has a session. */
  get card(): CardWatch {
    return cardWatchOf(this.host.session);
  }

  hostConnected(): void {
    this.#connected = true;
    this.#follow();
  }

  hostUpdate(): void {
    this.#follow();
  }

  hostDisconnected(): void {
    this.#connected = false;
    this.#leave();
  }

  #follow(): void {
    if (!this.#connected || !this.host.session || this.#watched === this.card) return;
    this.#leave();
    this.#watched = this.card;
    const { card } = this;
    const remember = (): void => {
      card.post ??= rememberedPost();
    };
    const stops = [card.subscribe(() => this.host.requestUpdate()), whenKept(remember)];
    remember();
    this.#stop = () => {
      for (const stop of stops) stop();
    };
  }

  #leave(): void {
    this.#stop?.();
    this.#stop = null;
    this.#watched = null;
  }
}
