/**
 * What must hold of every facade, measured from its plain values with a general polygon library that the program itself
 * does not use. Each check returns what it found wrong, in words for a developer; an empty list is well.
 */
import polygonClipping, { type MultiPolygon, type Pair, type Polygon as Rings } from "polygon-clipping";
import type { Polygon } from "../../src/geometry/polygon.ts";
import type { Project } from "../../src/project/schema/project.ts";
import type { Facade, FaceLayout, Fixing, Joint, Piece } from "../../src/setout/facade.ts";
import { cornerProblems } from "./corner-checks.ts";
import { boxOf, depthShared, LENGTH_NOISE_MM } from "./piece-boxes.ts";

const AREA_NOISE_MM2 = 1;

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
function fillProblems(project: Project, facade: Facade): string[] {
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
      const asked = areaOf(
        polygonClipping.intersection(rings(face.outline), askedOf(project, face, zone.id)),
      );
      if (Math.abs(asked - whole) > AREA_NOISE_MM2)
        return [`${face.id}.${zone.id}: laid on ${whole.toFixed(2)} of ${asked.toFixed(2)} mm²`];
      const told = facade.findings.some(
        ({ where, outcome }) => where.face === face.id && where.zone === zone.id && outcome !== "pass",
      );
      if (pieces.length === 0 && joints.length === 0 && told) return [];
      return Math.abs(filled - whole) > AREA_NOISE_MM2
        ? [`${face.id}.${zone.id}: filled ${filled.toFixed(2)} of ${whole.toFixed(2)} mm²`]
        : [];
    }),
  );
}

/** The rectangle that the file gives a zone, in the face as it reaches round its corners. */
function askedOf(project: Project, { id, outline }: FaceLayout, zoneId: string): Rings {
  const zone = project.faces.find((face) => face.id === id)?.zones.find((one) => one.id === zoneId);
  const [left, right, bottom, top] = boxOf(outline);
  const [from, to] = zone?.x ?? ["left end", "right end"];
  const x = [from === "left end" ? left : from, to === "right end" ? right : to] as const;
  const y = zone?.y ?? [bottom, top];
  return [
    [
      [x[0], y[0]],
      [x[1], y[0]],
      [x[1], y[1]],
      [x[0], y[1]],
    ],
  ];
}

const STEPS_PER_MM = 8000;

/** A piece in steps of the grid: of whole numbers the library makes its rings, which it fails to close of some fractions. */
function inSteps({ outline, holes }: Piece): Rings {
  const whole = (polygon: Polygon) =>
    polygon.map(([x, y]): Pair => [Math.round(x * STEPS_PER_MM), Math.round(y * STEPS_PER_MM)]);
  return rings(whole(outline), holes.map(whole));
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
      const shared = polygonClipping.intersection(inSteps(a.piece), inSteps(b.piece));
      if (areaOf(shared) / STEPS_PER_MM ** 2 <= AREA_NOISE_MM2) continue;
      if (clearOfLegs(a.piece, b.piece) || clearOfLegs(b.piece, a.piece)) continue;
      problems.push(`${a.piece.mark} lies in ${b.piece.mark}`);
    }
  });
  return problems;
}

