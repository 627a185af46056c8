import type { CountChoice } from "./counts.ts";
import type { GridRod, GridSegment } from "./grid-rod.ts";
import { latticeOf, nodeOf } from "./lattice.ts";
import { type Meeting, meetingsOf, mostLinesMeetable } from "./meetings.ts";
import type { TouchingStates } from "./touching.ts";

/** A choice of counts with the secondary lines its rows could meet, which do not depend on the look rule. */
export interface Meetable {
  readonly choice: CountChoice;
  readonly meetings: readonly Meeting[];
  /** The most lines one row can meet, the look rule left aside. */
  readonly mostLines: number;
}

export function meetableLines(rod: GridRod, segment: GridSegment, choice: CountChoice): Meetable {
  const meetings = rod.lines.length === 0 ? [] : meetingsOf(rod, segment, choice);
  return { choice, meetings, mostLines: mostLinesMeetable(meetings) };
}

/**
 * What one choice of counts can do in one segment: for each state of the look rule it may begin in, the states it may end in and the
 * most secondary lines it can meet on the way there.
 *
 * It begins with a bound that leaves the look rule and ducts aside, never too low, and exact where there is neither. It is sharpened by
 * working every order only when the search is about to rely on it.
 */
export class Reach {
  readonly choice: CountChoice;
  /** Upper bound of the lines met, whatever the states. */
  readonly mostLines: number;
  readonly #meetings: readonly Meeting[];
  readonly #states: TouchingStates;
  readonly #bound: Int16Array;
  readonly #barred: (() => Uint8Array) | undefined;
  readonly #worked = new Map<number, Int16Array>();
  #isExact: boolean;

  /** @param barred the steps that would leave a sliver beside a duct; absent where no duct is near */
  constructor(states: TouchingStates, meetable: Meetable, barred?: () => Uint8Array) {
    const { choice, meetings, mostLines } = meetable;
    this.choice = choice;
    this.mostLines = mostLines;
    this.#states = states;
    this.#meetings = meetings;
    this.#barred = barred;
    this.#isExact = states.count === 1 && barred === undefined;
    this.#bound = Int16Array.from(states.lastWidth, (width) => {
      const canEnd = width < 0 ? states.count === 1 : (choice.counts[width] ?? 0) > 0;
      return canEnd ? this.mostLines : -1;
    });
  }

  /** Whether `from` gives exact values rather than bounds. */
  get isExact(): boolean {
    return this.#isExact;
  }

  sharpen(): void {
    this.#isExact = true;
  }

  /** Most lines met by end state, -1 for an end state out of reach, beginning in `state`. */
  from(state: number): Int16Array {
    if (!this.#isExact || (this.#states.count === 1 && this.#barred === undefined)) return this.#bound;
    const known = this.#worked.get(state);
    if (known !== undefined) return known;
    const worked = this.#work(state);
    this.#worked.set(state, worked);
    return worked;
  }

  #work(begin: number): Int16Array {
    const lattice = latticeOf(this.choice);
    const { count: states, next } = this.#states;
    const widths = this.choice.counts.length;
    const barred = this.#barred?.();
    const hits = new Int16Array(lattice.size);
    for (const meeting of this.#meetings) hits[nodeOf(lattice, meeting.used)] = meeting.lines;
    const most = new Int16Array(lattice.size * states).fill(-1);
    most[begin] = hits[0] ?? 0;
    for (let node = 0; node < lattice.size; node += 1) {
      for (let width = 0; width < widths; width += 1) {
        const onward = lattice.onward[node * widths + width] ?? -1;
        if (onward < 0 || barred?.[node * widths + width] === 1) continue;
        const met = hits[onward] ?? 0;
        for (let state = 0; state < states; state += 1) {
          const before = most[node * states + state] ?? -1;
          const after = next[state * widths + width] ?? -1;
          if (before < 0 || after < 0) continue;
          const place = onward * states + after;
          if (before + met > (most[place] ?? -1)) most[place] = before + met;
        }
      }
    }
    return most.slice((lattice.size - 1) * states);
  }
}
