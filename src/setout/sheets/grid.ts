/**
 * Level joints that run through a whole zone. Every set of lines whose bands fit the stock is tried, with as few bands as
 * fit or one more, and for each the best columns are found; pinned lines are in every set.
 */
import { snap } from "../../units/length.ts";
import { type Found, findColumns, type Layout } from "./columns.ts";
import { divide } from "./divide.ts";
import type { LevelLine } from "./levels.ts";
import { isForbidden } from "./pins.ts";
import type { Planner } from "./planner.ts";
import { WEIGHTS } from "./score.ts";

const MOST_EXTRA_BANDS = 1;

export function findGrid(planner: Planner): Found {
  const layouts: Layout[] = [];
  let candidates = 0;
  for (const levels of lineSets(planner)) {
    const found = findColumns({ ...planner, levels, divides: false }, layouts[1]?.score.total);
    candidates = found.candidates;
    for (const layout of [found.best, found.runnerUp]) {
      if (layout && !layouts.some(({ print }) => print === layout.print)) layouts.push(layout);
    }
    layouts.sort((a, b) => a.score.total - b.score.total);
    layouts.length = Math.min(layouts.length, 2);
  }
  const [best, runnerUp] = layouts;
  return { candidates, ...(best && { best }), ...(runnerUp && { runnerUp }) };
}

function lineSets(planner: Planner): LevelLine[][] {
  const { ground, cladding } = planner.zone;
  const { joint } = cladding;
  const [low, high] = ground.bounds.y;
  const fewest = Math.max(1, Math.ceil((high - low + joint) / (planner.tallest + joint) - 1e-9));
  const lines = [...planner.levels, ...equalLines(planner, fewest)]
    .sort((a, b) => a.at - b.at || a.cost - b.cost)
    .filter(({ at }, i, all) => all[i - 1]?.at !== at);
  const pinned = lines.filter(({ forced }) => forced);
  const most = fewest + MOST_EXTRA_BANDS + pinned.length;
  const sets: LevelLine[][] = [];
  const climb = (chosen: readonly LevelLine[], from: number, next: number): void => {
    if (high - from <= planner.tallest && !lines.slice(next).some(({ forced }) => forced))
      sets.push([...chosen]);
    if (chosen.length + 1 >= most) return;
    for (let k = next; k < lines.length; k++) {
      const line = lines[k] as LevelLine;
      if (line.at > from && line.at - from <= planner.tallest) {
        climb([...chosen, { ...line, forced: true }], snap(line.at + joint), k + 1);
      }
      if (line.forced) break;
    }
  };
  climb([], low, 0);
  return sets.length > 0 ? sets : [pinned];
}

function equalLines({ zone, wishes }: Planner, fewest: number): LevelLine[] {
  const { joint } = zone.cladding;
  return [fewest, fewest + MOST_EXTRA_BANDS]
    .flatMap((parts) => divide(zone.ground.bounds.y, parts, joint).slice(0, -1))
    .map(([, at]): LevelLine => ({ at, cost: WEIGHTS.offLine, forced: false }))
    .filter(({ at }) => !isForbidden([at, snap(at + joint)], wishes.forbidden.y));
}
