/** Faces: their outlines reshaped, one set beside another, one taken out, and the rules of one given to another. */
import type { PatchOperation } from "../../findings/finding.ts";
import { faceFrame } from "../../geometry/frame.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { message } from "../../text/message.ts";
import { degreesToRadians, normaliseDegrees, radiansToDegrees } from "../../units/angle.ts";
import { snap } from "../../units/length.ts";
import { cornerAt, rodOf } from "../lookup.ts";
import { isGroup, valueAt } from "../pointer.ts";
import type { Face } from "../schema/project.ts";
import { type Added, type Change, faceAt, likeWritten, nextId, type Source } from "./change.ts";
import { hang } from "./rods.ts";
import { takeOut } from "./taking-out.ts";
import { uprightRectangle } from "./upright.ts";
import { cladZones } from "./zones.ts";

/** Open gap of a new corner where the file has none to go by (mm); common practice. */
const CORNER_GAP_MM = 10;

/** Two directions that differ by less are one wall going on (degrees): plans and compasses are read to one. */
const STRAIGHT_DEG = 1;

/** The outline with a point put elsewhere, each figure as it was written. */
export function moveOutlinePoint(source: Source, id: string, index: number, to: Point): Change | undefined {
  const at = faceAt(source, id);
  if (!at?.face.outline[index]) return undefined;
  return outlineChange(
    source,
    at,
    at.face.outline.map((point, i): Point => (i === index ? to : point)),
  );
}

/** Moves what is not at its foot up or down, so that the face's highest point stands so high over its lowest (mm). */
export function setFaceHeight(source: Source, id: string, height: number): Change | undefined {
  const at = faceAt(source, id);
  if (!at) return undefined;
  const { y } = polygonBounds(at.face.outline);
  const by = height - (y[1] - y[0]);
  const middle = (y[0] + y[1]) / 2;
  return outlineChange(
    source,
    at,
    at.face.outline.map(([px, py]): Point => [px, py > middle ? snap(py + by) : py]),
  );
}

/** The face with another outline, in its own frame (mm); each figure that stays as it was written. */
export function reshapeFace(source: Source, id: string, outline: readonly Point[]): Change | undefined {
  const at = faceAt(source, id);
  return at && outlineChange(source, at, outline);
}

function outlineChange(
  source: Source,
  { face, path }: { readonly face: Face; readonly path: string },
  outline: readonly Point[],
): Change {
  return {
    operations: [
      {
        op: "replace",
        path: `${path}/outline`,
        value: pointsLikeWritten(source, `${path}/outline`, outline),
      },
      ...zonesUnder(face, path, outline),
    ],
    says: message("project.edit.face-shape", { face: face.id }),
  };
}

function pointsLikeWritten(source: Source, path: string, points: readonly Point[]): unknown[] {
  const old = valueAt(source.document, path.slice(1).split("/"));
  return points.map((point, i) => point.map((mm, axis) => likeWritten(mm, valueAt(old, [i, axis]))));
}

/** Zones that reached the old top or foot of the face reach the new one. */
function zonesUnder(face: Face, path: string, outline: readonly Point[]): PatchOperation[] {
  const [was, is] = [polygonBounds(face.outline).y, polygonBounds(outline).y];
  return face.zones.flatMap((zone, i) =>
    ([0, 1] as const).flatMap((end): PatchOperation[] =>
      zone.y?.[end] === was[end] && was[end] !== is[end]
        ? [{ op: "replace", path: `${path}/zones/${i}/y/${end}`, value: is[end] }]
        : [],
    ),
  );
}

/** The faces that stand at a face's right end, one after another, with what lines their recesses; undefined where they close a ring. */
function facesBeyond({ project }: Source, id: string): Set<string> | undefined {
  const beyond = new Set<string>();
  for (let next = cornerAt(project, { face: id, end: "right" })?.right; next !== undefined; ) {
    if (next === id || beyond.has(next)) return undefined;
    beyond.add(next);
    next = cornerAt(project, { face: next, end: "right" })?.right;
  }
  const lining = project.faces
    .filter((face) => beyond.has(face.id))
    .flatMap(({ openings }) => openings.flatMap(({ linedBy = [] }) => linedBy));
  return new Set([...beyond, ...lining]);
}

/**
 * Moves the right end of a face (mm from its left end), and in plan the faces that stand beyond it. Undefined where the
 * plan is closed: another wall would have to give.
 */
