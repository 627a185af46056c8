/** A set-out facade in its published shape. */
import type { Demands } from "../../codes/demands.ts";
import { byWeight } from "../../findings/finding.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import { rectOutline } from "../../geometry/rect.ts";
import { claddingOf, zoneByRef } from "../../project/lookup.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Piece, PlaneStep, RodResult, ZonePlane } from "../../setout/facade.ts";
import { type Reader, say } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import { neighboursOn } from "./between.ts";
import { findingJson } from "./finding.ts";
import { collected, type Listed } from "./print.ts";
import type { FaceJson, SetOutJson } from "./shapes/set-out.ts";

export interface SetOutFacts {
  readonly project: Project;
  readonly demands: Demands;
  readonly facade: Facade;
}

export function setOutJson(facts: SetOutFacts, reader: Reader): SetOutJson {
  return collected<SetOutJson>(setOutListed(facts, reader));
}

/** The findings are those of setting-out; proof adds its own elsewhere. */
export function setOutListed(facts: SetOutFacts, reader: Reader): Listed<SetOutJson> {
  const { project, facade } = facts;
  const findings = [...facade.findings].sort(byWeight);
  return {
    schemaVersion: 1,
    faces: mapped(facade.faces, (face) => faceJson(facts, face, reader)),
    planes: mapped(facade.planes, (plane) => planeJson(plane, facade.steps)),
    findings: mapped(findings, (finding) => findingJson(finding, { reader, waivers: project.waivers })),
  };
}

function faceJson(facts: SetOutFacts, face: FaceLayout, reader: Reader): FaceJson {
  const neighbours = neighboursOn(face);
  const { id, code, frame, azimuthDeg, outline, ground, openings, zones, clearances, solids } = face;
  return {
    id,
    code,
    frame: {
      origin: [...frame.origin],
      along: [...frame.along],
      outward: [...frame.outward],
      ...(frame.level !== undefined && { level: frame.level }),
    },
    ...(azimuthDeg !== undefined && { azimuthDeg }),
    outline: points(outline),
    ground: points(ground),
    openings: openings.map(({ region, ...opening }) => ({
      id: opening.id,
      kind: opening.kind,
      region: points(rectOutline(region)),
    })),
    zones: zones.map(({ region, ...zone }) => ({ ...zone, region: points(region) })),
    clearances: clearances.map(({ kind, of, region }) => ({ kind, of, region: points(region) })),
    solids: solids.map(({ region, z, ...solid }) => ({
      id: solid.id,
      kind: solid.kind,
      region: points(region),
      z: [...z],
    })),
    pieces: face.pieces.map((piece) => pieceJson(piece, reader)),
    joints: face.joints.map((joint) => ({
      kind: joint.kind,
      ...(joint.zone !== undefined && { zone: joint.zone }),
      between: neighbours(joint),
      region: points(joint.region),
      width: joint.width,
      along: joint.along,
      ...(joint.line !== undefined && { line: joint.line }),
    })),
    controlLines: face.controlLines.map(({ face: _, ...line }) => ({ ...line })),
    vents: face.vents.map(({ face: _, x, ...vent }) => ({ ...vent, x: [...x] })),
    rods: facts.facade.rods
      .filter((rod) => rod.zones.some((zone) => zone.face === id))
      .flatMap((rod) => rodJson(facts, rod)),
  };
}

function points(polygon: Polygon): number[][] {
  return polygon.map((point) => [...point]);
}

function pieceJson(piece: Piece, reader: Reader): FaceJson["pieces"][number] {
  const { why, zone, cladding, course, bevelDeg, grain, stock, lot } = piece;
  return {
    mark: piece.mark,
    kind: piece.kind,
    ...(zone !== undefined && { zone }),
    ...(cladding !== undefined && { cladding }),
    ...(course !== undefined && { course }),
    outline: points(piece.outline),
    holes: piece.holes.map(points),
    ...(piece.reliefs && { reliefs: piece.reliefs.map((relief) => ({ ...relief })) }),
    ...(piece.endings && { endings: piece.endings.map((one) => ({ ...one })) }),
    ...(piece.profile && { profile: points(piece.profile) }),
    ...(piece.dams && { dams: piece.dams.map(({ x, outline }) => ({ x, outline: points(outline) })) }),
    ...(piece.planProfile && { planProfile: points(piece.planProfile) }),
    z: [...piece.z],
    ends: { left: { ...piece.ends.left }, right: { ...piece.ends.right } },
    ...(bevelDeg !== undefined && { bevel: bevelDeg }),
    ...(grain !== undefined && { grain }),
    material: piece.material,
    ...(stock !== undefined && { stock }),
    cut: { ...piece.cut },
    ...(lot !== undefined && { lot }),
    massKg: piece.massKg,
    why: {
      ...(why.line !== undefined && { line: why.line }),
      rule: say(why.rule, reader),
      ...(why.runnerUp && { runnerUp: say(why.runnerUp, reader) }),
    },
    supports: [...piece.supports],
    removeBefore: [...piece.removeBefore],
    fixings: piece.fixings.map(({ through, side, ...fixing }) => ({
      ...fixing,
      ...(side && { side: { ...side } }),
      through: through.map((layer) => ({ ...layer })),
    })),
  };
}

/** One entry a segment. The seasons move a gap by half of each board beside it: the widest one moves it most. */
function rodJson({ project, demands }: SetOutFacts, rod: RodResult): FaceJson["rods"] {
  const [ref] = rod.zones;
  const zone = ref && zoneByRef(project, ref);
  const cladding = zone && claddingOf(project, zone);
  const seasonal = cladding && demands.boards[cladding.id]?.seasonal;
  return rod.segments.map(({ segment, from, to, endGaps, gap, courses }) => {
    const widest = Math.max(0, ...courses.map(({ width }) => width));
    return {
      id: rod.id,
      segment,
      from,
      to,
      endGaps: { ...endGaps },
      gap,
      ...(seasonal && {
        gapDriest: gap + seasonal.driestMm * widest,
        gapWettest: gap + seasonal.wettestMm * widest,
      }),
      courses: courses.map(({ width }) => width),
    };
  });
}

function planeJson(plane: ZonePlane, steps: readonly PlaneStep[]): SetOutJson["planes"][number] {
  const step = steps.find(({ face, zones }) => face === plane.face && zones[1] === plane.zone);
  return {
    face: plane.face,
    zone: plane.zone,
    layers: plane.layers.map(({ z, ...layer }) => ({ ...layer, z: [...z] })),
    faceZ: plane.faceZ,
    backZ: plane.backZ,
    cavity: plane.cavity,
    step: step?.step ?? 0,
    ...(step && { stepFrom: step.zones[0] }),
    ...(step?.closedBy && {
      closedBy: { zone: step.closedBy.zone, packers: [...step.closedBy.packers] },
    }),
  };
}
