/** Sets out a whole project: planes, corners, rods, then each zone of each face. Pure; same project, same facade. */
import type { Demands } from "../codes/demands.ts";
import { recessLinedBy } from "../project/lookup.ts";
import type { LaidRecord } from "../project/schema/as-built.ts";
import type { Face, Project } from "../project/schema/project.ts";
import { widestBoard } from "./boards/widest-board.ts";
import { type FaceEnds, faceEnds, faceLength } from "./corners.ts";
import type { Facade } from "./facade.ts";
import { type LaidFace, layFace, type Prepared, type Rods } from "./face-layout.ts";
import { keepOutsOf, reachedOutline, roundsOf, zoneGround } from "./ground-plan.ts";
import { asSetOut, laidRecord } from "./laid/record.ts";
import { type FaceMemo, keyOf } from "./memo.ts";
import { stepFindings } from "./plane-findings.ts";
import { planeSteps, zonePlane } from "./planes.ts";
import { type RodZone, setOutRod } from "./rods.ts";
import { laySoffit, type Soffit, soffitsOf } from "./soffits/index.ts";
import type { RodTask } from "./storey/task.ts";

export interface SetOutOptions {
  /** Faces and rods whose inputs are unchanged are taken from it; the facade is the same either way. */
  readonly memo?: FaceMemo | undefined;
  /** The facade is wanted for the next frame: its findings lack what they offer to mend a rod. A memo serves one way alone. */
  readonly toDraw?: boolean;
}

export function setOut(
  project: Project,
  demands: Demands,
  { memo, toDraw = false }: SetOutOptions = {},
): Facade {
  const walls = project.faces.flatMap((face) => face.zones.map((zone) => zonePlane(project, face, zone)));
  const soffits = soffitsOf(project);
  const planes = [...walls, ...soffits.map(({ face, zone }) => zonePlane(project, face, zone))];
  const steps = planeSteps(project, planes);
  const corners = faceEnds(project, planes);
  const prepared = project.faces.map((face) => prepare(project, face, corners.ends.get(face.id) as FaceEnds));
  const rods = tasksOf(project, demands, prepared).map(({ spec, zones, gapBand, season }) =>
    setOutRod(project, spec, zones, gapBand, season, { memo, toDraw }),
  );
  const shared = memo ? sharedKey(project, demands) : "";
  memo?.among(prepared.length + soffits.length);
  const laid = prepared.map((one, index): LaidFace => {
    const make = (): LaidFace => layFace(project, demands, planes, one, rods);
    const from = recessLinedBy(project, one.face.id)?.parent.plan;
    const record = laidRecord(project, one.face.id);
    return memo ? memo.recall(shared, ownKey(one, { index, planes, rods, from, record }), make) : make();
  });
  const overhead = soffits.map((soffit): LaidFace => {
    const make = (): LaidFace => laySoffit(project, demands, { soffit, planes });
    return memo ? memo.recall(shared, soffitKey(project, soffit, planes), make) : make();
  });
  const all = [...laid, ...overhead];
  return {
    faces: all.map(({ layout }) => layout),
    rods: rods.map(({ rod }) => rod),
    planes,
    steps,
    findings: [
      ...corners.findings,
      ...stepFindings(project, steps),
      ...rods.flatMap(({ findings }) => findings),
      ...all.flatMap(({ findings }) => findings),
    ],
  };
}

/** What each rod of the project is asked, as setting-out asks it. */
export function rodTasks(project: Project, demands: Demands): RodTask[] {
  const planes = project.faces.flatMap((face) => face.zones.map((zone) => zonePlane(project, face, zone)));
  const { ends } = faceEnds(project, planes);
  const prepared = project.faces.map((face) => prepare(project, face, ends.get(face.id) as FaceEnds));
  return tasksOf(project, demands, prepared);
}

