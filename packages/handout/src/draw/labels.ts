import { CARD_BASE, pieceOfBlank, type Sketch } from '@trimwell/sketch';

/** The letters that name pieces on the face, on every sheet and in the piece table: A, B, … Z, AA, AB, … */
export function labelAt(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : labelAt(Math.floor(index / 26) - 1) + letter;
}

/** The label of every piece by id, in gluing order; the card base, under `CARD_BASE`, is A. */
export function labelPieces(sketch: Sketch): ReadonlyMap<string, string> {
  return new Map([CARD_BASE, ...sketch.pieces.map((piece) => piece.id)].map((id, index) => [id, labelAt(index)]));
}

/** The label of a blank: that of its piece, whichever paper of a mix it comes from. */
export function labelOfBlank(labels: ReadonlyMap<string, string>, blank: string): string {
  return labels.get(pieceOfBlank(blank)) ?? '?';
}
