import { CARD_BASE, checkSketch, type Finding, SEVERITIES, type Sketch } from '@trimwell/sketch';
import type { CardFinding } from '@trimwell/sketch/assembly';
import type { CardView, CardWatch } from '../../session/card-watch.js';
import type { Session } from '../../session/session.js';
import { isHeld } from './is-held.js';

/** The list and the marks on the face ask for the findings of one sketch; each sketch is checked once. */
const checked = new WeakMap<Sketch, readonly Finding[]>();
/** What was found last of each session, and of which sketch by its id; it stays while something is dragged. */
const last = new WeakMap<Session, { readonly id: string; readonly found: readonly Finding[] }>();

/** Something to watch: about one piece, or about the card as a whole. */
export type Watched = (Finding | CardFinding) & {
  /** Found in an earlier sketch: its fix may no longer mend anything, or not even be possible. */
  readonly stale?: true;
};

export function isOfCard(watched: Watched): watched is CardFinding {
  return 'reasons' in watched;
}

/** With more pieces than this, checking them takes longer than a frame, and is left to who looks at the card beside the page. */
const MANY = 16;

/** What is known of one table's card as a whole, or why nothing is. */
export type KnownCard = Pick<CardWatch, 'view' | 'failure' | 'post'>;

/**
 * What is found in the pieces on the table. While something is dragged, what was found before the drag; and of many pieces what was
 * found before the change, until they have been looked at anew.
 */
function findingsOf(session: Session, { view, failure }: KnownCard): readonly (Finding & Watched)[] {
  const { sketch } = session.state;
  // Who has looked at the card as a whole knows better which mends are safe.
  const known = view?.sketch === sketch ? view.sight.pieces : checked.get(sketch);
  const before = last.get(session);
  const earlier = before?.id === sketch.id ? before.found : null;
  if (!known && earlier && session.gesture !== null) return staleOf(sketch, earlier);
  if (!known && earlier && sketch.pieces.length > MANY && failure === null) return staleOf(sketch, earlier);
  const found = known ?? checkSketch(sketch);
  checked.set(sketch, found);
  last.set(session, { id: sketch.id, found });
  return found;
}

/** What was found in an earlier sketch: still told, and its mend offered, so that the button for it stays under finger and focus. */
function staleOf<Found extends Watched>(sketch: Sketch, found: readonly Found[]): readonly (Found & Watched)[] {
  return found.filter(({ piece }) => has(sketch, piece)).map((finding) => ({ ...finding, stale: true }));
}

function has(sketch: Sketch, piece: string): boolean {
  return piece === CARD_BASE || sketch.pieces.some(({ id }) => id === piece);
}

/** What was found about the card; of an earlier sketch it is told as well. */
function cardFindingsOf(
  sketch: Sketch,
  view: CardView | null,
  known: readonly Finding[],
): readonly (CardFinding & Watched)[] {
  // Of an earlier sketch the cuts are told as they were, and so are the sizes that they are told with.
  const sizes = [...known, ...(view?.sight.pieces ?? [])];
  const off = new Set(sizes.flatMap(({ code, piece }) => (code === 'off-the-ruler' ? [piece] : [])));
  const found = (view?.sight.findings ?? []).filter(
    ({ code, piece }) =>
      // The list says why a piece cannot be cut; and a size off the ruler is told with its piece, not once more with its cut.
      code !== 'cannot-be-cut' && has(sketch, piece) && !(code === 'cut-off-the-ruler' && off.has(piece)),
  );
  return view?.sketch === sketch ? found : staleOf(sketch, found);
}

/**
 * Everything to watch on the table of `session`, worst first; `card` is what is known of its card as a whole. What a locked piece would be
 * moved by is told without its mend.
 */
export function watchedOf(session: Session, card: KnownCard): readonly Watched[] {
  const { sketch } = session.state;
  const pieces = findingsOf(session, card);
  const all = [...cardFindingsOf(sketch, card.view, pieces), ...pieces].map((watched) =>
    isHeld(sketch, watched.fix) ? { ...watched, fix: [] } : watched,
  );
  return SEVERITIES.flatMap((severity) => all.filter((watched) => watched.severity === severity));
}
