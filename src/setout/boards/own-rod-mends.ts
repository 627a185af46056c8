/** What would make an impossible rod of one zone possible, each way tried on the project itself before it is offered. */
import type { Choice, Finding, PatchOperation } from "../../findings/finding.ts";
import { checkProject } from "../../project/check.ts";
import { applyPatch } from "../../project/edit.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { ZoneGround } from "../ground-plan.ts";
import {
  isPossible,
  type LineMove,
  leastMoveTogether,
  type NearestChange,
  type RodProblem,
  type RodSegment,
  solveRod,
} from "../rod/index.ts";
import { roundings } from "../storey/line-moves.ts";
import { bandProposal, byTouch, lookProposal, type Proposal, widened } from "../storey/proposal.ts";
import type { Jamb } from "./upright-segments.ts";

/** A zone whose boards hang on a rod of their own. */
export interface OwnRodZone {
  readonly project: Project;
  readonly ground: ZoneGround;
  readonly cladding: BoardCladding;
  /** Between the segments; none of a soffit. */
  readonly jambs: readonly Jamb[];
  /** Of a soffit: the edit that moves its end at the back, with what to say of it; absent elsewhere. */
  readonly backMoved?: (by: number) => Required<Pick<Proposal, "says" | "edit">> | undefined;
  /** The segments in an edited project. */
  readonly segmentsIn: (project: Project, cladding: BoardCladding) => readonly RodSegment[];
}

export interface OwnRodRefused {
  /** The first segment that no count fits, with the gaps nearest to the band (mm). */
  readonly nearest?: { readonly segment: string; readonly below: number; readonly above: number };
  /** Of a finding: its mends, the best of them in front. */
  readonly mends: Pick<Finding, "choices"> & Partial<Pick<Finding, "hint" | "edit">>;
}

/** What is to be said of a rod that no boards fit. */
export function ownRodRefused(problem: RodProblem, at: OwnRodZone): OwnRodRefused {
  const outcome = solveRod(problem);
  if (outcome.kind !== "impossible") return { mends: {} };
  const choices = ownRodMends(problem, at, outcome.nearestChanges);
  const [choice] = choices;
  const [first] = outcome.segments;
  return {
    ...(first?.nearestBelow &&
      first.nearestAbove && {
        nearest: { segment: first.id, below: first.nearestBelow.gap, above: first.nearestAbove.gap },
      }),
    mends: choice ? { hint: choice.says, ...(choice.edit && { edit: choice.edit }), choices } : {},
  };
}

/** Best first: what touches least of what was given. Those that cannot be written into the file come last. */
function ownRodMends(problem: RodProblem, at: OwnRodZone, changes: readonly NearestChange[]): Choice[] {
  const proposals = [
    ...changes.map((change) => proposalsOf(at, change, problem)),
    ...openingsMoved(at, problem),
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
function proposalsOf(at: OwnRodZone, change: NearestChange, problem: RodProblem): Proposal[] {
  switch (change.kind) {
    case "move-line":
      return [...jambsMoved(at, [change]), ...backsMoved(at, change)];
    case "move-lines":
      return jambsMoved(at, change.moves);
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

function backsMoved({ project, backMoved }: OwnRodZone, { startOf, by: least }: LineMove): Proposal[] {
  if (!backMoved || startOf !== undefined) return [];
  return roundings(project, least).flatMap((by): Proposal[] => {
    const moved = backMoved(by);
    return moved ? [{ touches: "opening", size: Math.abs(by), ...moved }] : [];
  });
}

/** A zone's end is the wall's, or another cladding's: it does not move. */
function jambsMoved(at: OwnRodZone, moves: readonly LineMove[]): Proposal[] {
  const placed = moves.flatMap((move) => {
    const jamb =
      move.endOf !== undefined && move.startOf !== undefined ? at.jambs[Number(move.endOf) - 1] : undefined;
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
function openingsMoved(at: OwnRodZone, problem: RodProblem): Proposal[][] {
  const whole = at.jambs.flatMap(({ opening, side }, i) =>
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

function openingAt({ project, ground }: OwnRodZone, id: string) {
  const i = project.faces.findIndex((face) => face.id === ground.face.id);
  const j = project.faces[i]?.openings.findIndex((one) => one.id === id) ?? -1;
  const opening = project.faces[i]?.openings[j];
  return opening && { opening, path: `/faces/${i}/openings/${j}` };
}

/** Whether the project with the edit is one that can be read, and the zone's rod possible. */
function holds(at: OwnRodZone, problem: RodProblem, edit: readonly PatchOperation[]): boolean {
  const patched = applyPatch(at.project, edit);
  if (!patched.ok) return false;
  const project = patched.document as Project;
  const cladding = project.claddings.find(({ id }) => id === at.cladding.id);
  if (cladding?.kind !== "boards") return false;
  const file = { name: project.title, document: project };
  if (checkProject(file, project).some(({ outcome }) => outcome === "fail")) return false;
  return isPossible({
    ...problem,
    segments: at.segmentsIn(project, cladding),
    gapBand: cladding.gapBand,
    maxEqualTouching: cladding.maxEqualWidthsTouching,
  });
}
