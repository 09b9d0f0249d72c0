import type { RecipePart } from './recipe.js';

/** The blank id of `part` when it comes from `paper`: papers of a mix share a role, so each has a blank of its own. */
export function blankId(part: RecipePart, paper: string): string {
  return part.papers.length === 1 ? part.blank : `${part.blank}--${paper}`;
}

/** True for a blank that is dealt to several papers of a mix. */
export function isDealt(blank: string): boolean {
  return blank.includes('--');
}

/** The piece, or the card base, that a blank id belongs to. */
export function pieceOfBlank(blank: string): string {
  return blank.split('--', 1)[0] ?? blank;
}
