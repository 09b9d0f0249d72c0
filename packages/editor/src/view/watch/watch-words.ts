import type { Unmade, UnmadeReason } from '@trimwell/geometry';
import { cardFindingSentence, findingSentence } from '@trimwell/handout';
import { CARD_BASE, type Finding, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import type { CardFinding } from '@trimwell/sketch/assembly';
import { isOfCard, type Watched } from './found.js';

/** Every sentence of what there is to watch. */

/** Follows the words of a mend that was pressed and waits until the card has been looked at. */
export const LOOKING_FIRST = ': looking first …';

export const NOTHING_TO_WATCH = 'Nothing: every piece lies on the card and on the ruler.';

/** Said where the card as a whole could not be looked at, and so nothing of that was found. */
export function notLookedAt(why: string): string {
  return `Envelope, fold and post could not be looked at: ${why}.`;
}

const REASONS: Readonly<Record<UnmadeReason, string>> = {
  'out of sheets': 'there are not enough sheets',
  'larger than every sheet': 'it is larger than its sheet',
  'longer than the blade': 'a cut would be longer than the blade',
  'off the ruler': 'it lies between the marks of the ruler',
  'narrower than can be held': 'the strip is too narrow to hold',
  'trim too thin': 'what would be trimmed off is too thin for a blade',
  'no paper allowed': 'no paper is named for it',
  'not found within the work budget': 'no way was found to cut it',
};

/** What cannot be cut of one piece for one reason, from whichever papers. */
export interface UnmadePiece {
  readonly piece: string;
  readonly quantity: number;
  readonly reason: UnmadeReason;
}

/** What is left unmade, by piece and reason: the papers of a mix are counted together. */
export function unmadePieces(unmade: readonly Unmade[]): readonly UnmadePiece[] {
  const found = new Map<string, UnmadePiece>();
  for (const { blank, quantity, reason } of unmade) {
    const piece = pieceOfBlank(blank);
    const key = `${piece} ${reason}`;
    found.set(key, { piece, reason, quantity: quantity + (found.get(key)?.quantity ?? 0) });
  }
  return [...found.values()];
}

export function pieceName(sketch: Sketch, id: string): string {
  return id === CARD_BASE ? 'Card base' : (sketch.pieces.find((piece) => piece.id === id)?.name ?? id);
}

export function unmadeText({ piece, quantity, reason }: UnmadePiece, sketch: Sketch): string {
  return `${quantity} × ${pieceName(sketch, piece)} cannot be cut: ${REASONS[reason]}.`;
}

function mendOf({ code, piece, fix }: Finding): string {
  const [first] = fix;
  const upper = first && 'piece' in first && first.piece !== piece;
  switch (first?.do) {
    case 'round':
      return code === 'radius-too-large' ? 'Make them smaller' : 'Make them concentric';
    case 'punch':
      return 'Leave the edge plain';
    case 'order':
      return 'Glue it on top';
    case 'set-paper':
      return 'Let the print lie on its side';
    case 'tilt':
      return 'Cut it upright';
    case 'remove-piece':
      return 'Leave it out';
    case 'mat':
      return code === 'mat-out-of-true' ? 'Set it even' : 'Use the nearest mark';
    case 'place':
      return code === 'off-the-card'
        ? 'Move it in'
        : code === 'uneven-reveal'
          ? 'Set it even'
          : code === 'overlap-too-small'
            ? upper
              ? 'Move the upper one further over'
              : 'Move it further under'
            : 'Use the nearest mark';
    default:
      return code === 'part-repeats'
        ? 'Fit whole repeats'
        : code === 'short-punched-edge'
          ? 'Make it one repeat long'
          : code === 'uneven-reveal'
            ? 'Set it even'
            : code === 'overlap-too-small'
              ? upper
                ? 'Make the upper one longer'
                : 'Make it longer underneath'
              : code === 'too-narrow'
                ? 'Make it just wide enough'
                : 'Use the nearest mark';
  }
}

function cardMendOf({ code, fix: [first] }: CardFinding): string {
  switch (first?.do) {
    case 'card':
      return code === 'no-usual-envelope' ? 'Fold one from paper' : 'Take the next envelope that fits';
    case 'add-piece':
      return 'Put a liner in';
    case 'order':
      return 'Glue it before what holds it';
    case 'alter-piece':
      return first.raise === 0 ? 'Glue it flat' : 'Take lower foam';
    default:
      return 'Use the nearest mark';
  }
}

/** A finding as a sentence, and the words on the button that mends it. */
export function findingText(finding: Watched, sketch: Sketch): { readonly says: string; readonly mend: string } {
  if (isOfCard(finding)) return { says: cardFindingSentence(finding, sketch), mend: cardMendOf(finding) };
  return { says: findingSentence(finding, sketch), mend: mendOf(finding) };
}
