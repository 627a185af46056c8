/** Chosen walls as faces in plan: those in one plane that touch are one, and ends that meet are corners. */
import { type Finding, finding } from "../../../findings/finding.ts";
import type { Point } from "../../../geometry/point.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { intersect, union } from "../../../geometry/region.ts";
import { type Message, message } from "../../../text/message.ts";
import { normaliseDegrees, radiansToDegrees } from "../../../units/angle.ts";
import { snap } from "../../../units/length.ts";
import { type PlannedWall, wallId } from "../../editing/start.ts";
import { atOrigin, cleaned } from "../face/outline.ts";
import type { TakenFace } from "../face/shape.ts";
import { joinCorners, type Planned } from "./corners.ts";
import type { ModelWall, WallModel } from "./model.ts";

export interface FaceInPlan extends PlannedWall {
  readonly face: TakenFace;
  /** The walls that it is made of, as the file calls them. */
  readonly walls: readonly string[];
}

export type FacesInPlan =
  | {
      readonly ok: true;
      /** Building frame: the first runs along X, from its zero. */
      readonly faces: readonly FaceInPlan[];
      /** Places of faces whose right and left ends meet. */
      readonly meets: readonly (readonly [left: number, right: number])[];
      readonly tells: readonly Message[];
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Planes nearer to one another are one (mm), and directions that differ by less (sine). */
const FLUSH_MM = 0.5;
const PARALLEL = 1e-4;

/** @param sideOf which side of a wall is meant: the outer one, 0, or the other */
export function facesInPlan(
  { name: file, north, northTold, walls: all }: WallModel,
  walls: readonly ModelWall[],
  sideOf: (wall: ModelWall) => 0 | 1,
): FacesInPlan {
  const findings: Finding[] = [];
  const tell = (outcome: Finding["outcome"], wall: string, says: Message, hint?: Message): void => {
    const values = { file, wall, ...says.values };
    findings.push(
      finding({ code: "F037", outcome, where: {}, says: message(says.key, values), ...(hint && { hint }) }),
    );
  };
  const sides = walls.flatMap((wall): Planned[] => {
    const side = wall.sides?.[sideOf(wall)];
    for (const { says, hint } of [...wall.faults, ...(side?.faults ?? [])])
      tell("fail", wall.name, says, hint);
    for (const note of side?.notes ?? []) tell("attention", wall.name, note);
    return side ? [{ ...side, names: [wall.name] }] : [];
  });
  if (findings.some(({ outcome }) => outcome === "fail")) return { ok: false, findings };
  if (!northTold) tell("attention", file, message("intake.ifc.no-north"));
  const beside = all.flatMap((wall): Planned[] =>
    wall.outer && !walls.includes(wall) && wall.sides?.[0].faults.length === 0
      ? [{ ...wall.sides[0], names: [wall.name] }]
      : [],
  );
  const joined = cornersOf(inOnePlane(sides), inOnePlane(beside));
  const order = inTurn(joined.sides, joined.meets);
  const placeOf = new Map(order.map((was, is) => [was, is]));
  const ordered = order.map((was) => joined.sides[was] as Planned);
  const ids = idsOf(ordered);
  const lowest = Math.min(...ordered.map(({ outline }) => polygonBounds(outline).y[0]));
  const toBuilding = buildingFrame(ordered[0]);
  const faces = ordered.map((side, i): FaceInPlan => {
    const { x, y } = polygonBounds(side.outline);
    const [from, to] = x.map((end) => toBuilding(alongSide(side, end))) as [Point, Point];
    return {
      id: ids[i] as string,
      plan: { from, to },
      azimuthDeg: azimuth(side.outward, north),
      width: snap(x[1] - x[0]),
      height: snap(y[1] - y[0]),
      foot: snap(y[0] - lowest),
      face: atOrigin(side.outline, side.openings),
      walls: side.names,
    };
  });
  const meets = joined.meets
    .map(([left, right]) => [placeOf.get(left) as number, placeOf.get(right) as number] as const)
    .sort(([a], [b]) => a - b);
  const named = (at: number): string => ids[placeOf.get(at) as number] as string;
  return {
    ok: true,
    faces,
    meets,
    findings,
    tells: [
      ...faces
        .filter(({ id, walls: of }) => of.length > 1 || of[0] !== id)
        .map(({ id, walls: of }) => message("intake.change.wall", { face: id, walls: [...of] })),
      ...joined.moved.map(({ side, end, by }) =>
        message(`intake.change.end-${by > 0 ? "longer" : "shorter"}`, {
          face: named(side),
          end: message(`intake.end.${end}`),
          by: snap(Math.abs(by)),
        }),
      ),
      ...meets.map(([left, right]) =>
        message("intake.change.corner", { left: ids[left] as string, right: ids[right] as string }),
      ),
    ],
  };
}

/** Corners of the chosen walls; what stands beside them has its say in where theirs end, and is not taken. */
function cornersOf(chosen: readonly Planned[], beside: readonly Planned[]): ReturnType<typeof joinCorners> {
  const { sides, meets, moved } = joinCorners([...chosen, ...beside]);
  const own = (at: number): boolean => at < chosen.length;
  return {
    sides: sides.filter((_, at) => own(at)),
    meets: meets.filter((pair) => pair.every(own)),
    moved: moved.filter(({ side }) => own(side)),
  };
}

/** Walls that lie in one plane and touch there, such as those of two storeys, are one side. */
function inOnePlane(sides: readonly Planned[]): Planned[] {
  const planes: Planned[][] = [];
  for (const side of sides) {
    const same = planes.find(([first]) => first && isFlush(first, side));
    if (same) same.push(side);
    else planes.push([side]);
  }
  return planes.flatMap((of) => (of.length === 1 ? of : touching(of)));
}

function isFlush(a: Planned, b: Planned): boolean {
  const sine = a.outward[0] * b.outward[1] - a.outward[1] * b.outward[0];
  const cosine = a.outward[0] * b.outward[0] + a.outward[1] * b.outward[1];
  return cosine > 0 && Math.abs(sine) < PARALLEL && Math.abs(a.offset - b.offset) <= FLUSH_MM;
}

function touching(of: readonly Planned[]): Planned[] {
  const first = of[0] as Planned;
  const shifted = of.map((side) => {
    const by = snap(side.left - first.left);
    const moved = ([x, y]: Point): Point => [snap(x + by), y];
    return {
      side,
      outline: side.outline.map(moved),
      openings: side.openings.map((one) => ({
        ...one,
        x: [snap(one.x[0] + by), snap(one.x[1] + by)] as const,
      })),
    };
  });
  return union(shifted.map(({ outline }) => outline)).map((region): Planned => {
    const own = shifted.filter(({ outline }) => intersect(outline, region.outline).length > 0);
    return {
      ...first,
      outline: cleaned(region.outline),
      openings: own.flatMap(({ openings }) => openings),
      names: own.flatMap(({ side }) => side.names),
      thickness: Math.max(...own.map(({ side }) => side.thickness)),
    };
  });
}

/** Each face after the one at its left end, rows of them by their length; an open row from its left end, a closed one from the first of the file. */
function inTurn(sides: readonly Planned[], meets: readonly (readonly [number, number])[]): number[] {
  const rightOf = new Map(meets);
  const ended = new Set(meets.map(([, right]) => right));
  const rows: number[][] = [];
  const starts = [...sides.keys()].sort((a, b) => Number(ended.has(a)) - Number(ended.has(b)) || a - b);
  for (const start of starts) {
    const row: number[] = [];
    for (let at: number | undefined = start; at !== undefined && ![...rows, row].flat().includes(at); ) {
      row.push(at);
      at = rightOf.get(at);
    }
    if (row.length > 0) rows.push(row);
  }
  const long = (row: readonly number[]): number =>
    row.reduce((sum, at) => sum + polygonBounds((sides[at] as Planned).outline).x[1], 0);
  return rows.sort((a, b) => long(b) - long(a)).flat();
}

function alongSide({ along, outward, offset, left }: Planned, x: number): Point {
  return [along[0] * (left + x) + outward[0] * offset, along[1] * (left + x) + outward[1] * offset];
}

/** From the file's plan into the building's: the first face along X, its left end at zero. */
function buildingFrame(first: Planned | undefined): (point: Point) => Point {
  if (!first) return (point) => point;
  const [ox, oy] = alongSide(first, polygonBounds(first.outline).x[0]);
  const [c, s] = first.along;
  return ([x, y]) => [snap((x - ox) * c + (y - oy) * s) + 0, snap((y - oy) * c - (x - ox) * s) + 0];
}

/** Clockwise from north, to a tenth of a degree: no compass is read finer. */
export function azimuth([x, y]: Point, [nx, ny]: Point): number {
  const degrees = radiansToDegrees(Math.atan2(x * ny - y * nx, x * nx + y * ny));
  return normaliseDegrees(Number(degrees.toFixed(1)));
}

const NAME = /^[A-Za-z][A-Za-z0-9-]{0,23}$/;

/** A wall's own name where it can be one here, else the next letter. */
function idsOf(sides: readonly Planned[]): string[] {
  const borne = new Set<string>();
  const own = sides.map(({ names: [name = ""] }) => {
    // Marks begin with the name in capitals: these must differ too.
    const free = NAME.test(name) && !borne.has(name.toUpperCase());
    if (free) borne.add(name.toUpperCase());
    return free ? name : undefined;
  });
  let next = 0;
  return own.map((name) => {
    if (name !== undefined) return name;
    while (borne.has(wallId(next).toUpperCase())) next++;
    return wallId(next++);
  });
}
