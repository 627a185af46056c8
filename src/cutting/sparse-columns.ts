/** Columns of a linear programme one after the other in flat arrays, so that going through all of them is quick. */
export class SparseColumns {
  /** Columns so far. */
  size = 0;
  /** Where a column's entries start, one more than there are columns. */
  start = new Int32Array(64);
  cost = new Float64Array(64);
  rows = new Int32Array(256);
  amounts = new Float64Array(256);

  add(cost: number, entries: readonly (readonly [row: number, amount: number])[]): void {
    const from = this.start[this.size] ?? 0;
    if (this.size + 2 > this.start.length) {
      const longer = 2 * this.start.length;
      this.start = grown(this.start, new Int32Array(longer));
      this.cost = grown(this.cost, new Float64Array(longer));
    }
    while (from + entries.length > this.rows.length) {
      this.rows = grown(this.rows, new Int32Array(2 * this.rows.length));
      this.amounts = grown(this.amounts, new Float64Array(2 * this.amounts.length));
    }
    entries.forEach(([row, amount], at) => {
      this.rows[from + at] = row;
      this.amounts[from + at] = amount;
    });
    this.cost[this.size] = cost;
    this.size += 1;
    this.start[this.size] = from + entries.length;
  }

  copy(): SparseColumns {
    const copy = new SparseColumns();
    copy.size = this.size;
    copy.start = this.start.slice();
    copy.cost = this.cost.slice();
    copy.rows = this.rows.slice();
    copy.amounts = this.amounts.slice();
    return copy;
  }
}

function grown<Values extends Int32Array | Float64Array>(from: Values, into: Values): Values {
  into.set(from);
  return into;
}
