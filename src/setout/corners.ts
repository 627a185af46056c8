/**
 * Where the cladding of a face ends at its corners. A face's cladding stands in front of its sheathing, so at a corner
 * it reaches past the sheathing (or stops short of it) by what its neighbour stands out.
 */
import { type Finding, finding } from "../findings/finding.ts";
import { faceFrame, turnDeg } from "../geometry/frame.ts";
import type { Interval } from "../geometry/interval.ts";
import { distance } from "../geometry/point.ts";
import type { Corner, Face, Project } from "../project/schema/project.ts";
import { message } from "../text/message.ts";
import { degreesToRadians } from "../units/angle.ts";
import { snap } from "../units/length.ts";
import { type EndMeets, type Piece, type PieceEnd, SQUARE, SQUARE_ENDS, type ZonePlane } from "./facade.ts";
import { cavityBack, planeOf } from "./planes.ts";

export interface FaceEnd {
  /** Position of the cladding's end at its outer face, in the face frame. */
  readonly x: number;
  readonly cut: PieceEnd;
  /** How far along the face nothing of the neighbour stands before it: short of an inside corner's cladding. */
  readonly openTo: number;
  readonly kind: EndMeets;
  /** Face round the corner. */
  readonly neighbour?: string;
  /** Insulation of the neighbour, whose edge is open to this side (mm thick). */
  readonly neighbourInsulation: number;
  /** How far from its sheathing the neighbour's cavity begins, and ends at its rails or the back of its cladding (mm). */
  readonly neighbourCavityZ: number;
  readonly neighbourFreeZ: number;
  /** Stands past this end, before its battens. */
  readonly post?: CornerPost;
}

/** A corner's post in the frame of the face on its left. */
export interface CornerPost {
  readonly x: Interval;
  readonly z: Interval;
  readonly stock: string;
  readonly material: string;
  readonly screw: string;
}

export interface FaceEnds {
  readonly left: FaceEnd;
  readonly right: FaceEnd;
}

/** Whether a face ends at a corner that is not square, where only a mitre parts what meets. */
export function isSlanted({ cut }: FaceEnd): boolean {
  return cut.cut === "mitre" && Math.abs(Math.abs(2 * cut.angleDeg) - 90) > SQUARE_CORNER_WITHIN_DEG;
}

/** Faces meet in plan within this; a survey is read to the millimetre. */
export const MEETS_WITHIN_MM = 1;
const SQUARE_CORNER_WITHIN_DEG = 5;

/** How a piece of a face ends: with the corner's cut where it reaches the corner. */
export function endsAt(x: Interval, { left, right }: FaceEnds): Piece["ends"] {
  const [atLeft, atRight] = [x[0] === left.x, x[1] === right.x];
  if (!atLeft && !atRight) return SQUARE_ENDS;
  return { left: atLeft ? left.cut : SQUARE, right: atRight ? right.cut : SQUARE };
}

/** Between the long points: an end that is longer at the back than at the face needs the longer piece. */
export function cutLength(x: Interval, { left, right }: Piece["ends"], thickness: number): number {
  return snap(x[1] - x[0] + longerBehind(left, thickness) + longerBehind(right, thickness));
}

/** How much longer a piece's end is at its back than at its face: at the mitre of an inside corner (mm). */
export function longerBehind({ angleDeg }: PieceEnd, thickness: number): number {
  return angleDeg < 0 ? thickness * Math.tan(degreesToRadians(-angleDeg)) : 0;
}

interface Side {
  readonly face: Face;
  readonly plane: ZonePlane;
}

/** The ends of every face, by face id, with what stands in the way of a corner as findings. */
export function faceEnds(
  project: Project,
  planes: readonly ZonePlane[],
): { readonly ends: ReadonlyMap<string, FaceEnds>; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const rights = new Map<string, FaceEnd>();
  const lefts = new Map<string, FaceEnd>();
  for (const left of project.faces) {
    const right = project.faces.find(
      (face) => face !== left && distance(left.plan.to, face.plan.from) <= MEETS_WITHIN_MM,
    );
    if (!right) continue;
    const made = cornerEnds(project, planes, left, right);
    rights.set(left.id, made.left);
    lefts.set(right.id, made.right);
    findings.push(...made.findings);
  }
  const ends = new Map(
    project.faces.map((face): [string, FaceEnds] => [
      face.id,
      {
        left: lefts.get(face.id) ?? freeEnd(0),
        right: rights.get(face.id) ?? freeEnd(faceLength(face)),
      },
    ]),
  );
  return { ends, findings };
}

