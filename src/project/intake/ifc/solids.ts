/** What the solids of an IFC product are bounded by, and what is cut off them; millimetres of the file's own frame. */
import type { Point } from "../../../geometry/point.ts";
import { axisPlacement, operatorPlacement } from "./places.ts";
import { curveRing, type Profile, profileOf } from "./profiles.ts";
import { DEEPEST, type Reading, wordOf } from "./reading.ts";
import {
  AT_ORIGIN,
  add,
  directed,
  dot,
  type Placement,
  placed,
  times,
  type Vector,
  within,
} from "./space.ts";
import type { StepEntity, StepValue } from "./step.ts";

/** A flat side: its outline, then the holes in it. */
export type Side = readonly (readonly Vector[])[];

/** All that lies on the side that `towards` points to from `at`. */
export interface HalfSpace {
  readonly at: Vector;
  readonly towards: Vector;
}

/** A ring in the plane of a frame, carried along the frame's z without end. */
export interface Prism {
  readonly frame: Placement;
  /** Per step of the ring's carrying. */
  readonly along: Vector;
  readonly ring: readonly Point[];
}

/** What is common to all of these is taken off. */
export interface Cut {
  readonly halves: readonly HalfSpace[];
  readonly prism?: Prism;
}

export interface Part {
  readonly sides: readonly Side[];
  readonly cuts: readonly Cut[];
  /** Told by its sides, in which openings are cut already. */
  readonly faceted: boolean;
}

/** What a wall's body is cut by, told apart from it. */
export interface CutOpening {
  readonly parts: readonly Part[];
  /** `#12 IFCOPENINGELEMENT` and the like, as the messages name it. */
  readonly entity: string;
  /** What fills it says what it is; else its height over the foot. */
  readonly kind?: "window" | "door";
  readonly name?: string;
}

/** The parts of a product's body; undefined where some of it is not read, which is noted. */
export function bodyOf(reading: Reading, product: StepEntity, place: Placement): Part[] | undefined {
  const shape = reading.one(product, 6, "Representation");
  const shapes = shape && reading.many(shape, 2, "Representations");
  if (!shape || !shapes) return undefined;
  const bodies = shapes.filter(({ values }) => values[1] === "Body");
  const body = bodies[0] ?? shapes.find(({ values }) => values[1] === undefined);
  if (!body) return reading.refuse(shape, "RepresentationIdentifier Body", shape.values[2]);
  return itemsOf(reading, body, place, 0);
}

function itemsOf(reading: Reading, shape: StepEntity, place: Placement, depth: number): Part[] | undefined {
  const parts: Part[] = [];
  const items = reading.many(shape, 3, "Items");
  for (const item of items ?? []) {
    const own = partsOf(reading, item, place, depth + 1);
    if (!own) return undefined;
    parts.push(...own);
  }
  return items && (parts.length > 0 ? parts : reading.refuse(shape, "Items", shape.values[3]));
}

function partsOf(reading: Reading, item: StepEntity, place: Placement, depth: number): Part[] | undefined {
  if (depth > DEEPEST) return reading.refuse(item, "Items", item.values[0]);
  switch (item.type) {
    case "IFCEXTRUDEDAREASOLID": {
      const swept = sweptOf(reading, item, place);
      return swept && [{ sides: sidesOf(swept), cuts: [], faceted: false }];
    }
    case "IFCBOOLEANCLIPPINGRESULT":
    case "IFCBOOLEANRESULT":
      return combined(reading, item, place, depth);
    case "IFCMAPPEDITEM":
      return mapped(reading, item, place, depth);
    case "IFCFACETEDBREP":
      return whole(brepSides(reading, item, place));
    case "IFCPOLYGONALFACESET":
      return whole(faceSetSides(reading, item, place, { at: 2, field: "Faces" }));
    case "IFCTRIANGULATEDFACESET":
      return whole(faceSetSides(reading, item, place, { at: 3, field: "CoordIndex" }));
    default:
      return reading.refuseKind(item, "shape");
  }
}

