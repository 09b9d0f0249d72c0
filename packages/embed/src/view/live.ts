import type { LengthStyle } from '@trimwell/geometry';
import type { Photos } from '@trimwell/handout';
import type { Sketch } from '@trimwell/sketch';
import { isTooMuch } from '../state/drawing-cost.js';
import { choicesInFragment } from '../state/fragment.js';
import { memoryKey } from '../state/memory-key.js';
import { controlBar } from './control-bar.js';
import type { Desk } from './desk/desk.js';
import { fineCard } from './fine-picture.js';
import { firstLook, letterSize, plainCard } from './first-look.js';
import { WORDS } from './first-words.js';
import type { LiveHost } from './live-host.js';
import { LIVE_STYLES } from './live-styles.js';
import { LIVE_WORDS } from './live-words.js';
import { part } from './part.js';
import { patch } from './patch.js';

let liveStyles: CSSStyleSheet | null = null;

function styles(): CSSStyleSheet {
  if (!liveStyles) {
    liveStyles = new CSSStyleSheet();
    liveStyles.replaceSync(LIVE_STYLES);
  }
  return liveStyles;
}

/** A sketch that was read, in full, with its controls and, when they are asked for, the reader's desk. */
export class Live {
  readonly #host: LiveHost;
  readonly #place = document.createElement('div');
  readonly #width: number;
  readonly #sizes: ResizeObserver | null;
  #shown: Sketch;
  #style: LengthStyle;
  #photos: Photos = new Map();
  #picture: Element | null = null;
  #note = '';
  #open = false;
  #ended = false;
  #desk: Promise<Desk> | null = null;

  constructor(host: LiveHost) {
    this.#host = host;
    this.#shown = host.document;
    this.#style = host.style;
    this.#place.className = 'desk';
    this.#place.setAttribute('part', 'desk');
    const root = host.element.shadowRoot;
    if (root && !root.adoptedStyleSheets.includes(styles()))
      root.adoptedStyleSheets = [...root.adoptedStyleSheets, styles()];
    this.#render();
    this.#width = host.element.getBoundingClientRect().width;
    this.#sizes = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(() => this.#resized());
    this.#sizes?.observe(host.element);
    addEventListener('hashchange', this.#recall);
    this.#recall();
  }

  /** The sketch with what the reader has chosen. */
  get shown(): Sketch {
    return this.#shown;
  }

  /** Sizes in another unit, unless the reader has chosen one. */
  restyle(style: LengthStyle): void {
    this.#style = style;
    this.#redraw();
  }

  /** Plans no more until it is used again. */
  rest(): void {
    void this.#desk?.then((desk) => desk.leave());
  }

  /** Another sketch takes its place. */
  end(): void {
    this.#ended = true;
    this.rest();
    this.#sizes?.disconnect();
    removeEventListener('hashchange', this.#recall);
  }

  #redraw(): void {
    this.#picture = null;
    this.#render();
  }

  #render(): void {
    if (this.#ended) return;
    const sketch = this.#shown;
    const style = this.#style;
    const plainly = isTooMuch(sketch);
    this.#picture ??= plainly
      ? plainCard(sketch, style)
      : fineCard(sketch, 'front', style, letterSize(sketch), this.#photos);
    this.#host.reveal();
    const note = this.#note || (plainly ? LIVE_WORDS.drawnPlainly : '');
    patch(this.#host.sheet, [
      ...firstLook(sketch, style, this.#picture),
      controlBar({
        style,
        open: this.#open,
        onStyle: (chosen) => this.#chooseStyle(chosen),
        onOpen: () => this.#toggle(),
      }),
      note === '' ? null : part('p', { class: 'quiet', role: 'note' }, note),
      this.#open && this.#place,
    ]);
    this.#markScrolling();
  }

  /** What does not fit the height that was kept can be scrolled by keys as well. */
  #markScrolling(): void {
    const look = this.#host.sheet.querySelector('.look');
    if (look && look.scrollHeight > look.clientHeight + 1) look.setAttribute('tabindex', '0');
    else look?.removeAttribute('tabindex');
  }

  /** At another width everything on the page is set anew, and no height needs to be kept. */
  #resized(): void {
    if (Math.abs(this.#host.element.getBoundingClientRect().width - this.#width) >= 1) this.#release();
  }

  #release(): void {
    this.#host.sheet.style.removeProperty('height');
    this.#markScrolling();
  }

  #chooseStyle(style: LengthStyle): void {
    this.restyle(style);
    void this.#withDesk((desk) => desk.chooseStyle(style));
  }

  #toggle(): void {
    this.#open = !this.#open;
    this.#release();
    if (this.#open) patch(this.#place, [part('p', { class: 'quiet' }, WORDS.loading)]);
    this.#render();
    void this.#withDesk((desk) => desk.opened(this.#open));
  }

  async #withDesk(use: (desk: Desk) => void): Promise<void> {
    this.#desk ??= import('./desk/desk.js').then(({ Desk: Opened }) => new Opened(this.#deskHost()));
    const desk = await this.#desk.catch(() => null);
    if (this.#ended) return;
    if (desk) use(desk);
    else {
      this.#desk = null;
      this.#open = false;
      this.#note = WORDS.notLoaded;
      this.#render();
    }
  }

  #deskHost(): ConstructorParameters<typeof Desk>[0] {
    const { document: sketch, style, element, tell } = this.#host;
    return {
      document: sketch,
      style,
      root: element.shadowRoot as ShadowRoot,
      place: this.#place,
      show: (shown, chosen, photos, note) => {
        this.#shown = shown;
        this.#style = chosen;
        this.#photos = photos;
        this.#note = note;
        this.#redraw();
      },
      chosen: tell,
    };
  }

  /** What a link or this browser says of the reader's own version; nothing is loaded where neither says anything. */
  readonly #recall = (): void => {
    const code = choicesInFragment(location.hash);
    let remembered: string | null = null;
    try {
      remembered = localStorage.getItem(memoryKey(this.#host.document.id));
    } catch {
      // A browser that forbids storage remembers nothing, which is no fault.
    }
    if (code !== null || remembered !== null) void this.#withDesk((desk) => desk.recall(code, remembered));
  };
}
