/** Single entities of a DXF file as drawn lines. Polylines of either make; what is no line is told by its kind. */
import type { Point } from "../../../geometry/point.ts";
import type { Drawn, DrawnKind } from "./drawing.ts";
import { type Entity, type Group, numberOf, textOf } from "./groups.ts";

const KINDS: Readonly<Record<string, DrawnKind>> = {
  LINE: "open",
  RAY: "open",
  XLINE: "open",
  MLINE: "other",
  ARC: "curve",
  CIRCLE: "curve",
  ELLIPSE: "curve",
  SPLINE: "curve",
  HELIX: "curve",
  TEXT: "aside",
  MTEXT: "aside",
  ATTDEF: "aside",
  ATTRIB: "aside",
  DIMENSION: "aside",
  ARC_DIMENSION: "aside",
  LARGE_RADIAL_DIMENSION: "aside",
  LEADER: "aside",
  MULTILEADER: "aside",
  TOLERANCE: "aside",
  POINT: "aside",
  HATCH: "aside",
  SOLID: "aside",
  WIPEOUT: "aside",
  IMAGE: "aside",
  VIEWPORT: "aside",
};

/** Flags of POLYLINE and LWPOLYLINE (code 70). */
const CLOSED = 1;
const CURVED = 2 | 4;
const IN_SPACE = 8;
const MESH = 16 | 64;

/** Ends that lie no further apart than this share of the line's reach are one: drawn closed without being told so. */
const SAME_SHARE = 1e-7;

/** Reads entities in turn; the vertices that follow a POLYLINE belong to it. */
export function drawnOf(entities: readonly Entity[]): Drawn[] {
  const drawn: Drawn[] = [];
  for (let at = 0; at < entities.length; at++) {
    const entity = entities[at] as Entity;
    const { type, groups } = entity;
    // What lies on the paper's own sheet is no part of the model.
    if (type === "INSERT" || type === "VERTEX" || type === "SEQEND" || numberOf(groups, 67) === 1) continue;
    if (type === "LWPOLYLINE") drawn.push(polyline(entity, lightVertices(groups)));
    else if (type === "POLYLINE") drawn.push(polyline(entity, verticesAfter(entities, at)));
    else drawn.push({ ...named(entity), kind: KINDS[type] ?? "other", points: [] });
  }
  return drawn;
}

interface Vertex {
  readonly at: Point;
  readonly bulge: number;
}

function polyline(entity: Entity, vertices: readonly Vertex[]): Drawn {
  const flags = numberOf(entity.groups, 70) ?? 0;
  const points = vertices.map(({ at }) => at);
  const repeated = isSame(points);
  const kind: DrawnKind =
    flags & MESH
      ? "other"
      : flags & IN_SPACE || !isFlat(entity.groups)
        ? "tilted"
        : flags & CURVED || vertices.some(({ bulge }) => bulge !== 0)
          ? "curve"
          : flags & CLOSED || repeated
            ? "closed"
            : "open";
  return { ...named(entity), kind, points: repeated ? points.slice(0, -1) : points };
}

/** Drawn in the plane that is looked at: the direction out of it is the drawing's own. */
function isFlat(groups: readonly Group[]): boolean {
  return (
    (numberOf(groups, 210) ?? 0) === 0 &&
    (numberOf(groups, 220) ?? 0) === 0 &&
    (numberOf(groups, 230) ?? 1) > 0
  );
}

function isSame(points: readonly Point[]): boolean {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 4) return false;
  const reach = Math.max(...points.map(([x, y]) => Math.abs(x - first[0]) + Math.abs(y - first[1])));
  return Math.abs(first[0] - last[0]) + Math.abs(first[1] - last[1]) <= reach * SAME_SHARE;
}

/** Each vertex begins with its x; what else stands between is its own. */
function lightVertices(groups: readonly Group[]): Vertex[] {
  const vertices: { at: [number, number]; bulge: number }[] = [];
  for (const { code, value } of groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ at: [Number(value), 0], bulge: 0 });
    else if (code === 20 && last) last.at[1] = Number(value);
    else if (code === 42 && last) last.bulge = Number(value);
  }
  return vertices;
}

function verticesAfter(entities: readonly Entity[], at: number): Vertex[] {
  const vertices: Vertex[] = [];
  for (let next = at + 1; entities[next]?.type === "VERTEX"; next++) {
    const { groups } = entities[next] as Entity;
    vertices.push({
      at: [numberOf(groups, 10) ?? Number.NaN, numberOf(groups, 20) ?? Number.NaN],
      bulge: numberOf(groups, 42) ?? 0,
    });
  }
  return vertices;
}

function named({ type, groups }: Entity): Pick<Drawn, "layer" | "handle" | "type"> {
  return { type, layer: plainText(textOf(groups, 8) ?? "0"), handle: textOf(groups, 5) ?? "?" };
}

/** Letters written as `\U+00E9` before the format had them. */
export function plainText(text: string): string {
  return text.replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)));
}