function whole(sides: Side[] | undefined): Part[] | undefined {
  return sides && [{ sides, cuts: [], faceted: true }];
}

function combined(reading: Reading, item: StepEntity, place: Placement, depth: number): Part[] | undefined {
  const operator = wordOf(item.values[0]);
  const first = reading.one(item, 1, "FirstOperand");
  const second = reading.one(item, 2, "SecondOperand");
  if (!first || !second) return undefined;
  const parts = partsOf(reading, first, place, depth + 1);
  if (!parts) return undefined;
  if (operator === "UNION") {
    const others = partsOf(reading, second, place, depth + 1);
    return others && [...parts, ...others];
  }
  if (operator !== "DIFFERENCE") return reading.refuse(item, "Operator", item.values[0]);
  const cut = cutOf(reading, second, place);
  return cut && parts.map((part) => ({ ...part, cuts: [...part.cuts, cut] }));
}

function cutOf(reading: Reading, by: StepEntity, place: Placement): Cut | undefined {
  if (by.type === "IFCEXTRUDEDAREASOLID") {
    const swept = sweptOf(reading, by, place);
    if (!swept) return undefined;
    const { frame, along, profile } = swept;
    // Which way the ends face follows from the sweep, whatever way the frame is turned.
    const normal = times(frame.z, Math.sign(dot(along, frame.z)));
    return {
      halves: [
        { at: frame.origin, towards: normal },
        { at: add(frame.origin, along), towards: times(normal, -1) },
      ],
      prism: { frame, along, ring: profile.outer },
    };
  }
  if (by.type !== "IFCHALFSPACESOLID" && by.type !== "IFCPOLYGONALBOUNDEDHALFSPACE")
    return reading.refuseKind(by, "shape");
  const surface = reading.one(by, 0, "BaseSurface");
  if (!surface) return undefined;
  if (surface.type !== "IFCPLANE") return reading.refuseKind(surface, "shape");
  const plane = axisPlacement(reading, reading.one(surface, 0, "Position"));
  const agrees = wordOf(by.values[1]);
  if (!plane) return undefined;
  if (agrees !== "T" && agrees !== "F") return reading.refuse(by, "AgreementFlag", by.values[1]);
  const { origin, z } = within(place, plane);
  // Agreeing, the solid lies on the side that the plane's normal points away from.
  const half: HalfSpace = { at: origin, towards: agrees === "T" ? times(z, -1) : z };
  if (by.type === "IFCHALFSPACESOLID") return { halves: [half] };
  const own = axisPlacement(reading, reading.one(by, 2, "Position"));
  const ring = curveRing(reading, reading.one(by, 3, "PolygonalBoundary"));
  if (!own || !ring) return undefined;
  const frame = within(place, own);
  return { halves: [half], prism: { frame, along: frame.z, ring } };
}

interface Swept {
  readonly frame: Placement;
  readonly along: Vector;
  readonly profile: Profile;
}

function sweptOf(reading: Reading, solid: StepEntity, place: Placement): Swept | undefined {
  const profile = profileOf(reading, reading.one(solid, 0, "SweptArea"));
  const own =
    solid.values[1] === undefined ? AT_ORIGIN : axisPlacement(reading, reading.one(solid, 1, "Position"));
  const direction = reading.direction(solid, 2, "ExtrudedDirection", AT_ORIGIN.z);
  const depth = reading.size(solid, 3, "Depth");
  if (!profile || !own || !direction || depth === undefined) return undefined;
  const length = Math.hypot(...direction);
  if (!(length > 0) || direction[2] === 0) return reading.refuse(solid, "ExtrudedDirection", solid.values[2]);
  const frame = within(place, own);
  return { frame, along: directed(frame, times(direction, depth / length)), profile };
}

function sidesOf({ frame, along, profile: { outer, inner } }: Swept): Side[] {
  const rings = [outer, ...inner].map((ring) => ring.map(([x, y]) => placed(frame, [x, y, 0])));
  const ends = [rings, rings.map((ring) => ring.map((point) => add(point, along)))];
  const round = rings.flatMap((ring) =>
    ring.map((from, i): Side => {
      const to = ring[(i + 1) % ring.length] as Vector;
      return [[from, to, add(to, along), add(from, along)]];
    }),
  );
  return [...ends, ...round];
}

