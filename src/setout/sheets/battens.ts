/** Where sheets want battens: under both upright edges of every column, and between them no wider than the data sheet. */
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { snap } from "../../units/length.ts";
import type { FaceEnd } from "../corners.ts";
import type { BattenWish } from "../draft.ts";
import type { ColumnPlan } from "./plan.ts";
import { SCREW_FROM_BATTEN_EDGE_MM, screwLine } from "./screw-line.ts";
import type { SheetZone } from "./zone.ts";

export function sheetBattenWishes(zone: SheetZone, plan: ColumnPlan): BattenWish[] {
  return plan.columns.flatMap(({ x }, i) => {
    const left = leftBatten(zone, x, i === 0);
    const right = rightBatten(zone, x, i === plan.columns.length - 1);
    const lines = [...left, ...right];
    const inner = middles(zone, x, lines);
    return [...lines, ...inner];
  });
}

/**
 * At an outside corner the sheet passes the sheathing: its edge batten stays on the wall, and where that lies further in
 * than the data sheet's edge distance allows, one more stands out beyond the wall on a backing.
 */
function leftBatten(zone: SheetZone, [left]: Interval, first: boolean): BattenWish[] {
  const w = zone.battenWidth;
  if (!first || zone.ends.left.kind !== "external" || left >= 0)
    return [{ x: [left, snap(left + w)], reason: "joint" }];
  const wall: BattenWish = { x: [0, w], reason: "end" };
  const reach = SCREW_FROM_BATTEN_EDGE_MM - left;
  return reach <= zone.cladding.dataSheet.edgeDistance[1]
    ? [wall]
    : [{ x: [-cornerWidth(w, zone.ends.left), 0], reason: "corner" }, wall];
}

function rightBatten(zone: SheetZone, [, right]: Interval, last: boolean): BattenWish[] {
  const w = zone.battenWidth;
  const wallEnd = Math.max(...zone.ground.face.outline.map(([x]) => x));
  if (!last || zone.ends.right.kind !== "external" || right <= wallEnd) {
    return [{ x: [snap(right - w), right], reason: "joint" }];
  }
  const wall: BattenWish = { x: [snap(wallEnd - w), wallEnd], reason: "end" };
  const reach = right - wallEnd + SCREW_FROM_BATTEN_EDGE_MM;
  return reach <= zone.cladding.dataSheet.edgeDistance[1]
    ? [wall]
    : [wall, { x: [wallEnd, snap(wallEnd + cornerWidth(w, zone.ends.right))], reason: "corner" }];
}

/** The batten beyond the wall is ripped to what its neighbour's battens, one of which may stand there too, leave it. */
function cornerWidth(full: number, { neighbourCavityZ }: FaceEnd): number {
  return neighbourCavityZ > 0 ? Math.min(full, neighbourCavityZ) : full;
}

/** Battens between the edge ones, on studs where a stud leaves both spans within the limit. */
function middles(zone: SheetZone, sheet: Interval, edges: readonly BattenWish[]): BattenWish[] {
  const { edgeDistance } = zone.cladding.dataSheet;
  const lines = edges
    .flatMap(({ x: batten }, i): number[] => {
      const outermost = i === 0 ? "left" : i === edges.length - 1 ? "right" : undefined;
      const at = screwLine({ batten, sheet, outermost, edgeDistance });
      return at === undefined ? [] : [at];
    })
    .sort((a, b) => a - b);
  const limit = zone.cladding.dataSheet.maxBattenSpacing;
  const wishes: BattenWish[] = [];
  for (let i = 0; i + 1 < lines.length; i++) {
    const [from, to] = [lines[i] as number, lines[i + 1] as number];
    const spans = Math.ceil((to - from) / limit - 1e-9);
    let last = from;
    for (let k = 1; k < spans; k++) {
      const low = to - (spans - k) * limit;
      const high = last + limit;
      const middle = from + ((to - from) * k) / spans;
      const clear = zone.studs.filter(
        (centre) =>
          centre >= low && centre <= high && !edges.some((edge) => overlaps(edge.x, stripAt(zone, centre))),
      );
      const stud = nearest(clear, middle);
      const centre = stud ?? middle;
      last = centre;
      const x = stripAt(zone, centre);
      if (!edges.some((edge) => overlaps(edge.x, x))) {
        wishes.push({ x, reason: stud === undefined ? "middle" : "stud" });
      }
    }
  }
  return wishes;
}

function stripAt({ battenWidth }: SheetZone, centre: number): Interval {
  const from = snap(centre - battenWidth / 2);
  return [from, snap(from + battenWidth)];
}

function nearest(values: readonly number[], to: number): number | undefined {
  return [...values].sort((a, b) => Math.abs(a - to) - Math.abs(b - to))[0];
}
