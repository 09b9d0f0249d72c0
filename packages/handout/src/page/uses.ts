import { type BatchPlan, isCentre, type Sketch } from '@trimwell/sketch';

/** True when some plan of `batch` cuts pieces out of the centres of others. */
export function usesCentres(batch: BatchPlan): boolean {
  return batch.papers.some(({ plan }) => plan.sheets.some(({ paper }) => isCentre(paper)));
}

/** True when some edge of a piece is punched. */
export function usesPunches({ pieces }: Sketch): boolean {
  return pieces.some(({ punched }) => Object.values(punched).some((punch) => punch !== undefined));
}

/** Glue guns by the words that they go by in English and German. */
const HOT_GLUE = /hot[\s-]*(melt|glue)|glue[\s-]*gun|hei(ß|ss)[\s-]*kleb|klebepistole/i;

/** True when the designer's own words name hot glue. */
export function usesHotGlue({ supplies, notes }: Sketch): boolean {
  return [...supplies, notes ?? ''].some((text) => HOT_GLUE.test(text));
}
