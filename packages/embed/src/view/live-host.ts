import type { LengthStyle } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';

/** What the element is for the part of it that is live. */
export interface LiveHost {
  /** The sketch as its designer has it. */
  readonly document: Sketch;
  readonly style: LengthStyle;
  readonly element: HTMLElement;
  /** Where all is shown. */
  readonly sheet: HTMLElement;
  /** Puts the sheet in the place of the static content. */
  reveal(): void;
  /** Tells the page what its reader has chosen. */
  tell(code: string): void;
}