/** Whether a piece stands in the hollow of bent metal: in no box round one of its legs. */
function clearOfLegs({ profile, planProfile }: Piece, { outline, z }: Piece): boolean {
  const section = profile ?? planProfile?.map(([x, at]): Pair => [at, x]);
  if (!section) return false;
  const [left, right, bottom, top] = boxOf(outline);
  const across: Pair = profile ? [bottom, top] : [left, right];
  return section.slice(1).every(([toZ, to], i) => {
    const [fromZ, from] = section[i] as Pair;
    const apart = (a: Pair, b: Pair): boolean => depthShared(a, b) <= LENGTH_NOISE_MM;
    return (
      apart([Math.min(fromZ, toZ), Math.max(fromZ, toZ)], [...z]) ||
      apart([Math.min(from, to), Math.max(from, to)], across)
    );
  });
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
        // An edge of the zone or of a clearance may cut a strip.
        if (joint.kind === "edge" || isCutShort(face, joint)) return [];
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

/** Whether one side of a strip lies on an edge of its zone, of a clearance or of an opening that runs along with it. */
function isCutShort(face: FaceLayout, { region, along }: Joint): boolean {
  const [left, right, bottom, top] = boxOf(region);
  const [across, length] = along === "x" ? [1, 0] : [0, 1];
  const sides = along === "x" ? [bottom, top] : [left, right];
  const span = along === "x" ? [left, right] : [bottom, top];
  const edges = [
    ...face.zones.map((zone) => zone.region),
    ...face.clearances.map((one) => one.region),
  ].flatMap((polygon) =>
    polygon.map((from, i) => [from, polygon[(i + 1) % polygon.length] as Pair] as const),
  );
  return edges.some(([from, to]) => {
    if (from[across] !== to[across]) return false;
    const low = Math.min(from[length] as number, to[length] as number);
    const high = Math.max(from[length] as number, to[length] as number);
    return (
      sides.some((side) => Math.abs(side - (from[across] as number)) < LENGTH_NOISE_MM) &&
      low < (span[1] as number) &&
      high > (span[0] as number)
    );
  });
}

/** Every piece comes out of its stock, or a failing finding names it. */
function stockProblems(project: Project, facade: Facade): string[] {
  const named = new Set(
    facade.findings
      .filter(({ outcome, code }) => outcome === "fail" && (code === "S006" || code === "S012"))
      .flatMap(({ where }) => where.marks ?? []),
  );
  const longest = new Map(
    facade.faces.flatMap((face) =>
      face.zones.map(({ id, cladding }) => {
        const boards = project.claddings.find((one) => one.id === cladding);
        return [
          `${face.id}.${id}`,
          boards?.kind === "boards" ? boards.maxPieceLength : Number.POSITIVE_INFINITY,
        ] as const;
      }),
    ),
  );
  return facade.faces
    .flatMap(({ pieces }) => pieces)
    .filter((piece) => !named.has(piece.mark) && !fitsStock(piece))
    .map(({ mark, cut }) => `${mark} of ${cut.length} × ${cut.width} fits no stock`);

  /** Cut from a whole sheet or board of a cladding, of the zone's or another. */
  function returnFits(id: string | undefined, zoned: string | undefined, cut: Piece["cut"]): boolean {
    const of = project.claddings.find((one) => one.id === (id ?? zoned));
    if (of?.kind === "boards") return cut.length <= of.maxPieceLength && cut.width <= Math.max(...of.widths);
    return project.stock.sheets.some(
      (sheet) =>
        of?.stock.includes(sheet.id) &&
        Math.max(sheet.width, sheet.height) >= cut.length &&
        Math.min(sheet.width, sheet.height) >= cut.width,
    );
  }

  function fitsStock({ kind, face, zone, cladding, stock, cut }: Piece): boolean {
    if (kind === "sheet") {
      const sheet = project.stock.sheets.find(({ id }) => id === stock);
      if (!sheet) return false;
      const upright = cut.width <= sheet.width && cut.length <= sheet.height;
      return upright || (cut.length <= sheet.width && cut.width <= sheet.height);
    }
    if (kind === "return") {
      const zoned = project.faces
        .find(({ id }) => id === face)
        ?.zones.find(({ id }) => id === zone)?.cladding;
      return returnFits(cladding, zoned, cut);
    }
    if (kind === "board") return cut.length <= (longest.get(`${face}.${zone}`) ?? 0) + LENGTH_NOISE_MM;
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
        if (fixing.side) return sideScrewProblems(piece, fixing, holders.get(fixing.into));
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

/** A screw along the wall: its head on the piece's inner side, its point in the timber straight behind. */
function sideScrewProblems(
  piece: Piece,
  { x, y, side, into, through, bite }: Fixing,
  holder: { outline: Polygon; z: readonly [number, number] } | undefined,
): string[] {
  const says = (what: string): string => `${piece.mark} screw at ${x}, ${y}: ${what}`;
  if (!side || !holder) return [says(`nothing named ${into}`)];
  const [left, right, bottom, top] = boxOf(piece.outline);
  const level = side.towards === "up";
  const [head, along] = level ? [y, x] : [x, y];
  const inner = side.towards === "left" ? right : side.towards === "right" ? left : bottom;
  const outer = side.towards === "left" ? left : side.towards === "right" ? right : top;
  if (head !== inner) return [says("does not start on the inner side")];
  const within = (at: number, [from, to]: readonly [number, number]): boolean => at > from && at < to;
  if (!within(along, level ? [left, right] : [bottom, top]) || !within(side.z, piece.z))
    return [says("outside its piece")];
  const passed = through.reduce((sum, { thickness }) => sum + thickness, 0);
  if (Math.abs(passed - Math.abs(outer - inner)) > LENGTH_NOISE_MM) return [says(`passes ${passed}`)];
  const box = boxOf(holder.outline);
  const surface = side.towards === "left" ? box[1] : side.towards === "right" ? box[0] : box[2];
  if (Math.abs(surface - outer) > LENGTH_NOISE_MM) return [says(`${into} does not lie behind it`)];
  if (!within(side.z, holder.z) || !within(along, level ? [box[0], box[1]] : [box[2], box[3]]))
    return [says(`misses ${into}`)];
  const thick = level ? box[3] - box[2] : box[1] - box[0];
  return bite > 0 && bite <= thick + LENGTH_NOISE_MM ? [] : [says(`bites ${bite} of ${thick}`)];
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
    ...fillProblems(project, facade),
    ...facade.faces.flatMap(overlapProblems),
    ...cornerProblems(facade),
    ...jointProblems(facade),
    ...stockProblems(project, facade),
    ...fixingProblems(facade),
    ...markProblems(facade),
  ];
}
