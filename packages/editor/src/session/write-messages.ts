import type { Length, Unit } from '@trimwell/geometry';
import type { HandoutOptions, HandoutPages, ListArrangement, ListFormat, TextFile } from '@trimwell/handout';
import type { CutFileOptions, CutFiles } from '@trimwell/handout/cut-files';
import type { PictureSubject } from '@trimwell/handout/picture';
import type { BatchPlan, Sketch } from '@trimwell/sketch';

/** How the pages to print are to be: everything of `HandoutOptions` but what the writer has itself. */
export type PagesChoice = Required<Pick<HandoutOptions, 'paper' | 'language' | 'unit' | 'templates'>>;

/** What everything is made of: the sketch as it lies on the table, its plan, and what the sheets at hand give. */
export interface Subject {
  readonly sketch: Sketch;
  readonly batch: BatchPlan;
  readonly most: NonNullable<HandoutOptions['most']> | null;
  /** The day that it is made on, as YYYY-MM-DD. */
  readonly date: string;
}

/** How files for a cutting machine are to be; `whole` for the batch, or else for one card. */
export type CutChoice = Required<Pick<CutFileOptions, 'format' | 'each' | 'gap' | 'margin' | 'unit'>> & {
  readonly whole: boolean;
};

export interface ListChoice {
  readonly format: ListFormat;
  readonly arrange: ListArrangement;
}

export interface PictureChoice {
  readonly of: PictureSubject['of'];
  /** Which sheet a guide is of, from 1. */
  readonly sheet: number;
  readonly width: number;
  readonly height: number;
  readonly titled: boolean;
}

/** The ways to put a sketch in a web page: live by its element, live in a frame, or plain, without any script. */
export const WEB_WAYS = ['element', 'frame', 'plain'] as const;

export interface WebChoice {
  readonly way: (typeof WEB_WAYS)[number];
  /** The folder on the site that the files of the live sketch lie in. */
  readonly files: string;
  /** The https address of the handout; empty for none. */
  readonly handout: string;
  readonly unit: Unit;
}

/** Photographs of sheets that are at hand, by their hashes. */
export type PhotoBlobs = ReadonlyMap<string, Blob>;

/** What is to be made. */
export type Wish =
  | { readonly make: 'pages'; readonly choice: PagesChoice; readonly post: string | null }
  | {
      readonly make: 'pdf';
      readonly choice: PagesChoice;
      /** The country of the post that was chosen; null where none was. */
      readonly post: string | null;
      readonly password: string | null;
      /** The moment that is written into the file. */
      readonly created: Date;
      readonly photos: PhotoBlobs;
    }
  | { readonly make: 'cut files'; readonly choice: CutChoice }
  | { readonly make: 'cut zip'; readonly choice: CutChoice }
  | { readonly make: 'list'; readonly choice: ListChoice }
  | { readonly make: 'web'; readonly choice: WebChoice }
  | { readonly make: 'picture'; readonly choice: PictureChoice; readonly photos: PhotoBlobs };

/** A file for a cutting machine, as it is shown: its outlines as SVG whatever it is written as. */
export interface CutFilePreview {
  readonly name: string;
  readonly title: string;
  readonly copies: number;
  readonly width: Length;
  readonly height: Length;
  readonly svg: string;
}

/** What was made. */
export type Made =
  | { readonly make: 'pages'; readonly pages: HandoutPages; readonly note: string | null }
  | { readonly make: 'pdf'; readonly bytes: Uint8Array<ArrayBuffer> }
  | {
      readonly make: 'cut files';
      readonly files: readonly CutFilePreview[];
      readonly cards: number;
      readonly papers: CutFiles['papers'];
    }
  | { readonly make: 'cut zip'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly make: 'list'; readonly file: TextFile }
  /** HTML to be copied, and the card on it as SVG. */
  | { readonly make: 'web'; readonly html: string; readonly card: string }
  | { readonly make: 'picture'; readonly svg: string; readonly sheets: readonly string[] };

/** What was made for a wish. */
export type MadeFor<Wished extends Wish> = Extract<Made, { readonly make: Wished['make'] }>;

export interface WriteQuestion {
  readonly number: number;
  readonly subject: Subject;
  readonly wish: Wish;
}

/** What the writer tells: how far it is, as often as it likes, and then how it ended. */
export type WriteAnswer =
  | { readonly number: number; readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly number: number; readonly kind: 'made'; readonly made: Made }
  | { readonly number: number; readonly kind: 'failed'; readonly message: string }
  /** The worker itself is of no more use. */
  | { readonly number: number; readonly kind: 'dead'; readonly message: string };

/** The end of a worker that is spoken to; a test puts its own here. */
export interface WritePort {
  onmessage: ((event: { readonly data: WriteAnswer }) => void) | null;
  postMessage(question: WriteQuestion): void;
  terminate(): void;
}
