/**
 * Which screws of stock serve all sliding points of a zone's sheets: the head covers the hole wherever the shank stands in
 * it, and the point bites deep enough without coming out behind what holds it.
 */
import type { Screw } from "../project/schema/project.ts";
import type { Fixing } from "../setout/facade.ts";
import { slidingHole } from "../setout/fixings.ts";
import type { FacelessProject, ZoneView } from "./context.ts";

/** What the sliding points of a zone ask of a screw. */
export interface Asked {
  /** Farthest from a fixed point (mm). */
  readonly reach: number;
  /** Free movement each way (mm per m). */
  readonly movement: number;
  /** Least and most length: it bites as deep as asked in the deepest packing, and stays in the thinnest batten (mm). */
  readonly lengths: readonly [least: number, most: number];
}

/** A point of a sheet that is free to slide. */
export interface SlidingPoint {
  readonly mark: string;
  readonly fixing: Fixing;
  /** From the nearest fixed point (mm). */
  readonly reach: number;
}

export function askedOfScrews(
  project: FacelessProject,
  { battens }: ZoneView,
  { points, movement }: { readonly points: readonly SlidingPoint[]; readonly movement: number },
): Asked {
  const thickness = new Map(battens.map(({ mark, cut }) => [mark, cut.thickness]));
  const bite = project.limits.screwBite.cladding.value;
  let reach = 0;
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  for (const { fixing, reach: away } of points) {
    reach = Math.max(reach, away);
    let passed = 0;
    for (const layer of fixing.through) passed += layer.thickness;
    least = Math.max(least, passed + bite);
    most = Math.min(most, passed + (thickness.get(fixing.into) ?? Number.POSITIVE_INFINITY));
  }
  return { reach, movement, lengths: [least, most] };
}

/** The points of a zone's sheets that are free to slide; a sheet without a fixed point has none. */
export function slidingPoints({ pieces }: ZoneView): SlidingPoint[] {
  const points: SlidingPoint[] = [];
  for (const { mark, fixings } of pieces) {
    const fixed = fixings.filter(({ kind }) => kind === "fixed");
    if (fixed.length === 0) continue;
    for (const fixing of fixings) {
      if (fixing.kind !== "sliding") continue;
      let reach = Number.POSITIVE_INFINITY;
      for (const { x, y } of fixed) reach = Math.min(reach, Math.hypot(fixing.x - x, fixing.y - y));
      points.push({ mark, fixing, reach });
    }
  }
  return points;
}

/** The hole at the farthest point, as drilled (mm). */
export function holeFor({ diameter }: Pick<Screw, "diameter">, { reach, movement }: Asked): number {
  return slidingHole(diameter, movement, reach);
}

/** With the shank at one side of its hole, the head must still reach over the other (mm). */
export function headFor(screw: Pick<Screw, "diameter">, asked: Asked): number {
  return 2 * holeFor(screw, asked) - screw.diameter;
}

export function serves(screw: Screw, asked: Asked): boolean {
  const [least, most] = asked.lengths;
  return screw.headDiameter >= headFor(screw, asked) && screw.length >= least && screw.length <= most;
}

/** The thinnest, then the shortest sheet screw of stock that serves. */
export function smallestServing({ stock }: FacelessProject, asked: Asked): Screw | undefined {
  return stock.screws
    .filter((screw) => screw.use === "sheet" && serves(screw, asked))
    .sort((a, b) => a.diameter - b.diameter || a.length - b.length)[0];
}
