import { type Child, flat, type Part } from './part.js';

type Listener = (event: Event) => void;

const made = new WeakMap<Node, Part>();

function hear(this: Element, event: Event): void {
  (made.get(this)?.settings[`on${event.type}`] as Listener | undefined)?.(event);
}

function set(element: Element, next: Part): void {
  const before = made.get(element)?.settings ?? {};
  made.set(element, next);
  for (const name of new Set([...Object.keys(before), ...Object.keys(next.settings)])) {
    const value = next.settings[name];
    if (name.startsWith('on')) {
      // The listener that is called is looked up when it is, so one is enough for an element's life.
      element.addEventListener(name.slice(2), hear);
    } else if (name.startsWith('.')) {
      const property = name.slice(1);
      if (Reflect.get(element, property) !== value) Reflect.set(element, property, value);
    } else if (value === undefined || value === null || value === false) element.removeAttribute(name);
    else {
      const text = value === true ? '' : String(value);
      if (element.getAttribute(name) !== text) element.setAttribute(name, text);
    }
  }
}

/**
 * Brings the children of `parent` to `children`, node by node: what is there already and of the same tag and key stays, so that
 * focus and what is typed stay too. Nothing is ever read as markup.
 */
export function patch(parent: Element | ShadowRoot, children: readonly Child[]): void {
  const there = new Set<Node>(parent.childNodes);
  const take = (fits: (node: Node) => boolean): Node | undefined => {
    for (const node of there) {
      if (!fits(node)) continue;
      there.delete(node);
      return node;
    }
    return undefined;
  };
  let place: Node | null = parent.firstChild;
  for (const child of flat(children)) {
    let node: Node;
    if (typeof child === 'string') {
      node = take((each) => each.nodeType === Node.TEXT_NODE) ?? document.createTextNode('');
      if (node.nodeValue !== child) node.nodeValue = child;
    } else if (child instanceof Element) {
      there.delete(child);
      node = child;
    } else {
      const { tag, key } = child;
      const element = (take((each) => made.get(each)?.tag === tag && made.get(each)?.key === key) ??
        document.createElement(tag)) as Element;
      // The properties of a list of choices depend on what stands in it.
      patch(element, child.children);
      set(element, child);
      node = element;
    }
    if (node === place) place = node.nextSibling;
    else parent.insertBefore(node, place);
  }
  for (const node of there) parent.removeChild(node);
}
