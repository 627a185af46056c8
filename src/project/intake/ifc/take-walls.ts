/** Walls of a model as a project to begin with, or as new outlines and openings of faces that a project has. */
import { type Finding, finding, type PatchOperation } from "../../../findings/finding.ts";
import { type Message, message } from "../../../text/message.ts";
import { applyPatch } from "../../edit.ts";
import type { Source } from "../../editing/change.ts";
import { startPlan, type Walls } from "../../editing/start.ts";
import { readDocument } from "../../read.ts";
import { replaceFace } from "../face/replace-face.ts";
import type { TakenFace } from "../face/shape.ts";
import { type Taken, tried } from "../taken.ts";
import { chosenWalls, turnedWalls } from "./chosen.ts";
import { azimuth, type FacesInPlan, facesInPlan } from "./faces-in-plan.ts";
import type { ModelWall, WallModel } from "./model.ts";

export interface WallChoice {
  /** Names of walls; those that stand outside where absent. */
  readonly walls?: readonly string[];
  /** Names of those that are seen from their other side than the model, or the face that they go into, tells. */
  readonly turned?: readonly string[];
}

/** A project that begins with the walls: a face each, with corners where their ends meet. */
export function startWithWalls(
  model: WallModel,
  choice: WallChoice,
  start: Pick<Walls, "title" | "display">,
): Taken {
  const plan = planOf(model, choice);
  if (!plan.ok) return plan;
  const document = startPlan({ ...start, walls: plan.faces, meets: plan.meets });
  const read = readDocument(document, model.name);
  if (!read.ok) return read;
  const replaced = replacedAll(
    { document, project: read.project },
    plan.faces.map(({ id, face }) => ({ id, face })),
    model.name,
  );
  if (!replaced.ok) return replaced;
  const { source, tells } = replaced;
  return {
    ok: true,
    document: source.document,
    tells: [...plan.tells, ...tells],
    findings: plan.findings,
  };
}

/**
 * The walls as outline and openings of faces that the project has: of the face told, else of each that is called as a wall is.
 * Places in plan stay, but where a face grows or shrinks.
 */
export function wallsInto(
  source: Source,
  model: WallModel,
  { face: told, ...choice }: WallChoice & { readonly face?: string },
): Taken {
  const plan = planInto(source, model, { ...choice, ...(told !== undefined && { face: told }) });
  if (!plan.ok) return plan;
  const { faces } = plan;
  if (faces.length === 0 || (told !== undefined && faces.length !== 1)) {
    const walls = model.walls.filter(({ outer }) => outer).map(({ name }) => name);
    return refused(
      told === undefined
        ? message("intake.ifc.none-like", { file: model.name })
        : message("intake.ifc.which", { file: model.name, face: told, count: faces.length }),
      message("intake.hint.ifc.walls", { walls }),
    );
  }
  const targets = faces.map(({ id, face }) => ({ id: told ?? id, face }));
  const strange = targets.filter(({ id }) => !source.project.faces.some((face) => face.id === id));
  if (strange.length > 0) {
    return refused(
      message("intake.ifc.no-face", { file: model.name, walls: strange.map(({ id }) => id) }),
      message("intake.hint.ifc.no-face", { faces: source.project.faces.map(({ id }) => id) }),
    );
  }
  const replaced = replacedAll(source, targets, model.name);
  if (!replaced.ok) return replaced;
  const [only] = targets;
  const says =
    targets.length === 1 && only
      ? message("project.edit.face-drawn", { face: only.id, file: model.name })
      : message("project.edit.walls-taken", { faces: targets.map(({ id }) => id), file: model.name });
  return tried(
    { document: source.document, name: model.name },
    { change: { operations: replaced.operations, says }, tells: replaced.tells, findings: plan.findings },
  );
}

/** Walls that are meant where none is named: for a face, the one that is called as it is, or the only outer one; else the outer walls. */
export function usualWalls({ walls }: WallModel, face: string | undefined): readonly ModelWall[] {
  const outer = walls.filter((wall) => wall.outer);
  if (face === undefined) return outer;
  const like = walls.filter(({ name, called }) => [name, ...called].includes(face));
  return like.length > 0 ? like : outer.length === 1 ? outer : [];
}

/** What the reader names; else the usual walls, and without a face each that is called as a face of the project is. */
function meantWalls(source: Source, model: WallModel, face: string | undefined): string[] {
  const ids = face === undefined ? source.project.faces.map(({ id }) => id) : [face];
  const usual = ids.flatMap((id) => usualWalls(model, id));
  return [...new Set(usual.map(({ entity }) => entity))];
}

