/**
 * What must hold of every facade, measured from its plain values with a general polygon library that the program itself
 * does not use. Each check returns what it found wrong, in words for a developer; an empty list is well.
 */
import polygonClipping, { type MultiPolygon, type Pair, type Polygon as Rings } from "polygon-clipping";
import type { Polygon } from "../../src/geometry/polygon.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade, FaceLayout, Piece } from "../../src/setout/facade.ts";

const AREA_NOISE_MM2 = 1;
const LENGTH_NOISE_MM = 0.01;

const ring = (polygon: Polygon): Pair[] => polygon.map(([x, y]): Pair => [x, y]);
const rings = (outline: Polygon, holes: readonly Polygon[] = []): Rings => [
  ring(outline),
  ...holes.map(ring),
];

function areaOf(multi: MultiPolygon): number {
  return multi.reduce(
    (sum, polygon) =>
      sum + polygon.reduce((area, r, i) => area + (i === 0 ? 1 : -1) * Math.abs(shoelace(r)), 0),
    0,
  );
}

function shoelace(points: readonly Pair[]): number {
  let twice = 0;
  for (let i = 0; i < points.length; i++) {
    const [ax, ay] = points[i] as Pair;
    const [bx, by] = points[(i + 1) % points.length] as Pair;
    twice += ax * by - bx * ay;
  }
  return twice / 2;
}

const isClad = ({ kind }: Piece): boolean => kind === "sheet" || kind === "board";

/** Pieces, joints, openings and clearances fill each zone, and nothing lies twice. */
function fillProblems(facade: Facade): string[] {
  return facade.faces.flatMap((face) =>
    face.zones.flatMap((zone) => {
      const region = rings(zone.region);
      const pieces = face.pieces.filter((piece) => isClad(piece) && piece.zone === zone.id);
      const joints = face.joints.filter((joint) => joint.zone === zone.id);
      const solidParts = [
        ...pieces.map(({ outline, holes }) => areaOf([rings(outline, holes)])),
        ...joints.map(({ region: outline, holes }) => areaOf([rings(outline, holes)])),
      ];
      const kept = [
        ...face.openings.map(
          ({ region: { x, y } }): Rings => [
            [
              [x[0], y[0]],
              [x[1], y[0]],
              [x[1], y[1]],
              [x[0], y[1]],
            ],
          ],
        ),
        ...face.clearances.map((one) => rings(one.region)),
      ];
      const keptArea =
        kept.length === 0
          ? 0
          : areaOf(
              polygonClipping.intersection(region, polygonClipping.union(kept[0] as Rings, ...kept.slice(1))),
            );
      const filled = solidParts.reduce((sum, area) => sum + area, 0) + keptArea;
      const whole = areaOf([region]);
      if (pieces.length === 0 && joints.length === 0) return [];
      return Math.abs(filled - whole) > AREA_NOISE_MM2
        ? [`${face.id}.${zone.id}: filled ${filled.toFixed(2)} of ${whole.toFixed(2)} mm²`]
        : [];
    }),
  );
}

/** No two pieces of one face share room. */
function overlapProblems(face: FaceLayout): string[] {
  const problems: string[] = [];
  const boxes = face.pieces.map((piece) => ({ piece, box: boxOf(piece.outline) }));
  boxes.sort((a, b) => a.box[0] - b.box[0]);
  boxes.forEach((a, i) => {
    for (let j = i + 1; j < boxes.length; j++) {
      const b = boxes[j] as (typeof boxes)[number];
      if (b.box[0] >= a.box[1] - LENGTH_NOISE_MM) break;
      if (a.box[2] >= b.box[3] - LENGTH_NOISE_MM || b.box[2] >= a.box[3] - LENGTH_NOISE_MM) continue;
      if (depthShared(a.piece.z, b.piece.z) <= LENGTH_NOISE_MM) continue;
      const shared = polygonClipping.intersection(
        rings(a.piece.outline, a.piece.holes),
        rings(b.piece.outline, b.piece.holes),
      );
      if (areaOf(shared) > AREA_NOISE_MM2) problems.push(`${a.piece.mark} lies in ${b.piece.mark}`);
    }
  });
  return problems;
}

