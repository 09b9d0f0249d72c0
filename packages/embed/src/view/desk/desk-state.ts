import type { LengthStyle } from '@trimwell/geometry';
import type { Photos, WorkList } from '@trimwell/handout';
import type { Sketch } from '@trimwell/sketch';
import type { OfferedVariation } from '../../state/apply-choices.js';
import type { Choices } from '../../state/choices.js';
import type { PlanState } from './plan-state.js';

/** The parts of the desk that open and close. */
export type Fold = 'paper' | 'variations' | 'guide' | 'every' | 'steps' | 'designer' | 'handOn' | 'from';

/** What is loaded when a fold is first opened. */
export interface Parts {
  readonly guide: typeof import('./guide-part.js') | null;
  readonly every: typeof import('./every-part.js') | null;
  readonly steps: typeof import('./steps-part.js') | null;
}

/** A field whose text is not a length, as it was typed. */
export interface Draft {
  readonly text: string;
  readonly wrong: boolean;
}

/** A scrap while it is being described. */
export interface ScrapForm {
  readonly name: string;
  readonly like: string;
  readonly width: string;
  readonly height: string;
  readonly sheets: string;
  readonly problem: string;
}

/** All that the desk shows. */
export interface DeskState {
  readonly document: Sketch;
  /** With what was chosen. */
  readonly sketch: Sketch;
  readonly style: LengthStyle;
  readonly choices: Choices;
  readonly offered: readonly OfferedVariation[];
  readonly plan: PlanState;
  readonly photos: Photos;
  /** Papers with a photograph of the reader's, by id. */
  readonly photographed: ReadonlySet<string>;
  readonly folds: ReadonlySet<Fold>;
  readonly parts: Parts;
  readonly drafts: ReadonlyMap<string, Draft>;
  readonly scrapForm: ScrapForm | null;
  /** Steps that are done, by their places in the whole list from 0. */
  readonly done: ReadonlySet<number>;
  readonly work: WorkList | null;
  /** How many sheets and cards are drawn at most. */
  readonly most: { readonly sheets: number; readonly cards: number };
  readonly page: 'letter' | 'a4';
  /** What is said quietly about files, the link and photographs. */
  readonly said: string;
  readonly link: string;
}

/** What the reader can do at the desk. */
export interface DeskActs {
  choose(change: Partial<Choices>): void;
  toggle(fold: Fold, open: boolean): void;
  draft(key: string, draft: Draft | null): void;
  photograph(paper: string, file: File): void;
  scrapForm(form: ScrapForm | null): void;
  removeScrap(index: number): void;
  step(step: number, done: boolean): void;
  more(of: 'sheets' | 'cards'): void;
  page(page: 'letter' | 'a4'): void;
  make(make: 'handout' | 'piece list'): void;
  print(): void;
  copy(field: HTMLInputElement): void;
  forget(): void;
}

/** What a section of the desk is made from. */
export interface Shown {
  readonly state: DeskState;
  readonly acts: DeskActs;
}
