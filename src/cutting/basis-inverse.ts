/** The inverse of a basis, kept whole, and how it changes when one column takes another's place. */

const NOUGHT = 1e-12;

export class BasisInverse {
  readonly rows: number;
  /** Row by row. */
  readonly values: Float64Array;
  /** Sums made so far. */
  spent = 0;
  private readonly filled: Int32Array;

  constructor(rows: number) {
    this.rows = rows;
    this.values = new Float64Array(rows * rows);
    this.filled = new Int32Array(rows);
  }

  /** Row `row` is divided by its rate, and taken from every other row by that row's rate. */
  pivot(row: number, rates: Float64Array): void {
    const { rows, values, filled } = this;
    const rate = rates[row] as number;
    const from = row * rows;
    let number = 0;
    for (let at = 0; at < rows; at++) {
      const value = values[from + at] as number;
      if (value === 0) continue;
      const next = value / rate;
      if (next < NOUGHT && next > -NOUGHT) {
        values[from + at] = 0;
        continue;
      }
      values[from + at] = next;
      filled[number++] = at;
    }
    this.spent += rows;
    for (let other = 0; other < rows; other++) {
      const factor = rates[other] as number;
      if (other === row || factor === 0) continue;
      const to = other * rows;
      for (let place = 0; place < number; place++) {
        const at = filled[place] as number;
        values[to + at] = (values[to + at] as number) - factor * (values[from + at] as number);
      }
      this.spent += number;
    }
  }

  /** What the columns of the basis, given by `put` into a zeroed matrix row by row, have for an inverse. False: they have none. */
  invert(put: (matrix: Float64Array) => void): boolean {
    const { rows, values } = this;
    const matrix = new Float64Array(rows * rows);
    put(matrix);
    const whole = new Float64Array(rows * rows);
    for (let row = 0; row < rows; row++) whole[row * rows + row] = 1;
    for (let place = 0; place < rows; place++) {
      let best = place;
      for (let row = place + 1; row < rows; row++) {
        if (
          Math.abs(matrix[row * rows + place] as number) > Math.abs(matrix[best * rows + place] as number)
        ) {
          best = row;
        }
      }
      const pivot = matrix[best * rows + place] as number;
      if (Math.abs(pivot) < 1e-9) return false;
      for (const one of [matrix, whole]) exchange(one, rows, { place, best, pivot });
      for (let row = 0; row < rows; row++) {
        const factor = matrix[row * rows + place] as number;
        if (row === place || factor === 0) continue;
        takeFrom(matrix, rows, { row, place, factor });
        takeFrom(whole, rows, { row, place, factor });
        this.spent += 2 * rows;
      }
    }
    values.set(whole);
    return true;
  }
}

/** Two rows change places, and the one that is then at `place` is divided by the pivot. */
function exchange(
  matrix: Float64Array,
  rows: number,
  { place, best, pivot }: { place: number; best: number; pivot: number },
): void {
  for (let at = 0; at < rows; at++) {
    const held = matrix[place * rows + at] as number;
    matrix[place * rows + at] = (matrix[best * rows + at] as number) / pivot;
    if (best !== place) matrix[best * rows + at] = held;
  }
}

function takeFrom(
  matrix: Float64Array,
  rows: number,
  { row, place, factor }: { row: number; place: number; factor: number },
): void {
  const to = row * rows;
  const from = place * rows;
  for (let at = 0; at < rows; at++) {
    const value = matrix[from + at] as number;
    if (value !== 0) matrix[to + at] = (matrix[to + at] as number) - factor * value;
  }
}
