import type { Progress } from './write-desk.js';
import type { MadeFor, Subject, Wish, WriteAnswer, WritePort } from './write-messages.js';

/** What was asked for was given up, by the user or for something newer. */
export class GivenUp extends Error {
  constructor() {
    super('given up');
    this.name = 'GivenUp';
  }
}

/** How a wish is made. */
export interface MakeOptions {
  readonly progress?: Progress;
  /** True for what is only looked at: a newer one of these takes the place of one that waits. */
  readonly preview?: boolean;
}

interface Task {
  readonly subject: Subject;
  readonly wish: Wish;
  readonly progress: Progress;
  readonly preview: boolean;
  /** The type of what was made follows from the wish, which goes with it. */
  readonly made: (answer: Extract<WriteAnswer, { kind: 'made' }>) => void;
  readonly failed: (error: Error) => void;
}

/**
 * Asks a worker for what is to be handed on, one wish at a time, in the order of asking. Of several previews that wait
 * only the newest is made. The worker is started when it is first needed and ended when a wish that it works on is given up.
 */
export class Writer {
  #port: WritePort | null = null;
  #number = 0;
  #current: Task | null = null;
  #waiting: readonly Task[] = [];

  constructor(private readonly open: () => WritePort) {}

  /** Makes what is wished for. The promise fails with `GivenUp`, or with an `Error` in words for the user. */
  make<Wished extends Wish>(
    subject: Subject,
    wish: Wished,
    { progress = () => {}, preview = false }: MakeOptions = {},
  ): Promise<MadeFor<Wished>> {
    return new Promise((resolve, reject) => {
      if (preview) this.#drop(this.#waiting.filter((task) => task.preview));
      const task: Task = {
        ...{ subject, wish, progress, preview, failed: reject },
        made: ({ made }) => {
          if (made.make === wish.make) resolve(made as MadeFor<Wished>);
          else reject(new Error(`${made.make} came for ${wish.make}`));
        },
      };
      this.#waiting = [...this.#waiting, task];
      this.#next();
    });
  }

  /** Gives up every file; what is looked at is made all the same. The worker ends if it is at work on a file. */
  giveUpFiles(): void {
    this.#drop(this.#waiting.filter((task) => !task.preview));
    if (!this.#current || this.#current.preview) return;
    this.#end();
    this.#next();
  }

  /** Gives up everything. */
  dispose(): void {
    this.#drop(this.#waiting);
    this.#end();
  }

  #drop(tasks: readonly Task[]): void {
    this.#waiting = this.#waiting.filter((task) => !tasks.includes(task));
    for (const { failed } of tasks) failed(new GivenUp());
  }

  #end(): void {
    this.#port?.terminate();
    this.#port = null;
    const current = this.#current;
    this.#current = null;
    current?.failed(new GivenUp());
  }

  #next(): void {
    const [task, ...waiting] = this.#waiting;
    if (this.#current || !task) return;
    this.#waiting = waiting;
    try {
      this.#port ??= this.#begin();
    } catch (error) {
      task.failed(error instanceof Error ? error : new Error(String(error)));
      this.#next();
      return;
    }
    this.#current = task;
    this.#number += 1;
    this.#port.postMessage({ number: this.#number, subject: task.subject, wish: task.wish });
  }

  #begin(): WritePort {
    const port = this.open();
    port.onmessage = ({ data }) => this.#hear(data);
    return port;
  }

  #hear(answer: WriteAnswer): void {
    const task = this.#current;
    if (!task || answer.number !== this.#number) return;
    if (answer.kind === 'progress') {
      task.progress(answer.done, answer.of);
      return;
    }
    this.#current = null;
    if (answer.kind === 'made') task.made(answer);
    else task.failed(new Error(answer.message));
    // One that could not even start answers nothing more.
    if (answer.kind === 'dead') {
      this.#port?.terminate();
      this.#port = null;
    }
    this.#next();
  }
}
