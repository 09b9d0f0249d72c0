import type { Margins } from '../cut/job.js';
import type { Length } from '../length/length.js';

/** The sheets that parts are nested on, all alike. `sheets` null = as many as needed; lengths in ticks. */
export interface NestSheet {
  readonly width: Length;
  readonly height: Length;
  readonly sheets: number | null;
  /** A directional paper keeps every part upright. */
  readonly directional: boolean;
  /** Nothing lies nearer to an edge of the sheet than this. */
  readonly margins: Margins;
}

/**
 * A part by its box, to be cut `quantity` times; turned by a quarter only when `turn` is true and the paper is not
 * directional. Boxes are enough for ellipses, rounded corners, banners and tags too: they never overlap when their boxes
 * do not.
 */
export interface NestPart {
  readonly id: string;
  readonly width: Length;
  readonly height: Length;
  readonly quantity: number;
  readonly turn: boolean;
}

/** Everything that free nesting needs to know, and nothing else: equal jobs have equal answers. */
export interface NestJob {
  readonly sheet: NestSheet;
  /** Least distance between two parts, in ticks. */
  readonly gap: Length;
  readonly parts: readonly NestPart[];
}

/** Where one part lies: its upper left corner on the sheet, and whether it is turned by a quarter clockwise. */
export interface NestPlace {
  readonly part: string;
  readonly x: Length;
  readonly y: Length;
  readonly turned: boolean;
}

/** `copies` sheets that are cut alike; places from top to bottom, then from left to right. */
export interface NestLayout {
  readonly copies: number;
  readonly places: readonly NestPlace[];
}

/** A part that is not made `quantity` times, and why. */
export interface NestUnmade {
  readonly part: string;
  readonly quantity: number;
  readonly reason: 'out of sheets' | 'larger than the sheet within its margins';
}

/**
 * What is proven: no layout of boxes, however cut, makes all this on fewer than `lowerBound` sheets; `by` names the
 * argument. `fewestSheets` is true only when the plan reaches it. A plan that leaves something out claims nothing.
 */
export interface NestProof {
  readonly lowerBound: number;
  readonly fewestSheets: boolean;
  readonly by: string;
}

/** The answer to a nesting job: what lies where on every sheet, what stays unmade and why, and what is proven. */
export interface NestPlan {
  readonly complete: boolean;
  readonly layouts: readonly NestLayout[];
  readonly unmade: readonly NestUnmade[];
  readonly sheets: number;
  readonly proof: NestProof;
  /** Work spent, counted in steps, the same on every machine. */
  readonly work: number;
}
