import type { NestJob, NestLayout, NestPlan } from './nest-job.js';

interface Box {
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The boxes of one layout; a place of an unknown part, or one that may not be turned so, is a problem. */
function boxesOf(job: NestJob, layout: NestLayout, where: string, problems: string[]): readonly Box[] {
  return layout.places.flatMap(({ part: id, x, y, turned }, index): Box[] => {
    const part = job.parts.find((candidate) => candidate.id === id);
    if (!part) {
      problems.push(`${where}: there is no part ${id}`);
      return [];
    }
    if (turned && (!part.turn || job.sheet.directional)) problems.push(`${where}: ${id} must not be turned`);
    const [width, height] = turned ? [part.height, part.width] : [part.width, part.height];
    return [{ name: `${id} (place ${index})`, left: x, top: y, right: x + width, bottom: y + height }];
  });
}

function checkLayout(job: NestJob, layout: NestLayout, where: string, problems: string[]): void {
  const { sheet, gap } = job;
  if (!Number.isSafeInteger(layout.copies) || layout.copies < 1) problems.push(`${where}: ${layout.copies} copies`);
  if (layout.places.length === 0) problems.push(`${where}: an empty sheet`);
  const boxes = boxesOf(job, layout, where, problems);
  boxes.forEach((box, index) => {
    const inside =
      box.left >= sheet.margins.left &&
      box.top >= sheet.margins.top &&
      box.right <= sheet.width - sheet.margins.right &&
      box.bottom <= sheet.height - sheet.margins.bottom;
    if (![box.left, box.top].every(Number.isSafeInteger)) problems.push(`${where}: ${box.name} is off every tick`);
    if (!inside) problems.push(`${where}: ${box.name} lies outside the margins`);
    for (const other of boxes.slice(index + 1)) {
      const [beside, below] = [
        Math.max(other.left - box.right, box.left - other.right),
        Math.max(other.top - box.bottom, box.top - other.bottom),
      ];
      if (Math.max(beside, below) < gap) problems.push(`${where}: ${box.name} and ${other.name} are too near`);
    }
  });
}

/**
 * Everything that `plan` gets wrong as an answer to `job`: places, turns, gaps, margins, quantities, totals, the sheets
 * at hand, and a claim of proof that its own figures contradict. It shares nothing with the nesting but types. Empty for
 * a good plan.
 */
export function checkNest(job: NestJob, plan: NestPlan): readonly string[] {
  const problems: string[] = [];
  plan.layouts.forEach((layout, index) => {
    checkLayout(job, layout, `layouts[${index}]`, problems);
  });
  const sheets = plan.layouts.reduce((sum, { copies }) => sum + copies, 0);
  if (plan.sheets !== sheets) problems.push(`sheets is ${plan.sheets}, counted ${sheets}`);
  if (job.sheet.sheets !== null && sheets > job.sheet.sheets)
    problems.push(`${sheets} sheets, ${job.sheet.sheets} at hand`);
  for (const { id, quantity } of job.parts) {
    const made = plan.layouts.reduce(
      (sum, { copies, places }) => sum + copies * places.filter(({ part }) => part === id).length,
      0,
    );
    const unmade = plan.unmade.filter(({ part }) => part === id).reduce((sum, each) => sum + each.quantity, 0);
    if (made + unmade !== quantity) problems.push(`${id}: ${quantity} asked, ${made} made, ${unmade} unmade`);
  }
  for (const { part, quantity } of plan.unmade) {
    if (quantity < 1 || !job.parts.some(({ id }) => id === part)) problems.push(`unmade: ${quantity} of ${part}`);
  }
  if (plan.complete !== (plan.unmade.length === 0)) problems.push(`complete is ${plan.complete}`);
  if (plan.proof.lowerBound > sheets) problems.push(`the bound is ${plan.proof.lowerBound}, ${sheets} used`);
  if (plan.proof.fewestSheets !== (plan.complete && plan.proof.lowerBound === sheets))
    problems.push(`fewestSheets is ${plan.proof.fewestSheets}, bound ${plan.proof.lowerBound}, ${sheets} used`);
  return problems;
}
