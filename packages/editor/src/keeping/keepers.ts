import type { Session } from '../session/session.js';
import type { Keeper } from './keeper.js';

const KEEPERS = new Map<Session, Keeper>();
const LISTENERS = new Set<() => void>();

/** The keeper of a session, or null when nothing of it is kept. */
export function keeperOf(session: Session): Keeper | null {
  return KEEPERS.get(session) ?? null;
}

/** True while a table of this page is kept. Where none is, nothing at all is stored, nor looked for in the browser. */
export function isPageKept(): boolean {
  return KEEPERS.size > 0;
}

/** Calls `listener` whenever a table of this page begins to be kept; the function that comes back ends it. */
export function whenKept(listener: () => void): () => void {
  LISTENERS.add(listener);
  return () => LISTENERS.delete(listener);
}

/** `keeper` keeps what is on the table of `session` from now on; null ends it. */
export function setKeeper(session: Session, keeper: Keeper | null): void {
  if (keeper === null) {
    KEEPERS.delete(session);
    return;
  }
  KEEPERS.set(session, keeper);
  for (const listener of LISTENERS) listener();
}
