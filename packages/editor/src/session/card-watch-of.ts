import { CardWatch } from './card-watch.js';
import { createAssemblyPort } from './create-assembly-port.js';
import type { Session } from './session.js';

const watches = new WeakMap<Session, CardWatch>();

/** The one that looks at the card of `session` as a whole, for all parts of its table. */
export function cardWatchOf(session: Session): CardWatch {
  const known = watches.get(session) ?? new CardWatch(session, createAssemblyPort);
  watches.set(session, known);
  return known;
}
