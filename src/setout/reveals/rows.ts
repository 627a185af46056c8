/**
 * In which depths a return's screws stand: clear of its own edges as the data sheet or the boards' rule asks, and clear of
 * the edges of the timber that holds them. Common practice: a strip narrower than two rows need takes one.
 */
import type { Interval } from "../../geometry/interval.ts";
import type { Cladding } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import { usableWidth } from "../sheets/screw-line.ts";
import type { Asked } from "./asked.ts";
import type { Carrier } from "./carriers.ts";

/** Least and greatest distance of a screw from the long edges (mm). */
export function edgesOf(cladding: Cladding): Interval {
  return cladding.kind === "sheets"
    ? cladding.dataSheet.edgeDistance
    : [cladding.edgeDistance.value, Number.POSITIVE_INFINITY];
}

/** The depths wished for, from the frame outward: the middle, or a wide board's quarter points. */
export function rowsOf({ cladding, z }: Pick<Asked, "cladding" | "z">): number[] {
  const width = z[1] - z[0];
  const two = cladding.kind === "boards" && width >= cladding.twoScrewsFrom.value;
  return two ? [z[0] + width / 4, z[1] - width / 4] : [(z[0] + z[1]) / 2];
}

/** The depth nearest to the one wished for at which a carrier holds a screw; undefined where it holds none. */
export function depthIn(
  carrier: Carrier,
  { cladding, z }: Pick<Asked, "cladding" | "z">,
  wished: number,
): number | undefined {
  const [least, most] = edgesOf(cladding);
  const timber = usableWidth(carrier.z);
  const from = Math.max(z[0] + least, z[1] - most, timber[0]);
  const to = Math.min(z[1] - least, z[0] + most, timber[1]);
  return from > to ? undefined : snap(Math.min(Math.max(wished, from), to));
}
