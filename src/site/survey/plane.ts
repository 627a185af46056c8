/** Planes fitted to a wall: the one nearest all readings, the one with the smallest band, and those that the wall does not stand out of. */
import { type Condition, leastCost } from "./linear-program.ts";

/** A place and how far the wall stands out there (mm). */
export interface Height {
  readonly x: number;
  readonly y: number;
  readonly outward: number;
}

/** `outward = at + alongPerM · x/1000 + upPerM · y/1000` (mm; mm a metre). */
export interface Plane {
  readonly at: number;
  readonly alongPerM: number;
  readonly upPerM: number;
}

/** How far a plane may lean from plumb, either way and along either axis (mm a metre). */
export interface Lean {
  readonly mmPerM: number;
}

export function planeAt({ at, alongPerM, upPerM }: Plane, x: number, y: number): number {
  return at + (alongPerM * x) / 1000 + (upPerM * y) / 1000;
}

/**
 * Least squares: Σ (plane − wall)² least, by the normal equations about the mean place. Undefined where the places lie on one
 * line, which many planes hold.
 */
export function leastSquares(wall: readonly Height[]): Plane | undefined {
  const n = wall.length;
  const mean = (of: (one: Height) => number): number => wall.reduce((sum, one) => sum + of(one), 0) / n;
  const [mx, my, mz] = [mean(({ x }) => x), mean(({ y }) => y), mean(({ outward }) => outward)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const { x, y, outward } of wall) {
    const [u, v, z] = [(x - mx) / 1000, (y - my) / 1000, outward - mz];
    xx += u * u;
    xy += u * v;
    yy += v * v;
    xz += u * z;
    yz += v * z;
  }
  const determinant = xx * yy - xy * xy;
  if (n < 3 || determinant <= 1e-9 * Math.max(xx * yy, 1e-9)) return undefined;
  const alongPerM = (xz * yy - yz * xy) / determinant;
  const upPerM = (yz * xx - xz * xy) / determinant;
  return { at: mz - (alongPerM * mx) / 1000 - (upPerM * my) / 1000, alongPerM, upPerM };
}

/** The plane from which the wall is nowhere further than half a band that is as narrow as can be; with that half (mm). */
export function smallestBand(
  wall: readonly Height[],
  { mmPerM }: Lean,
): { readonly plane: Plane; readonly half: number } | undefined {
  const conditions: Condition[] = wall.flatMap((one) => {
    const [, along, up] = rowOf(one);
    return [
      { coefficients: [1, along, up, 1], least: one.outward },
      { coefficients: [-1, -along, -up, 1], least: -one.outward },
    ];
  });
  const found = leastCost([0, 0, 0, 1], [...conditions, ...leaning(mmPerM, 4)]);
  if (found.kind !== "best") return undefined;
  return { plane: planeOf(found.x), half: found.x[3] as number };
}

export interface Supporting {
  readonly plane: Plane;
  /** Σ (plane + spare − wall) over the places, what is planed off not counted (mm). */
  readonly packing: number;
  /** Places that hold it where it is, by their order. */
  readonly holding: readonly number[];
}

/**
 * The plane that the wall nowhere stands out of by more than `spare` (mm), which is there to give way, with the least sum of what lies
 * between them and the spare. The sum is the packing where the places are those at which packers go.
 */
export function outerPlane(
  wall: readonly Height[],
  lean: Lean & { readonly spare?: number },
): Supporting | undefined {
  return supporting(wall, [], lean);
}

/** The outer plane over all places but those that are planed back to it where they stand out, and packed where they do not. */
function supporting(
  wall: readonly Height[],
  planed: readonly number[],
  { mmPerM, spare = 0 }: Lean & { readonly spare?: number },
): Supporting | undefined {
  const rows = wall.map(rowOf);
  const kept = [...wall.keys()].filter((place) => !planed.includes(place));
  const unknowns = 3 + planed.length;
  const row = (place: number, of?: number): number[] => [
    ...(rows[place] as readonly number[]),
    ...planed.map((_, i) => (i === of ? 1 : 0)),
  ];
  const conditions: Condition[] = [
    ...kept.map((place) => ({ coefficients: row(place), least: (wall[place] as Height).outward - spare })),
    // What a planed place is packed: the plane less the wall, and never less than nothing.
    ...planed.flatMap((place, i): Condition[] => [
      {
        coefficients: row(place, i).map((value, j) => (j < 3 ? -value : value)),
        least: spare - (wall[place] as Height).outward,
      },
      { coefficients: Array.from({ length: unknowns }, (_, j) => (j === 3 + i ? 1 : 0)), least: 0 },
    ]),
    ...leaning(mmPerM, unknowns),
  ];
  const cost = [0, 1, 2].map((i) => kept.reduce((sum, place) => sum + ((rows[place] ?? [])[i] ?? 0), 0));
  const found = leastCost([...cost, ...planed.map(() => 1)], conditions);
  if (found.kind !== "best") return undefined;
  return {
    plane: planeOf(found.x),
    packing: found.value + kept.reduce((sum, place) => sum + spare - (wall[place] as Height).outward, 0),
    holding: found.holding.flatMap((condition) => kept[condition] ?? []),
  };
}

export interface Planed extends Supporting {
  /** Places where the wall is planed back to the plane, by their order. */
  readonly planed: readonly number[];
}

/**
 * The outer plane over all places but so many, which are planed back to it: the choice that leaves the least packing. Exact: the sum is
 * convex, so a place that does not hold the plane cannot better it by going, and only those that hold it are tried, in turn.
 */
export function planedBack(
  wall: readonly Height[],
  spots: number,
  lean: Lean & { readonly spare?: number },
): Planed | undefined {
  const search = (gone: readonly number[]): Planed | undefined => {
    const found = supporting(wall, gone, lean);
    if (!found) return undefined;
    if (gone.length === spots) return { ...found, planed: [...gone].sort((a, b) => a - b) };
    return found.holding
      .flatMap((place) => search([...gone, place]) ?? [])
      .reduce<Planed | undefined>(
        (best, one) => (!best || one.packing < best.packing - 1e-9 ? one : best),
        undefined,
      );
  };
  return search([]);
}

export function rowOf({ x, y }: Height): readonly [number, number, number] {
  return [1, x / 1000, y / 1000];
}

export function planeOf([at = 0, alongPerM = 0, upPerM = 0]: readonly number[]): Plane {
  return { at, alongPerM, upPerM };
}

/** The second and third unknown lie within the lean either way. */
export function leaning(mmPerM: number, unknowns: number): Condition[] {
  return [1, 2].flatMap((which) =>
    [1, -1].map((sign) => ({
      coefficients: Array.from({ length: unknowns }, (_, i) => (i === which ? sign : 0)),
      least: -mmPerM,
    })),
  );
}
