export type { PhotoBytes } from './embed-pictures.js';
export { loadTextMeasure } from './text-measure.js';
export { type UnprintableText, unprintableNote, unprintableTexts } from './unprintable-texts.js';
export { type PdfOptions, writePdf } from './write-pdf.js';