function mapped(reading: Reading, item: StepEntity, place: Placement, depth: number): Part[] | undefined {
  const source = reading.one(item, 0, "MappingSource");
  const target = operatorPlacement(reading, reading.one(item, 1, "MappingTarget"));
  const origin = source && axisPlacement(reading, reading.one(source, 0, "MappingOrigin"));
  const shape = source && reading.one(source, 1, "MappedRepresentation");
  if (!source || !target || !origin || !shape) return undefined;
  // Readers disagree about which way round an origin of its own is taken; none that was met has one.
  if (JSON.stringify(origin) !== JSON.stringify(AT_ORIGIN))
    return reading.refuse(source, "MappingOrigin", source.values[0]);
  return itemsOf(reading, shape, within(place, target), depth + 1);
}

function brepSides(reading: Reading, solid: StepEntity, place: Placement): Side[] | undefined {
  const shell = reading.one(solid, 0, "Outer");
  const faces = shell && reading.many(shell, 0, "CfsFaces");
  const sides = faces?.map((face) => {
    const bounds = reading.many(face, 0, "Bounds");
    const rings = [...(bounds ?? [])]
      .sort((a, b) => Number(b.type === "IFCFACEOUTERBOUND") - Number(a.type === "IFCFACEOUTERBOUND"))
      .map((bound) => {
        const loop = reading.one(bound, 0, "Bound");
        const points = loop && reading.many(loop, 0, "Polygon")?.map((one) => reading.coordinates(one));
        return points?.every((one) => one !== undefined) ? (points as Vector[]) : undefined;
      });
    return bounds && rings.every((one) => one !== undefined) ? (rings as Vector[][]) : undefined;
  });
  if (shell && faces?.length === 0) return reading.refuse(shell, "CfsFaces", shell.values[0]);
  return sides && settled(sides, place);
}

/** Of a polygonal or triangulated face set: places in a list of points, counted from 1. */
function faceSetSides(
  reading: Reading,
  set: StepEntity,
  place: Placement,
  { at, field }: { readonly at: number; readonly field: string },
): Side[] | undefined {
  const list = reading.one(set, 0, "Coordinates");
  if (!list) return undefined;
  const rows = listed(list.values[0]).map((row) => reading.lengths(list, row, "CoordList"));
  if (rows.includes(undefined)) return undefined;
  // The list may pick among the points.
  const picks = listed(set.values[at + 1]);
  const point = (value: StepValue): Vector | undefined => {
    const place = picks.length > 0 && typeof value === "number" ? picks[value - 1] : value;
    return typeof place === "number" ? rows[place - 1] : undefined;
  };
  const ring = (value: StepValue): Vector[] | undefined => {
    const points = listed(value).map(point);
    return points.length > 2 && !points.includes(undefined) ? (points as Vector[]) : undefined;
  };
  const faces: readonly (readonly StepValue[])[] | undefined =
    field === "CoordIndex"
      ? listed(set.values[at]).map((triangle) => [triangle])
      : reading.many(set, at, field)?.map(({ values }) => [values[0], ...listed(values[1])]);
  const sides = faces?.map((rings) => {
    const read = rings.map(ring);
    return read.includes(undefined) ? reading.refuse(set, field, set.values[at]) : (read as Vector[][]);
  });
  if (sides?.length === 0) return reading.refuse(set, field, set.values[at]);
  return sides && settled(sides, place);
}

function listed(value: StepValue): readonly StepValue[] {
  return Array.isArray(value) ? (value as readonly StepValue[]) : [];
}

function settled(
  sides: readonly (readonly (readonly Vector[])[] | undefined)[],
  place: Placement,
): Side[] | undefined {
  if (sides.includes(undefined)) return undefined;
  return (sides as readonly Side[]).map((side) =>
    side.map((ring) => ring.map((point) => placed(place, point))),
  );
}
