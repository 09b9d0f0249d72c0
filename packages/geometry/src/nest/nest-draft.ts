import type { Kind } from '../sheet/kinds.js';

/**
 * Nesting as it is searched: each box has the gap added at its right and below, and the sheet inside its margins too, so
 * that boxes may touch. Boxes of one size are one kind. All in ticks, from the corner inside the margins.
 */
export interface NestTask {
  readonly width: number;
  readonly height: number;
  readonly kinds: readonly Kind[];
  /** For each kind, whether it may also lie turned by a quarter. */
  readonly turns: readonly boolean[];
  /** Sheets at hand; Infinity for as many as needed. */
  readonly sheets: number;
}

/** One box of a kind on a sheet; `turned` against the kind's own width and height. */
export interface KindPlace {
  readonly kind: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** Sheets that are filled alike. */
export interface DraftSheet {
  readonly copies: number;
  readonly places: readonly KindPlace[];
}

/** A whole nesting, with what it leaves out of each kind. */
export interface NestDraft {
  readonly sheets: readonly DraftSheet[];
  readonly missing: readonly number[];
}

/** Fills one sheet with some of what is still wanted of each kind; an empty list only when nothing is. */
export type FillSheet = (wanted: readonly number[]) => readonly KindPlace[];

/** How many of each kind lie in `places`. */
export function countKinds(task: NestTask, places: readonly KindPlace[]): readonly number[] {
  const counts = task.kinds.map(() => 0);
  for (const { kind } of places) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

/** Area of the boxes in `places`, with their gaps. */
export function filledArea(task: NestTask, places: readonly KindPlace[]): number {
  return places.reduce((sum, { kind }) => sum + (task.kinds[kind]?.width ?? 0) * (task.kinds[kind]?.height ?? 0), 0);
}

/** How many sheets `draft` needs. */
export function sheetsOf(draft: NestDraft): number {
  return draft.sheets.reduce((sum, { copies }) => sum + copies, 0);
}

/** Sheet after sheet by `fill`, each as often as what is wanted allows, as many sheets as it takes. */
export function draftBy(task: NestTask, fill: FillSheet): NestDraft {
  const wanted = task.kinds.map(({ demand }) => demand);
  const sheets: DraftSheet[] = [];
  while (wanted.some((count) => count > 0)) {
    const places = fill(wanted);
    if (places.length === 0) break;
    const counts = countKinds(task, places);
    const copies = Math.min(
      ...counts.flatMap((count, kind) => (count > 0 ? [Math.floor((wanted[kind] ?? 0) / count)] : [])),
    );
    counts.forEach((count, kind) => {
      wanted[kind] = (wanted[kind] ?? 0) - count * copies;
    });
    sheets.push({ copies, places });
  }
  return { sheets, missing: wanted };
}

/** `draft` on the sheets at hand: the fullest are kept, and what lay on the others is missing. */
export function withinLimit(task: NestTask, draft: NestDraft): NestDraft {
  if (sheetsOf(draft) <= task.sheets) return draft;
  const fullest = draft.sheets
    .map((sheet, index) => ({ sheet, index, area: filledArea(task, sheet.places) }))
    .sort((a, b) => b.area - a.area || a.index - b.index);
  const missing = [...draft.missing];
  const sheets: DraftSheet[] = [];
  let left = task.sheets;
  for (const { sheet } of fullest) {
    const copies = Math.min(left, sheet.copies);
    left -= copies;
    if (copies > 0) sheets.push({ ...sheet, copies });
    countKinds(task, sheet.places).forEach((count, kind) => {
      missing[kind] = (missing[kind] ?? 0) + count * (sheet.copies - copies);
    });
  }
  return { sheets, missing };
}

/** Negative when `a` is the better one: fewer parts missing, then fewer sheets, then fewer unlike sheets. */
export function compareDrafts(a: NestDraft, b: NestDraft): number {
  const missing = (draft: NestDraft): number => draft.missing.reduce((sum, count) => sum + count, 0);
  return missing(a) - missing(b) || sheetsOf(a) - sheetsOf(b) || a.sheets.length - b.sheets.length;
}
