import { html, LitElement, type PropertyValues } from 'lit';
import { property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { KeptSketch } from '../../keeping/kept-sketch.js';
import { timeWords } from '../../keeping/kept-words.js';
import { inStyle } from '../in-style.js';
import { tableStyles } from '../table/table-styles.js';
import { boardsStyles } from './boards-styles.js';
import { KeptViews } from './kept-drawing.js';

/** Pixels on the board of one inch of a card, so that cards stand beside each other in their true sizes; large ones stand back. */
const PER_INCH = 27;
const TICKS_PER_INCH = 16_256;
const WIDEST = 118;
const HIGHEST = 152;

/** Width and height of a card on the board, in pixels. */
export function standing(width: number, height: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(PER_INCH / TICKS_PER_INCH, WIDEST / width, HIGHEST / height);
  return { width: Math.round(width * scale), height: Math.round(height * scale) };
}

/**
 * Kept sketches as cards that stand on boards: one list of which one card is taken in hand, by mouse, finger or arrow keys.
 * @fires kept-pick - A card was taken in hand; `detail.id`.
 * @fires kept-open - A card is wanted on the table; `detail.id`.
 * @fires kept-off - A card is to be taken off the shelf; `detail.id`.
 */
export class BoardsElement extends LitElement {
  static override readonly styles = [tableStyles, boardsStyles];

  /** In the order in which they stand. */
  @property({ attribute: false }) kept: readonly KeptSketch[] = [];
  /** Id of the one in hand, or null. */
  @property({ attribute: false }) picked: string | null = null;
  /** Id of the one on the table, or null. */
  @property({ attribute: false }) onTable: string | null = null;
  /** Ids of those that have come into sight; only these are read and drawn. */
  @state() private seen: ReadonlySet<string> = new Set();
  readonly #views = new KeptViews();
  readonly #sight =
    typeof IntersectionObserver === 'undefined'
      ? null
      : new IntersectionObserver((entries) => this.#see(entries), { rootMargin: '200px' });

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sight?.disconnect();
  }

  protected override render() {
    const now = Date.now();
    const reached = this.picked ?? this.kept[0]?.id ?? null;
    return html`<ul role="listbox" aria-label="Kept sketches" @keydown=${this.#key} @click=${this.#pick} @dblclick=${this.#open}>
      ${repeat(
        this.kept,
        ({ id }) => id,
        (kept) => html`<li
          role="option"
          data-id=${kept.id}
          tabindex=${kept.id === reached ? 0 : -1}
          aria-selected=${kept.id === this.picked}
        >
          ${this.#card(kept)}
          <div class="tab" title=${kept.title}>
            <b>${kept.title}</b>
            <span class="quiet">${[kept.number, kept.aside ? 'second of two tabs' : ''].filter(Boolean).join(', ')}</span>
            <span class="quiet">${kept.id === this.onTable ? 'on the table' : timeWords(kept.keptAt, now)}</span>
          </div>
        </li>`,
      )}
    </ul>`;
  }

  #card(kept: KeptSketch) {
    if (this.#sight && !this.seen.has(kept.id)) return html`<span></span>`;
    const view = this.#views.of(kept);
    if (!view.ok) return html`<div class="card broken"><span>cannot be read here</span></div>`;
    const { fold, width, height } = view.sketch.card;
    const size = standing(width, height);
    const kind = fold === 'left' ? 'folded' : fold === 'top' ? 'tent' : '';
    return html`<div class="card ${kind}" ${inStyle({ width: `${size.width}px`, height: `${size.height}px` })}>
        <trimwell-drawing .drawing=${view.drawing}></trimwell-drawing>
      </div>`;
  }

  protected override updated(changed: PropertyValues): void {
    if (!changed.has('kept')) return;
    for (const item of this.#items()) if (!this.seen.has(item.dataset['id'] ?? '')) this.#sight?.observe(item);
  }

  /** Moves the focus to the card in hand, or to the first. */
  focusCard(): void {
    this.#items()
      .find(({ tabIndex }) => tabIndex === 0)
      ?.focus();
  }

  #items(): readonly HTMLElement[] {
    return [...this.renderRoot.querySelectorAll('li')];
  }

  #see(entries: readonly IntersectionObserverEntry[]): void {
    const come = entries.filter(({ isIntersecting }) => isIntersecting).map(({ target }) => target as HTMLElement);
    if (come.length === 0) return;
    for (const item of come) this.#sight?.unobserve(item);
    this.seen = new Set([...this.seen, ...come.map((item) => item.dataset['id'] ?? '')]);
  }

  #idOf(event: Event): string | null {
    const item = event.target instanceof Element ? event.target.closest('li') : null;
    return item?.dataset['id'] ?? null;
  }

  #fire(name: 'kept-pick' | 'kept-open' | 'kept-off', id: string | null): void {
    if (id !== null) this.dispatchEvent(new CustomEvent(name, { detail: { id } }));
  }

  readonly #pick = (event: Event): void => this.#fire('kept-pick', this.#idOf(event));

  readonly #open = (event: Event): void => this.#fire('kept-open', this.#idOf(event));

  readonly #key = (event: KeyboardEvent): void => {
    const id = this.#idOf(event);
    if (id === null || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter') this.#fire('kept-open', id);
    else if (event.key === ' ') this.#fire('kept-pick', id);
    else if (event.key === 'Delete') this.#fire('kept-off', id);
    else if (!this.#walk(event.key, id)) return;
    event.preventDefault();
  };

  /** Takes the card in hand that `key` leads to from `id`; false when the key leads nowhere. */
  #walk(key: string, id: string): boolean {
    const items = this.#items();
    const from = items.findIndex((item) => item.dataset['id'] === id);
    const first = items[0]?.offsetTop;
    const columns = Math.max(1, items.filter(({ offsetTop }) => offsetTop === first).length);
    const steps: Readonly<Record<string, number>> = {
      ArrowLeft: from - 1,
      ArrowRight: from + 1,
      ArrowUp: from - columns,
      ArrowDown: from + columns,
      Home: 0,
      End: items.length - 1,
    };
    const to = steps[key];
    if (to === undefined) return false;
    const next = items[to];
    next?.focus();
    this.#fire('kept-pick', next?.dataset['id'] ?? null);
    return true;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trimwell-boards': BoardsElement;
  }
}
