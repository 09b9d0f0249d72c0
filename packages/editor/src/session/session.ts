import { batchRecipe, type Sketch } from '@trimwell/sketch';
import { redo, undo } from '../state/history.js';
import { type EditorState, openState, type Transaction } from '../state/state.js';
import { applyTransaction, cancelGesture, settleGesture } from '../state/transaction.js';
import { PlanClient } from './plan-client.js';
import type { PlanAnswer, PlanPort, PlanView } from './plan-messages.js';

/** What changed from one state to the next, for those who only look at a part of it. */
export interface SessionChange {
  readonly sketch: boolean;
  readonly selection: boolean;
  readonly plan: boolean;
  /** The sketch is now one to keep: no gesture is under way. */
  readonly settled: boolean;
  /** A gesture has just ended, kept or put back; what it did was told while it went on. */
  readonly ended: boolean;
}

const NO_PLAN: PlanView = { batch: null, stale: true, searching: true, limit: null, curve: [], failure: null };

/**
 * One open sketch: the state, the plan that follows it, and those who watch. The plan is asked for again only when the
 * recipe changed; the last one stays, marked as stale, until the new one comes.
 */
export class Session {
  #state: EditorState;
  #plan: PlanView = NO_PLAN;
  #gesture: string | null = null;
  readonly #client: PlanClient;
  readonly #listeners = new Set<(change: SessionChange) => void>();

  constructor(sketch: Sketch, port: PlanPort) {
    this.#state = openState(sketch);
    this.#client = new PlanClient(port, (answer, newest) => this.#onAnswer(answer, newest));
    this.#ask();
  }

  get state(): EditorState {
    return this.#state;
  }

  get plan(): PlanView {
    return this.#plan;
  }

  /** The gesture under way, or null. */
  get gesture(): string | null {
    return this.#gesture;
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

  undo(): void {
    this.#gesture = null;
    this.#become(undo(this.#state));
  }

  redo(): void {
    this.#gesture = null;
    this.#become(redo(this.#state));
  }

  /** Puts another sketch on the table; its history starts anew, and its plan. */
  open(sketch: Sketch): void {
    this.#gesture = null;
    // What was planned for another sketch says nothing about this one.
    this.#plan = NO_PLAN;
    this.#client.forget();
    this.#become(openState(sketch), true);
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

  #become(next: EditorState, ended = false): void {
    const before = this.#state;
    if (next === before && !ended) return;
    this.#state = next;
    const sketch = next.sketch !== before.sketch;
    const selection = next.selection !== before.selection || next.face !== before.face;
    const asked = this.#ask();
    this.#tell({ sketch, selection, plan: asked, settled: this.#gesture === null, ended });
  }

  #ask(): boolean {
    const asked = this.#client.ask(batchRecipe(this.#state.sketch), this.#gesture === null ? 'full' : 'quick');
    if (asked) this.#plan = { ...this.#plan, stale: true, searching: true };
    return asked;
  }

  #onAnswer(answer: PlanAnswer, newest: boolean): void {
    switch (answer.kind) {
      case 'plan':
        this.#plan = {
          ...this.#plan,
          batch: answer.batch,
          stale: !newest,
          searching: !newest || !answer.done,
          failure: null,
        };
        break;
      case 'limit':
        this.#plan = { ...this.#plan, limit: answer.limit };
        break;
      case 'curve':
        this.#plan = { ...this.#plan, curve: answer.curve };
        break;
      case 'failed':
        this.#plan = { ...this.#plan, batch: null, stale: false, searching: false, failure: answer.message };
        break;
    }
    this.#tell({ sketch: false, selection: false, plan: true, settled: this.#gesture === null, ended: false });
  }

  #tell(change: SessionChange): void {
    for (const listener of this.#listeners) listener(change);
  }
}
