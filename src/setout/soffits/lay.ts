/** Lays out one soffit with the code of walls: joists stand for studs, depth for height. */
import type { Demands } from "../../codes/demands.ts";
import { type Finding, finding } from "../../findings/finding.ts";
import { type Rect, rectOutline } from "../../geometry/rect.ts";
import { faceCode } from "../../project/lookup.ts";
import type { BoardCladding, Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { membraneStrips } from "../behind/index.ts";
import { type GapsAsked, ownRod } from "../boards/own-rod.ts";
import { ownRodRefused } from "../boards/own-rod-mends.ts";
import { type FaceEnds, freeEnd } from "../corners.ts";
import type { ControlLine, RodResult, Solid, ZonePlane } from "../facade.ts";
import type { LaidFace } from "../face-layout.ts";
import type { ZoneGround } from "../ground-plan.ts";
import { controlLines } from "../lines.ts";
import { zonePlane } from "../planes.ts";
import { claddingOf } from "../resolve.ts";
import type { RodSegment } from "../rod/index.ts";
import { solidsOf } from "../solids.ts";
import { layZone } from "../zone-layout.ts";
import { deepened } from "./deepen.ts";
import { soffitReach } from "./reach.ts";
import { type Soffit, soffitsOf } from "./spec.ts";

/**
 * @param planes of the whole building, the soffit's own among them
 */
export function laySoffit(
  project: Project,
  demands: Demands,
  { soffit, planes }: { readonly soffit: Soffit; readonly planes: readonly ZonePlane[] },
): LaidFace {
  const { face, zone, frame, path } = soffit;
  const bounds = soffitReach(project, planes, soffit);
  const region = rectOutline(bounds);
  const ground: ZoneGround = { face, zone, region, bounds, rectangular: true, keepOuts: [], rounds: [] };
  const plane = planes.find((one) => one.face === face.id) as ZonePlane;
  const framed = onJoists(project, soffit);
  const solids = solidsOf(framed, face).map(asJoist);
  const cladding = claddingOf(project, zone);
  const level = cladding.kind === "boards" && cladding.direction !== "vertical" ? cladding : undefined;
  const rod =
    level &&
    soffitRod(project, ground, {
      soffit,
      cladding: level,
      asked: demands.boards[level.id] ?? { gapBand: level.gapBand },
    });
  const ends: FaceEnds = { left: freeEnd(bounds.x[0]), right: freeEnd(bounds.x[1]) };
  const laid = layZone({
    project: framed,
    demands,
    ground,
    path,
    plane,
    ends,
    rod: rod?.rod,
    lines: [],
    solids,
  });
  const membrane = membraneStrips({
    project,
    face,
    path,
    ends,
    grounds: [ground],
    planes: [plane],
    rounds: [],
    laid: laid.pieces,
  });
  return {
    layout: {
      id: face.id,
      code: faceCode(face),
      frame,
      outline: region,
      ground: [],
      openings: [],
      zones: [{ id: zone.id, cladding: zone.cladding, buildUp: zone.buildUp, region }],
      clearances: [],
      solids,
      pieces: [...laid.pieces, ...membrane.pieces],
      joints: laid.joints,
      controlLines: controlLines({
        face,
        outline: region,
        keepOuts: [],
        grounds: [ground],
        primary: new Set(),
      }).map(lying),
      vents: laid.vents,
    },
    findings: [
      overhead(soffit, laid.pieces.length),
      ...(rod ? [rod.finding] : []),
      ...laid.findings,
      ...membrane.findings,
    ],
  };
}

/** The project as a soffit's layout sees it: what stands behind are its joists. */
function onJoists(project: Project, { spec: { joists } }: Soffit): Project {
  const { structure } = project;
  return {
    ...project,
    structure: {
      ...structure,
      studs: { ...structure.studs, ...joists, besideOpenings: 0 },
      bands: [],
    },
  };
}

/** What is low and high on a wall lies in front and at the back of a soffit. */
function lying(line: ControlLine): ControlLine {
  const kind = line.kind === "base" ? "front" : line.kind === "top" ? "back" : line.kind;
  return kind === line.kind ? line : { ...line, kind, id: `${line.face} ${kind}` };
}

function asJoist(solid: Solid): Solid {
  return solid.kind === "stud"
    ? { ...solid, kind: "joist", id: solid.id.replace(" stud ", " joist ") }
    : solid;
}

/** Courses from the front to the back, the first and the last board whole where the widths allow it. */
function soffitRod(
  project: Project,
  ground: ZoneGround,
  {
    soffit,
    cladding,
    asked,
  }: { readonly soffit: Soffit; readonly cladding: BoardCladding; readonly asked: GapsAsked },
): { readonly rod: RodResult; readonly finding: Finding } {
  const segments = segmentsOf(ground.bounds);
  const { problem, rod, fits } = ownRod(ground, { cladding, asked, segments });
  const where = { face: ground.face.id, zone: ground.zone.id };
  const source = { kind: "common practice" } as const;
  if (fits) {
    const boards = rod.segments.reduce((count, { courses }) => count + courses.length, 0);
    const says = message("setout.soffit.solved", { boards, gap: rod.segments[0]?.gap ?? 0 });
    return { rod, finding: finding({ code: "S001", outcome: "pass", where, says, source }) };
  }
  const [least, most] = asked.gapBand;
  const told = ownRodRefused(problem, {
    project,
    ground,
    cladding,
    jambs: [],
    backMoved: (by) => {
      const edit = deepened(project, soffit, by);
      const { id } = soffit.opening;
      return (
        edit && { edit, says: message("setout.soffit.deepen", { opening: id, to: snap(soffit.depth + by) }) }
      );
    },
    segmentsIn: (edited) => {
      const same = soffitsOf(edited).find(({ face }) => face.id === soffit.face.id);
      return same ? segmentsOf(soffitReach(edited, wallPlanes(edited), same)) : segments;
    },
  });
  return {
    rod,
    finding: finding({
      code: "S001",
      outcome: "fail",
      where,
      says: told.nearest
        ? message("setout.soffit.refused", {
            face: ground.face.id,
            below: told.nearest.below,
            above: told.nearest.above,
            least,
            most,
          })
        : message("setout.soffit.impossible", { face: ground.face.id, least, most }),
      hint: message("setout.soffit.hint"),
      ...told.mends,
      source,
    }),
  };
}

function segmentsOf({ y: [from, to] }: Rect): RodSegment[] {
  return [{ id: "1", from, to, gapAtStart: false, gapAtEnd: false }];
}

function wallPlanes(project: Project): ZonePlane[] {
  return project.faces.flatMap((face) => face.zones.map((zone) => zonePlane(project, face, zone)));
}

function overhead({ face, zone, opening, path }: Soffit, pieces: number): Finding {
  return finding({
    code: "S019",
    outcome: "attention",
    where: { face: face.id, zone: zone.id, opening: opening.id, path },
    says: message("setout.soffit.overhead", { opening: opening.id, pieces }),
    hint: message("setout.soffit.overhead.hint"),
    source: { kind: "common practice" },
  });
}
