import { applyEdits, concernsCard, kindOf } from '@trimwell/sketch';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { CardWatch } from '../../session/card-watch.js';
import type { Session } from '../../session/session.js';
import type { EditorState } from '../../state/state.js';
import { type KnownCard, type Watched, watchedOf } from './found.js';
import { mendedPiece } from './mended-piece.js';

type Taken = Pick<EditorState, 'selection' | 'face'>;

/** A mend that was pressed before it was known to harm nothing. */
interface Wait {
  readonly mends: Mends;
  watched: Watched;
  /** What was selected, and the face shown, when it was pressed, or what mends before it have taken since. */
  from: Taken;
  readonly done: () => void;
}

/** The mends that wait at one table, first pressed first, and the sketch that they were pressed for. */
interface Waiting {
  readonly waits: Wait[];
  sketch: Session['state']['sketch'];
  readonly stop: () => void;
}

/** By table: what was pressed in the list and at a mark wait in one row. */
const waiting = new WeakMap<Session, Waiting>();

/**
 * True when it is known whether the mend of something to watch harms anything: the card has been looked at as it lies on the table, or the
 * mend does not matter to it. Where it cannot be looked at, that is said beside it. What an earlier sketch would be mended by is not tried.
 */
function mayMend({ state: { sketch } }: Session, { view, failure, post }: KnownCard, { fix, stale }: Watched): boolean {
  if (view?.sketch === sketch || failure !== null) return true;
  return !stale && !concernsCard(sketch, applyEdits(sketch, fix), post);
}

/** True when both tell the same, and mend it in the same way. */
function isSame(one: Watched, other: Watched): boolean {
  return (
    one.piece === other.piece && kindOf(one) === kindOf(other) && JSON.stringify(one.fix) === JSON.stringify(other.fix)
  );
}

/** Makes the edits of a finding, as one step that can be undone; `takes` the piece that they changed, on its face, or leaves all as it is. */
function mend(session: Session, watched: Watched, takes: boolean): void {
  const { code, fix } = watched;
  const piece = takes ? mendedPiece(session.state.sketch, watched) : null;
  session.dispatch({
    event: fix.some((edit) => edit.do === 'card') ? 'card.envelope' : `mend.${code}`,
    edits: fix,
    ...(piece === null ? {} : { selection: [piece.id], face: piece.face }),
    at: Date.now(),
  });
}

/** Makes a mend that has waited. Who has taken another piece meanwhile keeps it, and who has gone elsewhere is not called back. */
function mendLate(session: Session, { watched, from, mends, done }: Wait, others: readonly Wait[]): void {
  const { selection: before, face } = session.state;
  const isStill = (one: Taken): boolean =>
    one.face === face && one.selection.length === before.length && one.selection.every((id, at) => id === before[at]);
  const called = mends.hasFocus();
  mend(session, watched, isStill(from));
  for (const wait of others) {
    if (isStill(wait.from)) wait.from = session.state;
    wait.watched = { ...wait.watched, stale: true };
  }
  if (called) done();
}

function endWaiting(session: Session): void {
  waiting.get(session)?.stop();
  waiting.delete(session);
}

/** Makes the mends that wait, one after the other, as far as each is known to harm nothing; all are given up when something else was changed. */
function mendWaiting(session: Session, card: CardWatch): void {
  const row = waiting.get(session);
  if (!row) return;
  for (let next = row.waits[0]; next && row.sketch === session.state.sketch; next = row.waits[0]) {
    const { watched } = next;
    if (!mayMend(session, card, watched)) return;
    row.waits.shift();
    // One that turned out not to be safe, or that mends nothing any more, is no longer among them.
    const again = watchedOf(session, card).find((each) => isSame(each, watched));
    if (!again || again.stale) continue;
    mendLate(session, next, row.waits);
    row.sketch = session.state.sketch;
  }
  endWaiting(session);
}

/**
 * Mends what is to be watched as its host asks for it: at once or, where that is not known to harm nothing yet, as soon as it is. Several
 * wait for each other; none is made when something else was changed before, or when its host is taken off the page.
 */
export class Mends implements ReactiveController {
  constructor(
    private readonly host: ReactiveControllerHost & Element & { readonly session: Session },
    private readonly watch: { readonly card: CardWatch },
  ) {
    host.addController(this);
  }

  /** True while the mend of `watched` waits. */
  waits(watched: Watched): boolean {
    const { session } = this.host;
    const row = waiting.get(session);
    return row?.sketch === session.state.sketch && row.waits.some((wait) => isSame(wait.watched, watched));
  }

  /** True when the focus is in the host, or nowhere. */
  hasFocus(): boolean {
    const root = this.host.getRootNode();
    const { activeElement, body } = this.host.ownerDocument;
    const within = root instanceof ShadowRoot && root.activeElement !== null ? root.activeElement : activeElement;
    return within === null || within === body || within === this.host;
  }

  /**
   * Mends `watched`, now or when it is known to be safe; `done` is called when it is mended, unless that was later and the focus has gone
   * elsewhere meanwhile.
   */
  press(watched: Watched, done: () => void): void {
    const { session } = this.host;
    const { card } = this.watch;
    // What was pressed for an earlier sketch is given up anyway.
    if (waiting.get(session)?.sketch !== session.state.sketch) endWaiting(session);
    if (!watched.stale && mayMend(session, card, watched) && !waiting.has(session)) {
      mend(session, watched, true);
      done();
      return;
    }
    const row = waiting.get(session) ?? {
      waits: [],
      sketch: session.state.sketch,
      stop: card.subscribe(() => mendWaiting(session, card)),
    };
    waiting.set(session, row);
    row.waits.push({ mends: this, watched, from: session.state, done });
    this.host.requestUpdate();
    // It may have been looked at since this was shown.
    if (watched.stale) mendWaiting(session, card);
  }

  hostDisconnected(): void {
    const row = waiting.get(this.host.session);
    if (!row) return;
    const others = row.waits.filter(({ mends }) => mends !== this);
    row.waits.splice(0, Infinity, ...others);
    if (others.length === 0) endWaiting(this.host.session);
  }
}
