import type { LengthStyle } from '@trimwell/geometry';
import type { Photos } from '@trimwell/handout';
import type { Sketch } from '@trimwell/sketch';

/** What the element is for the reader's desk, which is loaded later. */
export interface DeskHost {
  /** The sketch as its designer has it. */
  readonly document: Sketch;
  /** The unit and form that sizes are shown in until the reader chooses. */
  readonly style: LengthStyle;
  readonly root: ShadowRoot;
  /** The desk's own place inside the element, shown while it is open. */
  readonly place: HTMLElement;
  /** Shows the card and its sizes as the reader has them, with a quiet word or none. */
  show(sketch: Sketch, style: LengthStyle, photos: Photos, note: string): void;
  /** The reader has chosen something; `code` is all that they have chosen. */
  chosen(code: string): void;
}
