/** Counts the planner's own steps against a budget, so that the same work gives the same plan on every machine. */
export class Meter {
  #spent = 0;

  #budget: number;

  constructor(budget: number) {
    this.#budget = budget;
  }

  get budget(): number {
    return this.#budget;
  }

  /** Adds to the budget what was left over elsewhere. */
  grant(steps: number): void {
    this.#budget += steps;
  }

  spend(steps: number): void {
    this.#spent += steps;
  }

  get spent(): number {
    return this.#spent;
  }

  /** True when the budget is used up. */
  get empty(): boolean {
    return this.#spent >= this.#budget;
  }
}
