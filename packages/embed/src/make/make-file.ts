import { fileStem, layOutHandout, writePieceList } from '@trimwell/handout';
import type { MadeFile, MakeQuestion } from './make-messages.js';

/** Makes what is wished for; the PDF's writer is loaded when it is first wanted. @throws Error, in words for the reader */
export async function makeFile({ sketch, batch, wish }: Omit<MakeQuestion, 'number'>): Promise<MadeFile> {
  if (wish.make === 'piece list') {
    const { name, type, text } = writePieceList(sketch, { arrange: 'batch', cards: batch.cards }, 'csv');
    return { name, type, content: text };
  }
  const { paper, unit, date, created, photos } = wish;
  const { loadTextMeasure, writePdf } = await import('@trimwell/handout/pdf');
  const measure = await loadTextMeasure();
  const pages = layOutHandout(sketch, batch, { paper, language: 'en', unit, templates: false, measure, date });
  const bytes = await writePdf(pages, { created, photos });
  return { name: `${fileStem(sketch.title)}.pdf`, type: 'application/pdf', content: new Uint8Array(bytes) };
}