function boxOf(polygon: Polygon): [number, number, number, number] {
  const xs = polygon.map(([x]) => x);
  const ys = polygon.map(([, y]) => y);
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
}

function depthShared(a: readonly [number, number], b: readonly [number, number]): number {
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
}

interface Slab {
  readonly mark: string;
  readonly plan: readonly Pair[];
  readonly y: readonly [number, number];
}

/** No two pieces of different faces share room: their plans at the corners stay apart, mitred ends included. */
function cornerProblems(facade: Facade): string[] {
  const slabs = facade.faces.map((face) => ({
    face,
    slabs: face.pieces.map((piece) => slabOf(face, piece)),
  }));
  const problems: string[] = [];
  slabs.forEach((a, i) => {
    for (const b of slabs.slice(i + 1)) {
      for (const one of a.slabs) {
        for (const other of b.slabs) {
          if (depthShared(one.y, other.y) <= LENGTH_NOISE_MM) continue;
          if (plansOverlap(one.plan, other.plan)) problems.push(`${one.mark} lies in ${other.mark}`);
        }
      }
    }
  });
  return problems;
}

function slabOf(face: FaceLayout, piece: Piece): Slab {
  const [left, right, bottom, top] = boxOf(piece.outline);
  const [back, front] = piece.z;
  const slope = (angle: number): number => (front - back) * Math.tan((angle * Math.PI) / 180);
  const inFace: Pair[] = [
    [left, front],
    [right, front],
    [right - slope(piece.ends.right.angleDeg), back],
    [left + slope(piece.ends.left.angleDeg), back],
  ];
  const { origin, along, outward } = face.frame;
  const plan = inFace.map(
    ([x, z]): Pair => [origin[0] + along[0] * x + outward[0] * z, origin[1] + along[1] * x + outward[1] * z],
  );
  return { mark: piece.mark, plan, y: [bottom, top] };
}

/** Separating axes of two convex plans: they overlap when every axis shows more than the noise. */
function plansOverlap(a: readonly Pair[], b: readonly Pair[]): boolean {
  for (const polygon of [a, b]) {
    for (let i = 0; i < polygon.length; i++) {
      const [px, py] = polygon[i] as Pair;
      const [qx, qy] = polygon[(i + 1) % polygon.length] as Pair;
      const length = Math.hypot(qx - px, qy - py);
      if (length < 1e-9) continue;
      const axis: Pair = [(qy - py) / length, (px - qx) / length];
      const [aMin, aMax] = along(a, axis);
      const [bMin, bMax] = along(b, axis);
      if (Math.min(aMax, bMax) - Math.max(aMin, bMin) <= LENGTH_NOISE_MM) return false;
    }
  }
  return true;
}

function along(polygon: readonly Pair[], axis: Pair): [number, number] {
  const values = polygon.map(([x, y]) => x * axis[0] + y * axis[1]);
  return [Math.min(...values), Math.max(...values)];
}

/** Joints have the width that they say, except where a rake or opening cuts them shorter across. */
function jointProblems(facade: Facade): string[] {
  return facade.faces.flatMap((face) =>
    face.joints.flatMap((joint, i) => {
      const [left, right, bottom, top] = boxOf(joint.region);
      const across = joint.along === "x" ? top - bottom : right - left;
      const plainRectangle = joint.region.length === 4 && joint.holes.length === 0;
      const off = across - joint.width;
      if (
        off > LENGTH_NOISE_MM ||
        (plainRectangle && isRectangle(joint.region) && Math.abs(off) > LENGTH_NOISE_MM)
      ) {
        // A zone's own edge may cut the outermost strip.
        if (joint.kind === "edge" || touchesEdge(face, joint.region)) return [];
        return [`${face.id} joint ${i} (${joint.kind}) is ${across} across, says ${joint.width}`];
      }
      return [];
    }),
  );
}

function isRectangle(polygon: Polygon): boolean {
  return polygon.every(([x, y], i) => {
    const next = polygon[(i + 1) % polygon.length] as readonly [number, number];
    return x === next[0] || y === next[1];
  });
}

