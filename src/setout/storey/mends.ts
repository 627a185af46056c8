/** What would make an impossible rod possible, each way tried on the project itself before it is offered. */
import type { Choice } from "../../findings/finding.ts";
import { checkProject } from "../../project/check.ts";
import { applyPatch } from "../../project/edit.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { keepOutsOf } from "../ground-plan.ts";
import { isPossible, type LineMove, type NearestChange, type RodProblem, solveRod } from "../rod/index.ts";
import { clearanceGrown, edgesMoved, openingsMoved, roundings } from "./line-moves.ts";
import type { RodZone } from "./lines.ts";
import { bandProposal, byTouch, lookProposal, type Proposal, widened } from "./proposal.ts";
import { type RodSetting, settingOf } from "./task.ts";

/** The problem that a change was found for: with the band as given, or with the band that holds all year. */
export type BandKept = "given" | "year";

export function problemWith(setting: RodSetting, kept: BandKept): RodProblem | undefined {
  if (kept === "given") return setting.problem;
  return setting.yearBand && { ...setting.problem, gapBand: setting.yearBand };
}

/**
 * The ways to mend a rod, best first: what touches least of what was given. Those with an edit have been applied to the project, checked
 * as a file is when it is read, and found possible; those that cannot be written come last.
 */
export function mendsOf(setting: RodSetting, changes: readonly NearestChange[], kept: BandKept): Choice[] {
  const problem = problemWith(setting, kept);
  if (problem === undefined) return [];
  const proposals = [
    ...changes.flatMap((change) => proposalsOf(setting, change)),
    ...openingsMoved(setting, problem),
  ];
  return ranked(setting, proposals, kept);
}

/** Where no single change mends the rod: the look rule dropped, and one change more if that is needed. */
export function mendsWithoutLook(setting: RodSetting, kept: BandKept): Choice[] {
  const problem = problemWith(setting, kept);
  if (problem?.maxEqualTouching === undefined) return [];
  const outcome = solveRod({ ...problem, maxEqualTouching: undefined });
  if (outcome.kind === "unusable") return [];
  const index = setting.task.project.claddings.indexOf(setting.cladding);
  const dropped = { op: "remove", path: `/claddings/${index}/maxEqualWidthsTouching` } as const;
  const alone = message("setout.rod.drop-look");
  if (outcome.kind === "solved")
    return ranked(setting, [[{ touches: "look", size: 0, says: alone, edit: [dropped] }]], kept);
  const proposals = outcome.nearestChanges
    .flatMap((change) => proposalsOf(setting, change))
    .map((list) =>
      list.map(
        (one): Proposal => ({
          ...one,
          says: message("setout.rod.two-changes", { first: alone, second: one.says }),
          ...(one.edit && { edit: [dropped, ...one.edit] }),
        }),
      ),
    );
  return ranked(setting, proposals, kept);
}

/** Of each list of roundings the first that holds, all in order; then what cannot be written. */
function ranked(setting: RodSetting, proposals: readonly (readonly Proposal[])[], kept: BandKept): Choice[] {
  const written = proposals.flatMap(
    (list) => list.find(({ edit }) => edit && holds(setting, edit, kept)) ?? [],
  );
  const told = proposals.flatMap((list) => list.filter(({ edit }) => edit === undefined).slice(-1));
  return [...written.sort(byTouch), ...told.sort(byTouch)].map(({ says, edit }) => ({
    says,
    ...(edit && { edit }),
  }));
}

/** The change as an edit of the project, once for each rounding worth trying. */
function proposalsOf(setting: RodSetting, change: NearestChange): Proposal[][] {
  const { task, cladding } = setting;
  switch (change.kind) {
    case "move-line": {
      const moves = movesRounded(setting, [change]);
      return [
        moves.map((list) => edgesMoved(setting, list)),
        moves.flatMap((list) => list.flatMap((move) => clearanceGrown(setting, move))),
      ];
    }
    case "move-lines":
      return [movesRounded(setting, change.moves).map((list) => edgesMoved(setting, list))];
    case "rip": {
      const boards = change.boards.map(({ segment, width }) => ({ segment: Number(segment), width }));
      const path = `/rods/${task.project.rods?.indexOf(task.spec) ?? 0}/rips`;
      const says = message("setout.rod.rip", {
        boards: boards.map((board) => message("setout.rod.rip.one", board)),
      });
      return [[{ touches: "board", size: boards.length, says, edit: [{ op: "add", path, value: boards }] }]];
    }
    case "ease-look":
      return [[lookProposal(task.project, cladding, change.maxEqualTouching)]];
    case "widen-band":
      return [bandWidened(setting, change.end, change.by)];
  }
}

function movesRounded(setting: RodSetting, moves: readonly LineMove[]): LineMove[][] {
  const rounded = moves.map((move) => {
    const [by = move.by] = roundings(setting.task.project, move.by);
    return { ...move, by, to: snap(move.from + by) };
  });
  return [rounded, [...moves]];
}

/** The band given, wider at one end; the change may speak of the band through the year, which the given one follows step by step. */
function bandWidened({ task, cladding }: RodSetting, end: "least" | "greatest", by: number): Proposal[] {
  const value = widened(task.gapBand, end, by);
  return value ? [bandProposal(task.project, cladding, { value, by })] : [];
}

/** Whether the project with the edit is one that can be read, and its rod possible. */
function holds(setting: RodSetting, edit: NonNullable<Proposal["edit"]>, kept: BandKept): boolean {
  const changed = settingAfter(setting, edit);
  const problem = changed && problemWith(changed, kept);
  return problem !== undefined && isPossible(problem);
}

/** The setting of the project with an edit; undefined where that cannot be read. */
export function settingAfter(
  { task, cladding: own }: RodSetting,
  edit: NonNullable<Proposal["edit"]>,
): RodSetting | undefined {
  const patched = applyPatch(task.project, edit);
  if (!patched.ok) return undefined;
  const project = patched.document as Project;
  const spec = project.rods?.find(({ id }) => id === task.spec.id);
  const cladding = project.claddings.find(({ id }) => id === own.id);
  if (spec === undefined || cladding?.kind !== "boards") return undefined;
  const file = { name: project.title, document: project };
  if (checkProject(file, project).some(({ outcome }) => outcome === "fail")) return undefined;
  const zones = task.zones.flatMap((zone) => edited(project, zone));
  return settingOf({ ...task, project, spec, zones, gapBand: cladding.gapBand });
}

/** The zone as the edited project has it; edits make zones lower, never higher. */
function edited(project: Project, { ground }: RodZone): RodZone[] {
  const face = project.faces.find(({ id }) => id === ground.face.id);
  const zone = face?.zones.find(({ id }) => id === ground.zone.id);
  if (face === undefined || zone === undefined) return [];
  const [low, high] = ground.bounds.y;
  const y = zone.y ?? ground.bounds.y;
  const bounds = { x: ground.bounds.x, y: [Math.max(low, y[0]), Math.min(high, y[1])] as const };
  return [{ ground: { ...ground, face, zone, bounds }, faceKeepOuts: keepOutsOf(project, face) }];
}
