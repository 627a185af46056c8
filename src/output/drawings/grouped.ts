/** Gathers what is alike, groups and members in the order in which they come. */
export function grouped<One>(all: readonly One[], keyOf: (one: One) => string): ReadonlyMap<string, One[]> {
  const groups = new Map<string, One[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group) group.push(one);
    else groups.set(keyOf(one), [one]);
  }
  return groups;
}

/** As `flatMap`, each made when it is asked for: no more than one is held. */
export function* oneByOne<One, Made>(
  all: Iterable<One>,
  make: (one: One) => Iterable<Made>,
): Generator<Made> {
  for (const one of all) yield* make(one);
}
