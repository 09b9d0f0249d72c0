import type { CardEdit, Paper, Variation } from '../model/sketch.js';

function plainPaper(paper: Paper): Paper {
  const { photo: _photo, ...look } = paper.look;
  return { ...paper, look };
}

function plainEdit(edit: CardEdit): CardEdit {
  return edit.do === 'set-paper' ? { ...edit, paper: plainPaper(edit.paper) } : edit;
}

/** What holds papers, and variations that may change them or bring others. */
interface WithPapers {
  readonly papers: readonly Paper[];
  readonly variations?: readonly Variation[];
}

/**
 * `record` without what stays on the designer's own machine: photographs of sheets are neither sent nor named, be it by a
 * paper or by a change to one within a variation.
 */
export function withoutPhotographs<R extends WithPapers>(record: R): R {
  const { variations } = record;
  return {
    ...record,
    papers: record.papers.map(plainPaper),
    ...(variations && { variations: variations.map((one) => ({ ...one, edits: one.edits.map(plainEdit) })) }),
  };
}
