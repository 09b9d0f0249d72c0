import { type Sketch, writeSketch } from '@trimwell/sketch';

/** A sketch as it lies on a shelf of the browser's database. */
export interface KeptSketch {
  readonly id: string;
  /** The shelf it stands on, as the page names it. */
  readonly place: string;
  /** The sketch document as JSON text; it is read through the same door as a file. */
  readonly document: string;
  /** Counts every time it was kept, from 1: who writes says which one they started from. */
  readonly revision: number;
  /** When it was kept, in milliseconds since 1970. */
  readonly keptAt: number;
  readonly title: string;
  readonly number: string;
  /** All that a search looks through, folded by `foldWords`. */
  readonly words: string;
  /** It was kept beside another one because two tabs had changed the same sketch. */
  readonly aside: boolean;
}

/** `text` without capitals and accents, so that a search for "zoe" finds "Zoë". */
export function foldWords(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** The text of a sketch in the database: the same for equal sketches. */
export function documentText(sketch: Sketch): string {
  return JSON.stringify(writeSketch(sketch));
}

/** What a kept sketch says of itself besides its place and time. */
export function describeSketch(sketch: Sketch): Pick<KeptSketch, 'document' | 'title' | 'number' | 'words'> {
  const names = [...sketch.papers, ...sketch.pieces, ...sketch.variations].map(({ name }) => name);
  const { title, number = '', credit = '' } = sketch;
  return {
    document: documentText(sketch),
    title,
    number,
    words: foldWords([title, number, credit, ...names].join('\n')),
  };
}

/** Those of `kept` in which every word of `looked` occurs, newest first; equally old ones by id. */
export function searchKept(kept: readonly KeptSketch[], looked: string): readonly KeptSketch[] {
  const words = foldWords(looked).split(/\s+/).filter(Boolean);
  return kept
    .filter((sketch) => words.every((word) => sketch.words.includes(word)))
    .sort((a, b) => b.keptAt - a.keptAt || (a.id < b.id ? -1 : 1));
}

/** A new id: 96 random bits. `crypto.randomUUID` is missing in pages that were not loaded securely. */
export function newKeptId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
