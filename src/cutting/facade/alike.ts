/** Boards that should look alike: which pieces a zone keeps together, and what the plan makes of it. */
import { type Finding, finding } from "../../findings/finding.ts";
import type { Project, Zone } from "../../project/schema/project.ts";
import type { Piece } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import type { PileBoard } from "../model.ts";
import { gathered } from "./pieces.ts";
import type { CutPlan } from "./plan.ts";

/** Pieces of one name come from as few lots and grades as the pile allows; undefined: they may come from anywhere. */
export function alikeNames(project: Project): (piece: Piece) => string | undefined {
  const zones = zonesOf(project);
  return ({ face, zone, course }) => {
    const { alike = "face" } = zones.get(keyOf(face, zone)) ?? {};
    if (alike === "any") return undefined;
    // What hangs on no course, as under an eave, goes with its face.
    return alike === "course" && course !== undefined ? `${face} ${zone} ${course}` : face;
  };
}

/** C006: for each zone that asks it, how many of its courses, or whether its face, come from boards that look unlike. */
export function alikeFindings(project: Project, pieces: readonly Piece[], { rips }: CutPlan): Finding[] {
  if (!rips) return [];
  const nameOf = alikeNames(project);
  const strips = new Map(rips.result.strips.map(({ id, board }) => [id, board]));
  const boards = new Map(rips.request.boards.map((one) => [one.id, one]));
  const looks = new Map(
    rips.result.lengths.plan.bars.flatMap((bar) => {
      const board = boards.get(strips.get(bar.stockId) ?? "");
      return board ? bar.pieces.map(({ demandId }) => [demandId, lookOf(board)] as const) : [];
    }),
  );
  const known = pieces.filter(({ mark }) => looks.has(mark));
  return [...gathered(known, ({ face, zone }) => keyOf(face, zone))].flatMap(([key, own]): Finding[] => {
    const [first] = own;
    const asks = zonesOf(project).get(key)?.alike;
    if (first === undefined || asks === undefined || asks === "any") return [];
    const groups = [...gathered(own, (piece) => nameOf(piece) ?? "").values()];
    const mixed = groups.filter((group) => new Set(group.map(({ mark }) => looks.get(mark))).size > 1);
    const { face, zone = "" } = first;
    return [
      finding({
        code: "C006",
        outcome: mixed.length > 0 ? "attention" : "pass",
        where: {
          path: pathOf(project, first),
          marks: mixed.flatMap((group) => group.map(({ mark }) => mark)),
        },
        says: message(`schedule.cut.alike.${asks}.${mixed.length > 0 ? "mixed" : "kept"}`, {
          zone,
          face,
          count: groups.length,
          mixed: mixed.length,
          looks: [...new Set(own.map(({ mark }) => looks.get(mark) ?? ""))].sort(),
        }),
        ...(mixed.length > 0 && { hint: message("schedule.cut.alike.hint") }),
      }),
    ];
  });
}

/** As the page names it: the lot, and its grade where it has one. */
function lookOf({ lot, look }: PileBoard): string {
  return look === undefined ? lot : `${lot} (${look})`;
}

function zonesOf({ faces }: Project): Map<string, Zone> {
  return new Map(faces.flatMap(({ id, zones }) => zones.map((zone) => [keyOf(id, zone.id), zone])));
}

function keyOf(face: string, zone = ""): string {
  return JSON.stringify([face, zone]);
}

function pathOf({ faces }: Project, { face, zone }: Piece): string {
  const at = faces.findIndex(({ id }) => id === face);
  return `/faces/${at}/zones/${faces[at]?.zones.findIndex(({ id }) => id === zone) ?? -1}/alike`;
}
