import { inches, millimetres, ticks } from '@trimwell/geometry';
import { everySource, freeId, type Look, MOST_PAPERS, type Paper, type Sketch, usualSheets } from '@trimwell/sketch';
import { freeName } from './free-name.js';
import { changedSketch, isUsed, ofCard, removalOf, sourceUses } from './paper-uses.js';
import type { Command, EditorState } from './state.js';

/** What a paper is called that was not named. */
export const UNNAMED_PAPER = 'New paper';

const NEW_LOOK: Omit<Look, 'repeat'> = { pattern: 'plain', ground: '#e8dcc4', inks: ['#6f8f7b', '#b5492f', '#d2a24c'] };

/** The paper that a change is made on, or null when there is none of that id. */
export function paperToChange(state: EditorState, id: string): Paper | null {
  return changedSketch(state, id).papers.find((paper) => paper.id === id) ?? null;
}

function newPaper({ papers, unit }: Sketch, id: string): Paper {
  const none = ticks(0);
  const [usual] = usualSheets(unit);
  const side = usual ?? { width: inches(12), height: inches(12) };
  return {
    id,
    name: freeName(UNNAMED_PAPER, papers),
    kind: 'cardstock',
    width: side.width,
    height: side.height,
    directional: false,
    doubleSided: false,
    margins: { top: none, right: none, bottom: none, left: none },
    look: { ...NEW_LOOK, repeat: unit === 'in' ? inches(1 / 2) : millimetres(12) },
  };
}

/**
 * Adds a paper: a plain cardstock in the most usual size of the sketch's unit (common practice, no source), or one like the
 * paper `like`. Does not apply when the sketch is full.
 */
export function addPaper(like?: string): Command {
  return (state, dispatch, at = 0) => {
    const { sketch, document } = state;
    const model = like === undefined ? null : paperToChange(state, like);
    if (sketch.papers.length >= MOST_PAPERS || (like !== undefined && !model)) return false;
    const id = freeId('paper', [...everySource(document), ...sketch.papers]);
    const paper = model ? { ...model, id, name: freeName(model.name, sketch.papers) } : newPaper(sketch, id);
    dispatch?.({ event: 'paper.add', edits: [{ do: 'set-paper', paper }], at });
    return true;
  };
}

/** What changes of a paper; null takes a figure away that is not known. */
export type PaperChanges = {
  readonly [key in keyof Omit<Paper, 'id'>]?: Paper[key] | (undefined extends Paper[key] ? null : never);
};

function changedPaper(paper: Paper, changes: PaperChanges): Paper {
  const all = Object.entries({ ...paper, ...changes }).filter(([, value]) => value !== null && value !== undefined);
  return Object.fromEntries(all) as Paper;
}

/** True when margins leave something of the sheet. */
export function leavesSomething({ width, height, margins }: Pick<Paper, 'width' | 'height' | 'margins'>): boolean {
  return margins.left + margins.right < width && margins.top + margins.bottom < height;
}

/**
 * Changes what is stated of a paper; with `gesture` as part of it. Does not apply when nothing changes, when the name is
 * empty, or when the margins would leave nothing of the sheet.
 */
export function changePaper(id: string, changes: PaperChanges, gesture?: string): Command {
  return (state, dispatch, at = 0) => {
    const before = paperToChange(state, id);
    if (!before) return false;
    const paper = changedPaper(before, changes);
    if (paper.name.trim() === '' || paper.name.length > 80 || !leavesSomething(paper)) return false;
    if (JSON.stringify(paper) === JSON.stringify(changedPaper(before, {}))) return false;
    const edits = [{ do: 'set-paper', paper }] as const;
    dispatch?.({ event: 'paper.change', edits, ...(gesture === undefined ? {} : { gesture }), at });
    return true;
  };
}

/**
 * Takes a paper away. What is cut from it is cut from the paper `instead` in the same step: the card base, pieces, its
 * turn in mixes, and the same in variations. Without `instead` it applies only to a paper that nothing needs. The last
 * paper stays.
 */
export function removePaper(id: string, instead?: string): Command {
  return (state, dispatch, at = 0) => {
    const { papers } = changedSketch(state, id);
    const others = papers.filter((paper) => paper.id !== id);
    if (others.length === 0 || others.length === papers.length) return false;
    if (instead !== undefined && !others.some((paper) => paper.id === instead)) return false;
    if (instead === undefined && isUsed(sourceUses(state, id))) return false;
    const edits = removalOf(state, id, instead ?? null, { do: 'remove-paper', paper: id });
    dispatch?.({ event: 'paper.remove', edits, ...ofCard(state), at });
    return true;
  };
}
