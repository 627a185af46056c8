/** Lines of a rod moved in the project file: by the edge of an opening, its clearance, the whole opening, the zone's end, or as they are drawn. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Opening, Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { MM_PER_INCH, snap } from "../../units/length.ts";
import { type LineMove, leastMoveTogether, type RodProblem } from "../rod/index.ts";
import type { Asker, Border, OpeningEdge } from "./lines.ts";
import { graver, type Proposal } from "./proposal.ts";
import type { RodSetting } from "./task.ts";

/** A clearance may take up this much of a move, in mm; more would show as a dark stripe (a choice of ours). */
const MOST_CLEARANCE_GROWTH_MM = 10;

interface PlacedOpening {
  readonly face: string;
  readonly opening: Opening;
  readonly path: string;
}

function find(project: Project, { face, opening }: OpeningEdge): PlacedOpening | undefined {
  const i = project.faces.findIndex(({ id }) => id === face);
  const openings = project.faces[i]?.openings ?? [];
  const j = openings.findIndex(({ id }) => id === opening);
  const found = openings[j];
  return found && { face, opening: found, path: `/faces/${i}/openings/${j}` };
}

/** What the moved line answers to: the end of segment n is border n. */
function askersOf({ lines }: RodSetting, { endOf, startOf }: LineMove): readonly Asker[] {
  const border = endOf === undefined ? Number(startOf) - 1 : Number(endOf);
  return lines.borders[border]?.askers ?? [];
}

/** The moves carried out at the edges of openings and zones; without an edit where one of them cannot be written. */
export function edgesMoved(setting: RodSetting, moves: readonly LineMove[]): Proposal {
  const heights = heightsAfter(setting, moves);
  const parts = moves.map((move) => edgeMoved(setting, move, heights));
  return {
    touches: parts.reduce<Proposal["touches"]>((most, part) => graver(most, part.touches), "line"),
    size: moves.reduce((total, { by }) => total + Math.abs(by), 0),
    says: message("setout.rod.move", { moves: parts.flatMap((part) => part.says) }),
    ...(parts.every((part) => part.edit.length > 0) && { edit: parts.flatMap((part) => part.edit) }),
  };
}

/** How high each opening is once all moves are made, by the path of the opening, in mm. */
function heightsAfter(setting: RodSetting, moves: readonly LineMove[]): ReadonlyMap<string, number> {
  const heights = new Map<string, number>();
  for (const move of moves) {
    for (const asker of askersOf(setting, move)) {
      const placed = asker.edge === "own" ? undefined : find(setting.task.project, asker);
      if (!placed) continue;
      const [bottom, top] = placed.opening.y;
      const before = heights.get(placed.path) ?? top - bottom;
      heights.set(placed.path, snap(before + (asker.edge === "head" ? move.by : -move.by)));
    }
  }
  return heights;
}

interface PartMoved {
  readonly touches: Proposal["touches"];
  readonly says: readonly Message[];
  readonly edit: readonly PatchOperation[];
}

function edgeMoved(setting: RodSetting, move: LineMove, heights: ReadonlyMap<string, number>): PartMoved {
  const askers = askersOf(setting, move);
  if (askers.length === 0) return zoneEndMoved(setting, move);
  const moved = askers.flatMap((asker) => {
    if (asker.edge === "own") return ownMoved(setting.task.project, asker, move.by);
    const placed = find(setting.task.project, asker);
    if (!placed) return [];
    const { opening, path } = placed;
    const index = asker.edge === "sill" ? 0 : 1;
    const to = snap(opening.y[index] + move.by);
    const { face } = asker;
    const values = { face, opening: opening.id, by: move.by, to, height: heights.get(path) ?? 0 };
    return {
      says: message(asker.edge === "sill" ? "setout.rod.move.sill" : "setout.rod.move.head", values),
      operation: { op: "replace", path: `${path}/y/${index}`, value: to } as const,
    };
  });
  return {
    touches: openingEdges(askers).length > 0 ? "opening" : "line",
    says: moved.map(({ says }) => says),
    edit: moved.map(({ operation }) => operation),
  };
}

function ownMoved(
  { faces }: Project,
  { face, line }: Extract<Asker, { edge: "own" }>,
  by: number,
): { says: Message; operation: PatchOperation }[] {
  const i = faces.findIndex(({ id }) => id === face);
  const j = faces[i]?.lines?.findIndex(({ id }) => id === line) ?? -1;
  const own = faces[i]?.lines?.[j];
  if (!own) return [];
  const to = snap(own.y + by);
  return [
    {
      says: message("setout.rod.move.own", { face, line, by, to }),
      operation: { op: "replace", path: `/faces/${i}/lines/${j}/y`, value: to },
    },
  ];
}

