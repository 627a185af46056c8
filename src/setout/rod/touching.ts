import { type GridRod, touchingLimit } from "./grid-rod.ts";

/**
 * What the look rule must remember of a row of boards: the width laid last and how many of it touch. State 0 is the fresh start;
 * without a rule it is the only one.
 */
export interface TouchingStates {
  readonly count: number;
  /** By state and width (`state * widths + width`): the state after laying the board, -1 where the rule forbids it. */
  readonly next: Int32Array;
  /** By state: number of the width laid last, -1 for the fresh start. */
  readonly lastWidth: Int32Array;
}

export function touchingStates(rod: GridRod): TouchingStates {
  const widths = rod.widths.length;
  const most = touchingLimit(rod);
  if (most === Number.POSITIVE_INFINITY) {
    return { count: 1, next: new Int32Array(widths), lastWidth: Int32Array.of(-1) };
  }
  const count = 1 + widths * most;
  const lastWidth = Int32Array.from({ length: count }, (_, state) =>
    state === 0 ? -1 : Math.floor((state - 1) / most),
  );
  const next = new Int32Array(count * widths);
  for (let state = 0; state < count; state += 1) {
    for (let width = 0; width < widths; width += 1) {
      const isFull = (state - 1) % most === most - 1;
      const onward = lastWidth[state] !== width ? 1 + width * most : isFull ? -1 : state + 1;
      next[state * widths + width] = onward;
    }
  }
  return { count, next, lastWidth };
}
