import type { Sketch } from '@trimwell/sketch';
import type { AssemblyAnswer, AssemblyPort, AssemblySight, AssemblySubject } from './assembly-messages.js';
import type { Session } from './session.js';

/** How long the sketch has to be at rest before it is looked at, in milliseconds. */
const REST = 150;

/** What was found, and of which sketch: an earlier one while a newer is looked at. */
export interface CardView {
  readonly sketch: Sketch;
  readonly sight: AssemblySight;
}

/**
 * Looks at the card of one session as a whole, in a worker, whenever the sketch has come to rest: heights, weight, envelope, fold,
 * post. It works as long as somebody watches. One question is under way at a time, and the newest waits.
 */
export class CardWatch {
  #view: CardView | null = null;
  #failure: string | null = null;
  #post: string | null = null;
  #port: AssemblyPort | null = null;
  #number = 0;
  #underWay: AssemblySubject | null = null;
  #asked: AssemblySubject | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #stop: (() => void) | null = null;
  readonly #listeners = new Set<() => void>();

  constructor(
    private readonly session: Session,
    private readonly open: () => AssemblyPort,
  ) {}

  get view(): CardView | null {
    return this.#view;
  }

  /** Why nothing is known, in words; null while something is, or is looked for. */
  get failure(): string | null {
    return this.#failure;
  }

  /** The country of the post (ISO 3166-1, two letters); null for all that are known, of which nothing is to be watched. */
  get post(): string | null {
    return this.#post;
  }

  set post(post: string | null) {
    if (post === this.#post) return;
    this.#post = post;
    this.#tell();
    this.#look();
  }

  /** Calls `listener` whenever something else is known; the function that comes back ends it. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    if (!this.#stop) {
      this.#stop = this.session.subscribe((change) => {
        if (change.opened) this.#forget();
        if (change.sketch || change.plan || change.ended) this.#later();
      });
      this.#later();
    }
    return () => {
      this.#listeners.delete(listener);
      if (this.#listeners.size === 0) this.#end();
    };
  }

  /** Another sketch: what is still being looked at says nothing about it. */
  #forget(): void {
    this.#view = null;
    this.#underWay = null;
    this.#number += 1;
    this.#tell();
  }

  #end(): void {
    this.#stop?.();
    this.#stop = null;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#port?.terminate();
    this.#port = null;
    this.#underWay = null;
    this.#asked = null;
  }

  #later(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.#timer = null;
      this.#look();
    }, REST);
  }

  /** Asks about what lies on the table, unless that was asked already, or something is still being moved. */
  #look(): void {
    const { session } = this;
    const { plan } = session;
    if (!this.#stop || session.gesture !== null) return;
    // At the very beginning the planner goes first.
    if (plan.batch === null && plan.failure === null && this.#asked === null) return;
    const { sketch } = session.state;
    const asked = this.#asked;
    const same = asked?.sketch === sketch && asked.post === this.#post;
    // While better plans come, one after the other, the last one is enough.
    const batch = plan.stale ? null : plan.searching && same ? asked.batch : plan.batch;
    if (same && asked.batch === batch) return;
    this.#asked = { sketch, batch, post: this.#post };
    this.#next();
  }

  #next(): void {
    const asked = this.#asked;
    if (!asked || this.#underWay) return;
    try {
      this.#port ??= this.#begin();
    } catch (error) {
      this.#failure = error instanceof Error ? error.message : String(error);
      this.#tell();
      return;
    }
    this.#number += 1;
    this.#underWay = asked;
    this.#port.postMessage({ number: this.#number, ...asked });
  }

  #begin(): AssemblyPort {
    const port = this.open();
    port.onmessage = ({ data }) => this.#hear(data);
    return port;
  }

  #hear(answer: AssemblyAnswer): void {
    const subject = this.#underWay;
    if (!subject || answer.number !== this.#number) return;
    this.#underWay = null;
    if (answer.kind === 'made') {
      this.#view = { sketch: subject.sketch, sight: answer.sight };
      this.#failure = null;
    } else {
      this.#failure = answer.message;
      this.#view = null;
      // One that fell over may be started anew by the next question.
      this.#port?.terminate();
      this.#port = null;
    }
    this.#tell();
    if (this.#asked !== subject) this.#next();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
