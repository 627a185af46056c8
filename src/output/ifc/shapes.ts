/** Placements and solids. A face's own frame is placed in the building's; everything on it is drawn in that frame, in millimetres. */
import { type FaceFrame, faceFrame, inBuilding } from "../../geometry/frame.ts";
import type { Interval } from "../../geometry/interval.ts";
import type { Point } from "../../geometry/point.ts";
import type { Polygon } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Piece } from "../../setout/facade.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { DERIVED, NONE, type Ref, type StepFile, type Value, word } from "./step.ts";

type Vector = readonly [number, number, number];

/** What a face is drawn by: its placement, and whether depths are told backwards (a soffit's frame is left-handed). */
export interface Stage {
  readonly file: StepFile;
  readonly placement: Ref;
  readonly context: Ref;
  readonly turned: boolean;
}

export function facePlacement(file: StepFile, frame: FaceFrame, within: Ref): Ref {
  const at = (x: number, y: number, z: number): Vector => inBuilding(frame, { x, y, z });
  const origin = at(0, 0, 0);
  const towards = (to: Vector): Vector => [to[0] - origin[0], to[1] - origin[1], to[2] - origin[2]];
  const [x, y] = [towards(at(1, 0, 0)), towards(at(0, 1, 0))];
  const axis: Vector = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
  return file.add("IFCLOCALPLACEMENT", within, axes(file, origin, axis, x));
}

export function axes(file: StepFile, origin: Vector, axis: Vector, along: Vector): Ref {
  return file.add("IFCAXIS2PLACEMENT3D", point(file, origin), direction(file, axis), direction(file, along));
}

function point(file: StepFile, at: readonly number[]): Ref {
  return file.share("IFCCARTESIANPOINT", [...at]);
}

function direction(file: StepFile, along: Vector): Ref {
  return file.share("IFCDIRECTION", [...along]);
}

/** The direction of north in plan, by what a face's azimuth says of it; undefined where there is no face. */
export function northOf(file: StepFile, { faces }: Project): Ref | undefined {
  const [face] = faces;
  if (!face) return undefined;
  const [x, y] = faceFrame(face.plan).outward;
  const azimuth = degreesToRadians(face.azimuthDeg);
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  return file.share("IFCDIRECTION", [x * c - y * s, x * s + y * c]);
}

/** Its outline and holes through its depth; bent metal its section along its length. */
export function pieceSolids(piece: Piece, stage: Stage): Ref[] {
  const { outline, holes, z, profile, planProfile, cut } = piece;
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const depth = (at: number): number => (stage.turned ? -at : at);
  if (profile) {
    return folded(profile, cut.thickness).map((quad) =>
      // Run along x: local x is z outward, local y is downwards.
      extruded(stage, {
        outline: quad.map(([pz, py]): Point => [depth(pz), -py]),
        holes: [],
        at: axes(stage.file, [Math.min(...xs), 0, 0], [1, 0, 0], [0, 0, 1]),
        length: Math.max(...xs) - Math.min(...xs),
      }),
    );
  }
  if (planProfile) {
    return folded(planProfile, cut.thickness).map((quad) =>
      // Run upwards: local x is x, local y is z inward.
      extruded(stage, {
        outline: quad.map(([px, pz]): Point => [px, -depth(pz)]),
        holes: [],
        at: axes(stage.file, [0, Math.min(...ys), 0], [0, 1, 0], [1, 0, 0]),
        length: Math.max(...ys) - Math.min(...ys),
      }),
    );
  }
  return [slab(stage, { outline, holes, z })];
}

export function slab(
  stage: Stage,
  {
    outline,
    holes,
    z,
  }: { readonly outline: Polygon; readonly holes: readonly Polygon[]; readonly z: Interval },
): Ref {
  const from = stage.turned ? -z[1] : z[0];
  const at = axes(stage.file, [0, 0, from], [0, 0, 1], [1, 0, 0]);
  return extruded(stage, { outline, holes, at, length: z[1] - z[0] });
}

/** Sheet metal that is thinner than this could not be bent to a flashing (mm); for sections whose thickness is not told. */
const THIN = 0.5;

/** A section's legs, each as thick as the metal. */
function folded(line: readonly Point[], thickness: number): Point[][] {
  const half = Math.max(thickness, THIN) / 2;
  return line.slice(1).flatMap((b, i) => {
    const a = line[i] as Point;
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (long === 0) return [];
    const [nx, ny] = [(-(b[1] - a[1]) / long) * half, ((b[0] - a[0]) / long) * half];
    return [
      [
        [a[0] + nx, a[1] + ny],
        [a[0] - nx, a[1] - ny],
        [b[0] - nx, b[1] - ny],
        [b[0] + nx, b[1] + ny],
      ] as Point[],
    ];
  });
}

function extruded(
  { file }: Stage,
  { outline, holes, at, length }: { outline: Polygon; holes: readonly Polygon[]; at: Ref; length: number },
): Ref {
  const curve = (ring: Polygon): Ref => {
    const points = ring.map((one) => point(file, one));
    return file.add("IFCPOLYLINE", [...points, points[0] as Ref]);
  };
  const profile =
    holes.length === 0
      ? file.add("IFCARBITRARYCLOSEDPROFILEDEF", word("AREA"), NONE, curve(outline))
      : file.add("IFCARBITRARYPROFILEDEFWITHVOIDS", word("AREA"), NONE, curve(outline), holes.map(curve));
  return file.add("IFCEXTRUDEDAREASOLID", profile, at, direction(file, [0, 0, 1]), length);
}

/** A body of solids, for a product. */
export function body({ file, context }: Stage, solids: readonly Ref[]): Ref {
  const representation = file.add("IFCSHAPEREPRESENTATION", context, "Body", "SweptSolid", [...solids]);
  return file.add("IFCPRODUCTDEFINITIONSHAPE", NONE, NONE, [representation]);
}

/** Where a product stands: in the frame of its face. */
export function placed({ file, placement }: Stage): Ref {
  return file.add(
    "IFCLOCALPLACEMENT",
    placement,
    file.share("IFCAXIS2PLACEMENT3D", point(file, [0, 0, 0]), NONE, NONE),
  );
}

export function units(file: StepFile): Ref {
  const si = (kind: string, prefix: Value, name: string): Ref =>
    file.add("IFCSIUNIT", DERIVED, word(kind), prefix, word(name));
  return file.add("IFCUNITASSIGNMENT", [
    si("LENGTHUNIT", word("MILLI"), "METRE"),
    si("AREAUNIT", NONE, "SQUARE_METRE"),
    si("VOLUMEUNIT", NONE, "CUBIC_METRE"),
    si("MASSUNIT", word("KILO"), "GRAM"),
    si("PLANEANGLEUNIT", NONE, "RADIAN"),
  ]);
}
