/** A surveyed face: planes that its battens can be packed to, and what each asks at every crossing. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type Crossing, crossingsOf } from "./crossings.ts";
import { packersNear } from "./packers.ts";
import {
  type Height,
  type Lean,
  leastSquares,
  outerPlane,
  type Plane,
  planeAt,
  planedBack,
  smallestBand,
} from "./plane.ts";
import { type Reading, type Spot, spotsOf } from "./reading.ts";
import { type Surface, surfaceOf, twistOf } from "./surface.ts";

/**
 * `outer`: no packing less than none, the least in all, within the lean; `plumb`: the same without any lean; `planed`: the outer plane with one or
 * two spots of the wall planed back to it; `joined`: the outer plane that stands off along its corners as those of the faces that it meets there do.
 */
export const PLANE_KINDS = ["outer", "joined", "plumb", "planed 1", "planed 2"] as const;
export type PlaneKind = (typeof PLANE_KINDS)[number];

export interface PackedCrossing extends Crossing {
  /** How far the wall stands out there, between its readings (mm). */
  readonly wall: number;
  /** From the wall to the battens' back (mm); below nothing where the wall is planed off. */
  readonly wanted: number;
  readonly packers: readonly number[];
  /** Their sum less what is wanted (mm). */
  readonly off: number;
  /** To plane off the wall (mm). */
  readonly planeOff: number;
  /** Of the screw in the timber behind that packing (mm). */
  readonly biteLeft: number;
}

export interface Packing {
  readonly kind: PlaneKind;
  /** Of the battens' backs, less the packing of the build-up. */
  readonly plane: Plane;
  readonly crossings: readonly PackedCrossing[];
  /** Sum of all packing (mm), and what one crossing takes at most. */
  readonly sum: number;
  readonly most: number;
  /** Packers by thickness, thickest first. */
  readonly packers: readonly { readonly thickness: number; readonly count: number }[];
}

export interface SurveyedFace {
  readonly face: string;
  readonly spots: readonly Spot[];
  /** Of the places that were read: the plane nearest all of them, with its largest distance; the half of the smallest band (mm). */
  readonly nearest?: { readonly plane: Plane; readonly most: number };
  readonly band?: { readonly plane: Plane; readonly half: number };
  /** How far the fourth corner lies off the plane of the others (mm). */
  readonly twist?: number;
  /** Crossings that no reading tells of. */
  readonly unread: readonly Crossing[];
  /** The least packing first. */
  readonly packings: readonly Packing[];
}

/** What of a design packing is reckoned from. */
export interface SurveyedDesign {
  readonly facade: Pick<Facade, "faces">;
  readonly project: Pick<Project, "buildUps"> & { readonly stock: Pick<Project["stock"], "packers"> };
}

/**
 * @param lean how far the plane may lean from plumb
 * @param joined the plane that the faces round the corners leave this one, as `joinedPlanes` gives it; absent where none of them was read
 * @param kinds those that are looked for; all unless told
 */
export function surveyFace(
  design: SurveyedDesign,
  {
    face,
    readings,
    lean,
    joined,
    kinds = PLANE_KINDS,
  }: {
    readonly face: string;
    readonly readings: readonly Reading[];
    readonly lean: Lean;
    readonly joined?: Plane | undefined;
    readonly kinds?: readonly PlaneKind[];
  },
): SurveyedFace {
  const spots = spotsOf(readings, face);
  const surface = surfaceOf(spots);
  const crossings = crossingsOf(design, face);
  const read = readAt(crossings, surface);
  const plane = leastSquares(spots);
  const band = smallestBand(spots, lean);
  const twist = twistOf(spots);
  const stock = design.project.stock.packers;
  return {
    face,
    spots,
    ...(plane && {
      nearest: {
        plane,
        most: Math.max(...spots.map(({ x, y, outward }) => Math.abs(planeAt(plane, x, y) - outward))),
      },
    }),
    ...(band && { band }),
    ...(twist !== undefined && { twist }),
    unread: crossings.filter(({ x, y }) => surface(x, y) === undefined),
    packings: read.length === 0 ? [] : packingsOf(read, { lean, joined, kinds }, stock),
  };
}

