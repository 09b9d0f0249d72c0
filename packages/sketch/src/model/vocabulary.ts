import { PUNCH_PROFILES } from '@trimwell/geometry';

/** The words and the bounds that a sketch is written within, apart from its schema, so that whoever needs one loads no more. */

/** Most characters of a name. */
export const LONGEST_NAME = 80;

export const PAPER_KINDS = ['cardstock', 'patterned paper', 'vellum', 'foil', 'kraft', 'other'] as const;
/** Prints of papers, drawn by us. */
export const PATTERNS = [
  'plain',
  'stripe',
  'slant stripe',
  'dot',
  'speckle',
  'gingham',
  'plaid',
  'grid',
  'chevron',
  'star',
  'heart',
  'snow',
  'sprig',
  'leaf',
  'blossom',
  'shell',
  'wood grain',
  'lettering',
  'music',
] as const;
export const PIECE_KINDS = [
  'panel',
  'mat',
  'strip',
  'focal piece',
  'sentiment',
  'banner',
  'tag',
  'liner',
  'other',
] as const;
export const SHAPES = ['rectangle', 'ellipse', 'banner', 'tag'] as const;
export const PROFILES = PUNCH_PROFILES;
export const MOTIFS = ['words', 'wreath', 'branch', 'heart', 'star', 'sun'] as const;
/** What the address of a closing line may be: https, and nothing that could end an attribute it is written in. */
export const LINK_ADDRESS = /^https:\/\/[^\s<>"']+$/;
export const EDGES = ['top', 'right', 'bottom', 'left'] as const;
export const AS_MANY_AS_POSSIBLE = 'as many as possible';

/** Most of everything that a sketch holds; who adds something looks here before it is refused. */
export const MOST_PIECES = 200;
export const MOST_PAPERS = 60;
export const MOST_MIXES = 24;
/** Most papers that take turns in one mix. */
export const MOST_IN_MIX = 24;
export const MOST_PUNCHES = 24;
/** Most copies of one piece on one card. */
export const MOST_PER_CARD = 24;
/** Most groups of pieces that are kept apart, and most pieces in one of them. */
export const MOST_CONTRASTS = 24;
export const MOST_IN_CONTRAST = 24;
export const MOST_VARIATIONS = 40;
/** Most edits of one variation. */
export const MOST_EDITS = 400;
