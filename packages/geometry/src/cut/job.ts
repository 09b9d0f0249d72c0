import type { Length } from '../length/length.js';

/** Unusable edges of a sheet, in ticks. */
export interface Margins {
  readonly top: Length;
  readonly right: Length;
  readonly bottom: Length;
  readonly left: Length;
}

/**
 * What a trimmer can do, in ticks. Each rule is a constraint on every cut of a plan.
 * - `bladeLength`: no cut is longer; null = as long as needed.
 * - `narrowestStrip`: at every cut the wider of the two parts, measured across the cut, is at least this (it is held).
 * - `thinnestTrim`: the narrower of the two parts is at least this, unless it has no width at all.
 * - `kerf`: width that the blade destroys.
 * - `rulerStep`: every `at` is a whole number of steps from the part's own near edge; null = any tick.
 * - `stoppedCuts`: a cut may stop inside the sheet, so pinwheels are allowed.
 */
export interface Trimmer {
  readonly bladeLength: Length | null;
  readonly narrowestStrip: Length;
  readonly thinnestTrim: Length;
  readonly kerf: Length;
  readonly rulerStep: Length | null;
  readonly stoppedCuts: boolean;
}

/** One kind of sheet that blanks may be cut from. `sheets` null = as many as needed; `price` per sheet or null. */
export interface CutPaper {
  readonly id: string;
  readonly width: Length;
  readonly height: Length;
  readonly sheets: number | null;
  readonly directional: boolean;
  readonly price: number | null;
  readonly margins: Margins;
}

/**
 * A rectangle to be cut `quantity` times. `papers` null = from any paper. It is cut turned by a quarter only when
 * `turn` is true and the paper is not directional.
 */
export interface CutBlank {
  readonly id: string;
  readonly width: Length;
  readonly height: Length;
  readonly quantity: number;
  readonly papers: readonly string[] | null;
  readonly turn: boolean;
}

/** Everything the planner needs to know, and nothing else: equal jobs have equal plans. */
export interface CutJob {
  readonly trimmer: Trimmer;
  readonly papers: readonly CutPaper[];
  readonly blanks: readonly CutBlank[];
}
