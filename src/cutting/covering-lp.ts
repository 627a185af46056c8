/**
 * A linear programme that columns are added to: least cost of columns that cover what is wanted and keep within what there
 * is. Revised primal simplex with the inverse of the basis kept whole, since rows are few: Chvátal, Linear Programming
 * (Freeman 1983), ch. 7. A row that no column covers yet is covered at a penalty.
 *
 * What follows from it is never taken on trust: a bound is reckoned anew from the prices, in whole numbers.
 */

const NOUGHT = 1e-9;
/** A column enters where it lowers the cost by at least this for each unit of it. */
const WORTHWHILE = 1e-7;
const PIVOTS_BEFORE_REFRESH = 150;
/** Pricing, choosing, following and changing go through the inverse together so often. */
const SUMS_AN_ENTRY = 3;
/** Steps that change nothing before the first column that may enter is taken, which cannot go round in a circle (Bland). */
const STALLED = 60;

export interface Column {
  readonly cost: number;
  /** Row and how much of it one unit covers. */
  readonly entries: readonly (readonly [row: number, amount: number])[];
}

export class CoveringLp {
  readonly columns: Column[] = [];
  private readonly rows: number;
  /** 1 for rows that must be covered, -1 for those that must not be exceeded. */
  private readonly senses: readonly (1 | -1)[];
  private readonly amounts: readonly number[];
  private readonly penalty: number;
  /** By row: a column's place; -1 - row for the row's own slack; -1 - rows - row for its penalty. */
  private readonly basis: Int32Array;
  private readonly inverse: Float64Array;
  private readonly level: Float64Array;
  private readonly price: Float64Array;
  private readonly entering: Float64Array;
  private readonly isBasic: boolean[] = [];
  private pivots = 0;

  constructor(rows: readonly { readonly sense: 1 | -1; readonly amount: number }[], penalty: number) {
    this.rows = rows.length;
    this.senses = rows.map(({ sense }) => sense);
    this.amounts = rows.map(({ amount }) => amount);
    this.penalty = penalty;
    this.basis = new Int32Array(this.rows);
    this.inverse = new Float64Array(this.rows * this.rows);
    this.level = new Float64Array(this.rows);
    this.price = new Float64Array(this.rows);
    this.entering = new Float64Array(this.rows);
    this.senses.forEach((sense, row) => {
      this.basis[row] = sense === 1 ? -1 - this.rows - row : -1 - row;
      this.inverse[row * this.rows + row] = 1;
      this.level[row] = this.amounts[row] ?? 0;
    });
  }

  add(column: Column): void {
    this.columns.push(column);
    this.isBasic.push(false);
  }

  /** Sums made so far, about: each step goes through the inverse a few times. */
  get spent(): number {
    return this.pivots * this.sumsAPivot;
  }

  private get sumsAPivot(): number {
    return SUMS_AN_ENTRY * this.rows * this.rows;
  }

  /** Solves for the columns there are, in at most so many sums; false: they did not do. */
  solve(most: number): boolean {
    let stalled = 0;
    const until = this.spent + most;
    for (; this.spent < until; this.pivots++) {
      if (this.pivots % PIVOTS_BEFORE_REFRESH === PIVOTS_BEFORE_REFRESH - 1) this.refresh();
      this.reprice();
      const column = this.choose(stalled > STALLED);
      if (column === undefined) return true;
      this.transform(column);
      const row = this.leaving(stalled > STALLED);
      if (row === undefined) return true;
      stalled = (this.level[row] ?? 0) > NOUGHT ? 0 : stalled + 1;
      this.pivot(row, column);
    }
    return false;
  }

  /** What one more unit of each row would cost, never less than nothing for a row to cover. */
  prices(): Float64Array {
    this.reprice();
    return this.price.map((price, row) => (this.senses[row] === 1 ? Math.max(0, price) : Math.min(0, price)));
  }

  /** How much of each column is used, by its place; columns not used are left out. */
  solution(): Map<number, number> {
    const used = new Map<number, number>();
    this.basis.forEach((column, row) => {
      const level = this.level[row] ?? 0;
      if (column >= 0 && level > NOUGHT) used.set(column, level);
    });
    return used;
  }

  /** Is everything covered without a penalty? */
  get isCovered(): boolean {
    return this.basis.every((column, row) => column >= -this.rows || (this.level[row] ?? 0) <= 1e-7);
  }

  private costOf(column: number): number {
    if (column >= 0) return this.columns[column]?.cost ?? 0;
    return column < -this.rows ? this.penalty : 0;
  }

  private entriesOf(column: number): Column["entries"] {
    if (column >= 0) return this.columns[column]?.entries ?? [];
    if (column < -this.rows) return [[-1 - this.rows - column, 1]];
    const row = -1 - column;
    return [[row, this.senses[row] === 1 ? -1 : 1]];
  }

