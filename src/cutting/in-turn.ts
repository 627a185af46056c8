/** Searches for the parts of one plan, one after the other. */

export interface Searched<Found> {
  readonly search: Generator<Found, Found>;
  /** The best so far. */
  now: Found;
}

/** Takes each search on until so many of its stretches have ended. */
export function takeTo<Found extends { readonly stretch: number }>(
  parts: readonly Searched<Found>[],
  stretch: number,
): void {
  for (const part of parts) {
    while (part.now.stretch < stretch) {
      const next = part.search.next();
      // Its own end was seen as its last stretch ended, or there was nothing to search.
      if (next.done) break;
      part.now = next.value;
    }
  }
}

/** All first answers come at once, so that every result is of all parts. */
export function begun<Found>(search: Generator<Found, Found>): Searched<Found> {
  return { search, now: search.next().value };
}

/**
 * Gives the first result of all parts at once, and then one whenever a search takes breath: the same object until an answer is
 * another than before. The last is what the searches end with.
 */
export function* inTurn<Found, Result>(
  parts: readonly Searched<Found>[],
  {
    isOther,
    resultOf,
  }: {
    isOther: (found: Found, before: Found) => boolean;
    resultOf: (way: "on the way" | "last") => Result;
  },
): Generator<Result, Result> {
  let result = resultOf("on the way");
  yield result;
  for (const part of parts) {
    for (let next = part.search.next(); ; next = part.search.next()) {
      const changed = isOther(next.value, part.now);
      part.now = next.value;
      if (next.done) break;
      if (changed) result = resultOf("on the way");
      yield result;
    }
  }
  return resultOf("last");
}

/** What a search ends with. */
export function ended<Result>(search: Generator<Result, Result>): Result {
  for (let next = search.next(); ; next = search.next()) if (next.done) return next.value;
}
