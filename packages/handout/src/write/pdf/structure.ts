import { type PDFContext, PDFHexString, type PDFRef } from '@cantoo/pdf-lib';

/** A structure element (ISO 32000-2, 14.7.2): its kids are numbers of marked content on its page, and elements. */
export interface StructureElement {
  readonly type: string;
  readonly page?: number;
  readonly kids: (number | StructureElement | { readonly annotation: PDFRef })[];
  readonly alt?: string;
  readonly attributes?: Readonly<Record<string, string | number | readonly number[]>>;
}

/** The tree of the document's structure, in reading order, and which element each piece of marked content belongs to. */
export class Structure {
  readonly root: StructureElement = { type: 'Document', kids: [] };
  /** By page, the element of each marked content. */
  readonly #contents: StructureElement[][] = [];
  readonly #annotations: StructureElement[] = [];

  constructor(private readonly pages: readonly PDFRef[]) {
    for (const _ of pages) this.#contents.push([]);
  }

  /** The number of a new piece of marked content of `element`. */
  mark(element: StructureElement): number {
    const contents = this.#contents[element.page ?? 0] ?? [];
    contents.push(element);
    element.kids.push(contents.length - 1);
    return contents.length - 1;
  }

  /** The key in the parent tree of an annotation that belongs to `element`. */
  annotate(element: StructureElement, annotation: PDFRef): number {
    element.kids.push({ annotation });
    this.#annotations.push(element);
    return this.pages.length + this.#annotations.length - 1;
  }

  /** Writes the tree; its reference goes into the catalog. */
  write(context: PDFContext): PDFRef {
    const tree = context.nextRef();
    const written = new Map<StructureElement, PDFRef>();
    const top = this.#element(context, this.root, tree, written);
    const refOf = (element: StructureElement): PDFRef => {
      const ref = written.get(element);
      if (!ref) throw new Error(`A ${element.type} with content stands outside the structure.`);
      return ref;
    };
    const parents = [
      ...this.#contents.map((contents) => context.register(context.obj(contents.map(refOf)))),
      ...this.#annotations.map(refOf),
    ];
    const numbers = parents.flatMap((ref, key) => [key, ref]);
    context.assign(
      tree,
      context.obj({
        Type: 'StructTreeRoot',
        K: [top],
        ParentTree: context.register(context.obj({ Nums: numbers })),
        ParentTreeNextKey: parents.length,
      }),
    );
    return tree;
  }

  #element(
    context: PDFContext,
    element: StructureElement,
    parent: PDFRef,
    written: Map<StructureElement, PDFRef>,
  ): PDFRef {
    const ref = context.nextRef();
    written.set(element, ref);
    const page = element.page === undefined ? undefined : this.pages[element.page];
    const kids = element.kids.map((kid) => {
      if (typeof kid === 'number') return kid;
      if ('annotation' in kid) return context.obj({ Type: 'OBJR', Obj: kid.annotation, ...(page ? { Pg: page } : {}) });
      return this.#element(context, kid, ref, written);
    });
    context.assign(
      ref,
      context.obj({
        Type: 'StructElem',
        S: element.type,
        P: parent,
        ...(page ? { Pg: page } : {}),
        ...(kids.length > 0 ? { K: kids } : {}),
        ...(element.alt === undefined ? {} : { Alt: PDFHexString.fromText(element.alt) }),
        ...(element.attributes ? { A: context.obj({ ...element.attributes } as Record<string, string>) } : {}),
      }),
    );
    return ref;
  }
}
