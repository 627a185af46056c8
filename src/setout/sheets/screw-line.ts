/** Where on a batten the screws of a sheet stand in line. */
import { common, type Interval, intervalLength } from "../../geometry/interval.ts";
import type { SheetCladding } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";

/** A cladding screw keeps this from a batten's edge (common practice: at least two and a half diameters). */
export const SCREW_FROM_BATTEN_EDGE_MM = 12;

/** What of a batten's width a cladding screw may use. */
export function usableWidth(batten: Interval): Interval {
  const inset = Math.min(SCREW_FROM_BATTEN_EDGE_MM, intervalLength(batten) / 3);
  return [batten[0] + inset, batten[1] - inset];
}

/**
 * The line of a sheet's screws on one batten: the batten's middle, moved as little as needed to keep the least edge
 * distance of the data sheet and, on the outermost battens, the greatest. Undefined where the batten serves no screw.
 */
export function screwLine(at: {
  readonly batten: Interval;
  readonly sheet: Interval;
  readonly outermost: "left" | "right" | undefined;
  readonly edgeDistance: SheetCladding["dataSheet"]["edgeDistance"];
}): number | undefined {
  const [least, most] = at.edgeDistance;
  const x = common(usableWidth(at.batten), [at.sheet[0] + least, at.sheet[1] - least]);
  if (!x) return undefined;
  const near: Interval =
    at.outermost === "left"
      ? [x[0], Math.max(x[0], Math.min(x[1], at.sheet[0] + most))]
      : at.outermost === "right"
        ? [Math.min(x[1], Math.max(x[0], at.sheet[1] - most)), x[1]]
        : x;
  const middle = (at.batten[0] + at.batten[1]) / 2;
  return snap(Math.min(Math.max(middle, near[0]), near[1]));
}
