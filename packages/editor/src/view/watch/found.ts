import { checkSketch, type Finding, type Sketch } from '@trimwell/sketch';
import type { Session } from '../../session/session.js';

/** The list and the marks on the face ask for the findings of one sketch; each sketch is checked once. */
const checked = new WeakMap<Sketch, readonly Finding[]>();
/** What was found last of each session, which stays while something is dragged. */
const last = new WeakMap<Session, readonly Finding[]>();

/** What is found in the sketch on the table. While something is dragged, what was found before the drag. */
export function findingsOf(session: Session): readonly Finding[] {
  const { sketch } = session.state;
  const known = checked.get(sketch);
  const before = last.get(session);
  if (!known && session.gesture !== null && before) return before.filter(({ piece }) => has(sketch, piece));
  const found = known ?? checkSketch(sketch);
  checked.set(sketch, found);
  last.set(session, found);
  return found;
}

function has(sketch: Sketch, piece: string): boolean {
  return sketch.pieces.some(({ id }) => id === piece);
}

/** Makes the edits of a finding, as one step that can be undone, and takes its piece. */
export function mend(session: Session, finding: Finding): void {
  const stays = finding.fix.every((edit) => edit.do !== 'remove-piece');
  session.dispatch({
    event: `mend.${finding.code}`,
    edits: finding.fix,
    ...(stays ? { selection: [finding.piece] } : {}),
    at: Date.now(),
  });
}