/** What is packed where nobody tells otherwise: the plane that fits the corners, or the face's own where no face that it meets was read. */
export function usualPacking(packings: readonly Packing[]): Packing | undefined {
  return packings.find(({ kind }) => kind === "joined") ?? packings.find(({ kind }) => kind === "outer");
}

/** What is packed to the plane that was chosen, or where that was not found, or none was chosen, to the usual one. */
export function chosenPacking(
  packings: readonly Packing[],
  kind: PlaneKind | undefined,
): Packing | undefined {
  return packings.find((one) => one.kind === kind) ?? usualPacking(packings);
}

/** The wall at the crossings of a face that readings tell of, less the packing that the build-up has there already. */
export function heightsOf(
  design: SurveyedDesign,
  { face, readings }: { readonly face: string; readonly readings: readonly Reading[] },
): Height[] {
  return bare(readAt(crossingsOf(design, face), surfaceOf(spotsOf(readings, face))));
}

function readAt(crossings: readonly Crossing[], surface: Surface): Read[] {
  return crossings.flatMap((crossing) => {
    const wall = surface(crossing.x, crossing.y);
    return wall === undefined ? [] : [{ ...crossing, wall }];
  });
}

/** The build-up's own packing gives way first: where it is all gone the batten lies on the wall. */
function bare(read: readonly Read[]): Height[] {
  return read.map(({ x, y, wall, spare }) => ({ x, y, outward: wall - spare }));
}

type Read = Crossing & { readonly wall: number };

function packingsOf(
  read: readonly Read[],
  {
    lean,
    joined,
    kinds,
  }: { readonly lean: Lean; readonly joined: Plane | undefined; readonly kinds: readonly PlaneKind[] },
  stock: readonly number[],
): Packing[] {
  const heights = bare(read);
  const planes: Readonly<Record<PlaneKind, () => Plane | undefined>> = {
    outer: () => outerPlane(heights, lean)?.plane,
    joined: () => joined,
    plumb: () => outerPlane(heights, { mmPerM: 0 })?.plane,
    "planed 1": () => planedBack(heights, 1, lean)?.plane,
    "planed 2": () => planedBack(heights, 2, lean)?.plane,
  };
  return PLANE_KINDS.filter((kind) => kinds.includes(kind))
    .flatMap((kind) => {
      const plane = planes[kind]();
      return plane ? [packedTo(kind, plane, { read, stock })] : [];
    })
    .sort((a, b) => a.sum - b.sum);
}

/** A hair's breadth of packing or planing is none (mm): the plane's own arithmetic is no better. */
const HAIR = 1e-6;

function packedTo(
  kind: PlaneKind,
  plane: Plane,
  { read, stock }: { readonly read: readonly Read[]; readonly stock: readonly number[] },
): Packing {
  const crossings = read.map((one): PackedCrossing => {
    const gap = planeAt(plane, one.x, one.y) + one.spare - one.wall;
    const wanted = Math.abs(gap) < HAIR ? 0 : gap;
    const { packers, sum } = packersNear(Math.max(wanted, 0), stock);
    return {
      ...one,
      wanted,
      packers,
      off: sum - Math.max(wanted, 0),
      planeOff: Math.max(-wanted, 0),
      biteLeft: one.bite + one.spare - sum,
    };
  });
  const counts = new Map<number, number>();
  for (const size of crossings.flatMap(({ packers }) => packers))
    counts.set(size, (counts.get(size) ?? 0) + 1);
  return {
    kind,
    plane,
    crossings,
    sum: crossings.reduce((all, { wanted }) => all + Math.max(wanted, 0), 0),
    most: Math.max(...crossings.map(({ wanted }) => wanted)),
    packers: [...counts].sort(([a], [b]) => b - a).map(([thickness, count]) => ({ thickness, count })),
  };
}
