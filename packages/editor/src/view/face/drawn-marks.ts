const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

interface Drawn {
  readonly node: SVGElement;
  readonly tag: string;
  /** Its words, in a node that stays: new words in it cost less than a new node. */
  readonly words: Text;
  attributes: Readonly<Record<string, string>>;
}

/**
 * Marks that are drawn anew at every frame, in one group. From one time to the next they are mostly the same ones somewhere
 * else, so elements are used again in their order: a browser pays far more for one that comes and goes than for one that
 * changes.
 */
export class DrawnMarks {
  readonly #drawn: Drawn[] = [];
  #next = 0;

  constructor(private readonly group: SVGGElement) {}

  /** Begins anew; what is not drawn again before `end` goes away. */
  begin(): void {
    this.#next = 0;
  }

  draw(tag: string, attributes: Readonly<Record<string, string>>, text = ''): void {
    const here = this.#drawn[this.#next];
    const drawn = here?.tag === tag ? here : this.#place(tag);
    this.#next += 1;
    for (const name of Object.keys(drawn.attributes)) if (!(name in attributes)) drawn.node.removeAttribute(name);
    for (const [name, value] of Object.entries(attributes))
      if (drawn.attributes[name] !== value) drawn.node.setAttribute(name, value);
    if (drawn.words.data !== text) drawn.words.data = text;
    drawn.attributes = attributes;
  }

  end(): void {
    for (const { node } of this.#drawn.splice(this.#next)) node.remove();
  }

  /** A new element where the next mark belongs; what was drawn from there on last time follows it. */
  #place(tag: string): Drawn {
    const node = document.createElementNS(SVG_NAMESPACE, tag);
    this.group.insertBefore(node, this.#drawn[this.#next]?.node ?? null);
    const words = document.createTextNode('');
    // An empty node in a shape is nothing to a browser.
    node.append(words);
    const drawn: Drawn = { node, tag, words, attributes: {} };
    this.#drawn.splice(this.#next, 0, drawn);
    return drawn;
  }
}
