import type { CutJob, CutPaper } from './job.js';

/** Something about a job that cannot be planned: where, what was found, what would be accepted. */
export interface JobProblem {
  readonly code: string;
  readonly path: string;
  readonly value: string;
  readonly allowed: string;
  readonly message: string;
}

/** Thrown by the planner for a job that cannot be planned at all; `problems` says why. */
export class CutJobError extends RangeError {
  override readonly name = 'CutJobError';
  constructor(readonly problems: readonly JobProblem[]) {
    super(problems.map((problem) => problem.message).join('\n'));
  }
}

/** Most copies of all blanks together, so that a plan stays something a machine can hold. */
export const MOST_COPIES = 100_000;

/** A job problem from its parts, with its sentence. */
export function jobProblem(code: string, path: string, value: unknown, allowed: string): JobProblem {
  const shown = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return { code, path, value: shown, allowed, message: `${path} is ${shown}; allowed: ${allowed}.` };
}

function positive(path: string, value: number): JobProblem[] {
  const good = Number.isSafeInteger(value) && value > 0;
  return good ? [] : [jobProblem('not-a-length', path, value, 'a whole number of ticks, 1 or more')];
}

function notNegative(path: string, value: number): JobProblem[] {
  const good = Number.isSafeInteger(value) && value >= 0;
  return good ? [] : [jobProblem('not-a-length', path, value, 'a whole number of ticks, 0 or more')];
}

function repeated(path: string, ids: readonly string[]): JobProblem[] {
  return ids.flatMap((id, index) =>
    ids.indexOf(id) === index ? [] : [jobProblem('repeated-id', `${path}[${index}].id`, id, 'an id not yet used')],
  );
}

function checkPaper(paper: CutPaper, path: string): JobProblem[] {
  const { width, height, sheets, price, margins } = paper;
  const sides = [...positive(`${path}.width`, width), ...positive(`${path}.height`, height)];
  const edges = Object.entries(margins).flatMap(([edge, margin]) => notNegative(`${path}.margins.${edge}`, margin));
  const leaves = width - margins.left - margins.right > 0 && height - margins.top - margins.bottom > 0;
  return [
    ...sides,
    ...edges,
    ...(sides.length + edges.length > 0 || leaves
      ? []
      : [jobProblem('margins-too-large', `${path}.margins`, 'all of the sheet', 'margins that leave something of it')]),
    ...(sheets === null || (Number.isSafeInteger(sheets) && sheets >= 0)
      ? []
      : [jobProblem('not-a-count', `${path}.sheets`, sheets, 'a whole number, 0 or more, or null')]),
    ...(price === null || (Number.isFinite(price) && price >= 0)
      ? []
      : [jobProblem('not-a-price', `${path}.price`, price, 'a number, 0 or more, or null')]),
  ];
}

/** What is wrong with `job`, in its own order; empty when it can be planned. */
export function checkJob(job: CutJob): readonly JobProblem[] {
  const { trimmer, papers, blanks } = job;
  const known = new Set(papers.map((paper) => paper.id));
  const copies = blanks.reduce((sum, blank) => sum + blank.quantity, 0);
  const crowd = Number.isFinite(copies) && copies > MOST_COPIES;
  return [
    ...(trimmer.bladeLength === null ? [] : positive('trimmer.bladeLength', trimmer.bladeLength)),
    ...(trimmer.rulerStep === null ? [] : positive('trimmer.rulerStep', trimmer.rulerStep)),
    ...notNegative('trimmer.narrowestStrip', trimmer.narrowestStrip),
    ...notNegative('trimmer.thinnestTrim', trimmer.thinnestTrim),
    ...notNegative('trimmer.kerf', trimmer.kerf),
    ...(papers.length > 0 ? [] : [jobProblem('no-paper', 'papers', 'an empty list', 'one paper or more')]),
    ...repeated(
      'papers',
      papers.map((paper) => paper.id),
    ),
    ...papers.flatMap((paper, index) => checkPaper(paper, `papers[${index}]`)),
    ...repeated(
      'blanks',
      blanks.map((blank) => blank.id),
    ),
    ...blanks.flatMap((blank, index) => [
      ...positive(`blanks[${index}].width`, blank.width),
      ...positive(`blanks[${index}].height`, blank.height),
      ...(Number.isSafeInteger(blank.quantity) && blank.quantity >= 0
        ? []
        : [jobProblem('not-a-count', `blanks[${index}].quantity`, blank.quantity, 'a whole number, 0 or more')]),
      ...(blank.papers ?? []).flatMap((id, at) =>
        known.has(id)
          ? []
          : [jobProblem('missing-paper', `blanks[${index}].papers[${at}]`, id, `one of ${[...known].join(', ')}`)],
      ),
    ]),
    ...(crowd ? [jobProblem('too-many', 'blanks', `${copies} copies in all`, `${MOST_COPIES} copies or fewer`)] : []),
  ];
}
