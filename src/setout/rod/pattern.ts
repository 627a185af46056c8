/**
 * What the eye remembers of a row of boards: the last few widths and how many of the last one touch. From it follow the look rule
 * and the repeats: places where a pattern of one, two or three boards comes again right after itself, which reads as a stripe.
 */
export interface PatternStates {
  readonly count: number;
  /** By state and width (`state * widths + width`): the state after laying the board, -1 where the look rule forbids it. */
  readonly next: Int32Array;
  /** By state and width: how many repeats the board completes. */
  readonly repeats: Uint8Array;
}

/** Longest pattern watched for, in boards; with three boards of about 100 mm, repeats within some 0.6 m. */
export const LONGEST_PATTERN = 3;

/**
 * The states, found by laying boards from the fresh start, state 0.
 * @param longest longest pattern watched for, in boards
 */
export function patternStates(rule: {
  readonly widths: number;
  readonly maxTouching: number;
  readonly longest: number;
}): PatternStates {
  const { widths, maxTouching, longest } = rule;
  const memory = 2 * longest - 1;
  const places = new Map<string, number>([["0:", 0]]);
  const rows: { readonly run: number; readonly recent: readonly number[] }[] = [{ run: 0, recent: [] }];
  const next: number[] = [];
  const repeats: number[] = [];
  for (let place = 0; place < rows.length; place += 1) {
    const { run, recent } = rows[place] ?? { run: 0, recent: [] };
    for (let width = 0; width < widths; width += 1) {
      const after = recent.at(-1) === width ? run + 1 : 1;
      if (after > maxTouching) {
        next.push(-1);
        repeats.push(0);
        continue;
      }
      const laid = [...recent, width];
      repeats.push(repeatsAtEnd(laid, longest));
      const kept = laid.slice(-memory);
      // Without a rule the length of the run does not matter, and counting it would make states without end.
      const counted = maxTouching === Number.POSITIVE_INFINITY ? 1 : after;
      const key = `${counted}:${kept.join(",")}`;
      let onward = places.get(key);
      if (onward === undefined) {
        onward = rows.length;
        places.set(key, onward);
        rows.push({ run: counted, recent: kept });
      }
      next.push(onward);
    }
  }
  return { count: rows.length, next: Int32Array.from(next), repeats: Uint8Array.from(repeats) };
}

/** How many patterns of up to `longest` boards the row ends by repeating. */
function repeatsAtEnd(row: readonly number[], longest: number): number {
  let found = 0;
  for (let period = 1; period <= longest && 2 * period <= row.length; period += 1) {
    const again = row.slice(-period);
    const before = row.slice(-2 * period, -period);
    if (again.every((width, place) => width === before[place])) found += 1;
  }
  return found;
}
