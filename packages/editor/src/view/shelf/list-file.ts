import { formatSize, writeLength } from '@trimwell/geometry';
import { type Problem, readPieceList, type Sketch } from '@trimwell/sketch';

/** What a list is told of that has neither a card base nor a size of the card beside it. */
const NO_CARD = 'no-card';

/** What a file holds, and what was taken to be meant. */
export type FileReading =
  | { readonly ok: true; readonly sketch: Sketch; readonly told: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a piece list that was opened as a file. Its title is the name of the file; a list without a card base is laid on a
 * card of the size of `document`, and that is told.
 */
export function readListFile(text: string, name: string, document: Sketch): FileReading {
  const title =
    name
      .replace(/\.[a-z]+$/i, '')
      .replaceAll(/[-_]+/g, ' ')
      .trim() || 'Piece list';
  const alone = readPieceList(text, { title });
  if (alone.ok || !alone.problems.some(({ code }) => code === NO_CARD)) return alone;
  const { card, unit } = document;
  const [width, height] = [writeLength(card.width, unit), writeLength(card.height, unit)];
  const reading = readPieceList(text, { title, card: `${width} x ${height}`, fold: card.fold });
  if (!reading.ok) return reading;
  const told = `The list names no card; it lies on one of ${formatSize(card, { unit })}, as the card on the table was.`;
  return { ...reading, told: [told, ...reading.told] };
}
