/** Units and placements of an IFC file. */
import { DEEPEST, isRef, type Reading, wordOf } from "./reading.ts";
import { AT_ORIGIN, add, crossed, dot, type Placement, times, unit, type Vector, within } from "./space.ts";
import type { StepEntity, StepFile, StepValue } from "./step.ts";

/** Powers of ten of the prefixes that a length may carry (ISO 80000-1). */
const PREFIXES: Readonly<Record<string, number>> = {
  KILO: 1e3,
  HECTO: 1e2,
  DECA: 1e1,
  DECI: 1e-1,
  CENTI: 1e-2,
  MILLI: 1e-3,
  MICRO: 1e-6,
  NANO: 1e-9,
};

const MM_IN_METRE = 1000;

/** Millimetres in the file's unit of length; undefined where its project tells none that can be used. */
export function lengthUnitMm(file: StepFile): number | undefined {
  const assigned = follow(file, file.ofTypes("IFCPROJECT")[0]?.values[8]);
  const units = assigned?.values[0];
  for (const one of Array.isArray(units) ? (units as readonly StepValue[]) : []) {
    const found = follow(file, one);
    if (found && wordOf(found.values[1]) === "LENGTHUNIT") return unitMm(file, found, 0);
  }
  return undefined;
}

function unitMm(file: StepFile, one: StepEntity, depth: number): number | undefined {
  if (one.type === "IFCSIUNIT") {
    const prefix = wordOf(one.values[2]);
    const power = prefix === undefined ? 1 : PREFIXES[prefix];
    return wordOf(one.values[3]) === "METRE" && power !== undefined ? power * MM_IN_METRE : undefined;
  }
  if (!one.type.startsWith("IFCCONVERSIONBASEDUNIT") || depth > DEEPEST) return undefined;
  const factor = follow(file, one.values[3]);
  const base = factor && follow(file, factor.values[1]);
  const value = factor?.values[0];
  const count = typeof value === "object" && "value" in value ? value.value : value;
  const baseMm = base && unitMm(file, base, depth + 1);
  if (typeof count !== "number" || !(count > 0) || baseMm === undefined) return undefined;
  // A foot of 0.3048 m is 304.8 mm: the product of two decimals is not left with a tail of its own.
  return Number((count * baseMm).toPrecision(13));
}

function follow(file: StepFile, value: StepValue): StepEntity | undefined {
  return isRef(value) ? file.entity(value.ref) : undefined;
}

/** The direction of north in the file's plan; +Y where it tells none. */
export function northOf(file: StepFile): {
  readonly north: readonly [number, number];
  readonly told: boolean;
} {
  for (const context of file.ofTypes("IFCGEOMETRICREPRESENTATIONCONTEXT")) {
    const ratios = follow(file, context.values[5])?.values[0];
    const [x, y] = Array.isArray(ratios) ? (ratios as readonly StepValue[]) : [];
    if (typeof x === "number" && typeof y === "number" && Math.hypot(x, y) > 0)
      return { north: [x, y], told: true };
  }
  return { north: [0, 1], told: false };
}

/** Where a product stands, through all that it stands in. */
export function productPlacement(reading: Reading, product: StepEntity): Placement | undefined {
  return product.values[5] === undefined
    ? AT_ORIGIN
    : chained(reading, reading.one(product, 5, "ObjectPlacement"), 0);
}

function chained(reading: Reading, place: StepEntity | undefined, depth: number): Placement | undefined {
  if (!place) return undefined;
  if (place.type !== "IFCLOCALPLACEMENT") return reading.refuseKind(place, "placement");
  if (depth > DEEPEST) return reading.refuse(place, "PlacementRelTo", place.values[0]);
  const own = axisPlacement(reading, reading.one(place, 1, "RelativePlacement"));
  if (!own || place.values[0] === undefined) return own;
  const outer = chained(reading, reading.one(place, 0, "PlacementRelTo"), depth + 1);
  return outer && within(outer, own);
}

/** Of an IfcAxis2Placement3D or 2D. */
export function axisPlacement(reading: Reading, place: StepEntity | undefined): Placement | undefined {
  if (!place) return undefined;
  const flat = place.type === "IFCAXIS2PLACEMENT2D";
  if (!flat && place.type !== "IFCAXIS2PLACEMENT3D") return reading.refuseKind(place, "placement");
  const origin = reading.point(place, 0, "Location");
  const axis = flat ? AT_ORIGIN.z : reading.direction(place, 1, "Axis", AT_ORIGIN.z);
  const towards = reading.direction(place, flat ? 1 : 2, "RefDirection", AT_ORIGIN.x);
  if (!origin || !axis || !towards) return undefined;
  return square(origin, axis, towards) ?? reading.refuse(place, "RefDirection", place.values[flat ? 1 : 2]);
}

/** Axes at right angles: z as told, x as near as may be to what is told. */
function square(origin: Vector, axis: Vector, towards: Vector): Placement | undefined {
  const z = unit(axis);
  const x = z && unit(add(towards, z, -dot(towards, z)));
  return x && { origin, x, y: crossed(z, x), z };
}

/** Of an IfcCartesianTransformationOperator3D: turned, mirrored and scaled. */
export function operatorPlacement(reading: Reading, operator: StepEntity | undefined): Placement | undefined {
  if (!operator) return undefined;
  if (!operator.type.startsWith("IFCCARTESIANTRANSFORMATIONOPERATOR3D"))
    return reading.refuseKind(operator, "placement");
  const origin = reading.point(operator, 2, "LocalOrigin");
  const axis1 = reading.direction(operator, 0, "Axis1", AT_ORIGIN.x);
  const axis3 = reading.direction(operator, 4, "Axis3", AT_ORIGIN.z);
  const frame = origin && axis1 && axis3 && square(origin, axis3, axis1);
  if (!frame)
    return reading.faults.length > 0 ? undefined : reading.refuse(operator, "Axis1", operator.values[0]);
  const axis2 = reading.direction(operator, 1, "Axis2", frame.y);
  if (!axis2) return undefined;
  const scale = (place: number, otherwise: number): number => {
    const value = operator.values[place];
    return typeof value === "number" ? value : otherwise;
  };
  const all = scale(3, 1);
  const mirrored = dot(axis2, frame.y) < 0 ? -1 : 1;
  return {
    origin: frame.origin,
    x: times(frame.x, all),
    y: times(frame.y, scale(5, all) * mirrored),
    z: times(frame.z, scale(6, all)),
  };
}
