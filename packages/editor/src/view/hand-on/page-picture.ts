import { G, Svg } from '@svgdotjs/svg.js';
import { type Drawing, PAPER_THEME, type Page, pageDrawing, TEXT_FONT, unit } from '@trimwell/handout';
import { css, html, LitElement, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import { Stage } from '../face/stage.js';
import { inStyle } from '../in-style.js';
import { watchPhotos } from '../photos/photo-watch.js';

/** How far outside the view a page is drawn already. */
const AHEAD = '600px';

/** One page of the handout as it will be printed. It is drawn when it comes near the view, since there can be forty. */
export class PagePictureElement extends LitElement {
  static override readonly styles = css`
    :host {
      display: block;
      /* Fractions are set by their own slash; the table's rule would make numerators of all figures. */
      font-variant-numeric: normal;
    }
    div {
      background: #fff;
      box-shadow: 0 1px 3px rgb(20 25 24 / 0.25), 0 6px 18px rgb(20 25 24 / 0.14);
      overflow: hidden;
    }
    svg {
      display: block;
      width: 100%;
      height: 100%;
      fill: none;
    }
  `;

  @property({ attribute: false }) page!: Page;
  @property({ attribute: false }) looks!: Drawing['looks'];
  /** What the picture is called: `Page 2 of 6`. */
  @property() label = '';
  #near = false;
  #stage: Stage | null = null;
  #watch: IntersectionObserver | null = null;

  constructor() {
    super();
    watchPhotos(this, () => this.#draw());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        this.#near = true;
        this.#watch?.disconnect();
        this.#draw();
      },
      { rootMargin: AHEAD },
    );
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
  }

  protected override render() {
    const { width, height } = this.page;
    return html`<div role="img" aria-label=${this.label} ${inStyle({ 'aspect-ratio': `${width} / ${height}` })}></div>`;
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('page') || changed.has('looks')) this.#draw();
  }

  #draw(): void {
    const place = this.renderRoot.querySelector('div');
    if (!place || !this.#near) return;
    if (!this.#stage) {
      const svg = new Svg();
      svg.attr({ 'aria-hidden': 'true', 'font-family': TEXT_FONT });
      place.append(svg.node);
      const group = new G();
      svg.add(group);
      this.#stage = new Stage(group, 'page', { theme: PAPER_THEME });
    }
    const { width, height } = this.page;
    place.querySelector('svg')?.setAttribute('viewBox', [0, 0, unit(width), unit(height)].join(' '));
    this.#stage.show(pageDrawing(this.page, this.looks));
  }
}
