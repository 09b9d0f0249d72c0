import { Element, type G, type Rect } from '@svgdotjs/svg.js';
import {
  type Drawing,
  type Item,
  inkMark,
  itemMark,
  lookPatterns,
  type Mark,
  type MarkContext,
  type Theme,
  TICKS_PER_UNIT,
} from '@trimwell/handout';
import { photoShelf, photosNamed } from '../photos/photo-shelf.js';
import { coverBox } from './cover.js';
import { type Laid, laidMark } from './laid-marks.js';

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** A mark that is on the stage: its element, and what the element was last given. */
interface Shown {
  readonly element: Element;
  mark: Mark;
  readonly children: Map<string, Shown>;
}

function keyed(marks: readonly Mark[]): ReadonlyMap<string, Mark> {
  return new Map(marks.map((mark, index) => [mark.key === '' ? `#${index}` : mark.key, mark]));
}

function changedAttributes(before: Mark['attributes'], after: Mark['attributes']): Record<string, string | null> {
  const gone = Object.keys(before).filter((name) => !(name in after));
  const fresh = Object.entries(after).filter(([name, value]) => before[name] !== value);
  return Object.fromEntries([...gone.map((name) => [name, null] as const), ...fresh]);
}

function create(parent: Element, mark: Mark): Shown {
  const element = new Element(document.createElementNS(SVG_NAMESPACE, mark.tag));
  parent.add(element);
  element.attr(mark.attributes);
  if (mark.text !== undefined) element.node.textContent = mark.text;
  const shown: Shown = { element, mark, children: new Map() };
  reconcile(element, shown.children, mark.children ?? []);
  return shown;
}

function update(shown: Shown, mark: Mark): void {
  for (const [name, value] of Object.entries(changedAttributes(shown.mark.attributes, mark.attributes))) {
    shown.element.attr(name, value);
  }
  if (mark.text !== shown.mark.text) shown.element.node.textContent = mark.text ?? '';
  reconcile(shown.element, shown.children, mark.children ?? []);
  shown.mark = mark;
}

/**
 * Makes `parent` hold `marks` in their order, keeping the element of every key that stays. An element is only moved when
 * it no longer follows the one before it, so that a piece keeps its focus and its drag while others change.
 */
function reconcile(parent: Element, shown: Map<string, Shown>, marks: readonly Mark[]): void {
  const wanted = keyed(marks);
  for (const [key, old] of shown) {
    if (wanted.get(key)?.tag === old.mark.tag) continue;
    old.element.remove();
    shown.delete(key);
  }
  let before: ChildNode | null = null;
  for (const [key, mark] of wanted) {
    const old = shown.get(key);
    if (old) update(old, mark);
    const here: Shown = old ?? create(parent, mark);
    if (!old) shown.set(key, here);
    const node: ChildNode = here.element.node;
    const due: ChildNode | null = before ? before.nextSibling : parent.node.firstChild;
    if (due !== node) parent.node.insertBefore(node, due);
    before = node;
  }
}

/** How a stage shows its drawing. */
export interface StageWay {
  /** With a theme it looks as on paper; without one the page's own rules give the roles their ink. */
  readonly theme?: Theme;
  /** Pieces are drawn where they lie, for a stage on which they are dragged. */
  readonly laid?: boolean;
}

/** The live drawing: the same marks that the writers get, kept in step element by element. */
export class Stage {
  readonly #marks = new Map<string, Shown>();
  readonly #patterns = new Map<string, Shown>();
  /** Patterns that one piece alone is filled with, where pieces are laid. */
  readonly #ownPatterns = new Map<string, Shown>();
  readonly #defs: Element;
  readonly #ownDefs: Element;
  readonly #covers: readonly Rect[];
  readonly #room: G;
  #wanted = '';
  #context: MarkContext | null = null;
  #groups: ReadonlyMap<string, SVGGElement> | null = null;

  /**
   * `group` holds the drawing and nothing else; `prefix` starts the ids of its patterns.
   */
  constructor(
    readonly group: G,
    private readonly prefix: string,
    private readonly way: StageWay = {},
  ) {
    const defs = (): Element => new Element(document.createElementNS(SVG_NAMESPACE, 'defs'));
    [this.#defs, this.#ownDefs] = [defs(), defs()];
    group.add(this.#defs).add(this.#ownDefs);
    const cover = (): readonly Rect[] => (way.laid ? [group.rect(1, 1).addClass('cover')] : []);
    // One before all pieces and one after them, since what is turned comes between.
    const under = cover();
    this.#room = group.group();
    this.#covers = [...under, ...cover()];
  }

  /** Shows `drawing`, touching only what differs from what is shown. */
  show(drawing: Drawing): void {
    const context = { looks: drawing.looks, prefix: this.prefix, photos: photoShelf.photos };
    reconcilePatterns(this.#defs, this.#patterns, lookPatterns(context));
    this.#bringPhotos(drawing);
    const laid = drawing.items.map((item) => this.#laid(item, context));
    reconcile(
      this.#room,
      this.#marks,
      laid.map(({ mark }) => mark),
    );
    reconcile(
      this.#ownDefs,
      this.#ownPatterns,
      laid.flatMap(({ patterns }) => patterns),
    );
    this.#context = context;
    this.#groups = null;
  }

  /** Shows `items` anew that are on the stage already, under the same keys; all else stays untouched. */
  amend(items: readonly Item[]): void {
    const context = this.#context;
    if (!context) return;
    for (const item of items) {
      const { mark, patterns } = this.#laid(item, context);
      const shown = this.#marks.get(mark.key);
      if (shown) update(shown, mark);
      for (const pattern of patterns) {
        const own = this.#ownPatterns.get(pattern.key);
        if (own) update(own, pattern);
      }
    }
  }

  #laid(item: Item, context: MarkContext): Laid {
    const { theme, laid } = this.way;
    if (laid) return laidMark(item, context);
    const mark = itemMark(item, context);
    return { mark: theme ? inkMark(mark, theme) : mark, patterns: [] };
  }

  /** Photographs are brought when others are wanted than before, not at every move; whoever shows them watches the shelf. */
  #bringPhotos({ looks }: Drawing): void {
    const ids = photosNamed(looks);
    const wanted = ids.join();
    if (wanted === this.#wanted) return;
    this.#wanted = wanted;
    void photoShelf.bring(ids);
  }

  /** Scales the drawing to `zoom` pixels per tick. */
  scale(zoom: number, left: number, top: number): void {
    const scale = zoom * TICKS_PER_UNIT;
    this.group.attr('transform', `translate(${left} ${top}) scale(${scale})`);
    for (const cover of this.#covers) cover.attr(coverBox(scale));
  }

  /** The groups of the pieces that are shown, by piece id, lowest first. */
  pieces(): ReadonlyMap<string, SVGGElement> {
    this.#groups ??= new Map(
      [...this.#room.node.children].flatMap((node) =>
        node instanceof SVGGElement && node.dataset['piece'] ? [[node.dataset['piece'], node] as const] : [],
      ),
    );
    return this.#groups;
  }

  /** The element that holds the pieces. */
  get list(): SVGGElement {
    return this.#room.node;
  }
}

/** A pattern's marks have no keys of their own, so a changed look is drawn anew. */
function reconcilePatterns(parent: Element, shown: Map<string, Shown>, patterns: readonly Mark[]): void {
  for (const pattern of patterns) {
    const old = shown.get(pattern.key);
    if (!old || JSON.stringify(old.mark) === JSON.stringify(pattern)) continue;
    old.element.remove();
    shown.delete(pattern.key);
  }
  reconcile(parent, shown, patterns);
}
