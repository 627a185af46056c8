/**
 * A linear programme that columns are added to: least cost of columns that cover what is wanted and keep within what there
 * is. Revised primal simplex with the inverse of the basis kept whole, since rows are few: Chvátal, Linear Programming
 * (Freeman 1983), ch. 7. A row that no column covers yet is covered at a penalty. For other amounts it goes on from the basis that it
 * has, by the dual simplex method (ibid., ch. 10).
 *
 * What follows from it is never taken on trust: a bound is reckoned anew from the prices, in whole numbers.
 */
import { BasisInverse } from "./basis-inverse.ts";
import { SparseColumns } from "./sparse-columns.ts";

const NOUGHT = 1e-9;
/** A column enters where it lowers the cost by at least this for each unit of it. */
const WORTHWHILE = 1e-7;
const PIVOTS_BEFORE_REFRESH = 150;
/** Steps that change nothing before the first column that may enter is taken, which cannot go round in a circle (Bland). */
const STALLED = 60;
/** Steps of the dual method, as a multiple of the rows, after which a programme for other amounts is begun from nothing instead. */
const DUAL_STEPS = 2;

export interface Row {
  /** 1 for rows that must be covered, -1 for those that must not be exceeded. */
  readonly sense: 1 | -1;
  readonly amount: number;
}

interface Start {
  readonly columns: SparseColumns;
  readonly basis: Int32Array;
  readonly inverse: BasisInverse;
  readonly isOut: Uint8Array;
}

export class CoveringLp {
  private readonly columns: SparseColumns;
  private readonly rows: number;
  private readonly senses: readonly (1 | -1)[];
  private readonly amounts: readonly number[];
  private readonly penalty: number;
  /** By row: a column's place; -1 - row for the row's own slack; -1 - rows - row for its penalty. */
  private readonly basis: Int32Array;
  private readonly inverse: BasisInverse;
  private readonly level: Float64Array;
  private readonly price: Float64Array;
  private readonly entering: Float64Array;
  /** By column: it is in the basis, or withdrawn. */
  private isOut: Uint8Array;
  private pivots = 0;
  private priced = 0;

  constructor(rows: readonly Row[], penalty: number, start?: Start) {
    this.rows = rows.length;
    this.senses = rows.map(({ sense }) => sense);
    this.amounts = rows.map(({ amount }) => amount);
    this.penalty = penalty;
    this.columns = start?.columns.copy() ?? new SparseColumns();
    this.basis = start?.basis.slice() ?? new Int32Array(this.rows);
    this.isOut = start?.isOut.slice() ?? new Uint8Array(64);
    this.inverse = new BasisInverse(this.rows);
    this.level = new Float64Array(this.rows);
    this.price = new Float64Array(this.rows);
    this.entering = new Float64Array(this.rows);
    if (start === undefined) this.begin();
    else {
      this.inverse.values.set(start.inverse.values);
      this.relevel();
    }
  }

  /**
   * The same columns for other amounts, from this programme's solution on; those of the columns that are withdrawn cost a penalty
   * from then on, and do not enter again.
   */
  forAmounts(amounts: readonly number[], withdrawn: readonly number[]): CoveringLp {
    const rows = this.senses.map((sense, row) => ({ sense, amount: amounts[row] ?? 0 }));
    const { columns, basis, inverse, isOut } = this;
    const next = new CoveringLp(rows, this.penalty, { columns, basis, inverse, isOut });
    next.reprice();
    if (!next.mend()) next.begin();
    for (const place of withdrawn) {
      next.isOut[place] = 1;
      next.columns.cost[place] = this.penalty;
    }
    next.reprice();
    return next;
  }

  add(cost: number, entries: readonly (readonly [row: number, amount: number])[]): void {
    this.columns.add(cost, entries);
    if (this.columns.size > this.isOut.length) {
      const longer = new Uint8Array(2 * this.isOut.length);
      longer.set(this.isOut);
      this.isOut = longer;
    }
  }

  /** Columns so far, withdrawn ones too. */
  get size(): number {
    return this.columns.size;
  }

  /** Sums made so far, about. */
  get spent(): number {
    return this.priced + this.inverse.spent;
  }

