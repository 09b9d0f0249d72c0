import { type JobProblem, jobProblem, MOST_COPIES } from '../cut/check-job.js';
import type { NestJob } from './nest-job.js';

function length(path: string, value: number, least: 0 | 1): JobProblem[] {
  const good = Number.isSafeInteger(value) && value >= least;
  return good ? [] : [jobProblem('not-a-length', path, value, `a whole number of ticks, ${least} or more`)];
}

function count(path: string, value: number): JobProblem[] {
  const good = Number.isSafeInteger(value) && value >= 0;
  return good ? [] : [jobProblem('not-a-count', path, value, 'a whole number, 0 or more')];
}

/** What is wrong with `job`, in its own order; empty when it can be nested. */
export function checkNestJob({ sheet, gap, parts }: NestJob): readonly JobProblem[] {
  const { margins } = sheet;
  const sides = [...length('sheet.width', sheet.width, 1), ...length('sheet.height', sheet.height, 1)];
  const edges = Object.entries(margins).flatMap(([edge, margin]) => length(`sheet.margins.${edge}`, margin, 0));
  const leaves = sheet.width - margins.left - margins.right > 0 && sheet.height - margins.top - margins.bottom > 0;
  const copies = parts.reduce((sum, part) => sum + part.quantity, 0);
  return [
    ...sides,
    ...edges,
    ...(sides.length + edges.length > 0 || leaves
      ? []
      : [jobProblem('margins-too-large', 'sheet.margins', 'all of the sheet', 'margins that leave something of it')]),
    ...(sheet.sheets === null ? [] : count('sheet.sheets', sheet.sheets)),
    ...length('gap', gap, 0),
    ...parts.flatMap((part, index) => [
      ...length(`parts[${index}].width`, part.width, 1),
      ...length(`parts[${index}].height`, part.height, 1),
      ...count(`parts[${index}].quantity`, part.quantity),
      ...(parts.findIndex(({ id }) => id === part.id) === index
        ? []
        : [jobProblem('repeated-id', `parts[${index}].id`, part.id, 'an id not yet used')]),
    ]),
    ...(Number.isFinite(copies) && copies > MOST_COPIES
      ? [jobProblem('too-many', 'parts', `${copies} copies in all`, `${MOST_COPIES} copies or fewer`)]
      : []),
  ];
}
