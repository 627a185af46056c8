/**
 * Level joints that run through a whole zone. Every set of lines whose bands fit the stock is tried, with as few bands as
 * fit or one more, and for each the best columns are found; pinned lines are in every set. Sets that begin alike are left
 * out together where no columns, each with the lines over these that suit it best, can cost less than what is found.
 */
import { snap } from "../../units/length.ts";
import { uprightJoints } from "./candidates.ts";
import { type Found, findColumns, type Layout, mayCostLess } from "./columns.ts";
import { divide } from "./divide.ts";
import { GridFloor } from "./grid-floor.ts";
import type { LevelLine } from "./levels.ts";
import { isForbidden } from "./pins.ts";
import type { Planner } from "./planner.ts";
import { WEIGHTS } from "./score.ts";

const MOST_EXTRA_BANDS = 1;

export interface FoundGrid extends Found {
  /** Searches for columns, in full or for their floor alone. */
  readonly searches: number;
}

export function findGrid(planner: Planner): FoundGrid {
  const joints = uprightJoints(planner);
  const { lines, next, most } = linesOf(planner);
  const floor = new GridFloor(planner, lines, next);
  const top = lines.length;
  let layouts: Layout[] = [];
  let searches = 0;

  const tryLines = (levels: readonly LevelLine[]): void => {
    searches += 1;
    const found = findColumns({ ...planner, levels, divides: false }, layouts[1]?.score.total, joints);
    for (const layout of [found.best, found.runnerUp]) {
      if (layout && !layouts.some(({ print }) => print === layout.print)) layouts.push(layout);
    }
    layouts.sort((a, b) => a.score.total - b.score.total);
    layouts = layouts.slice(0, 2);
  };
  const isHopeless = (chosen: readonly number[]): boolean => {
    const limit = layouts[1]?.score.total;
    if (limit === undefined) return false;
    searches += 1;
    return !mayCostLess(planner, joints, { limit, floor: (x) => floor.of(x, chosen) });
  };
  const climb = (chosen: readonly number[]): void => {
    if (isHopeless(chosen)) return;
    for (const line of next[(chosen.at(-1) ?? -1) + 1] ?? []) {
      if (line === top) tryLines(chosen.map((k) => ({ ...(lines[k] as LevelLine), forced: true })));
      else if (chosen.length + 1 < most) climb([...chosen, line]);
    }
  };
  climb([]);
  if (searches === 0) tryLines(lines.filter(({ forced }) => forced));
  const [best, runnerUp] = layouts;
  return { candidates: joints.length - 2, searches, ...(best && { best }), ...(runnerUp && { runnerUp }) };
}

interface Lines {
  readonly lines: readonly LevelLine[];
  /** What may follow on the base, and on each line: a line by its place, or the top. */
  readonly next: readonly (readonly number[])[];
  /** Bands that a set may have. */
  readonly most: number;
}

function linesOf(planner: Planner): Lines {
  const { ground, cladding } = planner.zone;
  const { joint } = cladding;
  const [low, high] = ground.bounds.y;
  const fewest = Math.max(1, Math.ceil((high - low + joint) / (planner.tallest + joint) - 1e-9));
  const lines = [...planner.levels, ...equalLines(planner, fewest)]
    .sort((a, b) => a.at - b.at || a.cost - b.cost)
    .filter(({ at }, i, all) => all[i - 1]?.at !== at);
  const next = [-1, ...lines.keys()].map((k): number[] => {
    const from = k < 0 ? low : snap((lines[k] as LevelLine).at + joint);
    const after: number[] = [];
    // The top first: few bands make good layouts early.
    const forced = lines.findIndex((line, i) => i > k && line.forced);
    if (forced < 0 && high - from <= planner.tallest) after.push(lines.length);
    for (let i = k + 1; i < lines.length && (forced < 0 || i <= forced); i++) {
      const { at } = lines[i] as LevelLine;
      if (at > from && at - from <= planner.tallest) after.push(i);
    }
    return after;
  });
  const pinned = lines.filter(({ forced }) => forced).length;
  return { lines, next, most: fewest + MOST_EXTRA_BANDS + pinned };
}

function equalLines({ zone, wishes }: Planner, fewest: number): LevelLine[] {
  const { joint } = zone.cladding;
  return [fewest, fewest + MOST_EXTRA_BANDS]
    .flatMap((parts) => divide(zone.ground.bounds.y, parts, joint).slice(0, -1))
    .map(([, at]): LevelLine => ({ at, cost: WEIGHTS.offLine, forced: false, answers: "equal" }))
    .filter(({ at }) => !isForbidden([at, snap(at + joint)], wishes.forbidden.y));
}
