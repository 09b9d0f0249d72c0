import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit/directive.js';

/** CSS properties by their names in CSS, custom ones too; what is left out of the next ones is taken away. */
export type Styles = Readonly<Record<`--${string}` | string, string>>;

/**
 * Sets styles by script alone. A `style` attribute, which lit's own directive writes at first, is refused by a content
 * security policy without `unsafe-inline`.
 */
class InStyle extends Directive {
  #before: readonly string[] = [];

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new TypeError('inStyle stands in a tag, beside the attributes');
  }

  override update({ element }: ElementPart, [styles]: [Styles]): void {
    if (!(element instanceof HTMLElement || element instanceof SVGElement)) return;
    for (const name of this.#before) if (!(name in styles)) element.style.removeProperty(name);
    for (const [name, value] of Object.entries(styles)) element.style.setProperty(name, value);
    this.#before = Object.keys(styles);
  }

  override render(_styles: Styles): void {}
}

/** `<div ${inStyle({ left: '3px' })}>` */
export const inStyle = directive(InStyle);
