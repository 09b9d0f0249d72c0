import { PAPER_THEME, type Theme } from '../theme.js';

const INK = '#22302f';
/** Edges of papers: dark enough on a light paper, and nearly gone on a dark one. */
const EDGE = '#4d4a42';

/** The smaller side of a picture whose lines are a pixel wide, and the least share of that in a smaller one. */
const USUAL_SIDE = 800;
const THINNEST = 0.4;

/**
 * The theme of a picture of that smaller side, in pixels, in which a user unit is `scale` pixels wide. Lines grow with the
 * picture and not with what is drawn in it, in the 2:1 of PAPER_THEME; only printed art grows with its piece.
 */
export function pictureTheme(scale: number, side: number): Theme {
  const line = Math.max(THINNEST, side / USUAL_SIDE);
  const pixels = (width: number): number => Math.round((width * line * 1000) / scale) / 100;
  const [narrow, wide] = [pixels(0.9), pixels(1.8)];
  return {
    ...PAPER_THEME,
    sheet: { stroke: INK, width: wide },
    margin: { ...PAPER_THEME.margin, width: narrow, dash: [pixels(4), pixels(4)] },
    outline: { stroke: EDGE, width: pixels(0.7), opacity: 1 },
    hidden: { stroke: EDGE, fill: '#ffffff', width: pixels(0.7) },
    shadow: { fill: INK, opacity: 0.09 },
    cut: { stroke: INK, width: wide },
    blank: { ...PAPER_THEME.blank, width: narrow },
    // Papers are shown much larger here than on a page, so that words on a dark one need more light behind them.
    offcut: { ...PAPER_THEME.offcut, opacity: 0.6 },
    note: { fill: '#39423f' },
    dimension: { stroke: INK, width: narrow },
    leader: { stroke: INK, width: narrow },
  };
}
