/**
 * A year of beam on one face, laid out by the tangent of the angle across its slots. A slot lets a beam through by that
 * tangent alone, so from here every slot and every point behind it is two or three look-ups.
 *
 * Each step of the sun is spread evenly over the tangents it passes. The year is kept as running sums, month by month and
 * for the whole: how much beam comes from under a tangent, and the integral of that.
 */
import type { Shade } from "./model.ts";
import type { SunTable } from "./sun-table.ts";

/** `level`: slots run along x and light is told apart by height; `upright`: the other way. */
export type Across = "level" | "upright";

export interface FaceSun {
  readonly across: Across;
  readonly shade: Shade;
  /** Beam (Wh/m² of wall) whose tangent lies under `q`; month 12 is the whole year. */
  readonly under: (q: number, month: number) => number;
  /** The integral of `under` up to `q`. */
  readonly underSum: (q: number, month: number) => number;
}

/** The month that stands for the whole year. */
export const YEAR = 12;
const ROWS = 13;
/** Buckets over all tangents, even in the sine of their angles: 0.002 wide at level. */
const BUCKETS = 1024;
const EDGES = BUCKETS + 1;
/** The place of a level beam. */
const LEVEL = BUCKETS / 2;
/** Row upon row of sums starts here. */
const STRIDE = EDGES + 2;

/** The place of a tangent among the buckets, 0 to BUCKETS. */
function placeOf(q: number): number {
  const share = Number.isFinite(q) ? q / Math.sqrt(1 + q * q) : Math.sign(q);
  return LEVEL * (share + 1);
}

/** The same, of a direction so far across and so far out of the wall. */
function placeBetween(over: number, front: number): number {
  return LEVEL * (over / Math.sqrt(over * over + front * front) + 1);
}

const EDGE_TANGENTS = Float64Array.from({ length: EDGES }, (_, k) => {
  const share = (2 * Math.min(BUCKETS - 0.5, Math.max(0.5, k))) / BUCKETS - 1;
  return share / Math.sqrt(1 - share * share);
});

export function faceSun(
  table: SunTable,
  { azimuthDeg, across, shade }: { azimuthDeg: number; across: Across; shade: Shade },
): FaceSun {
  const { under, sums } = runningSums(table, { azimuthDeg, across, shade });
  const at = (row: Float64Array, q: number, month: number): number => {
    const place = placeOf(q);
    const k = Math.min(BUCKETS - 1, Math.floor(place));
    const low = EDGE_TANGENTS[k] as number;
    const high = EDGE_TANGENTS[k + 1] as number;
    const base = month * STRIDE + k;
    const part = Math.min(1, Math.max(0, (q - low) / (high - low)));
    return (row[base] as number) + part * ((row[base + 1] as number) - (row[base] as number));
  };
  return {
    across,
    shade,
    under: (q, month) => at(under, q, month),
    underSum: (q, month) => {
      const k = Math.min(BUCKETS - 1, Math.floor(placeOf(q)));
      const low = EDGE_TANGENTS[k] as number;
      const base = month * STRIDE + k;
      return (sums[base] as number) + ((q - low) * ((under[base] as number) + at(under, q, month))) / 2;
    },
  };
}

interface Sums {
  readonly under: Float64Array;
  readonly sums: Float64Array;
}

function runningSums(
  table: SunTable,
  { azimuthDeg, across, shade }: { azimuthDeg: number; across: Across; shade: Shade },
): Sums {
  const east = Math.sin((azimuthDeg * Math.PI) / 180);
  const north = Math.cos((azimuthDeg * Math.PI) / 180);
  const rows = new Float64Array(ROWS * STRIDE);
  const level = across === "level";
  const lowest = Math.max(0, placeOf(level ? -Infinity : -shade.left));
  const highest = Math.min(BUCKETS, placeOf(level ? shade.up : shade.right));
  const leastAlong = level ? -shade.left : -Infinity;
  const mostAlong = level ? shade.right : shade.up;
  const { from, to, beam, month } = table;
  for (let i = 0; i < table.steps; i++) {
    const a = 3 * i;
    const east0 = from[a] as number;
    const north0 = from[a + 1] as number;
    const east1 = to[a] as number;
    const north1 = to[a + 1] as number;
    let front0 = east0 * east + north0 * north;
    let front1 = east1 * east + north1 * north;
    if (front0 <= 0 && front1 <= 0) continue;
    let right0 = north0 * east - east0 * north;
    let right1 = north1 * east - east1 * north;
    let up0 = from[a + 2] as number;
    let up1 = to[a + 2] as number;
    let part = 1;
    if (front0 < 0) {
      part = front1 / (front1 - front0);
      right0 = right1 + part * (right0 - right1);
      up0 = up1 + part * (up0 - up1);
      front0 = 0;
    } else if (front1 < 0) {
      part = front0 / (front0 - front1);
      right1 = right0 + part * (right1 - right0);
      up1 = up0 + part * (up1 - up0);
      front1 = 0;
    }
    const front = front0 + front1;
    const longwise = (level ? right0 + right1 : up0 + up1) / front;
    if (longwise < leastAlong || longwise > mostAlong) continue;
    const place0 = level ? placeBetween(up0, front0) : placeBetween(right0, front0);
    const place1 = level ? placeBetween(up1, front1) : placeBetween(right1, front1);
    const start = Math.min(place0, place1);
    // A step narrower than this counts as this wide: a sun that climbs straight up an upright slot's middle.
    const end = Math.max(start + NARROWEST, place0, place1);
    const slope = ((beam[i] as number) * part * front) / 2 / (end - start);
    const first = Math.max(start, lowest);
    const last = Math.min(end, highest);
    if (first >= last) continue;
    const base = (month[i] as number) * STRIDE;
    bend(rows, base, first, slope);
    bend(rows, base, last, -slope);
  }
  return summedUp(rows);
}

/** The least width of a step, in buckets. */
const NARROWEST = 1e-4;

/** Adds a change of slope, as second differences at the whole buckets beside it: two of them make a ramp. */
function bend(rows: Float64Array, base: number, at: number, slope: number): void {
  const k = base + Math.floor(at) + 1;
  const part = at - Math.floor(at);
  rows[k] = (rows[k] as number) + slope * (1 - part);
  rows[k + 1] = (rows[k + 1] as number) + slope * part;
}

/** Sums second differences up to what lies under each edge, in place, and that to its integral over tangents. */
function summedUp(rows: Float64Array): Sums {
  const sums = new Float64Array(ROWS * STRIDE);
  for (let month = 0; month < ROWS; month++) {
    const base = month * STRIDE;
    let slope = 0;
    let under = 0;
    let sum = 0;
    let edge = EDGE_TANGENTS[0] as number;
    for (let k = 0; k < STRIDE; k++) {
      const before = under;
      if (month < YEAR) {
        slope += rows[base + k] as number;
        under += slope;
        rows[base + k] = under;
        rows[YEAR * STRIDE + k] = (rows[YEAR * STRIDE + k] as number) + under;
      } else under = rows[base + k] as number;
      if (k === 0 || k >= EDGES) continue;
      const last = edge;
      edge = EDGE_TANGENTS[k] as number;
      sum += ((edge - last) * (before + under)) / 2;
      sums[base + k] = sum;
    }
  }
  return { under: rows, sums };
}
