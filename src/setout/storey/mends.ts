/** What would make an impossible rod possible, each way tried on the project itself before it is offered. */
import type { Choice } from "../../findings/finding.ts";
import { checkProject } from "../../project/check.ts";
import { applyPatch } from "../../project/edit.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { keepOutsOf } from "../ground-plan.ts";
import { isPossible, type NearestChange, type RodProblem } from "../rod/index.ts";
import { clearanceGrown, edgesMoved, openingsMoved } from "./line-moves.ts";
import type { RodZone } from "./lines.ts";
import { byTouch, type Proposal } from "./proposal.ts";
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
  ].sort(byTouch);
  const written = proposals.filter(({ edit }) => edit !== undefined && holds(setting, edit, kept));
  const told = proposals.filter(({ edit }) => edit === undefined);
  return [...written, ...told].map(({ says, edit }) => ({ says, ...(edit && { edit }) }));
}

function proposalsOf(setting: RodSetting, change: NearestChange): Proposal[] {
  const { task, cladding } = setting;
  const claddingPath = `/claddings/${task.project.claddings.indexOf(cladding)}`;
  switch (change.kind) {
    case "move-line":
      return [edgesMoved(setting, [change]), ...clearanceGrown(setting, change)];
    case "move-lines":
      return [edgesMoved(setting, change.moves)];
    case "rip": {
      const boards = change.boards.map(({ segment, width }) => ({ segment: Number(segment), width }));
      const parts = boards.map((board) => message("setout.rod.rip.one", board));
      const path = `/rods/${task.project.rods?.indexOf(task.spec) ?? 0}/rips`;
      return [
        {
          touches: "board",
          size: boards.length,
          says: message("setout.rod.rip", { boards: parts }),
          edit: [{ op: "add", path, value: boards }],
        },
      ];
    }
    case "ease-look": {
      const most = change.maxEqualTouching;
      const path = `${claddingPath}/maxEqualWidthsTouching`;
      return [
        {
          touches: "look",
          size: 0,
          says: message("setout.rod.ease-look", { most }),
          edit: [{ op: "replace", path, value: most }],
        },
      ];
    }
    case "widen-band": {
      // The change may speak of the band through the year, which the given one follows step by step.
      const [least, most] = task.gapBand;
      const band = change.end === "least" ? [snap(least + change.by), most] : [least, snap(most + change.by)];
      const [from = 0, to = 0] = band;
      if (from < 0) return [];
      return [
        {
          touches: "band",
          size: Math.abs(change.by),
          says: message("setout.rod.widen-band", { least: from, most: to }),
          edit: [{ op: "replace", path: `${claddingPath}/gapBand`, value: [from, to] }],
        },
      ];
    }
  }
}

/** Whether the project with the edit is one that can be read, and its rod possible. */
function holds(setting: RodSetting, edit: NonNullable<Proposal["edit"]>, kept: BandKept): boolean {
  const { task } = setting;
  const patched = applyPatch(task.project, edit);
  if (!patched.ok) return false;
  const project = patched.document as Project;
  const spec = project.rods?.find(({ id }) => id === task.spec.id);
  const cladding = project.claddings.find(({ id }) => id === setting.cladding.id);
  if (spec === undefined || cladding?.kind !== "boards") return false;
  const file = { name: project.title, document: project };
  if (checkProject(file, project).some(({ outcome }) => outcome === "fail")) return false;
  const zones = task.zones.flatMap((zone) => edited(project, zone));
  const changed = settingOf({ ...task, project, spec, zones, gapBand: cladding.gapBand });
  const problem = problemWith(changed, kept);
  return problem !== undefined && isPossible(problem);
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
