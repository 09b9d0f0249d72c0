import { type CutNode, mapParts } from '../cut/cut-tree.js';
import type { CutJob, CutPaper } from '../cut/job.js';
import { type Length, ticks } from '../length/length.js';
import { compareText, type Task } from '../sheet/kinds.js';
import type { Draft } from './draft.js';

/**
 * A job as it is searched: all lengths divided by what divides them all, and of the job and its mirror image along the
 * diagonal always the same one. So scaling and transposing a job cannot change what is found.
 */
export interface Canonical {
  readonly job: CutJob;
  readonly unit: number;
  readonly transposed: boolean;
}

function gcd(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** The largest whole number that divides every length of `job`, at least 1. */
function unitOf({ trimmer, papers, blanks }: CutJob): number {
  const { bladeLength, narrowestStrip, thinnestTrim, kerf, rulerStep } = trimmer;
  const lengths = [
    bladeLength ?? 0,
    narrowestStrip,
    thinnestTrim,
    kerf,
    rulerStep ?? 0,
    ...papers.flatMap(({ width, height, margins: { top, right, bottom, left } }) => [
      width,
      height,
      top,
      right,
      bottom,
      left,
    ]),
    ...blanks.flatMap(({ width, height }) => [width, height]),
  ];
  return Math.max(1, lengths.reduce<number>(gcd, 0));
}

/** `job` with every length changed by `scale` and, if wanted, width and height exchanged everywhere. */
function changed(job: CutJob, scale: (length: Length) => Length, transposed: boolean): CutJob {
  const maybe = (length: Length | null): Length | null => (length === null ? null : scale(length));
  const sides = <T extends { readonly width: Length; readonly height: Length }>(of: T): T => ({
    ...of,
    width: scale(transposed ? of.height : of.width),
    height: scale(transposed ? of.width : of.height),
  });
  const paper = (one: CutPaper): CutPaper => {
    const { top, right, bottom, left } = one.margins;
    const margins = transposed ? { top: left, right: bottom, bottom: right, left: top } : one.margins;
    return {
      ...sides(one),
      margins: {
        top: scale(margins.top),
        right: scale(margins.right),
        bottom: scale(margins.bottom),
        left: scale(margins.left),
      },
    };
  };
  const { trimmer } = job;
  return {
    trimmer: {
      ...trimmer,
      bladeLength: maybe(trimmer.bladeLength),
      narrowestStrip: scale(trimmer.narrowestStrip),
      thinnestTrim: scale(trimmer.thinnestTrim),
      kerf: scale(trimmer.kerf),
      rulerStep: maybe(trimmer.rulerStep),
    },
    papers: job.papers.map(paper),
    blanks: job.blanks.map(sides),
  };
}

/** What tells a job from its mirror image, whatever the blanks are called and in which order they stand. */
function textOf({ papers, blanks }: CutJob): string {
  const sheets = papers.map(({ width, height, margins: { left, right } }) => `${width} ${height} ${left} ${right}`);
  const sizes = blanks.map(
    ({ width, height, quantity, turn, papers: from }) => `${width} ${height} ${quantity} ${turn} ${from?.join()}`,
  );
  return [...sheets, ...sizes.sort(compareText)].join('\n');
}

/**
 * `job` as it is searched. Jobs with stopped cuts are not turned over: a pinwheel's cuts lie on the marks of the ruler from one
 * side and not always from the other.
 */
export function canonicalJob(job: CutJob): Canonical {
  const unit = unitOf(job);
  const scale = (length: Length): Length => ticks(length / unit);
  const plain = changed(job, scale, false);
  if (job.trimmer.stoppedCuts) return { job: plain, unit, transposed: false };
  const mirrored = changed(job, scale, true);
  const transposed = compareText(textOf(mirrored), textOf(plain)) < 0;
  return { job: transposed ? mirrored : plain, unit, transposed };
}

/** `tree` with its cuts in the other direction; one with stopped cuts is left as it is. */
export function transposedTree(tree: CutNode): CutNode {
  if (tree.is !== 'cut') return tree;
  const { direction, first, second } = tree;
  return {
    ...tree,
    direction: direction === 'vertical' ? 'horizontal' : 'vertical',
    first: transposedTree(first),
    second: transposedTree(second),
  };
}

/** A draft of the canonical task `from` as a draft of the task `to` of the job itself. */
export function originalDraft({ unit, transposed }: Canonical, from: Task, to: Task, draft: Draft): Draft {
  const kindOf = new Map(to.kinds.flatMap(({ members }, kind) => members.map(({ id }) => [id, kind] as const)));
  const kinds = from.kinds.map(({ members }) => kindOf.get(members[0]?.id ?? '') ?? -1);
  const back = (node: CutNode): CutNode => {
    if (node.is === 'blank') {
      const index = Number(node.blank);
      const [kind, now] = [from.kinds[index], to.kinds[kinds[index] ?? -1]];
      if (!kind || !now) throw new Error('A draft holds a kind that the task does not.');
      const [w, h] = node.turned ? [kind.height, kind.width] : [kind.width, kind.height];
      const [width, height] = transposed ? [h, w] : [w, h];
      return {
        is: 'blank',
        blank: String(kinds[index]),
        turned: width * unit !== now.width || height * unit !== now.height,
      };
    }
    const made = mapParts(node, back);
    if (made.is === 'cut') return { ...made, at: ticks(made.at * unit) };
    if (made.is !== 'pinwheel') return made;
    const { x1, x2, y1, y2 } = made;
    return { ...made, x1: ticks(x1 * unit), x2: ticks(x2 * unit), y1: ticks(y1 * unit), y2: ticks(y2 * unit) };
  };
  const missing = to.kinds.map(() => 0);
  draft.missing.forEach((count, index) => {
    missing[kinds[index] ?? -1] = count;
  });
  const sheets = draft.sheets.map((sheet) => {
    const tree = back(sheet.tree);
    return { ...sheet, tree: transposed ? transposedTree(tree) : tree };
  });
  return { sheets, missing };
}