function tasksOf(project: Project, demands: Demands, prepared: readonly Prepared[]): RodTask[] {
  return (project.rods ?? []).map((spec) => {
    const zones = spec.zones.flatMap(({ face, zone }): RodZone[] => {
      const on = prepared.find((one) => one.face.id === face);
      const first = on?.setOutOn ?? on;
      const ground = first?.grounds.find((one) => one.zone.id === zone);
      return first && ground ? [{ ground, faceKeepOuts: first.keepOuts }] : [];
    });
    const asked = demands.boards[zones[0]?.ground.zone.cladding ?? ""];
    return { project, spec, zones, gapBand: asked?.gapBand ?? [0, 0], season: asked?.seasonal };
  });
}

function prepare(project: Project, face: Face, ends: FaceEnds): Prepared {
  const outline = reachedOutline(face, faceLength(face), ends);
  const keepOuts = keepOutsOf(project, face);
  const rounds = roundsOf(project, face);
  const on = (outs: typeof keepOuts) =>
    face.zones.map((zone) => zoneGround({ face, zone, outline, keepOuts: outs, rounds }));
  const record = laidRecord(project, face.id);
  const drawn = record && keepOutsOf(project, asSetOut(face, record));
  return {
    face,
    ends,
    outline,
    keepOuts,
    rounds,
    grounds: on(keepOuts),
    ...(drawn && { setOutOn: { keepOuts: drawn, grounds: on(drawn) } }),
  };
}

/** All that any face is made from, save faces, their planes and rods, and what no layout reads. */
function sharedKey(project: Project, demands: Demands): string {
  const { structure, buildUps, claddings, limits, roof, stock, pile, figures, display } = project;
  const of = [structure, buildUps, claddings, limits, roof, stock, pile, figures, display];
  const known = sharedKeys.get(demands);
  if (known?.of.every((one, i) => one === of[i])) return known.key;
  // Of the pile nothing is read but how wide its boards are.
  const widest = claddings.map((one) => (one.kind === "boards" ? widestBoard(project, one) : undefined));
  const parts = [structure, buildUps, claddings, limits, roof, stock, figures, demands].map(keyOf);
  const key = [...parts, JSON.stringify([widest, display.units, display.denominator])].join("\n");
  sharedKeys.set(demands, { of, key });
  return key;
}

/** The latest key with the same demands: the text is long, and an edit of a face leaves all of it alone. */
const sharedKeys = new WeakMap<Demands, { readonly of: readonly unknown[]; readonly key: string }>();

interface Around {
  readonly index: number;
  readonly planes: Facade["planes"];
  readonly rods: Rods;
  /** Where the face stands whose recess this one lines. */
  readonly from: Face["plan"] | undefined;
  readonly record: LaidRecord | undefined;
}

/** What a face has of its own, its corners and its rods; its place in the file, since findings name it by path. */
function ownKey({ face, ends }: Prepared, { index, planes, rods, from, record }: Around): string {
  const own = rods
    .filter(({ rod }) => rod.zones.some((zone) => zone.face === face.id))
    .flatMap(({ rod, primary, runnerUp }) => [keyOf(rod), JSON.stringify([[...primary], runnerUp])]);
  const around = JSON.stringify([
    index,
    ends,
    planes.filter((plane) => plane.face === face.id),
    from,
    record,
  ]);
  return [keyOf(face), around, ...own].join("\n");
}

/** A soffit hangs between the faces that line its recess and the one it opens from. */
function soffitKey({ faces }: Project, soffit: Soffit, planes: Facade["planes"]): string {
  const { of, opening, face } = soffit;
  const round = [of.id, face.id, ...(opening.linedBy ?? [])];
  return JSON.stringify([
    soffit,
    planes.filter((plane) => round.includes(plane.face)),
    // What mends it moves the walls that line the recess, by their places in the file.
    faces.flatMap(({ id, plan, outline, openings, penetrations = [] }, index) =>
      round.includes(id) ? [[index, id, plan, outline, openings.length, penetrations.length]] : [],
    ),
  ]);
}
