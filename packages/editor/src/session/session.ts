import { type BatchPlan, batchRecipe, type NearMiss, type NearMisses, type Sketch } from '@trimwell/sketch';
import { onlyPlacesChanged } from '../state/changed-pieces.js';
import { redo, undo } from '../state/history.js';
import { type EditorState, openState, type Transaction } from '../state/state.js';
import { applyTransaction, cancelGesture, settleGesture } from '../state/transaction.js';
import { PlanClient } from './plan-client.js';
import type { Curve, PlanAnswer, PlanPort, PlanView } from './plan-messages.js';
import { type Offer, type Trial, tryOnEdit } from './trial.js';

/** What changed from one state to the next, for those who only look at a part of it. */
export interface SessionChange {
  /** What is on the table. */
  readonly sketch: boolean;
  /** The sketch changed in nothing but where pieces lie on the card. */
  readonly places: boolean;
  /** What is kept. */
  readonly document: boolean;
  /** Which variations are on, or which of them is being written. */
  readonly variations: boolean;
  readonly selection: boolean;
  readonly plan: boolean;
  /** The sketch is now one to keep: no gesture is under way. */
  readonly settled: boolean;
  /** A gesture has just ended, kept or put back; what it did was told while it went on. */
  readonly ended: boolean;
  /** Another sketch was put on the table: nothing that was begun on the one before goes on. */
  readonly opened: boolean;
}

const ONLY_THE_PLAN = {
  sketch: false,
  places: false,
  document: false,
  variations: false,
  selection: false,
  plan: true,
  ended: false,
  opened: false,
} as const;

const NO_PLAN: PlanView = {
  batch: null,
  stale: true,
  searching: true,
  limit: null,
  curve: [],
  oneMore: [],
  offer: null,
  failure: null,
};

/** True when `curve`, which is from an earlier sketch, says otherwise than a finished plan. */
function contradicts(curve: Curve, { batch, done }: { readonly batch: BatchPlan; readonly done: boolean }): boolean {
  const sheets = curve[batch.cards - 1];
  return done && batch.complete && sheets !== undefined && sheets !== batch.sheets;
}

/** How many sketches' near misses are kept, so that what is put back or undone has its slips again at once. */
const MOST_OFFERS = 12;

/**
 * One open sketch: the state, the plan that follows it, and those who watch. The plan is asked for again only when the
 * recipe changed; the last one stays, marked as stale, until the new one comes.
 */
export class Session {
  #state: EditorState;
  #plan: PlanView = NO_PLAN;
  #gesture: string | null = null;
  #openings = 0;
  #trial: Trial | null = null;
  /** The sketch of the newest question; moving a piece asks none. */
  #asked: Sketch;
  /** Near misses by question. */
  readonly #offers = new Map<string, Offer>();
  readonly #client: PlanClient;
  readonly #listeners = new Set<(change: SessionChange) => void>();

  /** Opens a sketch, or goes on with what another session left, its history too. */
  constructor(begin: Sketch | EditorState, port: PlanPort) {
    this.#state = 'history' in begin ? begin : openState(begin);
    this.#asked = this.#state.sketch;
    this.#client = new PlanClient(port, (answer, newest) => this.#onAnswer(answer, newest));
    this.#ask();
  }

  get state(): EditorState {
    return this.#state;
  }

  /** The sketch as it is kept: without the variations that are put on to look at them. */
  get document(): Sketch {
    return this.#state.document;
  }

  get plan(): PlanView {
    return this.#plan;
  }

  /** How often another sketch was put on the table, to tell whether what was begun is still about this one. */
  get openings(): number {
    return this.#openings;
  }

  /** The gesture under way, or null. */
  get gesture(): string | null {
    return this.#gesture;
  }

  /** The near miss that is tried on and neither kept nor put back; null as soon as anything else has changed the sketch. */
  get trial(): Trial | null {
    return this.#trial?.after === this.#state.sketch ? this.#trial : null;
  }