  /** Solves for the columns there are, in at most so many sums; false: they did not do. */
  solve(most: number): boolean {
    let stalled = 0;
    const until = this.spent + most;
    this.reprice();
    let isExact = true;
    while (this.spent < until) {
      if (this.pivots % PIVOTS_BEFORE_REFRESH === PIVOTS_BEFORE_REFRESH - 1) {
        this.refresh();
        this.reprice();
        isExact = true;
      }
      const column = this.choose(stalled > STALLED);
      if (column === undefined) {
        if (isExact) return true;
        // Prices changed step by step gather errors, so the last word is theirs reckoned anew.
        this.reprice();
        isExact = true;
        continue;
      }
      const reduced = this.reducedOf(column);
      this.transform(column);
      const row = this.leaving(stalled > STALLED);
      if (row === undefined) return true;
      stalled = (this.level[row] as number) > NOUGHT ? 0 : stalled + 1;
      this.pivot(row, column, reduced);
      isExact = false;
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
    return this.basis.every(
      (column, row) =>
        (this.level[row] ?? 0) <= 1e-7 ||
        (column >= 0 ? this.columns.cost[column] !== this.penalty : column >= -this.rows),
    );
  }

  /** Nothing but slack and penalties. */
  private begin(): void {
    const { rows, inverse, basis } = this;
    for (const column of basis) if (column >= 0) this.setFree(column);
    inverse.values.fill(0);
    this.senses.forEach((sense, row) => {
      basis[row] = sense === 1 ? -1 - rows - row : -1 - row;
      inverse.values[row * rows + row] = 1;
      this.level[row] = this.amounts[row] ?? 0;
    });
  }

  /** A column out of the basis may enter again unless it was withdrawn. */
  private setFree(column: number): void {
    this.isOut[column] = this.columns.cost[column] === this.penalty ? 1 : 0;
  }

  private costOf(column: number): number {
    if (column >= 0) return this.columns.cost[column] as number;
    return column < -this.rows ? this.penalty : 0;
  }

  /** What one unit of a column covers of each row. */
  private eachEntry(column: number, found: (row: number, amount: number) => void): void {
    if (column >= 0) {
      const { start, rows, amounts } = this.columns;
      const end = start[column + 1] as number;
      for (let at = start[column] as number; at < end; at++) found(rows[at] as number, amounts[at] as number);
    } else if (column < -this.rows) found(-1 - this.rows - column, 1);
    else found(-1 - column, this.senses[-1 - column] === 1 ? -1 : 1);
  }

  private reprice(): void {
    const { rows, price, inverse } = this;
    price.fill(0);
    for (let row = 0; row < rows; row++) {
      const cost = this.costOf(this.basis[row] as number);
      if (cost === 0) continue;
      const from = row * rows;
      for (let at = 0; at < rows; at++) {
        price[at] = (price[at] as number) + cost * (inverse.values[from + at] as number);
      }
    }
    this.priced += rows * rows;
  }

  private reducedOf(column: number): number {
    let reduced = this.costOf(column);
    this.eachEntry(column, (row, amount) => {
      reduced -= (this.price[row] as number) * amount;
    });
    return reduced;
  }

  private choose(first: boolean): number | undefined {
    const { rows: count, price, senses, isOut } = this;
    const { size, start, cost, rows, amounts } = this.columns;
    let best: number | undefined;
    let least = -WORTHWHILE;
    for (let row = 0; row < count; row++) {
      const reduced = (senses[row] as number) * (price[row] as number);
      if (reduced < least) {
        if (first) return -1 - row;
        least = reduced;
        best = -1 - row;
      }
    }
    let at = 0;
    for (let place = 0; place < size; place++) {
      const end = start[place + 1] as number;
      if (isOut[place] === 1) {
        at = end;
        continue;
      }
      let reduced = cost[place] as number;
      for (; at < end; at++) reduced -= (price[rows[at] as number] as number) * (amounts[at] as number);
      if (reduced < least) {
        if (first) return place;
        least = reduced;
        best = place;
      }
    }
    this.priced += at;
    return best;
  }

  private transform(column: number): void {
    const { rows, inverse, entering } = this;
    entering.fill(0);
    this.eachEntry(column, (entry, amount) => {
      for (let row = 0, at = entry; row < rows; row++, at += rows) {
        entering[row] = (entering[row] as number) + (inverse.values[at] as number) * amount;
      }
      this.priced += rows;
    });
    // What rounding leaves of a nought would fill the inverse.
    for (let row = 0; row < rows; row++) if (Math.abs(entering[row] as number) < 1e-12) entering[row] = 0;
  }

  private leaving(first: boolean): number | undefined {
    let best: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < this.rows; row++) {
      const rate = this.entering[row] as number;
      if (rate <= NOUGHT) continue;
      const ratio = Math.max(0, this.level[row] as number) / rate;
      const tied = best !== undefined && Math.abs(ratio - least) <= NOUGHT;
      const better = first
        ? (this.basis[row] as number) < (this.basis[best ?? row] as number)
        : rate > (this.entering[best ?? row] as number);
      if (best === undefined || (tied ? better : ratio < least)) {
        best = row;
        least = ratio;
      }
    }
    return best;
  }