/** The faces that a choice of walls gives to begin with. */
export function planOf(model: WallModel, { walls: said, turned }: WallChoice): FacesInPlan {
  const chosen = chosenWalls(model, said);
  return chosen.ok
    ? seenFrom(model, chosen.walls, { ...(turned && { turned }), settled: () => undefined })
    : chosen;
}

/** The faces that a choice of walls gives for those of a project, each from the side that looks to where the face looks. */
export function planInto(
  source: Source,
  model: WallModel,
  { face, walls: said, turned }: WallChoice & { readonly face?: string },
): FacesInPlan {
  const chosen = chosenWalls(model, said ?? meantWalls(source, model, face));
  if (!chosen.ok) return chosen;
  return seenFrom(model, chosen.walls, {
    ...(turned && { turned }),
    settled: (wall) => sideLike(source, model, wall, face),
  });
}

/** @param settled which side a wall is seen from, where something but the other walls tells it */
function seenFrom(
  model: WallModel,
  walls: readonly ModelWall[],
  {
    turned: said = [],
    settled,
  }: Pick<WallChoice, "turned"> & { readonly settled: (wall: ModelWall) => 0 | 1 | undefined },
): FacesInPlan {
  const turned = turnedWalls(model, said, walls);
  if (!turned.ok) return turned;
  const isTurned = (wall: ModelWall): boolean => turned.walls.includes(wall);
  const plan = facesInPlan(model, walls, (wall) => (((settled(wall) ?? 0) === 1) === isTurned(wall) ? 0 : 1));
  if (!plan.ok) return plan;
  // Whoever turns a wall has looked.
  const unsure = walls.filter((wall) => !wall.sideTold && !isTurned(wall) && settled(wall) === undefined);
  const says = message("intake.ifc.side", { file: model.name, walls: namesOf(unsure) });
  const hint = message("intake.hint.ifc.side");
  return {
    ...plan,
    tells:
      turned.walls.length > 0
        ? [message("intake.change.turned", { walls: namesOf(turned.walls) }), ...plan.tells]
        : plan.tells,
    findings:
      unsure.length > 0
        ? [...plan.findings, finding({ code: "F037", outcome: "attention", where: {}, says, hint })]
        : plan.findings,
  };
}

function namesOf(walls: readonly ModelWall[]): string[] {
  return walls.map(({ name }) => name);
}

/** Degrees in a whole turn. */
const ROUND = 360;

/** The side that looks to where the face looks, where the model tells its north. */
function sideLike(
  { project }: Source,
  { north, northTold }: WallModel,
  { name, called, sides }: ModelWall,
  told: string | undefined,
): 0 | 1 | undefined {
  const face = project.faces.find(({ id }) =>
    told === undefined ? [name, ...called].includes(id) : id === told,
  );
  if (!sides || !face || !northTold) return undefined;
  const [first, second] = sides.map(({ outward }) => {
    const turn = Math.abs(azimuth(outward, north) - face.azimuthDeg);
    return Math.min(turn, ROUND - turn);
  }) as [number, number];
  return first === second ? undefined : second < first ? 1 : 0;
}

function refused(says: Message, hint: Message): Taken {
  const findings: Finding[] = [finding({ code: "F034", outcome: "fail", where: {}, says, hint })];
  return { ok: false, findings };
}

type Replaced =
  | {
      readonly ok: true;
      readonly source: Source;
      readonly operations: readonly PatchOperation[];
      readonly tells: readonly Message[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** One after another, each on what the one before gave: names of openings are unlike over the whole project. */
function replacedAll(
  source: Source,
  faces: readonly { readonly id: string; readonly face: TakenFace }[],
  file: string,
): Replaced {
  let now = source;
  const operations: PatchOperation[] = [];
  const tells: Message[] = [];
  for (const { id, face } of faces) {
    const replaced = replaceFace(now, { id, taken: face, file });
    if (!replaced.ok) return replaced;
    const patched = applyPatch(now.document, replaced.change.operations);
    if (!patched.ok) return patched;
    const read = readDocument(patched.document, file);
    if (!read.ok) return read;
    now = { document: patched.document, project: read.project };
    operations.push(...replaced.change.operations);
    tells.push(...replaced.tells);
  }
  return { ok: true, source: now, operations, tells };
}