  /** Calls `listener` after every change; the function that comes back ends it. */
  subscribe(listener: (change: SessionChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Applies a transaction. @throws EditError when one of its edits cannot be applied; nothing has changed then. */
  readonly dispatch = (transaction: Transaction): void => {
    this.#gesture = transaction.gesture ?? null;
    this.#become(applyTransaction(this.#state, transaction));
  };

  /** Ends a gesture and keeps what it did, as one step. */
  settle(gesture: string): void {
    this.#end(gesture, settleGesture(this.#state, gesture));
  }

  /** Ends a gesture and puts the sketch from before it back. */
  cancel(gesture: string): void {
    this.#end(gesture, cancelGesture(this.#state, gesture));
  }

  /** Makes the change of one of the near misses of the plan, as one step. */
  tryOn(miss: NearMiss, at: number): void {
    const { offer } = this.#plan;
    if (!offer?.found.misses.includes(miss)) throw new RangeError('only a near miss of the plan shown can be tried on');
    const before = this.#state.sketch;
    const edits = [tryOnEdit(miss, offer.sketch, before)];
    const next = applyTransaction(this.#state, { event: 'near-miss.try-on', edits, at });
    this.#trial = { miss, offer, before, after: next.sketch };
    this.#gesture = null;
    this.#become(next);
  }

  /** Keeps what is tried on; it stays one step of the history. */
  keep(): void {
    if (!this.trial) return;
    this.#trial = null;
    this.#tell({ ...ONLY_THE_PLAN, settled: this.#gesture === null });
  }

  /** Puts the very sketch back that was there before the trial. */
  putBack(): void {
    if (!this.trial) return;
    this.#trial = null;
    this.undo();
  }

  /** Goes back by so many steps at once, or as far as there are. */
  undo(steps = 1): void {
    this.#step(undo, steps);
  }

  /** Goes forward again by so many steps at once. */
  redo(steps = 1): void {
    this.#step(redo, steps);
  }

  #step(way: (state: EditorState) => EditorState, steps: number): void {
    this.#gesture = null;
    let next = this.#state;
    for (let step = 0; step < steps; step += 1) next = way(next);
    this.#become(next);
  }

  /** Puts another sketch on the table; its history starts anew, and its plan. */
  open(sketch: Sketch): void {
    this.#gesture = null;
    // What was planned for another sketch says nothing about this one.
    this.#plan = NO_PLAN;
    this.#trial = null;
    this.#offers.clear();
    this.#client.forget();
    this.#openings += 1;
    this.#become(openState(sketch), true, true);
  }

  dispose(): void {
    this.#listeners.clear();
    this.#client.dispose();
  }

  /** A press that changed nothing ends nothing: nobody is told. */
  #end(gesture: string, next: EditorState): void {
    const underWay = this.#gesture === gesture;
    this.#gesture = null;
    this.#become(next, underWay);
  }

  #become(next: EditorState, ended = false, opened = false): void {
    const before = this.#state;
    if (next === before && !ended) return;
    this.#state = next;
    const sketch = next.sketch !== before.sketch;
    const places = sketch && onlyPlacesChanged(before.sketch, next.sketch);
    const document = next.document !== before.document;
    const variations = next.on !== before.on || next.writing !== before.writing;
    const selection = next.selection !== before.selection || next.face !== before.face;
    // Where a piece lies on the card changes no plan, unless hidden centres are counted, which lie under others.
    const idle = places && this.#gesture !== null && !next.sketch.batch.hiddenCentres;
    const asked = !idle && this.#ask();
    this.#tell({
      sketch,
      places,
      document,
      variations,
      selection,
      plan: asked,
      settled: this.#gesture === null,
      ended,
      opened,
    });
  }

  #ask(): boolean {
    const { sketch } = this.#state;
    const asked = this.#client.ask(batchRecipe(sketch), this.#gesture === null ? 'full' : 'quick', sketch);
    if (asked) {
      this.#asked = sketch;
      const offer = this.#offers.get(this.#client.key) ?? null;
      this.#plan = { ...this.#plan, stale: true, searching: true, offer };
    }
    return asked;
  }

  #onAnswer(answer: PlanAnswer, newest: boolean): void {
    switch (answer.kind) {
      case 'plan':
        this.#plan = {
          ...this.#plan,
          batch: answer.batch,
          curve: this.#gesture === null && contradicts(this.#plan.curve, answer) ? [] : this.#plan.curve,
          stale: !newest,
          searching: !newest || !answer.done,
          failure: null,
        };
        break;
      case 'limit':
        // What one more sheet gave before says nothing beside another limit.
        if (JSON.stringify(answer.limit) !== JSON.stringify(this.#plan.limit))
          this.#plan = { ...this.#plan, limit: answer.limit, oneMore: [] };
        break;
      case 'one more':
        this.#plan = { ...this.#plan, oneMore: answer.oneMore };
        break;
      case 'near misses':
        if (newest) this.#offer(answer.found);
        break;
      case 'curve':
        this.#plan = { ...this.#plan, curve: answer.curve };
        break;
      case 'failed':
        this.#plan = { ...this.#plan, batch: null, stale: false, searching: false, failure: answer.message };
        break;
    }
    this.#tell({ ...ONLY_THE_PLAN, settled: this.#gesture === null });
  }

  /** Near misses that are known already are kept as they are, so that a slip under the pointer stays that slip. */
  #offer(found: NearMisses): void {
    const { key } = this.#client;
    const [oldest] = this.#offers.keys();
    if (this.#offers.size >= MOST_OFFERS && oldest !== undefined && oldest !== key) this.#offers.delete(oldest);
    const offer = this.#offers.get(key) ?? { found, sketch: this.#asked, batch: this.#plan.batch };
    this.#offers.set(key, offer);
    this.#plan = { ...this.#plan, offer };
  }

  #tell(change: SessionChange): void {
    for (const listener of this.#listeners) listener(change);
  }
}