  /** @param reduced by how much one unit of the column changes the cost */
  private pivot(row: number, column: number, reduced: number): void {
    const { rows, inverse, level, entering, price } = this;
    const rate = entering[row] as number;
    inverse.pivot(row, entering);
    const own = (level[row] as number) / rate;
    level[row] = own;
    const from = row * rows;
    for (let other = 0; other < rows; other++) {
      price[other] = (price[other] as number) + reduced * (inverse.values[from + other] as number);
      if (other !== row) level[other] = (level[other] as number) - (entering[other] as number) * own;
    }
    const left = this.basis[row] as number;
    if (left >= 0) this.setFree(left);
    this.basis[row] = column;
    if (column >= 0) this.isOut[column] = 1;
    this.pivots += 1;
  }

  /** Makes levels below nought good by the dual method, at prices at which no column lowers the cost. False where that takes long. */
  private mend(): boolean {
    for (let step = 0; step < DUAL_STEPS * this.rows; step++) {
      let row = -1;
      let lowest = -NOUGHT;
      for (let at = 0; at < this.rows; at++) {
        if ((this.level[at] as number) >= lowest) continue;
        row = at;
        lowest = this.level[at] as number;
      }
      if (row < 0) return true;
      const column = this.entersFor(row);
      if (column === undefined) return false;
      const reduced = this.reducedOf(column);
      this.transform(column);
      if ((this.entering[row] as number) > -NOUGHT) return false;
      this.pivot(row, column, reduced);
    }
    return false;
  }

  /** The column that raises a row's level and whose cost rises least with it. */
  private entersFor(row: number): number | undefined {
    const { rows: count, price, senses, penalty, isOut } = this;
    const { size, start, cost, rows, amounts } = this.columns;
    const from = row * count;
    const line = this.inverse.values;
    let best: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    const weigh = (column: number, rate: number, reduced: number): void => {
      if (rate > -1e-7) return;
      const ratio = Math.max(0, reduced) / -rate;
      if (ratio > least + NOUGHT || (ratio > least - NOUGHT && -rate <= most)) return;
      least = Math.min(least, ratio);
      most = -rate;
      best = column;
    };
    for (let at = 0; at < count; at++) {
      const sense = senses[at] as number;
      const value = line[from + at] as number;
      weigh(-1 - at, -sense * value, sense * (price[at] as number));
      if (sense === 1) weigh(-1 - count - at, value, penalty - (price[at] as number));
    }
    for (let place = 0, at = 0; place < size; place++) {
      const end = start[place + 1] as number;
      if (isOut[place] === 1) {
        at = end;
        continue;
      }
      let reduced = cost[place] as number;
      let rate = 0;
      for (; at < end; at++) {
        const entry = rows[at] as number;
        const amount = amounts[at] as number;
        reduced -= (price[entry] as number) * amount;
        rate += (line[from + entry] as number) * amount;
      }
      weigh(place, rate, reduced);
    }
    this.priced += 2 * (start[size] as number);
    return best;
  }

  /** Inverts the basis anew, so that errors of rounding do not grow. */
  private refresh(): void {
    const { rows } = this;
    const isInverted = this.inverse.invert((matrix) => {
      this.basis.forEach((column, place) => {
        this.eachEntry(column, (row, amount) => {
          matrix[row * rows + place] = amount;
        });
      });
    });
    // One more, or the next step would do it again.
    this.pivots += 1;
    if (isInverted) this.relevel();
  }

  private relevel(): void {
    const { rows, inverse } = this;
    for (let row = 0; row < rows; row++) {
      let level = 0;
      for (let at = 0; at < rows; at++) {
        level += (inverse.values[row * rows + at] as number) * (this.amounts[at] as number);
      }
      this.level[row] = level;
    }
  }
}
