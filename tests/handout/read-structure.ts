import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFNumber,
  type PDFPage,
  type PDFRawStream,
  PDFRef,
} from '@cantoo/pdf-lib';

const name = (word: string) => PDFName.of(word);

function operatorsOf(page: PDFPage): string {
  const stream = page.doc.context.lookup(page.node.get(name('Contents'))) as PDFRawStream;
  return new TextDecoder().decode(decodePDFRawStream(stream).decode());
}

/** The content operators of all pages. */
export async function contentsOf(bytes: Uint8Array): Promise<string> {
  return (await PDFDocument.load(bytes)).getPages().map(operatorsOf).join('\n');
}

/** Marked content as `page/number/type`, sorted: as it stands in the pages, in the tree, and in the parent tree. */
export interface ReadStructure {
  readonly inContent: readonly string[];
  readonly inTree: readonly string[];
  readonly inParents: readonly string[];
  /** The annotations that the tree holds, with the type of the element that the parent tree names for each. */
  readonly annotations: readonly { readonly ref: string; readonly type: string }[];
}

/** Reads how content, structure tree and parent tree of a PDF belong together (ISO 32000-2, 14.7.5). */
export async function readStructure(bytes: Uint8Array): Promise<ReadStructure> {
  const document = await PDFDocument.load(bytes);
  const { context, catalog } = document;
  const pages = document.getPages();
  const pageOf = (ref: unknown) => pages.findIndex((page) => page.ref === ref);
  const tree = catalog.lookup(name('StructTreeRoot'), PDFDict);
  const numbers = tree.lookup(name('ParentTree'), PDFDict).lookup(name('Nums'), PDFArray);
  const parents = new Map<number, PDFRef>();
  for (let at = 0; at < numbers.size(); at += 2)
    parents.set(numbers.lookup(at, PDFNumber).asNumber(), numbers.get(at + 1) as PDFRef);
  const typeOf = (ref: PDFRef | undefined) => (ref ? String(context.lookup(ref, PDFDict).get(name('S'))) : 'none');

  const inContent = pages.flatMap((page, index) => {
    const text = operatorsOf(page);
    return [...text.matchAll(/(\/\w+) << \/MCID (\d+) >> BDC/g)].map(([, tag, id]) => `${index}/${id}/${tag}`);
  });
  const inParents = pages.flatMap((page, index) => {
    const key = page.node.lookup(name('StructParents'), PDFNumber).asNumber();
    const elements = context.lookup(parents.get(key), PDFArray);
    return Array.from({ length: elements.size() }, (_, id) => `${index}/${id}/${typeOf(elements.get(id) as PDFRef)}`);
  });
  const inTree: string[] = [];
  const annotations: { ref: string; type: string }[] = [];
  const walk = (ref: PDFRef) => {
    const element = context.lookup(ref, PDFDict);
    const kids = element.lookup(name('K'));
    for (const kid of kids instanceof PDFArray ? kids.asArray() : []) {
      if (kid instanceof PDFNumber)
        inTree.push(`${pageOf(element.get(name('Pg')))}/${kid.asNumber()}/${element.get(name('S'))}`);
      else if (kid instanceof PDFRef) walk(kid);
      else if (kid instanceof PDFDict) {
        const annotation = context.lookup(kid.get(name('Obj')), PDFDict);
        const key = annotation.lookup(name('StructParent'), PDFNumber).asNumber();
        annotations.push({ ref: String(kid.get(name('Obj'))), type: typeOf(parents.get(key)) });
      }
    }
  };
  walk(tree.lookup(name('K'), PDFArray).get(0) as PDFRef);
  const sorted = (all: readonly string[]) => [...all].sort();
  return { inContent: sorted(inContent), inTree: sorted(inTree), inParents: sorted(inParents), annotations };
}

/** The structure elements of a type, in the order in which they were written. */
export async function elementsOf(bytes: Uint8Array, type: string): Promise<readonly PDFDict[]> {
  const { context } = await PDFDocument.load(bytes);
  return context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter((object): object is PDFDict => object instanceof PDFDict && object.get(name('S')) === name(type));
}
