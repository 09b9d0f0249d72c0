import type { Rect } from '@trimwell/geometry';
import type { Drawing, Item } from '../drawing/drawing.js';

/** What a block is to a reader without eyes, by the structure types of ISO 32000-2, 14.8.4. */
export type BlockTag =
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Caption'
  | 'Artifact';

/** A part of a page in reading order: what is drawn of it, in ticks from the page's upper left corner, and its parts. */
export interface PageBlock {
  readonly tag: BlockTag;
  /** The area that is taken, for links and for the check that nothing collides. */
  readonly box: Rect;
  readonly items: readonly Item[];
  readonly blocks?: readonly PageBlock[];
  /** What a figure shows, in words. */
  readonly alt?: string;
  /** Where a press on it goes, https only. */
  readonly link?: string;
}

/** An entry of the list of contents: `level` 1 is a page of its own, 2 a part of it. */
export interface PageMark {
  readonly title: string;
  readonly level: 1 | 2;
  /** From the top of the page, in ticks. */
  readonly y: number;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly blocks: readonly PageBlock[];
  readonly marks: readonly PageMark[];
}

/** A handout laid out: what every writer of pages gets. */
export interface HandoutPages {
  readonly title: string;
  readonly author: string;
  /** BCP 47. */
  readonly language: string;
  readonly pages: readonly Page[];
  readonly looks: Drawing['looks'];
}
