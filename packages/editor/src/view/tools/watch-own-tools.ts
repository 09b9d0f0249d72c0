import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { OwnTools } from './own-tools.js';

/** Renders its host again whenever the designer's own tools change, and has them read when it is first shown. */
export class WatchOwnTools implements ReactiveController {
  #stop: (() => void) | null = null;

  constructor(
    private readonly host: ReactiveControllerHost,
    readonly tools: OwnTools,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    this.#stop = this.tools.subscribe(() => this.host.requestUpdate());
    // What goes wrong is told by `trouble`.
    void this.tools.load();
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = null;
  }
}
