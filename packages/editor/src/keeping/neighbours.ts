/** What one tab tells the others. */
export type News =
  | { readonly kind: 'kept'; readonly id: string; readonly revision: number }
  | { readonly kind: 'taken off'; readonly id: string }
  | { readonly kind: 'put back'; readonly id: string };

const CHANNEL = 'trimwell-keeping';

/** The other tabs of this site, and the other tables of this page. A browser without channels has none; they are then found at the next write. */
export class Neighbours {
  readonly #channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(CHANNEL);

  constructor(hear: (news: News) => void) {
    this.#channel?.addEventListener('message', (event: MessageEvent<News>) => hear(event.data));
  }

  tell(news: News): void {
    this.#channel?.postMessage(news);
  }

  close(): void {
    this.#channel?.close();
  }
}
