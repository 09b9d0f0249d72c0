import type { Length } from '../length/length.js';
import type { Rect } from '../rect/rect.js';

/** What becomes of a part that a cut has made. */
export type Fate =
  | { readonly is: 'blank'; readonly blank: string; readonly turned: boolean }
  /** Left over; `keep` when both sides are long enough to be of use. */
  | { readonly is: 'offcut'; readonly keep: boolean }
  /** Cut on later. Parts of one layout with one number are alike: same size, cut up in the same way. */
  | { readonly is: 'part'; readonly part: number };

/** Like parts that come off in one step, with their places in the sheet's own coordinates, on each of its copies. */
export interface Given {
  readonly fate: Fate;
  readonly width: Length;
  readonly height: Length;
  readonly places: readonly Rect[];
}

/** Where a cut starts that does not go from edge to edge, and how far it goes before it stops. */
export interface Stop {
  readonly start: 'left' | 'top' | 'right' | 'bottom';
  readonly length: Length;
}

/** Parts of one layout that are alike and are handled in one step. */
export interface Handled {
  /** Index of the layout in the plan. */
  readonly sheet: number;
  /** Number of the part among the parts of its layout; null for the whole sheet. */
  readonly part: number | null;
  readonly width: Length;
  readonly height: Length;
  /** Where they lay on the sheet; each of these places is there once on every copy. */
  readonly places: readonly Rect[];
  /** How many there are on all copies together. */
  readonly pieces: number;
  /** How many lie on one another at a time, at most, and how many such stacks that makes. */
  readonly atOnce: number;
  readonly stacks: number;
}

/** The guide is set to `setting` and the same cut is made on every stack. */
export interface CutAction extends Handled {
  readonly do: 'cut';
  readonly direction: 'vertical' | 'horizontal';
  readonly setting: Length;
  /** The edge of the part that the setting is measured from. */
  readonly from: 'left' | 'top' | 'right';
  /** Cuts on each stack, one after the other: each takes a strip off, and what is left goes to the guide again. */
  readonly times: number;
  /** Null for a cut from edge to edge. */
  readonly stop: Stop | null;
  /** True when the guide stands elsewhere before this step. */
  readonly set: boolean;
  /** True when the step before cuts the other way, so that the work is turned by a quarter. */
  readonly turn: boolean;
  readonly gives: readonly Given[];
}

/** The unusable edges of a sheet are cut off before anything else; these cuts are not part of the plan's counts. */
export interface MarginsAction extends Handled {
  readonly do: 'margins';
  readonly margins: { readonly top: Length; readonly right: Length; readonly bottom: Length; readonly left: Length };
  readonly gives: readonly Given[];
}

/** A whole sheet that needs no cut. */
export interface TakeAction extends Handled {
  readonly do: 'take';
  readonly gives: readonly Given[];
}

export type TrimStep = CutAction | MarginsAction | TakeAction;

/** A plan as an ordered list for a person at a trimmer. */
export interface StepList {
  /** The most sheets or parts that are ever cut at once. */
  readonly stack: number;
  /** How often the guide is set: the plan's `counts.settings`. */
  readonly settings: number;
  /** How often the work is turned by a quarter. */
  readonly turns: number;
  readonly steps: readonly TrimStep[];
}
