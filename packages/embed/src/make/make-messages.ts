import type { Unit } from '@trimwell/geometry';
import type { PagePaper } from '@trimwell/handout';
import type { BatchPlan, Sketch } from '@trimwell/sketch';

/** What is to be made of a sketch and its plan. */
export type Wish =
  | {
      readonly make: 'handout';
      readonly paper: PagePaper;
      readonly unit: Unit;
      /** The day on it, as YYYY-MM-DD, and the moment that is written into the file. */
      readonly date: string;
      readonly created: Date;
      /** Photographs of sheets as JPEG, by the names that looks have for them. */
      readonly photos: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
    }
  | { readonly make: 'piece list' };

export interface MakeQuestion {
  readonly number: number;
  readonly sketch: Sketch;
  readonly batch: BatchPlan;
  readonly wish: Wish;
}

/** A file to be saved. */
export interface MadeFile {
  readonly name: string;
  readonly type: string;
  readonly content: Uint8Array<ArrayBuffer> | string;
}

export type MakeAnswer =
  | { readonly number: number; readonly file: MadeFile }
  | { readonly number: number; readonly failed: string };

/** The end of a worker that makes files; a test puts its own here. */
export interface MakePort {
  onmessage: ((event: { readonly data: MakeAnswer }) => void) | null;
  onerror: ((message: string) => void) | null;
  postMessage(question: MakeQuestion): void;
}
