import { PDFDocument, PDFName, PDFNumber, type PDFPage } from '@cantoo/pdf-lib';
import type { HandoutPages } from '../../page/page.js';
import { writeBookmarks } from './bookmarks.js';
import { describeDocument } from './describe-document.js';
import { embedPictures, type PhotoBytes } from './embed-pictures.js';
import { loadFonts } from './fonts.js';
import { POINTS_PER_TICK, pageMatrix } from './matrix.js';
import { protect } from './protect.js';
import { Resources } from './resources.js';
import { Structure } from './structure.js';
import { subjectIn } from './subject.js';
import { type UnprintableText, unprintableIn } from './unprintable-texts.js';
import { type PageTarget, writeBlock } from './write-block.js';

export interface PdfOptions {
  /** Written as the date of creation and of change, in seconds; the only thing beside a password that makes bytes differ. */
  readonly created: Date;
  /** One sentence on what the document is. Default: that it is a handout for a card, in its language. */
  readonly subject?: string;
  /**
   * Encrypts the file with AES-256 (ISO 32000-2, 7.6, V = 5, R = 6), so that it opens only with this password. It
   * protects the opening, and the content as long as the password is not guessed: a short word is. It does not protect
   * against those who know it: they can print, copy, change and pass on the handout, and no flag pretends otherwise. At
   * most 127 bytes of UTF-8.
   */
  readonly password?: string;
  /** Photographs of sheets that are at hand, JPEG or PNG; a print drawn by us stands in for any other. */
  readonly photos?: PhotoBytes;
  /** Is told of each text with letters that no font has. */
  readonly report?: (text: UnprintableText) => void;
  /** Is told after each page how many of how many are written. */
  readonly progress?: (written: number, pages: number) => void;
}

/** A length in points, to a hundred-thousandth: Letter and A4 come out as whole numbers and as ISO 216 says. */
function pointsOf(ticks: number): number {
  return Math.round(ticks * POINTS_PER_TICK * 1e5) / 1e5;
}

function finishPage(page: PDFPage, { content, annotations, context, index }: PageTarget, resources: Resources): void {
  // Mitres end where those of the SVG writer do.
  const stream = context.flateStream(`4 M\n${content.join('\n')}`);
  page.node.set(PDFName.of('Contents'), context.register(stream));
  page.node.set(PDFName.of('Resources'), resources.ref);
  page.node.set(PDFName.of('StructParents'), PDFNumber.of(index));
  page.node.set(PDFName.of('Tabs'), PDFName.of('S'));
  if (annotations.length > 0) page.node.set(PDFName.of('Annots'), context.obj(annotations));
}

function finishCatalog(document: PDFDocument, pages: HandoutPages, structure: Structure): void {
  const { context, catalog } = document;
  catalog.set(PDFName.of('StructTreeRoot'), structure.write(context));
  catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }));
  catalog.set(PDFName.of('PageLabels'), context.obj({ Nums: [0, { S: 'D' }] }));
  const refs = document.getPages().map(({ ref }) => ref);
  const outline = writeBookmarks(context, pages.pages, refs);
  if (outline) {
    catalog.set(PDFName.of('Outlines'), outline);
    catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'));
  }
}

/**
 * A handout as a PDF: vector drawing at true size, embedded subsets of its fonts, tagged for readers without eyes (ISO
 * 32000-2, 14.8; ISO 14289-1), with list of contents and metadata. The same pages and options give the same bytes; a
 * password adds the randomness that encryption needs.
 * @throws Error for a figure without words, a link that is not https, a picture that is neither JPEG nor PNG, a paper
 * without a look, an ink that is no colour, a handout without pages, an empty or too long password
 */
export async function writePdf(pages: HandoutPages, options: PdfOptions): Promise<Uint8Array> {
  if (pages.pages.length === 0) throw new Error('A handout without pages cannot be written.');
  const [document, fonts] = await Promise.all([PDFDocument.create({ updateMetadata: false }), loadFonts()]);
  const { context } = document;
  for (const text of unprintableIn(pages, fonts)) options.report?.(text);
  const pictures = await embedPictures(document, pages, options.photos);
  const written = pages.pages.map(({ width, height }) => document.addPage([pointsOf(width), pointsOf(height)]));
  const resources = new Resources(document, fonts, pages.looks, pictures);
  const structure = new Structure(written.map(({ ref }) => ref));
  pages.pages.forEach(({ blocks, height }, index) => {
    const page = written[index];
    if (!page) return;
    const matrix = pageMatrix(height);
    const target: PageTarget = {
      ...{ index, ref: page.ref, matrix, context, resources, structure },
      content: [],
      annotations: [],
    };
    for (const block of blocks) writeBlock(block, structure.root, target);
    finishPage(page, target, resources);
    options.progress?.(index + 1, pages.pages.length);
  });
  resources.write();
  finishCatalog(document, pages, structure);
  const { title, author, language } = pages;
  const { created, subject = subjectIn(language), password } = options;
  describeDocument(document, { title, author, language, subject, created });
  if (password !== undefined) protect(document, password);
  return document.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}