export function faceLength(face: Face): number {
  return snap(distance(face.plan.from, face.plan.to));
}

/** An end that meets nothing. */
export function freeEnd(x: number): FaceEnd {
  return {
    x,
    cut: SQUARE,
    openTo: x,
    kind: "free",
    neighbourInsulation: 0,
    neighbourCavityZ: 0,
    neighbourFreeZ: 0,
  };
}

/** The plane of the zone that reaches a face's left or right end. */
function endPlane(face: Face, planes: readonly ZonePlane[], end: "left" | "right"): ZonePlane {
  const zones = [...face.zones].sort((a, b) => start(a.x[0]) - start(b.x[0]));
  const zone = end === "left" ? zones[0] : zones.at(-1);
  return planeOf(planes, face.id, zone?.id ?? "");
}

function start(x: number | "left end"): number {
  return x === "left end" ? Number.NEGATIVE_INFINITY : x;
}

function insulationOf(plane: ZonePlane): number {
  return plane.layers
    .filter((layer) => layer.kind === "insulation")
    .reduce((sum, { z }) => snap(sum + z[1] - z[0]), 0);
}

/** The outer side of the battens, gaskets included. */
function freeZ(plane: ZonePlane): number {
  return plane.layers.find(({ kind }) => kind === "rail")?.z[0] ?? plane.backZ;
}

function standing(
  plane: ZonePlane,
): Pick<FaceEnd, "neighbourInsulation" | "neighbourCavityZ" | "neighbourFreeZ"> {
  return {
    neighbourInsulation: insulationOf(plane),
    neighbourCavityZ: cavityBack(plane),
    neighbourFreeZ: freeZ(plane),
  };
}

function cornerEnds(project: Project, planes: readonly ZonePlane[], leftFace: Face, rightFace: Face) {
  const left: Side = { face: leftFace, plane: endPlane(leftFace, planes, "right") };
  const right: Side = { face: rightFace, plane: endPlane(rightFace, planes, "left") };
  const turn = turnDeg(faceFrame(leftFace.plan), faceFrame(rightFace.plan));
  const spec = project.corners?.find((one) => one.left === leftFace.id && one.right === rightFace.id);
  const lead = spec?.lead ?? leftFace.id;
  const gap = spec?.gap ?? DEFAULT_CORNER_GAP_MM;
  const square = Math.abs(Math.abs(turn) - 90) <= SQUARE_CORNER_WITHIN_DEG;
  const kind = turn > 0 ? ("external" as const) : ("internal" as const);
  const findings: Finding[] = [];
  const mitred = spec?.kind === "open mitre" || !square;
  if (spec && spec.kind !== "open mitre" && !square) findings.push(notSquare(spec, turn));
  else if (spec?.kind === "post" && kind === "internal") findings.push(postInside(spec));
  if (mitred && left.plane.faceZ !== right.plane.faceZ) findings.push(unequalMitre(left, right));
  const ends = mitred
    ? mitreEnds({ left, right, turn, gap })
    : kind === "external"
      ? spec?.kind === "post" && spec.post
        ? postEnds(project, { left, right, gap, post: spec.post })
        : lappedOutside({ left, right, lead, gap })
      : lappedInside({ left, right, lead, gap });
  const inside = kind === "internal";
  const before = (end: number, other: Side): number => {
    if (!inside) return 0;
    const slant = DRIP_MM * Math.tan(degreesToRadians(-turn / 2));
    return mitred ? slant : Math.max(0, other.plane.faceZ - Math.abs(end));
  };
  const leftOpen = snap(ends.left.x - before(faceLength(leftFace) - ends.left.x, right));
  const rightOpen = snap(ends.right.x + before(ends.right.x, left));
  return {
    left: { openTo: leftOpen, kind, neighbour: rightFace.id, ...ends.left, ...standing(right.plane) },
    right: { openTo: rightOpen, kind, neighbour: leftFace.id, ...ends.right, ...standing(left.plane) },
    findings,
  };
}

/** What stands out before the cladding at the most: the drip of a sill's flashing (mm). */
export const DRIP_MM = 25;

/** Used where the project says nothing of a corner: the usual open joint of sheets (common practice). */
const DEFAULT_CORNER_GAP_MM = 8;

