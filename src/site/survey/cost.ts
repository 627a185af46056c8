/** What packing a wall to a plane takes: packers, spots to plane, and by the project's own figures time and money. */
import type { Project } from "../../project/schema/project.ts";
import type { Packing } from "./packing.ts";

export interface PackingCost {
  readonly packers: number;
  /** Places where the wall is planed off. */
  readonly spots: number;
  /** Undefined where a figure that it takes is missing. */
  readonly minutes?: number;
  /** Packers and the time, in the currency of the stock. */
  readonly price?: number;
  /** Paths of the figures that are missing. */
  readonly lacks: readonly string[];
}

/** A figure is asked for only where there is something to multiply it by. */
export function packingCost(
  { crossings }: Packing,
  { packingWork = {} }: Pick<Project, "packingWork">,
): PackingCost {
  const packers = crossings.reduce((sum, one) => sum + one.packers.length, 0);
  const spots = crossings.filter(({ planeOff }) => planeOff > 0).length;
  const { minutesPerPacker, minutesPerSpot, pricePerPacker, pricePerHour } = packingWork;
  const packing = times(packers, minutesPerPacker);
  const planing = times(spots, minutesPerSpot);
  const minutes = packing === undefined || planing === undefined ? undefined : packing + planing;
  const bought = times(packers, pricePerPacker);
  const paid = minutes === undefined ? undefined : times(minutes / 60, pricePerHour);
  const isMissing: readonly (readonly [name: string, missing: boolean])[] = [
    ["minutesPerPacker", packing === undefined],
    ["minutesPerSpot", planing === undefined],
    ["pricePerPacker", bought === undefined],
    ["pricePerHour", packers + spots > 0 && pricePerHour === undefined],
  ];
  return {
    packers,
    spots,
    ...(minutes !== undefined && { minutes }),
    ...(bought !== undefined && paid !== undefined && { price: bought + paid }),
    lacks: isMissing.flatMap(([name, missing]) => (missing ? [`/packingWork/${name}`] : [])),
  };
}

function times(count: number, each: number | undefined): number | undefined {
  return count === 0 ? 0 : each === undefined ? undefined : count * each;
}
