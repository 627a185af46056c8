/**
 * Which screws of stock serve all sliding points of a zone's sheets: the head covers the hole wherever the shank stands in
 * it, and the point bites deep enough without coming out behind what holds it.
 */
import { distance } from "../geometry/point.ts";
import type { Screw } from "../project/schema/project.ts";
import type { Fixing, Piece } from "../setout/facade.ts";
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

/** Undefined where no point slides. */
export function askedOfScrews(
  project: FacelessProject,
  { pieces, battens }: ZoneView,
  movement: number,
): Asked | undefined {
  const thickness = new Map(battens.map(({ mark, cut }) => [mark, cut.thickness]));
  let reach = -1;
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    for (const { fixing, away } of slidingPoints(piece)) {
      reach = Math.max(reach, away);
      const passed = fixing.through.reduce((sum, layer) => sum + layer.thickness, 0);
      least = Math.max(least, passed + project.limits.screwBite.cladding.value);
      most = Math.min(most, passed + (thickness.get(fixing.into) ?? Number.POSITIVE_INFINITY));
    }
  }
  return reach < 0 ? undefined : { reach, movement, lengths: [least, most] };
}

/** The points of a sheet that are free to slide, each with its distance from the nearest fixed one (mm). */
export function slidingPoints({ fixings }: Piece): { readonly fixing: Fixing; readonly away: number }[] {
  const fixed = fixings.filter(({ kind }) => kind === "fixed");
  if (fixed.length === 0) return [];
  return fixings
    .filter(({ kind }) => kind === "sliding")
    .map((fixing) => ({
      fixing,
      away: Math.min(...fixed.map((point) => distance([fixing.x, fixing.y], [point.x, point.y]))),
    }));
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