interface Ends {
  readonly left: Pick<FaceEnd, "x" | "cut" | "post">;
  readonly right: Pick<FaceEnd, "x" | "cut">;
}

/** Both claddings end along the plane that halves the corner, half the gap before it. */
function mitreEnds(at: { left: Side; right: Side; turn: number; gap: number }): Ends {
  const half = degreesToRadians(at.turn / 2);
  const back = at.gap / 2 / Math.cos(half);
  const reach = (side: Side): number => side.plane.faceZ * Math.tan(half) - back;
  const cut: PieceEnd = { cut: "mitre", angleDeg: at.turn / 2 };
  return {
    left: { x: snap(faceLength(at.left.face) + reach(at.left)), cut },
    right: { x: snap(-reach(at.right)), cut },
  };
}

/** The lead runs to the other's outer plane; the other stops one gap behind the lead's back. */
function lappedOutside(at: { left: Side; right: Side; lead: string; gap: number }): Ends {
  const leftLeads = at.lead === at.left.face.id;
  const leftReach = leftLeads ? at.right.plane.faceZ : at.right.plane.backZ - at.gap;
  const rightReach = leftLeads ? at.left.plane.backZ - at.gap : at.left.plane.faceZ;
  return {
    left: { x: snap(faceLength(at.left.face) + leftReach), cut: SQUARE },
    right: { x: snap(-rightReach), cut: SQUARE },
  };
}

/**
 * A post stands on the left face's battens and covers the corner: it stands as far out of the right face's plane as of
 * the left's. Each cladding stops the gap short of it, the right one of its back.
 */
function postEnds(
  { stock }: Project,
  at: { left: Side; right: Side; gap: number; post: NonNullable<Corner["post"]> },
): Ends {
  const section = stock.battens.find(({ id }) => id === at.post.stock);
  const back = freeZ(at.left.plane);
  const front = snap(back + (section?.thickness ?? 0));
  const proud = front - at.left.plane.faceZ;
  const outer = snap(faceLength(at.left.face) + at.right.plane.faceZ + proud);
  const inner = snap(outer - (section?.width ?? 0));
  const { material, screw } = at.post;
  return {
    left: {
      x: snap(inner - at.gap),
      cut: SQUARE,
      post: { x: [inner, outer], z: [back, front], stock: at.post.stock, material, screw },
    },
    right: { x: snap(at.gap - back), cut: SQUARE },
  };
}

/** In an inside corner the lead runs behind the other's cladding; the other stops one gap before the lead's face. */
function lappedInside(at: { left: Side; right: Side; lead: string; gap: number }): Ends {
  const leftLeads = at.lead === at.left.face.id;
  const leftShort = leftLeads ? at.right.plane.backZ : at.right.plane.faceZ + at.gap;
  const rightShort = leftLeads ? at.left.plane.faceZ + at.gap : at.left.plane.backZ;
  return {
    left: { x: snap(faceLength(at.left.face) - leftShort), cut: SQUARE },
    right: { x: snap(rightShort), cut: SQUARE },
  };
}

function notSquare(spec: Corner, turn: number): Finding {
  return finding({
    code: "S014",
    outcome: "attention",
    where: { face: spec.left },
    says: message("setout.corner.not-square", {
      left: spec.left,
      right: spec.right,
      turn: Math.round(turn * 10) / 10,
    }),
    hint: message("setout.corner.not-square.hint"),
    source: { kind: "common practice" },
  });
}

function postInside(spec: Corner): Finding {
  return finding({
    code: "S014",
    outcome: "attention",
    where: { face: spec.left },
    says: message("setout.corner.post-inside", { left: spec.left, right: spec.right }),
    hint: message("setout.corner.post-inside.hint"),
    source: { kind: "common practice" },
  });
}

function unequalMitre(left: Side, right: Side): Finding {
  return finding({
    code: "S014",
    outcome: "fail",
    where: { face: left.face.id },
    says: message("setout.corner.unequal-mitre", {
      left: left.face.id,
      right: right.face.id,
      leftZ: left.plane.faceZ,
      rightZ: right.plane.faceZ,
    }),
    hint: message("setout.corner.unequal-mitre.hint"),
    demand: Math.abs(left.plane.faceZ - right.plane.faceZ),
    limit: 0,
    unit: "mm",
    source: { kind: "common practice" },
  });
}