/** The base or the top of all zones on the rod, moved inward; outward, the face itself would have to grow. */
function zoneEndMoved({ task, lines }: RodSetting, { from, to, by }: LineMove): PartMoved {
  const isBase = from === lines.borders[0]?.at;
  const says = [message(isBase ? "setout.rod.move.base" : "setout.rod.move.top", { to, by })];
  const isInward = isBase ? by > 0 : by < 0;
  if (!isInward) return { touches: "zone", says, edit: [] };
  const edit = task.zones.flatMap(({ ground: { face, zone, bounds } }): PatchOperation[] => {
    const reaches = isBase ? bounds.y[0] < to : bounds.y[1] > to;
    const i = task.project.faces.findIndex(({ id }) => id === face.id);
    const j = task.project.faces[i]?.zones.findIndex(({ id }) => id === zone.id) ?? -1;
    if (!reaches || j < 0) return [];
    const y = zone.y ?? bounds.y;
    return [{ op: "add", path: `/faces/${i}/zones/${j}/y`, value: isBase ? [to, y[1]] : [y[0], to] }];
  });
  return { touches: "zone", says, edit };
}

/** A move away from the opening taken up by more clearance: the opening stays as it is. */
export function clearanceGrown(setting: RodSetting, move: LineMove): Proposal[] {
  const askers = askersOf(setting, move);
  const { project } = setting.task;
  const size = Math.abs(move.by);
  const edges = openingEdges(askers);
  const isAway = edges.every(({ edge }) => (edge === "sill" ? move.by < 0 : move.by > 0));
  // A line of the project's own has no clearance to give.
  if (edges.length === 0 || edges.length < askers.length || !isAway || size > MOST_CLEARANCE_GROWTH_MM)
    return [];
  const grown = edges.flatMap((asker) => {
    const placed = find(project, asker);
    if (!placed) return [];
    const { jamb, head, sill } = project.limits.clearances;
    const now = placed.opening.clearance ?? { jamb: jamb.value, head: head.value, sill: sill.value };
    const to = snap(now[asker.edge] + size);
    return {
      says: message(asker.edge === "sill" ? "setout.rod.clear.sill" : "setout.rod.clear.head", {
        face: asker.face,
        opening: asker.opening,
        from: now[asker.edge],
        to,
      }),
      operation: {
        op: "add",
        path: `${placed.path}/clearance`,
        value: { ...now, [asker.edge]: to },
      } as const,
    };
  });
  return [
    {
      touches: "clearance",
      size,
      says: message("setout.rod.clear", { parts: grown.map(({ says }) => says) }),
      edit: grown.map(({ operation }) => operation),
    },
  ];
}

/**
 * Openings of the leading faces moved whole, with all that share a line with them; doors stand where they stand. In each list one
 * move in several roundings.
 */
export function openingsMoved(setting: RodSetting, problem: RodProblem): Proposal[][] {
  return groupsOf(setting.lines.borders).flatMap(({ lines, openings }): Proposal[][] => {
    const placed = openings.flatMap((asker) => find(setting.task.project, asker) ?? []);
    // With one line alone the move of its edge is the nearer change.
    if (lines.length < 2 || placed.some(({ opening }) => opening.toBase || opening.kind === "door"))
      return [];
    const least = leastMoveTogether(problem, lines);
    if (least === undefined) return [];
    return [roundings(setting.task.project, least).map((by) => wholeMoved(placed, by))];
  });
}

function wholeMoved(placed: readonly PlacedOpening[], by: number): Proposal {
  return {
    touches: "opening",
    size: Math.abs(by),
    says: message(by > 0 ? "setout.rod.move.whole-up" : "setout.rod.move.whole-down", {
      openings: placed.map(({ face, opening }) => `${face} ${opening.id}`),
      by: Math.abs(by),
    }),
    edit: placed.map(({ opening, path }) => ({
      op: "replace",
      path: `${path}/y`,
      value: opening.y.map((y) => snap(y + by)),
    })),
  };
}

function openingEdges(askers: readonly Asker[]): OpeningEdge[] {
  return askers.flatMap((asker) => (asker.edge === "own" ? [] : [asker]));
}

/** Openings that share lines, and those lines by their places among the borders; a line that is drawn as well stays where it is. */
function groupsOf(
  borders: readonly Border[],
): { lines: readonly number[]; openings: readonly OpeningEdge[] }[] {
  let groups: { lines: number[]; openings: Map<string, OpeningEdge> }[] = [];
  borders.forEach(({ askers }, index) => {
    const edges = openingEdges(askers);
    if (edges.length === 0 || edges.length < askers.length) return;
    const joined = {
      lines: [index],
      openings: new Map(edges.map((asker) => [`${asker.face} ${asker.opening}`, asker])),
    };
    const touching = groups.filter(({ openings }) =>
      [...joined.openings.keys()].some((key) => openings.has(key)),
    );
    for (const { lines, openings } of touching) {
      joined.lines.push(...lines);
      for (const [key, asker] of openings) joined.openings.set(key, asker);
    }
    groups = [...groups.filter((group) => !touching.includes(group)), joined];
  });
  return groups.map(({ lines, openings }) => ({ lines, openings: [...openings.values()] }));
}

/** A move rounded away from nothing to what a builder measures, then as it is. */
export function roundings(
  { display: { units, denominator } }: Pick<Project, "display">,
  by: number,
): number[] {
  const step = units === "mm" ? 1 : MM_PER_INCH / denominator;
  return [snap(Math.sign(by) * Math.ceil(snap(Math.abs(by)) / step) * step), by];
}
