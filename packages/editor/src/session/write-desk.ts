import { type HandoutPages, layOutHandout, type PieceList, writePieceList } from '@trimwell/handout';
import type { CutFiles } from '@trimwell/handout/cut-files';
import { postCountry } from '@trimwell/sketch/assembly';
import { printablePhotos } from './printable-photos.js';
import type {
  CutChoice,
  CutFilePreview,
  ListChoice,
  Made,
  PictureChoice,
  Subject,
  WebChoice,
  Wish,
  WriteQuestion,
} from './write-messages.js';

/** Is told how many parts of how many are done. */
export type Progress = (done: number, of: number) => void;

type PdfWriter = typeof import('@trimwell/handout/pdf');

async function layOut(
  { sketch, batch, most, date }: Subject,
  { choice, post }: Pick<Extract<Wish, { make: 'pages' }>, 'choice' | 'post'>,
  { loadTextMeasure }: PdfWriter,
): Promise<HandoutPages> {
  // A country that was remembered need not be in the table any more.
  const known = post !== null && postCountry(post) ? { post } : {};
  return layOutHandout(sketch, batch, { ...choice, ...known, most, date, measure: await loadTextMeasure() });
}

/** Work for nesting a paper: about a second on a slow machine (see `NestOptions`). */
const NESTING = 1_000_000;

/** Files for as many cards as the plan makes, or for one. */
async function cut({ sketch, batch }: Subject, { whole, ...choice }: CutChoice): Promise<CutFiles> {
  const { cutFiles } = await import('@trimwell/handout/cut-files');
  return cutFiles(sketch, { ...choice, cards: whole ? Math.max(1, batch.cards) : 1, work: NESTING });
}

/** The files as they are shown; those that are no drawings for a browser are made as such ones too. */
async function cutPreview(subject: Subject, choice: CutChoice): Promise<Made> {
  const made = await cut(subject, choice);
  const drawn = choice.format === 'svg' ? made : await cut(subject, { ...choice, format: 'svg' });
  const files = made.files.map(
    ({ name, title, copies, width, height }, index): CutFilePreview => ({
      ...{ name, title, copies, width, height },
      svg: drawn.files[index]?.text ?? '',
    }),
  );
  return { make: 'cut files', files, cards: made.cards, papers: made.papers };
}

function listOf({ batch }: Subject, { arrange }: ListChoice): PieceList {
  switch (arrange) {
    case 'card':
      return { arrange };
    case 'batch':
      return { arrange, cards: batch.cards };
    case 'paper':
      return { arrange, cards: batch.cards, plan: batch };
    case 'setting':
      return { arrange, plan: batch };
  }
}

async function picture(subject: Subject, choice: PictureChoice, photos: ReadonlyMap<string, Blob>): Promise<Made> {
  const { sketch, batch } = subject;
  const { guideSheets, sheetName, writePicture } = await import('@trimwell/handout/picture');
  const { pictureFonts, photoAddresses } = await import('./picture-parts.js');
  const { of, width, height, titled } = choice;
  // A better plan may have fewer sheets than the one that the sheet was chosen in.
  const sheet = Math.min(choice.sheet, Math.max(1, guideSheets(batch).length));
  const shown = { of, cards: Math.max(1, batch.cards), plan: batch, sheet };
  const options = {
    ...{ size: { width, height }, photos: await photoAddresses(photos) },
    ...(titled ? { title: sketch.title } : {}),
  };
  // Which letters it needs is known when it is written.
  const plain = writePicture(sketch, shown, options);
  const svg = writePicture(sketch, shown, { ...options, fonts: await pictureFonts(plain) });
  const sheets = guideSheets(batch).map((each) => sheetName(sketch, each));
  return { make: 'picture', svg, sheets };
}

/** What is copied into a page when the handout is linked to. */
const HANDOUT_TEXT = 'The handout to print (PDF)';

async function webPage({ sketch }: Subject, { way, files, handout, unit }: WebChoice): Promise<Made> {
  const { cardFigure, elementSnippet, frameSnippet, staticSnippet } = await import('@trimwell/handout/embed');
  const link = handout === '' ? {} : { link: { text: HANDOUT_TEXT, address: handout } };
  const card = cardFigure(sketch, unit, `trimwell-${sketch.id}`);
  if (way === 'plain') return { make: 'web', html: staticSnippet(sketch, { unit, ...link }), card };
  const { writeShareCode } = await import('@trimwell/sketch/share-code');
  const live = { files, unit, ...link, code: writeShareCode(sketch) };
  return { make: 'web', html: way === 'element' ? elementSnippet(sketch, live) : frameSnippet(sketch, live), card };
}

/** Makes what is wished for; the writers are loaded when they are first wanted. @throws Error, in words for the user */
export async function write({ subject, wish }: Omit<WriteQuestion, 'number'>, progress: Progress): Promise<Made> {
  switch (wish.make) {
    case 'pages': {
      const writer = await import('@trimwell/handout/pdf');
      const pages = await layOut(subject, wish, writer);
      return { make: 'pages', pages, note: writer.unprintableNote(await writer.unprintableTexts(pages)) };
    }
    case 'pdf': {
      const writer = await import('@trimwell/handout/pdf');
      const pages = await layOut(subject, wish, writer);
      const photos = await printablePhotos(wish.photos);
      const bytes = await writer.writePdf(pages, {
        created: wish.created,
        photos,
        progress,
        ...(wish.password === null ? {} : { password: wish.password }),
      });
      return { make: 'pdf', bytes: new Uint8Array(bytes) };
    }
    case 'cut files':
      return cutPreview(subject, wish.choice);
    case 'cut zip': {
      const { zipCutFiles } = await import('@trimwell/handout/cut-files');
      return { make: 'cut zip', bytes: new Uint8Array(zipCutFiles(await cut(subject, wish.choice))) };
    }
    case 'list':
      return { make: 'list', file: writePieceList(subject.sketch, listOf(subject, wish.choice), wish.choice.format) };
    case 'web':
      return webPage(subject, wish.choice);
    case 'picture':
      return picture(subject, wish.choice, wish.photos);
  }
}
