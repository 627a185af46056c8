/** Lines of a rod moved in the project file: by the edge of an opening, by its clearance, by the whole opening or by the zone's end. */
import type { PatchOperation } from "../../findings/finding.ts";
import type { Opening, Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { type LineMove, leastMoveTogether, type RodProblem } from "../rod/index.ts";
import type { Asker } from "./lines.ts";
import type { Proposal } from "./proposal.ts";
import type { RodSetting } from "./task.ts";

/** A clearance may take up this much of a move, in mm; more would show as a dark stripe (a choice of ours). */
const MOST_CLEARANCE_GROWTH_MM = 10;

interface PlacedOpening {
  readonly face: string;
  readonly opening: Opening;
  readonly path: string;
}

function find(
  project: Project,
  { face, opening }: Pick<Asker, "face" | "opening">,
): PlacedOpening | undefined {
  const i = project.faces.findIndex(({ id }) => id === face);
  const openings = project.faces[i]?.openings ?? [];
  const j = openings.findIndex(({ id }) => id === opening);
  const found = openings[j];
  return found && { face, opening: found, path: `/faces/${i}/openings/${j}` };
}

/** Which border a move concerns: the end of segment n is border n. */
function borderOf({ endOf, startOf }: LineMove): number {
  return endOf === undefined ? Number(startOf) - 1 : Number(endOf);
}

/** The moves carried out at the edges of openings and zones; without an edit where one of them cannot be written. */
export function edgesMoved(setting: RodSetting, moves: readonly LineMove[]): Proposal {
  const parts = moves.map((move) => edgeMoved(setting, move));
  const edit = parts.flatMap((part) => part.edit);
  const sum = moves.reduce((total, { by }) => total + Math.abs(by), 0);
  const says = parts.flatMap((part) => part.says);
  return {
    touches: parts.every(({ ofZone }) => ofZone) ? "zone" : "opening",
    size: sum,
    says: message("setout.rod.move", { moves: says }),
    ...(parts.every((part) => part.edit.length > 0) && { edit }),
  };
}

interface PartMoved {
  readonly ofZone: boolean;
  readonly says: readonly Message[];
  readonly edit: readonly PatchOperation[];
}

function edgeMoved(setting: RodSetting, move: LineMove): PartMoved {
  const { askers } = setting.lines.borders[borderOf(move)] ?? { askers: [] };
  if (askers.length === 0) return zoneEndMoved(setting, move);
  const moved = askers.flatMap((asker) => {
    const placed = find(setting.task.project, asker);
    if (!placed) return [];
    const { opening, path } = placed;
    const index = asker.edge === "sill" ? 0 : 1;
    const to = snap(opening.y[index] + move.by);
    const values = {
      face: asker.face,
      opening: asker.opening,
      by: move.by,
      to,
      height: index === 0 ? snap(opening.y[1] - to) : snap(to - opening.y[0]),
    };
    return {
      says: message(asker.edge === "sill" ? "setout.rod.move.sill" : "setout.rod.move.head", values),
      operation: { op: "replace", path: `${path}/y/${index}`, value: to } as const,
    };
  });
  return {
    ofZone: false,
    says: moved.map(({ says }) => says),
    edit: moved.map(({ operation }) => operation),
  };
}

/** The base or the top of all zones on the rod, moved inward; outward, the face itself would have to grow. */
function zoneEndMoved({ task, lines }: RodSetting, { from, to, by }: LineMove): PartMoved {
  const isBase = from === lines.borders[0]?.at;
  const says = [message(isBase ? "setout.rod.move.base" : "setout.rod.move.top", { to, by })];
  const isInward = isBase ? by > 0 : by < 0;
  if (!isInward) return { ofZone: true, says, edit: [] };
  const edit = task.zones.flatMap(({ ground: { face, zone, bounds } }): PatchOperation[] => {
    const reaches = isBase ? bounds.y[0] < to : bounds.y[1] > to;
    const i = task.project.faces.findIndex(({ id }) => id === face.id);
    const j = task.project.faces[i]?.zones.findIndex(({ id }) => id === zone.id) ?? -1;
    if (!reaches || j < 0) return [];
    const y = zone.y ?? bounds.y;
    return [{ op: "add", path: `/faces/${i}/zones/${j}/y`, value: isBase ? [to, y[1]] : [y[0], to] }];
  });
  return { ofZone: true, says, edit };
}

/** A move away from the opening taken up by more clearance: the opening stays as it is. */
export function clearanceGrown(setting: RodSetting, move: LineMove): Proposal[] {
  const { askers } = setting.lines.borders[borderOf(move)] ?? { askers: [] };
  const { project } = setting.task;
  const size = Math.abs(move.by);
  const isAway = askers.every(({ edge }) => (edge === "sill" ? move.by < 0 : move.by > 0));
  if (askers.length === 0 || !isAway || size > MOST_CLEARANCE_GROWTH_MM) return [];
  const grown = askers.flatMap((asker) => {
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

/** Openings of the leading faces moved whole, with all that share a line with them; doors stand where they stand. */
export function openingsMoved(setting: RodSetting, problem: RodProblem): Proposal[] {
  const { borders } = setting.lines;
  const groups: { lines: number[]; openings: Map<string, Asker> }[] = [];
  borders.forEach(({ askers }, index) => {
    if (askers.length === 0) return;
    const joined = {
      lines: [index],
      openings: new Map(askers.map((one) => [`${one.face} ${one.opening}`, one])),
    };
    for (const group of groups.filter(({ openings }) =>
      [...joined.openings.keys()].some((key) => openings.has(key)),
    )) {
      groups.splice(groups.indexOf(group), 1);
      joined.lines.push(...group.lines);
      for (const [key, asker] of group.openings) joined.openings.set(key, asker);
    }
    groups.push(joined);
  });
  return groups.flatMap(({ lines, openings }): Proposal[] => {
    const placed = [...openings.values()].flatMap((asker) => find(setting.task.project, asker) ?? []);
    // With one line alone the move of its edge is the nearer change, and the sill or head left behind would follow for nothing.
    if (lines.length < 2 || placed.some(({ opening }) => opening.toBase || opening.kind === "door"))
      return [];
    const by = leastMoveTogether(problem, lines);
    if (by === undefined) return [];
    const names = placed.map(({ face, opening }) => `${face} ${opening.id}`);
    return [
      {
        touches: "opening",
        size: Math.abs(by),
        says: message(by > 0 ? "setout.rod.move.whole-up" : "setout.rod.move.whole-down", {
          openings: names,
          by: Math.abs(by),
        }),
        edit: placed.map(({ opening, path }) => ({
          op: "replace",
          path: `${path}/y`,
          value: opening.y.map((y) => snap(y + by)),
        })),
      },
    ];
  });
}