export function setFaceWidth(source: Source, id: string, width: number): Change | undefined {
  const at = faceAt(source, id);
  const beyond = facesBeyond(source, id);
  if (!at || !beyond) return undefined;
  const { face, path } = at;
  const right = polygonBounds(face.outline).x[1];
  const moved = (points: readonly Point[]): Point[] =>
    points.map(([x, y]): Point => [x === right ? width : x, y]);
  const { along } = faceFrame(face.plan);
  const end: Point = [snap(face.plan.from[0] + along[0] * width), snap(face.plan.from[1] + along[1] * width)];
  const by: Point = [end[0] - face.plan.to[0], end[1] - face.plan.to[1]];
  const shifted = source.project.faces.flatMap((one, i): PatchOperation[] =>
    beyond.has(one.id)
      ? (["from", "to"] as const).map((key) => ({
          op: "replace",
          path: `/faces/${i}/plan/${key}`,
          value: [snap(one.plan[key][0] + by[0]), snap(one.plan[key][1] + by[1])],
        }))
      : [],
  );
  return {
    operations: [
      {
        op: "replace",
        path: `${path}/outline`,
        value: pointsLikeWritten(source, `${path}/outline`, moved(face.outline)),
      },
      {
        op: "replace",
        path: `${path}/ground`,
        value: pointsLikeWritten(source, `${path}/ground`, moved(face.ground)),
      },
      { op: "replace", path: `${path}/plan/to`, value: end },
      ...shifted,
    ],
    says: message("project.edit.face-width", { face: id, width }),
  };
}

export interface NewFace {
  readonly width: number;
  readonly height: number;
  /** Compass direction of its outward normal (degrees). */
  readonly azimuthDeg: number;
}

/**
 * Sets a rectangle at the right end of a face that stands free there: its foot and ground go on level, its one zone is
 * clad as the zone at that end, and where it turns the two meet in a corner. Undefined where a neighbour stands there.
 */
export function addFaceBeside(
  source: Source,
  id: string,
  { width, height, azimuthDeg }: NewFace,
): Added | undefined {
  const at = faceAt(source, id);
  const { project } = source;
  if (!at || cornerAt(project, { face: id, end: "right" })) return undefined;
  const { face } = at;
  const own = nextId(
    source,
    "face",
    project.faces.map((one) => one.id),
  );
  const { outward } = faceFrame(face.plan);
  const inPlan = radiansToDegrees(Math.atan2(outward[0], outward[1])) + azimuthDeg - face.azimuthDeg;
  const turned = degreesToRadians(inPlan);
  // Seen from outside a face runs to the right: a quarter turn from its outward normal.
  const along: Point = [-Math.cos(turned), Math.sin(turned)];
  const [x, y] = face.plan.to;
  const foot = polygonBounds(face.outline).y[0];
  const ground = face.ground.at(-1)?.[1] ?? foot;
  const last = face.zones.find((zone) => zone.x[1] === "right end") ?? face.zones[0];
  if (!last) return undefined;
  const turn = normaliseDegrees(azimuthDeg - face.azimuthDeg);
  const straight = Math.min(turn, 360 - turn) < STRAIGHT_DEG;
  const gap = project.corners?.[0]?.gap ?? CORNER_GAP_MM;
  const corner = { left: id, right: own, kind: "open mitre", gap };
  const value = {
    id: own,
    azimuthDeg,
    plan: { from: [x, y], to: [snap(x + along[0] * width), snap(y + along[1] * width)] },
    ...uprightRectangle({ width, height }, { foot, ground }),
    openings: [],
    zones: [{ id: last.id, cladding: last.cladding, buildUp: last.buildUp, x: ["left end", "right end"] }],
  };
  const rod = rodOf(project, { face: id, zone: last.id });
  return {
    operations: [
      { op: "add", path: "/faces/-", value },
      ...(straight
        ? []
        : [
            project.corners
              ? { op: "add" as const, path: "/corners/-", value: corner }
              : { op: "add" as const, path: "/corners", value: [corner] },
          ]),
      ...(rod
        ? hang(
            source,
            { face: own, zone: last.id },
            { cladding: last.cladding, like: { face: id, zone: last.id } },
          )
        : []),
    ],
    says: message("project.edit.face-add", { face: own }),
    added: { face: own, id: own },
  };
}

export function removeFace(source: Source, id: string): Change | undefined {
  const at = faceAt(source, id);
  return (
    at && {
      operations: takeOut(source, { faces: [id] }),
      says: message("project.edit.face-remove", { face: id }),
    }
  );
}

/** What a face says of itself as a whole, besides its shape and place. */
const FACE_RULES = ["frameProjection", "splash"] as const;

/** Clads another face's zones as those of one, from left to right, and gives it the same frames and splash. */
export function copyFaceRules(source: Source, from: string, to: string): Change | undefined {
  const [model, target] = [faceAt(source, from), faceAt(source, to)];
  if (!model || !target || from === to) return undefined;
  const written = valueAt(source.document, model.path.slice(1).split("/"));
  const zones = cladZones(
    source,
    target.face.zones.flatMap((zone, i) => {
      const like = model.face.zones[i] ?? model.face.zones.at(-1);
      const clad = like && { cladding: like.cladding, buildUp: like.buildUp };
      return clad ? [{ ref: { face: to, id: zone.id }, to: clad }] : [];
    }),
  );
  const rules = FACE_RULES.flatMap((key): PatchOperation[] =>
    isGroup(written) && written[key] !== undefined
      ? [{ op: "add", path: `${target.path}/${key}`, value: written[key] }]
      : [],
  );
  return { operations: [...zones, ...rules], says: message("project.edit.face-rules", { from, to }) };
}
