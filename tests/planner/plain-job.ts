import { type CutJob, type CutPaper, type Length, ticks } from '@trimwell/geometry';

const NOTHING = ticks(0);

/** A rectangle with how many are wanted; whole numbers of any unit. */
export interface PlainBlank {
  readonly w: number;
  readonly h: number;
  readonly count: number;
}

/** A job without any rule of a trimmer: the setting of the cutting literature. `sheets` null = as many as needed. */
export function plainJob(
  sheet: { readonly w: number; readonly h: number; readonly sheets: number | null },
  blanks: readonly PlainBlank[],
  turn: boolean,
  length: (n: number) => Length = ticks,
): CutJob {
  const paper: CutPaper = {
    id: 'sheet',
    width: length(sheet.w),
    height: length(sheet.h),
    sheets: sheet.sheets,
    directional: false,
    price: null,
    margins: { top: NOTHING, right: NOTHING, bottom: NOTHING, left: NOTHING },
  };
  return {
    trimmer: {
      bladeLength: null,
      narrowestStrip: NOTHING,
      thinnestTrim: NOTHING,
      kerf: NOTHING,
      rulerStep: null,
      stoppedCuts: false,
    },
    papers: [paper],
    blanks: blanks.map(({ w, h, count }, index) => ({
      id: `blank${index}`,
      width: length(w),
      height: length(h),
      quantity: count,
      papers: null,
      turn,
    })),
  };
}