  private reprice(): void {
    const { rows, price, inverse } = this;
    price.fill(0);
    for (let row = 0; row < rows; row++) {
      const cost = this.costOf(this.basis[row] ?? 0);
      if (cost === 0) continue;
      const from = row * rows;
      for (let at = 0; at < rows; at++) price[at] = (price[at] ?? 0) + cost * (inverse[from + at] ?? 0);
    }
  }

  private choose(first: boolean): number | undefined {
    let best: number | undefined;
    let least = -WORTHWHILE;
    for (let row = 0; row < this.rows; row++) {
      const reduced = (this.senses[row] ?? 1) * (this.price[row] ?? 0);
      if (reduced < least) {
        if (first) return -1 - row;
        least = reduced;
        best = -1 - row;
      }
    }
    for (let place = 0; place < this.columns.length; place++) {
      if (this.isBasic[place] === true) continue;
      const { cost = 0, entries = [] } = this.columns[place] ?? {};
      let reduced = cost;
      for (const [row, amount] of entries) reduced -= (this.price[row] ?? 0) * amount;
      if (reduced < least) {
        if (first) return place;
        least = reduced;
        best = place;
      }
    }
    return best;
  }

  private transform(column: number): void {
    const { rows, inverse, entering } = this;
    entering.fill(0);
    for (const [entry, amount] of this.entriesOf(column)) {
      for (let row = 0; row < rows; row++) {
        entering[row] = (entering[row] ?? 0) + (inverse[row * rows + entry] ?? 0) * amount;
      }
    }
  }

  private leaving(first: boolean): number | undefined {
    let best: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.rows; row++) {
      const rate = this.entering[row] ?? 0;
      if (rate <= NOUGHT) continue;
      const ratio = Math.max(0, this.level[row] ?? 0) / rate;
      const tied = best !== undefined && Math.abs(ratio - least) <= NOUGHT;
      const better = first
        ? (this.basis[row] ?? 0) < (this.basis[best ?? row] ?? 0)
        : rate > (this.entering[best ?? row] ?? 0);
      if (best === undefined || (tied ? better : ratio < least)) {
        best = row;
        least = ratio;
      }
    }
    return best;
  }

  private pivot(row: number, column: number): void {
    const { rows, inverse, level, entering } = this;
    const rate = entering[row] ?? 1;
    const from = row * rows;
    for (let at = 0; at < rows; at++) inverse[from + at] = (inverse[from + at] ?? 0) / rate;
    level[row] = (level[row] ?? 0) / rate;
    for (let other = 0; other < rows; other++) {
      const factor = entering[other] ?? 0;
      if (other === row || factor === 0) continue;
      const to = other * rows;
      for (let at = 0; at < rows; at++) {
        inverse[to + at] = (inverse[to + at] ?? 0) - factor * (inverse[from + at] ?? 0);
      }
      level[other] = (level[other] ?? 0) - factor * (level[row] ?? 0);
    }
    const left = this.basis[row] ?? -1;
    if (left >= 0) this.isBasic[left] = false;
    this.basis[row] = column;
    if (column >= 0) this.isBasic[column] = true;
  }

  /** Inverts the basis anew, so that errors of rounding do not grow. */
  private refresh(): void {
    const { rows } = this;
    const work = new Float64Array(rows * 2 * rows);
    const width = 2 * rows;
    this.basis.forEach((column, place) => {
      for (const [row, amount] of this.entriesOf(column)) work[row * width + place] = amount;
      work[place * width + rows + place] = 1;
    });
    for (let place = 0; place < rows; place++) {
      let best = place;
      for (let row = place + 1; row < rows; row++) {
        if (Math.abs(work[row * width + place] ?? 0) > Math.abs(work[best * width + place] ?? 0)) best = row;
      }
      const pivot = work[best * width + place] ?? 0;
      if (Math.abs(pivot) < NOUGHT) return;
      for (let at = place; at < width; at++) {
        const held = work[place * width + at] ?? 0;
        work[place * width + at] = (work[best * width + at] ?? 0) / pivot;
        if (best !== place) work[best * width + at] = held;
      }
      for (let row = 0; row < rows; row++) {
        const factor = work[row * width + place] ?? 0;
        if (row === place || factor === 0) continue;
        for (let at = place; at < width; at++) {
          work[row * width + at] = (work[row * width + at] ?? 0) - factor * (work[place * width + at] ?? 0);
        }
      }
    }
    for (let row = 0; row < rows; row++) {
      let level = 0;
      for (let at = 0; at < rows; at++) {
        const value = work[row * width + rows + at] ?? 0;
        this.inverse[row * rows + at] = value;
        level += value * (this.amounts[at] ?? 0);
      }
      this.level[row] = level;
    }
  }
}
