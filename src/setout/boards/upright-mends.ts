/** What would make an impossible rod of upright boards possible, each way tried on the project itself before it is offered. */
import type { Choice, PatchOperation } from "../../findings/finding.ts";
import { checkProject } from "../../project/check.ts";
import { applyPatch } from "../../project/edit.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { keepOutsOf, type ZoneGround } from "../ground-plan.ts";
import {
  isPossible,
  type LineMove,
  leastMoveTogether,
  type NearestChange,
  type RodProblem,
} from "../rod/index.ts";
import { roundings } from "../storey/line-moves.ts";
import { bandProposal, byTouch, lookProposal, type Proposal, widened } from "../storey/proposal.ts";
import { type Jamb, uprightSegments } from "./upright-segments.ts";

export interface UprightZone {
  readonly project: Project;
  readonly ground: ZoneGround;
  readonly cladding: BoardCladding;
}

/** Best first: what touches least of what was given. Those that cannot be written into the file come last. */
export function uprightMends(
  problem: RodProblem,
  at: UprightZone,
  changes: readonly NearestChange[],
): Choice[] {
  const { jambs } = uprightSegments(at.ground, Math.min(...at.cladding.widths));
  const proposals = [
    ...changes.map((change) => proposalsOf(at, jambs, { change, problem })),
    ...openingsMoved(at, jambs, problem),
  ];
  const written = proposals.flatMap(
    (list) => list.find(({ edit }) => edit && holds(at, problem, edit)) ?? [],
  );
  const told = proposals.flatMap((list) => list.filter(({ edit }) => edit === undefined).slice(-1));
  return [...written.sort(byTouch), ...told.sort(byTouch)].map(({ says, edit }) => ({
    says,
    ...(edit && { edit }),
  }));
}

/** The change as an edit, once for each rounding worth trying. */
function proposalsOf(
  at: UprightZone,
  jambs: readonly Jamb[],
  { change, problem }: { readonly change: NearestChange; readonly problem: RodProblem },
): Proposal[] {
  switch (change.kind) {
    case "move-line":
      return jambsMoved(at, jambs, [change]);
    case "move-lines":
      return jambsMoved(at, jambs, change.moves);
    case "widen-band": {
      const value = widened(problem.gapBand, change.end, change.by);
      return value ? [bandProposal(at.project, at.cladding, { value, by: change.by })] : [];
    }
    case "ease-look":
      return [lookProposal(at.project, at.cladding, change.maxEqualTouching)];
    case "rip": {
      const boards = change.boards.map((board) => message("setout.rod.rip.one", { ...board }));
      return [{ touches: "board", size: change.boards.length, says: message("setout.rod.rip", { boards }) }];
    }
  }
}

/** A zone's end is the wall's, or another cladding's: it does not move. */
function jambsMoved(at: UprightZone, jambs: readonly Jamb[], moves: readonly LineMove[]): Proposal[] {
  const placed = moves.flatMap((move) => {
    const jamb =
      move.endOf !== undefined && move.startOf !== undefined ? jambs[Number(move.endOf) - 1] : undefined;
    const opening = jamb && openingAt(at, jamb.opening);
    return jamb && opening ? [{ move, jamb, ...opening }] : [];
  });
  if (placed.length < moves.length) return [];
  return [0, 1].map((rounding): Proposal => {
    const parts = placed.map(({ move, jamb, opening, path }) => {
      const by = roundings(at.project, move.by)[rounding] ?? move.by;
      const end = jamb.side === "left" ? 0 : 1;
      const to = snap(opening.x[end] + by);
      return {
        by,
        says: message(`setout.upright.move.${jamb.side}`, {
          face: at.ground.face.id,
          opening: opening.id,
          by,
          to,
        }),
        edit: { op: "replace", path: `${path}/x/${end}`, value: to } as const,
      };
    });
    return {
      touches: "opening",
      size: parts.reduce((sum, { by }) => sum + Math.abs(by), 0),
      says: message("setout.rod.move", { moves: parts.map(({ says }) => says) }),
      edit: parts.map(({ edit }) => edit),
    };
  });
}

/** Windows moved whole along the wall; doors stand where they stand. */
function openingsMoved(at: UprightZone, jambs: readonly Jamb[], problem: RodProblem): Proposal[][] {
  const whole = jambs.flatMap(({ opening, side }, i) =>
    side === "left" ? [{ opening, border: i + 1 }] : [],
  );
  return whole.flatMap(({ opening: id, border }): Proposal[][] => {
    const found = openingAt(at, id);
    if (!found || found.opening.toBase || found.opening.kind !== "window") return [];
    const least = leastMoveTogether(problem, [border, border + 1]);
    if (least === undefined) return [];
    const { opening, path } = found;
    return [
      roundings(at.project, least).map(
        (by): Proposal => ({
          touches: "opening",
          size: Math.abs(by),
          says: message(by > 0 ? "setout.upright.move.whole-right" : "setout.upright.move.whole-left", {
            opening: `${at.ground.face.id} ${id}`,
            by: Math.abs(by),
          }),
          edit: [{ op: "replace", path: `${path}/x`, value: opening.x.map((x) => snap(x + by)) }],
        }),
      ),
    ];
  });
}

function openingAt({ project, ground }: UprightZone, id: string) {
  const i = project.faces.findIndex((face) => face.id === ground.face.id);
  const j = project.faces[i]?.openings.findIndex((one) => one.id === id) ?? -1;
  const opening = project.faces[i]?.openings[j];
  return opening && { opening, path: `/faces/${i}/openings/${j}` };
}

/** Whether the project with the edit is one that can be read, and the zone's rod possible. */
function holds(at: UprightZone, problem: RodProblem, edit: readonly PatchOperation[]): boolean {
  const patched = applyPatch(at.project, edit);
  if (!patched.ok) return false;
  const project = patched.document as Project;
  const face = project.faces.find(({ id }) => id === at.ground.face.id);
  const cladding = project.claddings.find(({ id }) => id === at.cladding.id);
  if (!face || cladding?.kind !== "boards") return false;
  const file = { name: project.title, document: project };
  if (checkProject(file, project).some(({ outcome }) => outcome === "fail")) return false;
  const own = new Set(at.ground.keepOuts.map(({ of }) => of));
  const keepOuts = keepOutsOf(project, face).filter(({ of }) => own.has(of));
  const { segments } = uprightSegments({ bounds: at.ground.bounds, keepOuts }, Math.min(...cladding.widths));
  return isPossible({
    ...problem,
    segments,
    gapBand: cladding.gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
  });
}
