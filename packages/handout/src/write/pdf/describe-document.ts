import { type PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { escapeXml } from '../escape.js';

/** What a document says of itself. */
export interface DocumentWords {
  readonly title: string;
  readonly author: string;
  /** BCP 47. */
  readonly language: string;
  readonly subject: string;
  readonly created: Date;
}

const PRODUCER = 'Trimwell';

/** ISO 16684-1: the same facts for readers of metadata, and the claim of ISO 14289-1. */
function metadataPacket({ title, author, language, subject, created }: DocumentWords): string {
  const date = `${created.toISOString().slice(0, 19)}Z`;
  const words = (name: string, text: string) =>
    `<dc:${name}><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(text)}</rdf:li></rdf:Alt></dc:${name}>`;
  return [
    '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"',
    ' xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">',
    '<dc:format>application/pdf</dc:format>',
    words('title', title),
    ...(author === '' ? [] : [`<dc:creator><rdf:Seq><rdf:li>${escapeXml(author)}</rdf:li></rdf:Seq></dc:creator>`]),
    words('description', subject),
    `<dc:language><rdf:Bag><rdf:li>${escapeXml(language)}</rdf:li></rdf:Bag></dc:language>`,
    `<xmp:CreateDate>${date}</xmp:CreateDate><xmp:ModifyDate>${date}</xmp:ModifyDate>`,
    `<xmp:CreatorTool>${PRODUCER}</xmp:CreatorTool><pdf:Producer>${PRODUCER}</pdf:Producer>`,
    '<pdfuaid:part>1</pdfuaid:part>',
    '</rdf:Description></rdf:RDF></x:xmpmeta>',
    '<?xpacket end="w"?>',
  ].join('\n');
}

/** Writes title, author, language, subject, dates and the packet of metadata. */
export function describeDocument(document: PDFDocument, words: DocumentWords): void {
  const { context, catalog } = document;
  document.setTitle(words.title, { showInWindowTitleBar: true });
  if (words.author !== '') document.setAuthor(words.author);
  document.setSubject(words.subject);
  document.setLanguage(words.language);
  document.setCreator(PRODUCER);
  document.setProducer(PRODUCER);
  document.setCreationDate(words.created);
  document.setModificationDate(words.created);
  const packet = context.stream(new TextEncoder().encode(metadataPacket(words)), { Type: 'Metadata', Subtype: 'XML' });
  catalog.set(PDFName.of('Metadata'), context.register(packet));
}
