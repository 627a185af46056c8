/** Closed profiles of an IFC file as rings in their own plane (mm). */
import type { Point } from "../../../geometry/point.ts";
import { circumscribed } from "../../../geometry/polygon.ts";
import { axisPlacement } from "./places.ts";
import type { Reading } from "./reading.ts";
import { AT_ORIGIN, type Placement, placed } from "./space.ts";
import type { StepEntity, StepValue } from "./step.ts";

export interface Profile {
  readonly outer: readonly Point[];
  readonly inner: readonly (readonly Point[])[];
}

/** Sides of a circle drawn as a polygon round it; a multiple of four, so that it is as wide and as high. */
const CIRCLE_SIDES = 64;

export function profileOf(reading: Reading, profile: StepEntity | undefined): Profile | undefined {
  if (!profile) return undefined;
  switch (profile.type) {
    case "IFCRECTANGLEPROFILEDEF":
      return rectangle(reading, profile);
    case "IFCCIRCLEPROFILEDEF":
      return circle(reading, profile);
    case "IFCARBITRARYCLOSEDPROFILEDEF":
    case "IFCARBITRARYPROFILEDEFWITHVOIDS": {
      const outer = curveRing(reading, reading.one(profile, 2, "OuterCurve"));
      const holes = profile.type.endsWith("VOIDS") ? reading.many(profile, 3, "InnerCurves") : [];
      const inner = holes?.map((one) => curveRing(reading, one));
      return outer && inner?.every((one) => one !== undefined)
        ? { outer, inner: inner as readonly (readonly Point[])[] }
        : undefined;
    }
    default:
      return reading.refuseKind(profile, "profile");
  }
}

function rectangle(reading: Reading, profile: StepEntity): Profile | undefined {
  const place = profilePlace(reading, profile);
  const width = reading.size(profile, 3, "XDim");
  const height = reading.size(profile, 4, "YDim");
  if (!place || width === undefined || height === undefined) return undefined;
  const [x, y] = [width / 2, height / 2];
  return {
    outer: turned(place, [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ]),
    inner: [],
  };
}

function circle(reading: Reading, profile: StepEntity): Profile | undefined {
  const place = profilePlace(reading, profile);
  const radius = reading.size(profile, 3, "Radius");
  if (!place || radius === undefined) return undefined;
  return { outer: turned(place, circumscribed({ centre: [0, 0], radius, sides: CIRCLE_SIDES })), inner: [] };
}

/** Where a profile that is told by its sizes lies in its plane; the middle where that is left out. */
function profilePlace(reading: Reading, profile: StepEntity): Placement | undefined {
  return profile.values[2] === undefined
    ? AT_ORIGIN
    : axisPlacement(reading, reading.one(profile, 2, "Position"));
}

function turned(place: Placement, points: readonly Point[]): Point[] {
  return points.map(([x, y]): Point => {
    const [px, py] = placed(place, [x, y, 0]);
    return [px, py];
  });
}

/** The corners of a closed curve of straight pieces, the first not told again. */
export function curveRing(reading: Reading, curve: StepEntity | undefined): Point[] | undefined {
  const points = curve && curvePoints(reading, curve);
  if (!curve || !points) return undefined;
  const [first, last] = [points[0], points.at(-1)];
  const again = first && last && points.length > 1 && near(first, last);
  const ring = again ? points.slice(0, -1) : points;
  return ring.length < 3 ? reading.refuse(curve, "Points", curve.values[0]) : ring;
}

/** Ends that lie no further apart are one (mm). */
const SAME_WITHIN_MM = 0.01;

function near(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) <= SAME_WITHIN_MM;
}

function curvePoints(reading: Reading, curve: StepEntity): Point[] | undefined {
  switch (curve.type) {
    case "IFCPOLYLINE":
      return all(reading.many(curve, 0, "Points")?.map((one) => flat(reading.coordinates(one))));
    case "IFCINDEXEDPOLYCURVE":
      return indexed(reading, curve);
    case "IFCCOMPOSITECURVE":
      return composite(reading, curve);
    default:
      return reading.refuseKind(curve, "curve");
  }
}

function indexed(reading: Reading, curve: StepEntity): Point[] | undefined {
  const list = reading.one(curve, 0, "Points");
  if (!list) return undefined;
  const rows = Array.isArray(list.values[0]) ? (list.values[0] as readonly StepValue[]) : [];
  const points = all(rows.map((row) => flat(reading.lengths(list, row, "CoordList"))));
  const segments = curve.values[1];
  if (!points || segments === undefined) return points;
  const picked: Point[] = [];
  for (const segment of Array.isArray(segments) ? (segments as readonly StepValue[]) : []) {
    if (typeof segment !== "object" || !("type" in segment) || segment.type !== "IFCLINEINDEX")
      return reading.refuseKind(curve, "curve");
    const places = Array.isArray(segment.value) ? (segment.value as readonly StepValue[]) : [];
    for (const place of places) {
      const point = typeof place === "number" ? points[place - 1] : undefined;
      if (!point) return reading.refuse(curve, "Segments", segments);
      if (picked.at(-1) !== point) picked.push(point);
    }
  }
  return picked;
}

function composite(reading: Reading, curve: StepEntity): Point[] | undefined {
  const joined: Point[] = [];
  for (const segment of reading.many(curve, 0, "Segments") ?? []) {
    const parent = reading.one(segment, 2, "ParentCurve");
    // A piece that is no polyline is a curve, or holds others: neither bounds a wall that is clad.
    if (parent && parent.type === "IFCCOMPOSITECURVE") return reading.refuseKind(parent, "curve");
    const points = parent && curvePoints(reading, parent);
    if (!points) return undefined;
    const same = segment.values[1];
    const forward = !(typeof same === "object" && "word" in same && same.word === "F");
    for (const point of forward ? points : [...points].reverse()) {
      const last = joined.at(-1);
      if (!last || !near(last, point)) joined.push(point);
    }
  }
  return joined.length > 0 ? joined : reading.refuse(curve, "Segments", curve.values[0]);
}

function flat(point: readonly [number, number, number] | undefined): Point | undefined {
  return point && [point[0], point[1]];
}

function all<T>(list: readonly (T | undefined)[] | undefined): T[] | undefined {
  return list?.every((one) => one !== undefined) ? (list as T[]) : undefined;
}
