import type { PlacedPiece } from './placed-piece.js';

/** `find`, which is asked once of each pair: pieces are never changed, and the same two are asked of again when something else is moved. */
export function byPair<Answer>(
  find: (one: PlacedPiece, other: PlacedPiece) => Answer,
): (one: PlacedPiece, other: PlacedPiece) => Answer {
  const known = new WeakMap<PlacedPiece, WeakMap<PlacedPiece, { readonly answer: Answer }>>();
  return (one, other) => {
    let answers = known.get(one);
    if (!answers) {
      answers = new WeakMap();
      known.set(one, answers);
    }
    let found = answers.get(other);
    if (!found) {
      found = { answer: find(one, other) };
      answers.set(other, found);
    }
    return found.answer;
  };
}
