/** Below this a reduced cost or a pivot counts as nothing. */
const NEGLIGIBLE = 1e-9;
/** Pivots after which the inverse is made anew, so that errors do not add up. */
const FRESH_AFTER = 60;

/**
 * The least cost of columns that together give at least `wanted` in every row (revised simplex with a dense inverse).
 * Columns can be added at any time. Its numbers are floating-point: they guide, they never prove. Rows start on columns
 * of their own that cost `penalty` a unit, so that there is always an answer.
 */
export class CoveringProgram {
  /** What columns give, one after the other, without what they do not give: few rows of many get something from a column. */
  readonly #given: number[] = [];
  readonly #givenTo: number[] = [];
  /** Where each column begins there, and where the last one ends. */
  readonly #starts: number[] = [0];
  readonly #costs: number[] = [];
  readonly #rows: number;
  #basis: number[] = [];
  #inverse: Float64Array;
  #amounts: Float64Array;
  #pivots = 0;

  constructor(
    private readonly wanted: readonly number[],
    penalty: number,
  ) {
    this.#rows = wanted.length;
    // First a column for each row that only it gets, then one for each row's surplus.
    for (const sign of [1, -1]) {
      wanted.forEach((_, row) => {
        const gives = wanted.map((__, at) => (at === row ? sign : 0));
        this.add(gives, sign === 1 ? penalty : 0);
      });
    }
    this.#basis = wanted.map((amount, row) => (amount < 0 ? this.#rows + row : row));
    this.#inverse = new Float64Array(this.#rows * this.#rows);
    this.#basis.forEach((column, row) => {
      this.#inverse[row * this.#rows + row] = column < this.#rows ? 1 : -1;
    });
    this.#amounts = Float64Array.from(wanted, Math.abs);
  }

  /** Columns that are not a row's own or its surplus are numbered from 0 in the order in which they were added. */
  add(gives: readonly number[], cost: number): void {
    gives.forEach((amount, row) => {
      if (amount === 0) return;
      this.#given.push(amount);
      this.#givenTo.push(row);
    });
    this.#starts.push(this.#given.length);
    this.#costs.push(cost);
  }

  /** What one more of each row would cost at the present answer. */
  prices(): number[] {
    const prices = new Array<number>(this.#rows).fill(0);
    this.#basis.forEach((column, row) => {
      const cost = this.#costs[column] as number;
      if (cost === 0) return;
      for (let at = 0; at < this.#rows; at += 1)
        prices[at] = (prices[at] as number) + cost * (this.#inverse[row * this.#rows + at] as number);
    });
    return prices;
  }

  /** How much of each added column the present answer takes; columns that are not taken are left out. */
  taken(): ReadonlyMap<number, number> {
    const taken = new Map<number, number>();
    this.#basis.forEach((column, row) => {
      const amount = this.#amounts[row] as number;
      if (column >= 2 * this.#rows && amount > NEGLIGIBLE) taken.set(column - 2 * this.#rows, amount);
    });
    return taken;
  }

  /** What the present answer costs. */
  cost(): number {
    return this.#basis.reduce(
      (sum, column, row) => sum + (this.#costs[column] as number) * (this.#amounts[row] as number),
      0,
    );
  }

  /** Improves the answer until no column helps; returns the multiplications it took. */
  solve(): number {
    const before = this.#pivots;
    // Enough for any program of this size; cycling is kept off by ties going to the lowest column.
    for (let round = 0; round < 200 * (this.#rows + 4); round += 1) {
      const entering = this.#entering();
      if (entering < 0 || !this.#pivot(entering)) break;
    }
    return (this.#pivots - before + 1) * (this.#given.length + 3 * this.#rows * this.#rows);
  }

  /** The column that helps most for each unit; -1 when none does. */
  #entering(): number {
    const prices = this.prices();
    let best = -1;
    let most = NEGLIGIBLE;
    for (let column = 0, at = 0; column < this.#costs.length; column += 1) {
      const end = this.#starts[column + 1] as number;
      let worth = -(this.#costs[column] as number);
      for (; at < end; at += 1) worth += (prices[this.#givenTo[at] as number] as number) * (this.#given[at] as number);
      if (worth > most) {
        most = worth;
        best = column;
      }
    }
    return best;
  }

  #pivot(entering: number): boolean {
    const rows = this.#rows;
    const direction = new Float64Array(rows);
    const [start, end] = [this.#starts[entering] as number, this.#starts[entering + 1] as number];
    for (let row = 0; row < rows; row += 1) {
      let sum = 0;
      for (let at = start; at < end; at += 1)
        sum += (this.#inverse[row * rows + (this.#givenTo[at] as number)] as number) * (this.#given[at] as number);
      direction[row] = sum;
    }
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < rows; row += 1) {
      const slope = direction[row] as number;
      if (slope <= NEGLIGIBLE) continue;
      const ratio = (this.#amounts[row] as number) / slope;
      const tie =
        ratio < least + NEGLIGIBLE && leaving >= 0 && (this.#basis[row] as number) < (this.#basis[leaving] as number);
      if (ratio < least - NEGLIGIBLE || tie) {
        least = Math.min(least, ratio);
        leaving = row;
      }
    }
    if (leaving < 0) return false;
    this.#exchange(leaving, direction);
    this.#basis[leaving] = entering;
    this.#pivots += 1;
    if (this.#pivots % FRESH_AFTER === 0) this.#refresh();
    return true;
  }

  #exchange(leaving: number, direction: Float64Array): void {
    const rows = this.#rows;
    const inverse = this.#inverse;
    const by = direction[leaving] as number;
    const step = Math.max(0, (this.#amounts[leaving] as number) / by);
    for (let at = 0; at < rows; at += 1) inverse[leaving * rows + at] = (inverse[leaving * rows + at] as number) / by;
    for (let row = 0; row < rows; row += 1) {
      const slope = direction[row] as number;
      if (row === leaving || slope === 0) continue;
      for (let at = 0; at < rows; at += 1)
        inverse[row * rows + at] =
          (inverse[row * rows + at] as number) - slope * (inverse[leaving * rows + at] as number);
      this.#amounts[row] = Math.max(0, (this.#amounts[row] as number) - step * slope);
    }
    this.#amounts[leaving] = step;
  }

  /** Makes inverse and amounts anew from the basis (Gauss and Jordan, with the largest pivot). */
  #refresh(): void {
    const rows = this.#rows;
    const wide = 2 * rows;
    const work = new Float64Array(rows * wide);
    this.#basis.forEach((column, at) => {
      for (let from = this.#starts[column] as number; from < (this.#starts[column + 1] as number); from += 1)
        work[(this.#givenTo[from] as number) * wide + at] = this.#given[from] as number;
      work[at * wide + rows + at] = 1;
    });
    for (let at = 0; at < rows; at += 1) {
      let pivot = at;
      for (let row = at + 1; row < rows; row += 1)
        if (Math.abs(work[row * wide + at] as number) > Math.abs(work[pivot * wide + at] as number)) pivot = row;
      const by = work[pivot * wide + at] as number;
      if (Math.abs(by) < NEGLIGIBLE) return;
      for (let column = 0; column < wide; column += 1) {
        const kept = work[at * wide + column] as number;
        work[at * wide + column] = (work[pivot * wide + column] as number) / by;
        if (pivot !== at) work[pivot * wide + column] = kept;
      }
      for (let row = 0; row < rows; row += 1) {
        const factor = work[row * wide + at] as number;
        if (row === at || factor === 0) continue;
        for (let column = at; column < wide; column += 1)
          work[row * wide + column] =
            (work[row * wide + column] as number) - factor * (work[at * wide + column] as number);
      }
    }
    for (let row = 0; row < rows; row += 1) {
      let amount = 0;
      for (let at = 0; at < rows; at += 1) {
        const cell = work[row * wide + rows + at] as number;
        this.#inverse[row * rows + at] = cell;
        amount += cell * (this.wanted[at] as number);
      }
      this.#amounts[row] = Math.max(0, amount);
    }
  }
}
