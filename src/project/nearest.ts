/** The known word nearest to a mistyped one. */

/**
 * The number of letters to add, drop, change or swap with their neighbour to turn one word into the other
 * (optimal string alignment distance).
 */
export function editDistance(a: string, b: string): number {
  let last: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(at(row, j) + 1, at(next, j - 1) + 1, at(row, j - 1) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, at(last, j - 2) + 1);
      }
      next.push(least);
    }
    last = row;
    row = next;
  }
  return at(row, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY;
}

/** Longer texts are no slips of a known word, and comparing them costs their product. */
const LONGEST_WORD = 60;

/**
 * The known word within a third of the typed one's letters, at least two; capitals do not count. The first of equally
 * near ones; undefined when none is near.
 */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  if (typed.length > LONGEST_WORD) return undefined;
  const reach = Math.max(2, Math.floor(typed.length / 3));
  let best: { word: string; steps: number } | undefined;
  for (const word of known) {
    const steps = editDistance(typed.toLowerCase(), word.toLowerCase());
    // A word of two letters is two steps from every other: nothing may be replaced whole.
    if (steps <= reach && steps < Math.max(typed.length, word.length) && steps < (best?.steps ?? Infinity)) {
      best = { word, steps };
    }
  }
  return best?.word;
}
