/** Registers elements by their tags. A page may load this twice, through two bundles: the first one stays. */
export function defineAll(tags: Readonly<Record<string, CustomElementConstructor>>): void {
  for (const [tag, element] of Object.entries(tags)) if (!customElements.get(tag)) customElements.define(tag, element);
}
