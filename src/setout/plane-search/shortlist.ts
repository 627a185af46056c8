/** The best of many, without holding them all. */

export interface Shortlist<Thing> {
  readonly add: (thing: Thing) => void;
  /** The best, best first; of equals, the one that was added first. */
  readonly best: () => Thing[];
}

/** Sorting comes once in so many additions, so that each costs little. */
const SLACK = 500;

export function shortlist<Thing>(most: number, compare: (a: Thing, b: Thing) => number): Shortlist<Thing> {
  let held: Thing[] = [];
  /** The last that is kept: what is no better than it need not be held. */
  let bar: Thing | undefined;
  const settle = (): void => {
    held = held.sort(compare).slice(0, most);
    bar = held.length === most ? held[most - 1] : undefined;
  };
  return {
    add: (thing) => {
      if (bar !== undefined && compare(thing, bar) >= 0) return;
      held.push(thing);
      if (held.length > most + SLACK) settle();
    },
    best: () => {
      settle();
      return [...held];
    },
  };
}
