import type { Outline, Point, Size } from '@trimwell/geometry';

/** Everything that goes into one file: its size, and what is cut and scored on it; in ticks, y down. */
export interface CutPage extends Size {
  /** The file's name without its ending, of plain letters. */
  readonly stem: string;
  readonly title: string;
  readonly description: string;
  /** How often it is cut. */
  readonly copies: number;
  /** Closed outlines, in the order in which they are best cut. */
  readonly cut: readonly Outline[];
  readonly score: readonly (readonly [Point, Point])[];
}

/** How cut and score lines are told apart; the colours are our own choice and mean nothing elsewhere. */
export const LINE_KINDS = {
  cut: { colour: '#b3125e', layer: 'CUT' },
  score: { colour: '#0b6e99', layer: 'SCORE' },
} as const;

/** Dash and gap of score lines, in millimetres. */
export const SCORE_DASH = [3, 1.5] as const;
