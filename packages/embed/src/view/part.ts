/** An element as it is to be: what a view returns, and `make` or `patch` brings about. */
export interface Part {
  readonly tag: string;
  /** Tells parts of one list apart where their places change. */
  readonly key: string | undefined;
  readonly settings: Settings;
  readonly children: readonly Child[];
}

/** `onclick` and the like are listeners, `.value` and the like are properties, all else are attributes; `true` is an empty one. */
export type Settings = Readonly<Record<string, unknown>>;
/** Text stays text: a string becomes a text node and nothing else. An element stands there as it is. */
export type Child = Part | Element | string | null | false | readonly Child[];

/** A part; `key` among the settings is its key. */
export function part(tag: string, { key, ...settings }: Settings = {}, ...children: readonly Child[]): Part {
  return { tag, key: key as string | undefined, settings, children };
}

/** `children` in a row, without those that are not there. */
export function flat(children: readonly Child[]): readonly (Part | Element | string)[] {
  return children.flatMap((child): readonly (Part | Element | string)[] => {
    if (child === null || child === false) return [];
    if (typeof child === 'string' || child instanceof Element || 'tag' in child) return [child];
    return flat(child);
  });
}

/** The nodes of parts that only have attributes, made once. Nothing is ever read as markup. */
export function make(children: readonly Child[]): readonly (Element | string)[] {
  return flat(children).map((child) => {
    if (typeof child === 'string' || child instanceof Element) return child;
    const element = document.createElement(child.tag);
    for (const [name, value] of Object.entries(child.settings)) element.setAttribute(name, String(value));
    element.append(...make(child.children));
    return element;
  });
}
