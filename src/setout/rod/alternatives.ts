import { bestCounts, type CountsFound, type ReachTable, type RodSearch } from "./search.ts";

interface Candidate {
  readonly found: CountsFound;
  /** The part of the table this is the best of. */
  readonly table: ReachTable;
}

/** Margin in grid steps below which two sums of gaps are the same number with different noise. */
const SAME_STEPS = 1e-8;

export function isBetter(one: CountsFound, other: CountsFound): boolean {
  if (one.linesMet !== other.linesMet) return one.linesMet > other.linesMet;
  if (Math.abs(one.spread - other.spread) > SAME_STEPS) return one.spread < other.spread;
  if (Math.abs(one.offset - other.offset) > SAME_STEPS) return one.offset < other.offset;
  return one.boards < other.boards;
}

/**
 * The best counts and the `others` next best, all different, best first. Exact: each result found splits what is left into parts without
 * it, one for each segment, and the best of every part stays in the running.
 */
export function bestFew(search: RodSearch, others: number): CountsFound[] {
  const running: Candidate[] = [];
  const enter = (table: ReachTable): void => {
    const found = bestCounts(search, table);
    if (found !== undefined) running.push({ found, table });
  };
  enter(search.table);
  const chosen: CountsFound[] = [];
  while (running.length > 0 && chosen.length <= others) {
    let lead = 0;
    running.forEach((candidate, place) => {
      const leader = running[lead];
      if (leader !== undefined && isBetter(candidate.found, leader.found)) lead = place;
    });
    const [winner] = running.splice(lead, 1);
    if (winner === undefined) break;
    chosen.push(winner.found);
    if (chosen.length > others) break;
    for (const [index, pick] of winner.found.picks.entries()) {
      const rest = winner.table[index]?.filter((reach) => reach !== pick) ?? [];
      if (rest.length === 0) continue;
      enter(
        winner.table.map((choices, place) => {
          const kept = winner.found.picks[place];
          if (place > index || kept === undefined) return choices;
          return place === index ? rest : [kept];
        }),
      );
    }
  }
  return chosen;
}
