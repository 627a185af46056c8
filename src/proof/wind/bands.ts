/** The strips of a face in which wind presses unlike, and the net pressure on what lies in them. */
import type { Strip, StructureAnswer, WindDemand } from "../../codes/packs/index.ts";
import { weaker } from "../../codes/rule-value.ts";
import { coefficientByArea } from "../../equations/wind/coefficient-by-area.ts";
import { windNetPressure } from "../../equations/wind/wind-net-pressure.ts";
import type { Basis } from "../../findings/finding.ts";
import { type Interval, overlaps } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { FaceLayout } from "../../setout/facade.ts";

export interface WindBand {
  readonly strip: Strip;
  /** Along the face (mm), its whole height. */
  readonly x: Interval;
}

type WindFace = Pick<FaceLayout, "outline" | "azimuthDeg" | "meets">;

/**
 * From left to right. The figures of the codes show strips at the outer corners of a building: an end at which nothing is known counts as
 * one, an inner corner does not (common practice). A wall between two inner corners is none of those figures, so both its ends count; a
 * soffit is all corner.
 */
export function windBands(face: WindFace, wind: WindDemand): WindBand[] {
  const { x } = polygonBounds(face.outline);
  const [first] = wind.strips;
  if (face.azimuthDeg === undefined && first) return [{ strip: first, x }];
  const inner = innerEnd(face);
  if (inner === "right") return fromLeft(x, wind);
  if (inner === "left")
    return fromLeft([-x[1], -x[0]], wind)
      .map(({ strip, x: [from, to] }): WindBand => ({ strip, x: [-to, -from] }))
      .reverse();
  const middle = (x[0] + x[1]) / 2;
  const left = fromLeft([x[0], middle], wind);
  const right = left
    .map(({ strip, x: [from, to] }): WindBand => ({ strip, x: [x[0] + x[1] - to, x[0] + x[1] - from] }))
    .reverse();
  const [lastLeft, firstRight] = [left.at(-1), right[0]];
  if (!lastLeft || !firstRight) return [];
  return [
    ...left.slice(0, -1),
    { strip: lastLeft.strip, x: [lastLeft.x[0], firstRight.x[1]] },
    ...right.slice(1),
  ];
}

/** The end of a wall that is an inner corner and so no end of wind's; none where both are. */
export function innerEnd({ meets }: Pick<FaceLayout, "meets">): "left" | "right" | undefined {
  if (!meets || (meets.left === "internal") === (meets.right === "internal")) return undefined;
  return meets.left === "internal" ? "left" : "right";
}

/** Strips of a stretch whose left end is an outer corner. */
function fromLeft([start, end]: Interval, { strips }: WindDemand): WindBand[] {
  const bands: WindBand[] = [];
  let from = start;
  for (const strip of strips) {
    if (from >= end) break;
    const to = Math.min(start + (strip.toMm ?? Number.POSITIVE_INFINITY), end);
    bands.push({ strip, x: [from, to] });
    from = to;
  }
  return bands;
}

export interface NetWind {
  readonly strip: Strip["id"];
  /** Outward and inward (Pa), both more than nothing, before the factors of strength and sag. */
  readonly pullPa: number;
  readonly pushPa: number;
  /** Coefficients outside that they come from. */
  readonly pull: number;
  readonly push: number;
  /** Of the pressures: weaker where the code’s least pressure governs and is not confirmed. */
  readonly basis: Basis;
}

/** The worst of the strips that a stretch of the face reaches into, for a part that gathers pressure from an area. */
export function netWind(
  wind: WindDemand,
  bands: readonly WindBand[],
  { x, areaM2 }: { readonly x: Interval; readonly areaM2: number },
): NetWind {
  const [smallM2, largeM2] = wind.areasM2;
  const read = ([smallCoefficient, largeCoefficient]: readonly [number, number]): number =>
    coefficientByArea({ areaM2, smallM2, largeM2, smallCoefficient, largeCoefficient });
  // A part that reaches into no strip is judged by the worst of all.
  const worst = worstOf(bands, read, (band) => overlaps(band.x, x)) ?? worstOf(bands, read, () => true);
  if (!worst) throw new Error("wind has no strip");
  const push = read(wind.push);
  const [sucking, pushing] = wind.inside;
  const { pressurePa } = wind;
  const least = wind.leastPa?.value ?? 0;
  const pulled = -windNetPressure({ pressurePa, outside: worst.pull, inside: pushing });
  const pushed = windNetPressure({ pressurePa, outside: push, inside: sucking });
  const raised = wind.leastPa !== undefined && Math.min(pulled, pushed) < least;
  return {
    ...worst,
    push,
    pullPa: Math.max(least, pulled),
    pushPa: Math.max(least, pushed),
    basis: raised && wind.leastPa ? weaker(wind.basis, wind.leastPa.basis) : wind.basis,
  };
}

interface StripPull {
  readonly strip: Strip["id"];
  readonly pull: number;
}

function worstOf(
  bands: readonly WindBand[],
  read: (pull: Strip["pull"]) => number,
  reached: (band: WindBand) => boolean,
): StripPull | undefined {
  let worst: StripPull | undefined;
  for (const band of bands) {
    if (!reached(band)) continue;
    const pull = read(band.strip.pull);
    if (worst === undefined || pull < worst.pull) worst = { strip: band.strip.id, pull };
  }
  return worst;
}

/** The wind of the chosen code, where everything that it takes is known. */
export function knownWind(structure: StructureAnswer): WindDemand | undefined {
  return structure.known && structure.wind.known ? structure.wind.wind : undefined;
}
