import type { CutNode } from './cut-tree.js';
import type { CutJob, CutPaper } from './job.js';
import type { CutPlan, SheetLayout } from './plan.js';

/** Something that a plan gets wrong; `where` names the sheet layout or the part of the plan. */
export interface PlanProblem {
  readonly where: string;
  readonly problem: string;
}

interface Part {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** What a walk over one tree finds. */
interface Found {
  readonly problems: string[];
  readonly made: Map<string, number>;
  readonly offcuts: Part[];
  cuts: number;
}

function limits(job: CutJob, across: number, at: number, along: number, found: Found): void {
  const { bladeLength, narrowestStrip, thinnestTrim, kerf, rulerStep } = job.trimmer;
  const rest = across - at - kerf;
  const place = `the cut at ${at} across ${across}`;
  if (!Number.isSafeInteger(at) || at <= 0 || rest < 0 || at >= across)
    found.problems.push(`${place} lies outside its part`);
  if (bladeLength !== null && along > bladeLength)
    found.problems.push(`${place} is ${along} long, the blade ${bladeLength}`);
  if (Math.max(at, rest) < narrowestStrip) found.problems.push(`${place} leaves nothing wide enough to hold`);
  const thin = Math.min(at, rest);
  if (thin > 0 && thin < thinnestTrim) found.problems.push(`${place} takes off only ${thin}`);
  if (rulerStep !== null && at % rulerStep !== 0) found.problems.push(`${place} is off the ruler`);
}

function walk(job: CutJob, paper: CutPaper, node: CutNode, part: Part, found: Found): void {
  const { kerf, stoppedCuts } = job.trimmer;
  if (node.is === 'offcut') {
    found.offcuts.push(part);
    return;
  }
  if (node.is === 'blank') {
    const blank = job.blanks.find((candidate) => candidate.id === node.blank);
    if (!blank) {
      found.problems.push(`there is no blank ${node.blank}`);
      return;
    }
    const [w, h] = node.turned ? [blank.height, blank.width] : [blank.width, blank.height];
    if (part.w !== w || part.h !== h)
      found.problems.push(`${node.blank} is ${w} x ${h}, its part ${part.w} x ${part.h}`);
    if (node.turned && (!blank.turn || paper.directional)) found.problems.push(`${node.blank} must not be turned`);
    if (blank.papers && !blank.papers.includes(paper.id))
      found.problems.push(`${node.blank} must not come from ${paper.id}`);
    found.made.set(node.blank, (found.made.get(node.blank) ?? 0) + 1);
    return;
  }
  if (node.is === 'cut') {
    found.cuts += 1;
    const { x, y, w, h } = part;
    if (node.direction === 'vertical') {
      limits(job, w, node.at, h, found);
      walk(job, paper, node.first, { x, y, w: node.at, h }, found);
      walk(job, paper, node.second, { x: x + node.at + kerf, y, w: w - node.at - kerf, h }, found);
    } else {
      limits(job, h, node.at, w, found);
      walk(job, paper, node.first, { x, y, w, h: node.at }, found);
      walk(job, paper, node.second, { x, y: y + node.at + kerf, w, h: h - node.at - kerf }, found);
    }
    return;
  }
  if (!stoppedCuts) found.problems.push('a pinwheel needs stopped cuts, which are not allowed');
  walkPinwheel(job, paper, node, part, found);
}

/**
 * A pinwheel's four cuts stop inside the part: each parts one arm from the centre and the arm that turns on. Each cut
 * obeys the blade, strip, trim and ruler as an edge-to-edge cut of the arm and what lies beside it would.
 */
function walkPinwheel(
  job: CutJob,
  paper: CutPaper,
  node: Extract<CutNode, { is: 'pinwheel' }>,
  part: Part,
  found: Found,
): void {
  const { x1, x2, y1, y2 } = node;
  const { w, h } = part;
  if (job.trimmer.kerf !== 0) found.problems.push('a pinwheel needs a kerf of 0');
  const ordered = [0, x1, x2, w].every((value, index, all) => index === 0 || value >= (all[index - 1] ?? 0));
  const stacked = [0, y1, y2, h].every((value, index, all) => index === 0 || value >= (all[index - 1] ?? 0));
  if (!ordered || !stacked || ![x1, x2, y1, y2].every(Number.isSafeInteger)) {
    found.problems.push('the pinwheel lies outside its part');
    return;
  }
  found.cuts += 4;
  limits(job, h, y1, x2, found);
  limits(job, w, x2, y2, found);
  limits(job, h, y2, w - x1, found);
  limits(job, w, x1, h - y1, found);
  const flip = node.hand === 'counterclockwise';
  const arms: readonly (readonly [CutNode, number, number, number, number])[] = [
    [node.top, 0, 0, x2, y1],
    [node.right, x2, 0, w, y2],
    [node.bottom, x1, y2, w, h],
    [node.left, 0, y1, x1, h],
    [node.centre, x1, y1, x2, y2],
  ];
  for (const [arm, left, top, right, bottom] of arms) {
    const x = flip ? w - right : left;
    walk(job, paper, arm, { x: part.x + x, y: part.y + top, w: right - left, h: bottom - top }, found);
  }
}

function checkSheet(job: CutJob, layout: SheetLayout, index: number): readonly [PlanProblem[], Found] {
  const where = `sheets[${index}]`;
  const found: Found = { problems: [], made: new Map(), offcuts: [], cuts: 0 };
  const paper = job.papers.find((candidate) => candidate.id === layout.paper);
  if (!paper) return [[{ where, problem: `there is no paper ${layout.paper}` }], found];
  const { margins } = paper;
  const usable = {
    x: margins.left,
    y: margins.top,
    w: paper.width - margins.left - margins.right,
    h: paper.height - margins.top - margins.bottom,
  };
  const told = layout.usable;
  if (layout.width !== paper.width || layout.height !== paper.height)
    found.problems.push('the sheet has another size than its paper');
  if (told.x !== usable.x || told.y !== usable.y || told.width !== usable.w || told.height !== usable.h) {
    found.problems.push('the usable part is not the sheet within its margins');
  }
  if (!Number.isSafeInteger(layout.copies) || layout.copies < 1) found.problems.push(`${layout.copies} copies`);
  walk(job, paper, layout.tree, usable, found);
  return [found.problems.map((problem) => ({ where, problem })), found];
}

function countsOf(job: CutJob, plan: CutPlan, made: ReadonlyMap<string, number>): PlanProblem[] {
  const unmade = new Map<string, number>();
  for (const { blank, quantity } of plan.unmade) unmade.set(blank, (unmade.get(blank) ?? 0) + quantity);
  const problems: PlanProblem[] = [];
  for (const { id, quantity } of job.blanks) {
    const asked = quantity * plan.sets;
    const sum = (made.get(id) ?? 0) + (unmade.get(id) ?? 0);
    if (sum !== asked)
      problems.push({
        where: 'quantities',
        problem: `${id}: ${asked} asked, ${made.get(id) ?? 0} made, ${unmade.get(id) ?? 0} unmade`,
      });
  }
  for (const { blank, quantity } of plan.unmade) {
    if (quantity <= 0 || !job.blanks.some(({ id }) => id === blank))
      problems.push({ where: 'unmade', problem: `${quantity} of ${blank}` });
  }
  return problems;
}

/**
 * Everything that `plan` gets wrong as an answer to `job`: trees, edge-to-edge cuts, the trimmer's rules, sizes, turns,
 * papers, sheets at hand, quantities, totals, and a claim of proof that its own figures contradict. It shares nothing
 * with the planner but types. Empty for a good plan.
 */
export function checkPlan(job: CutJob, plan: CutPlan): readonly PlanProblem[] {
  const problems: PlanProblem[] = [];
  const made = new Map<string, number>();
  const used = new Map<string, number>();
  let sheets = 0;
  let cuts = 0;
  let money = 0;
  let largest = 0;
  plan.sheets.forEach((layout, index) => {
    const [wrong, found] = checkSheet(job, layout, index);
    problems.push(...wrong);
    for (const [blank, count] of found.made) made.set(blank, (made.get(blank) ?? 0) + count * layout.copies);
    used.set(layout.paper, (used.get(layout.paper) ?? 0) + layout.copies);
    sheets += layout.copies;
    cuts += found.cuts * layout.copies;
    money += (job.papers.find((paper) => paper.id === layout.paper)?.price ?? 0) * layout.copies;
    for (const { w, h } of found.offcuts) largest = Math.max(largest, w * h);
  });
  for (const paper of job.papers) {
    const count = used.get(paper.id) ?? 0;
    if (paper.sheets !== null && count > paper.sheets)
      problems.push({ where: 'sheets', problem: `${count} sheets of ${paper.id}, ${paper.sheets} at hand` });
  }
  problems.push(...countsOf(job, plan, made));
  if (plan.complete !== (plan.unmade.length === 0))
    problems.push({ where: 'complete', problem: String(plan.complete) });
  if (plan.counts.sheets !== sheets)
    problems.push({ where: 'counts.sheets', problem: `${plan.counts.sheets}, counted ${sheets}` });
  if (plan.counts.layouts !== plan.sheets.length)
    problems.push({ where: 'counts.layouts', problem: `${plan.counts.layouts}, counted ${plan.sheets.length}` });
  if (plan.counts.cuts !== cuts)
    problems.push({ where: 'counts.cuts', problem: `${plan.counts.cuts}, counted ${cuts}` });
  if (plan.counts.settings > cuts || (cuts > 0 && plan.counts.settings < 1))
    problems.push({ where: 'counts.settings', problem: `${plan.counts.settings} for ${cuts} cuts` });
  const told = plan.largestOffcut ? plan.largestOffcut.width * plan.largestOffcut.height : 0;
  if (told !== largest) problems.push({ where: 'largestOffcut', problem: `${told}, found ${largest}` });
  const priced =
    job.papers.every((paper) => paper.price !== null) && job.papers.some((paper) => (paper.price ?? 0) > 0);
  const spent = priced ? money : sheets;
  if (plan.proof.lowerBound > spent * (1 + 1e-12))
    problems.push({ where: 'proof.lowerBound', problem: `${plan.proof.lowerBound}, used ${spent}` });
  if (plan.proof.fewestSheets && plan.proof.lowerBound < spent * (1 - 1e-12))
    problems.push({ where: 'proof.fewestSheets', problem: `${spent} used, bound ${plan.proof.lowerBound}` });
  return problems;
}
