import { html, type TemplateResult } from 'lit';

/** What the buttons beside an item of an ordered list do; the item has `index` among `count`. */
export interface ListActs {
  readonly name: string;
  readonly index: number;
  readonly count: number;
  readonly move: (to: number) => void;
  readonly remove: () => void;
}

/** The buttons beside an item of a list: earlier, later, take away. */
export function listActs({ name, index, count, move, remove }: ListActs): TemplateResult {
  return html`<span class="acts">
    <button aria-label="Move up: ${name}" title="Move up" aria-disabled=${String(index === 0)} @click=${() => index > 0 && move(index - 1)}>↑</button>
    <button aria-label="Move down: ${name}" title="Move down" aria-disabled=${String(index === count - 1)} @click=${() => index < count - 1 && move(index + 1)}>↓</button>
    <button class="act" aria-label="Take away: ${name}" @click=${remove}>Take away</button>
  </span>`;
}
