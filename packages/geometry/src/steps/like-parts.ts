import type { CutNode } from '../cut/cut-tree.js';
import type { Rect } from '../rect/rect.js';

/** Tells which parts of a plan are alike: of one size and cut up in the same way into the same blanks. */
export class LikeParts {
  readonly #shapes = new Map<string, number>();
  readonly #known = new WeakMap<CutNode, number>();
  readonly #numbers = new Map<number, Map<string, number>>();

  /** Nodes that are cut up in the same way have one shape. Each node is looked at once. */
  shape(node: CutNode): number {
    const known = this.#known.get(node);
    if (known !== undefined) return known;
    const text = this.#text(node);
    const shape = this.#shapes.get(text) ?? this.#shapes.size;
    this.#shapes.set(text, shape);
    this.#known.set(node, shape);
    return shape;
  }

  #text(node: CutNode): string {
    if (node.is === 'offcut') return 'offcut';
    if (node.is === 'blank') return JSON.stringify([node.blank, node.turned]);
    if (node.is === 'cut') return `${node.direction} ${node.at} ${this.shape(node.first)} ${this.shape(node.second)}`;
    const { hand, x1, x2, y1, y2, top, right, bottom, left, centre } = node;
    const arms = [top, right, bottom, left, centre].map((arm) => this.shape(arm));
    return [hand, x1, x2, y1, y2, ...arms].join(' ');
  }

  /** Equal for parts that are alike. */
  kind(node: CutNode, { width, height }: Rect): string {
    return `${this.shape(node)} ${width} ${height}`;
  }

  /** The number of a part among the unlike parts of its sheet, counted from 0 in the order in which they are asked for. */
  number(sheet: number, node: CutNode, place: Rect): number {
    const numbers = this.#numbers.get(sheet) ?? new Map<string, number>();
    this.#numbers.set(sheet, numbers);
    const kind = this.kind(node, place);
    const number = numbers.get(kind) ?? numbers.size;
    numbers.set(kind, number);
    return number;
  }
}
