import { G, Svg } from '@svgdotjs/svg.js';
import { type Drawing, unit } from '@trimwell/handout';
import { css, html, LitElement, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import { Stage } from '../face/stage.js';
import { watchPhotos } from '../photos/photo-watch.js';
import { drawingStyles } from './drawing-styles.js';

/**
 * One drawing, live: only what differs from the drawing before is touched. The pieces that are `lit` stand out.
 * @fires piece-point - The pointer came upon a piece, or left it; `detail.piece` is its id or null.
 * @fires piece-pick - A piece was pressed; `detail.piece` is its id.
 */
export class DrawingElement extends LitElement {
  static override readonly styles = [
    drawingStyles,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) drawing!: Drawing;
  @property({ attribute: false, hasChanged: (now: readonly string[], before) => String(now) !== String(before) })
  lit: readonly string[] = [];
  #stage: Stage | null = null;
  #svg: Svg | null = null;
  #marked: readonly Element[] = [];

  constructor() {
    super();
    watchPhotos(this, () => this.#repaint());
  }

  protected override render() {
    return html`<div @pointerover=${this.#over} @pointerleave=${this.#leave} @click=${this.#pick}></div>`;
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('drawing')) this.#show();
    if (changed.has('drawing') || changed.has('lit')) this.#light();
  }

  #show(): void {
    const place = this.renderRoot.querySelector('div');
    if (!place) return;
    if (!this.#stage || !this.#svg) {
      this.#svg = new Svg();
      place.append(this.#svg.node);
      const group = new G();
      this.#svg.add(group);
      this.#stage = new Stage(group, 'drawing');
    }
    const { x, y, width, height } = this.drawing.box;
    this.#svg.attr({ viewBox: [x, y, width, height].map(unit).join(' '), 'aria-hidden': 'true' });
    this.#stage.show(this.drawing);
  }

  #repaint(): void {
    if (this.#stage) this.#show();
  }

  #light(): void {
    for (const element of this.#marked) element.classList.remove('lit');
    this.#marked = this.lit.flatMap((id) => [...this.renderRoot.querySelectorAll(`[data-piece="${id}"]`)]);
    for (const element of this.#marked) element.classList.add('lit');
  }

  #pieceAt(event: Event): string | null {
    const [target] = event.composedPath();
    return target instanceof SVGElement ? (target.dataset['piece'] ?? null) : null;
  }

  readonly #over = (event: Event): void => {
    this.dispatchEvent(new CustomEvent('piece-point', { detail: { piece: this.#pieceAt(event) } }));
  };

  readonly #leave = (): void => {
    this.dispatchEvent(new CustomEvent('piece-point', { detail: { piece: null } }));
  };

  readonly #pick = (event: Event): void => {
    const piece = this.#pieceAt(event);
    if (piece !== null) this.dispatchEvent(new CustomEvent('piece-pick', { detail: { piece } }));
  };
}
