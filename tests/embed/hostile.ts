import type { SketchDocument } from '@trimwell/sketch';
import { sampleDocument } from '../kit/sample-document.js';

/** A sketch or a share code that somebody made to do harm, or that a broken program made. */
export interface Hostile {
  readonly name: string;
  readonly by: 'json' | 'code';
  readonly text: string;
  /** What a reader has to answer; null where either will do. */
  readonly ends: 'read' | 'refused' | null;
  /** True for sound sketches that are as much work as there can be. */
  readonly large?: true;
}

export type Loose = Record<string, unknown>;

/** The sample with one of everything that holds text. */
export function full(): SketchDocument {
  const document = sampleDocument();
  const art = { motif: 'words', words: 'with love', ink: '#224433' } as const;
  return {
    ...document,
    number: 'sketch 3',
    credit: 'Fernhollow paper club',
    notes: 'Glue the strip last.',
    links: [{ text: 'The club', address: 'https://example.invalid/club' }],
    supplies: ['Foam squares'],
    card: { ...document.card, envelope: { name: 'A2', width: '5 3/4 in', height: '4 3/8 in' } },
    pieces: document.pieces.map((piece) => (piece.id === 'greeting' ? { ...piece, art } : piece)),
  };
}

/** A copy of `document` with `value` at `path`. */
export function at(document: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const copy = JSON.parse(JSON.stringify(document)) as Loose;
  const last = path.at(-1) ?? '';
  const holder = path.slice(0, -1).reduce<Loose>((each, step) => each[step] as Loose, copy);
  holder[last] = value;
  return copy;
}

/** One of the corpus as JSON: a text as it is, or a document. */
export function json(name: string, document: unknown, ends: Hostile['ends']): Hostile {
  return { name, by: 'json', text: typeof document === 'string' ? document : JSON.stringify(document), ends };
}