function touchesEdge(face: FaceLayout, polygon: Polygon): boolean {
  const [, , bottom, top] = boxOf(polygon);
  return face.zones.some(({ region }) => {
    const [, , low, high] = boxOf(region);
    return Math.abs(bottom - low) < LENGTH_NOISE_MM || Math.abs(top - high) < LENGTH_NOISE_MM;
  });
}

/** Every piece comes out of its stock, or a failing finding names it. */
function stockProblems(project: Project, facade: Facade): string[] {
  const named = new Set(
    facade.findings
      .filter(({ outcome, code }) => outcome === "fail" && (code === "S006" || code === "S012"))
      .flatMap(({ where }) => where.marks ?? []),
  );
  const boards = project.claddings.find((one) => one.kind === "boards");
  return facade.faces
    .flatMap(({ pieces }) => pieces)
    .filter((piece) => !named.has(piece.mark) && !fitsStock(piece))
    .map(({ mark, cut }) => `${mark} of ${cut.length} × ${cut.width} fits no stock`);

  function fitsStock({ kind, stock, cut }: Piece): boolean {
    if (kind === "sheet") {
      const sheet = project.stock.sheets.find(({ id }) => id === stock);
      if (!sheet) return false;
      const upright = cut.width <= sheet.width && cut.length <= sheet.height;
      return upright || (cut.length <= sheet.width && cut.width <= sheet.height);
    }
    if (kind === "board")
      return boards?.kind !== "boards" || cut.length <= boards.maxPieceLength + LENGTH_NOISE_MM;
    if (kind === "batten") {
      const batten = project.stock.battens.find(({ id }) => id === stock);
      return !!batten && cut.length <= Math.max(...batten.lengths) && cut.width <= batten.width;
    }
    return true;
  }
}

/** Screws lie in their piece and reach what they name through exactly the layers they name. */
function fixingProblems(facade: Facade): string[] {
  return facade.faces.flatMap((face) => {
    const holders = new Map<string, { outline: Polygon; z: readonly [number, number] }>();
    for (const piece of face.pieces) holders.set(piece.mark, piece);
    for (const solid of face.solids) holders.set(solid.id, { outline: solid.region, z: solid.z });
    return face.pieces.flatMap((piece) =>
      piece.fixings.flatMap((fixing) => {
        const at: Pair = [fixing.x, fixing.y];
        const says = (what: string): string => `${piece.mark} screw at ${fixing.x}, ${fixing.y}: ${what}`;
        if (!inside(piece.outline, at) || piece.holes.some((hole) => inside(hole, at)))
          return [says("outside its piece")];
        const holder = holders.get(fixing.into);
        if (!holder) return [says(`nothing named ${fixing.into}`)];
        if (!inside(holder.outline, at)) return [says(`misses ${fixing.into}`)];
        const passed = fixing.through.reduce((sum, { thickness }) => sum + thickness, 0);
        if (Math.abs(piece.z[1] - passed - holder.z[1]) > LENGTH_NOISE_MM) {
          return [says(`passes ${passed} but ${fixing.into} lies ${piece.z[1] - holder.z[1]} behind`)];
        }
        const thick = holder.z[1] - holder.z[0];
        return fixing.bite > 0 && fixing.bite <= thick + LENGTH_NOISE_MM
          ? []
          : [says(`bites ${fixing.bite} of ${thick}`)];
      }),
    );
  });
}

function inside(polygon: Polygon, [x, y]: Pair): boolean {
  let odd = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [ax, ay] = polygon[i] as Pair;
    const [bx, by] = polygon[j] as Pair;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  }
  return odd;
}

function markProblems(facade: Facade): string[] {
  const marks = facade.faces.flatMap(({ pieces }) => pieces.map(({ mark }) => mark));
  return marks.filter((mark, i) => marks.indexOf(mark) !== i).map((mark) => `${mark} stands twice`);
}

/** All of the above. */
export function facadeProblems(project: Project, facade: Facade): string[] {
  return [
    ...fillProblems(facade),
    ...facade.faces.flatMap(overlapProblems),
    ...cornerProblems(facade),
    ...jointProblems(facade),
    ...stockProblems(project, facade),
    ...fixingProblems(facade),
    ...markProblems(facade),
  ];
}
