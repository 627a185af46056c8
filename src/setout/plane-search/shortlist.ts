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
  const settle = (): void => {
    held = held.sort(compare).slice(0, most);
  };
  return {
    add: (thing) => {
      held.push(thing);
      if (held.length > most + SLACK) settle();
    },
    best: () => {
      settle();
      return [...held];
    },
  };
}
