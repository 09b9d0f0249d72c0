import { formatSize } from '@trimwell/geometry';
import { drawCard, pieceTable } from '@trimwell/handout';
import { AS_MANY_AS_POSSIBLE, type Problem, readSketchText, type Sketch } from '@trimwell/sketch';
import { css, html, LitElement, nothing } from 'lit';
import { property, state } from 'lit/decorators.js';
import { svgNode } from './svg-nodes.js';

/**
 * A sketch in a page: the card at true proportion and the sizes of its pieces. What the page puts inside the element
 * stands until the sketch is read, and stays when it cannot be.
 * @fires sketch-read - The sketch was read; `detail` is the reading.
 * @fires sketch-refused - It could not be; `detail.problems` says why.
 * @slot - What is shown without scripts, before the sketch is read, and when it cannot be read.
 * @csspart sizes - The table of sizes.
 * @cssprop [--trimwell-ink=#22302f] - Text and lines.
 * @cssprop [--trimwell-line=#cfc6b4] - Rules of the table.
 */
export class TrimwellSketch extends LitElement {
  static override readonly styles = css`
    :host {
      display: block;
      color: var(--trimwell-ink, #22302f);
    }
    .both {
      display: flex;
      flex-wrap: wrap;
      gap: 16px 28px;
      align-items: start;
    }
    svg {
      display: block;
      flex: 1 1 240px;
      max-width: 360px;
      fill: none;
    }
    [data-role='shadow'] {
      fill: #1d2423;
      fill-opacity: 0.16;
      transform: translate(8px, 12px);
    }
    [data-role='outline'] {
      stroke: rgb(29 36 35 / 0.35);
      stroke-width: 1.5;
    }
    [data-role='dimension'],
    [data-role='fold'],
    [data-role='hidden'],
    [data-role='art'] {
      stroke: currentColor;
      stroke-width: 2;
    }
    [data-role='fold'] {
      stroke-dasharray: 20 8;
    }
    text {
      fill: currentColor;
      stroke: none;
    }
    table {
      flex: 1 1 260px;
      border-collapse: collapse;
      font-size: 0.9em;
    }
    caption {
      text-align: start;
      font-weight: 600;
    }
    :is(th, td) {
      padding: 3px 10px 3px 0;
      border-bottom: 1px solid var(--trimwell-line, #cfc6b4);
      text-align: start;
    }
    .quiet {
      font-size: 0.85em;
    }
  `;

  /** Address of a sketch file. Without it, a JSON script inside the element is read. */
  @property() src: string | null = null;
  @state() private sketch: Sketch | null = null;
  @state() private problems: readonly Problem[] = [];

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#read();
  }

  async #read(): Promise<void> {
    const inline = this.querySelector('script[type="application/json"]')?.textContent;
    const text = this.src === null ? (inline ?? '') : await this.#fetched(this.src);
    if (text === null) return;
    const reading = readSketchText(text);
    if (reading.ok) this.sketch = reading.sketch;
    else this.problems = reading.problems;
    this.dispatchEvent(new CustomEvent(reading.ok ? 'sketch-read' : 'sketch-refused', { detail: reading }));
  }

  async #fetched(address: string): Promise<string | null> {
    const answer = await fetch(address).catch(() => null);
    if (answer?.ok) return answer.text();
    this.problems = [
      {
        code: 'not-reached',
        path: '',
        value: address,
        allowed: 'an address that answers',
        message: `${address} does not answer.`,
      },
    ];
    return null;
  }

  protected override render() {
    const { sketch } = this;
    if (!sketch) {
      return html`<slot></slot>${this.problems.length > 0 ? html`<p class="quiet" role="note">The live sketch could not be read.</p>` : nothing}`;
    }
    const style = { unit: sketch.unit } as const;
    const cards = sketch.batch.cards === AS_MANY_AS_POSSIBLE ? 1 : sketch.batch.cards;
    return html`<div class="both">
      ${svgNode(drawCard(sketch, { face: 'front', style, labels: true }), 'sketch')}
      <table part="sizes">
        <caption>${sketch.title}: sizes for one card</caption>
        <thead>
          <tr><th scope="col">Piece</th><th scope="col">Cut</th><th scope="col">From</th></tr>
        </thead>
        <tbody>
          ${pieceTable(sketch, cards).map(
            (row) =>
              html`<tr><th scope="row">${row.label} ${row.name}</th><td>${formatSize({ width: row.blankWidth, height: row.blankHeight }, style)}</td><td>${row.paper}</td></tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}
