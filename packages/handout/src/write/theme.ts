import type { Role } from '../drawing/drawing.js';

/** How a role is drawn. Lengths in hundredths of a millimetre on paper. */
export interface Ink {
  readonly stroke?: string;
  readonly fill?: string;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly opacity?: number;
  readonly weight?: number;
  /** Colour of a rim behind letters, so that they can be read on any paper. */
  readonly halo?: string;
}

export type Theme = { readonly [role in Role]: Ink };

const INK = '#22302f';

/**
 * For print and for files. Two line widths, 2:1 (ISO 128-2): outlines and cuts wide and continuous, dimensions and
 * leaders narrow and continuous, hidden edges short-dashed, folds long-dashed. No meaning hangs on colour.
 */
export const PAPER_THEME: Theme = {
  sheet: { stroke: INK, width: 35 },
  margin: { stroke: '#8a8577', fill: 'none', width: 18, dash: [60, 60] },
  paper: {},
  outline: { stroke: INK, width: 18, opacity: 1 },
  hidden: { stroke: INK, fill: '#ffffff', width: 18 },
  shadow: { fill: INK, opacity: 0 },
  foam: { stroke: INK, fill: '#ffffff', width: 18 },
  cut: { stroke: INK, width: 35 },
  blank: { stroke: INK, fill: '#ffffff', width: 18, opacity: 0.72 },
  offcut: { stroke: 'none', fill: '#ffffff', opacity: 0.4 },
  fold: { stroke: INK, width: 18, dash: [200, 80] },
  dimension: { stroke: INK, width: 18 },
  leader: { stroke: INK, width: 18 },
  label: { fill: INK, weight: 600, halo: '#fffdf6' },
  figure: { fill: INK },
  note: { fill: '#5c6561' },
  art: { stroke: INK, fill: 'none', width: 35 },
};
