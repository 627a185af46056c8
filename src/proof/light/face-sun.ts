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
/** Buckets over all tangents, even in the sine of their angles: 0.004 wide at level. */
const BUCKETS = 512;
const EDGES = BUCKETS + 1;
/** The place of a level beam. */
const LEVEL = BUCKETS / 2;
/** Row upon row of sums starts here. */
const STRIDE = EDGES + 2;

/** The place of a tangent among the buckets, 0 to BUCKETS. */
function placeOf(q: number): number {
  const share = Number.isFinite(q) ? q / Math.sqrt(1 + q * q) : Math.sign(q);
  return ((share + 1) / 2) * BUCKETS;
}

const EDGE_TANGENTS: readonly number[] = Array.from({ length: EDGES }, (_, k) => {
  const share = (2 * Math.min(BUCKETS - 0.5, Math.max(0.5, k))) / BUCKETS - 1;
  return share / Math.sqrt(1 - share * share);
});

export function faceSun(
  table: SunTable,
  { azimuthDeg, across, shade }: { azimuthDeg: number; across: Across; shade: Shade },
): FaceSun {
  const under = runningSums(table, { azimuthDeg, across, shade });
  const sums = integrals(under);
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

function runningSums(
  table: SunTable,
  { azimuthDeg, across, shade }: { azimuthDeg: number; across: Across; shade: Shade },
): Float64Array {
  const east = Math.sin((azimuthDeg * Math.PI) / 180);
  const north = Math.cos((azimuthDeg * Math.PI) / 180);
  const rows = new Float64Array(ROWS * STRIDE);
  const level = across === "level";
  const bounds = level ? [-Infinity, shade.up] : [-shade.left, shade.right];
  const along = level ? [-shade.left, shade.right] : [-Infinity, shade.up];
  const lowest = placeOf(bounds[0] as number);
  const highest = placeOf(bounds[1] as number);
  const { from, to, drift, beam, month } = table;
  for (let i = 0; i < table.steps; i++) {
    const a = 3 * i;
    let front0 = (from[a] as number) * east + (from[a + 1] as number) * north;
    let front1 = (to[a] as number) * east + (to[a + 1] as number) * north;
    if (front0 <= 0 && front1 <= 0) continue;
    let right0 = (from[a + 1] as number) * east - (from[a] as number) * north;
    let right1 = (to[a + 1] as number) * east - (to[a] as number) * north;
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
    const longwise = level ? (right0 + right1) / (front0 + front1) : (up0 + up1) / (front0 + front1);
    if (longwise < (along[0] as number) || longwise > (along[1] as number)) continue;
    const place0 = placeOf((level ? up0 : right0) / front0);
    const place1 = placeOf((level ? up1 : right1) / front1);
    const low = Math.min(place0, place1);
    const high = Math.max(place0, place1);
    const light = ((beam[i] as number) * part * (front0 + front1)) / 2;
    const base = (month[i] as number) * STRIDE;
    // The days that a step stands for pass their tangents side by side.
    const frontDrift = (drift[a] as number) * east + (drift[a + 1] as number) * north;
    const rightDrift = (drift[a + 1] as number) * east - (drift[a] as number) * north;
    const over = level ? up0 + up1 : right0 + right1;
    const overDrift = 2 * (level ? (drift[a + 2] as number) : rightDrift);
    const front = front0 + front1;
    const width =
      front > Math.abs(4 * frontDrift)
        ? placeOf((over + overDrift) / (front + 2 * frontDrift)) -
          placeOf((over - overDrift) / (front - 2 * frontDrift))
        : 0;
    const days = Math.min(MOST_DAYS, 1 + Math.floor(Math.abs(width) / Math.max(DAY_BUCKETS, high - low)));
    for (let day = 0; day < days; day++) {
      const shift = width * ((day + 0.5) / days - 0.5);
      // On no day does the sun shine from under the horizon.
      const from = level ? Math.max(LEVEL, low + shift) : low + shift;
      spread(rows, base, {
        low: from,
        high: Math.max(from, high + shift),
        light: light / days,
        lowest,
        highest,
      });
    }
  }
  for (let month = 0; month < YEAR; month++) {
    const base = month * STRIDE;
    for (let turn = 0; turn < 2; turn++) {
      for (let k = 1; k < STRIDE; k++)
        rows[base + k] = (rows[base + k] as number) + (rows[base + k - 1] as number);
    }
    for (let k = 0; k < STRIDE; k++) {
      rows[YEAR * STRIDE + k] = (rows[YEAR * STRIDE + k] as number) + (rows[base + k] as number);
    }
  }
  return rows;
}

/** Days side by side are told apart when they lie further apart than this and than a step is wide, as many as this. */
const DAY_BUCKETS = 2;
const MOST_DAYS = 6;

/** A step narrower than this counts as this wide: a sun that climbs straight up an upright slot's middle. */
const NARROWEST = 1e-4;

/** Adds a ramp from `low` to `high`, as second differences at whole buckets; what lies beyond the bounds is shaded. */
function spread(
  rows: Float64Array,
  base: number,
  step: { low: number; high: number; light: number; lowest: number; highest: number },
): void {
  const high = Math.max(step.high, step.low + NARROWEST);
  const slope = step.light / (high - step.low);
  // Nothing lies beyond the ends: a step that a shift takes over them stays at them.
  const from = Math.min(BUCKETS, Math.max(step.low, step.lowest, 0));
  const to = Math.min(BUCKETS, high, step.highest);
  if (from >= to) return;
  bend(rows, base, from, slope);
  bend(rows, base, to, -slope);
}

function bend(rows: Float64Array, base: number, at: number, slope: number): void {
  const k = Math.floor(at);
  const part = at - k;
  rows[base + k + 1] = (rows[base + k + 1] as number) + slope * (1 - part);
  rows[base + k + 2] = (rows[base + k + 2] as number) + slope * part;
}

function integrals(under: Float64Array): Float64Array {
  const sums = new Float64Array(ROWS * STRIDE);
  for (let month = 0; month < ROWS; month++) {
    const base = month * STRIDE;
    for (let k = 1; k < EDGES; k++) {
      const wide = (EDGE_TANGENTS[k] as number) - (EDGE_TANGENTS[k - 1] as number);
      sums[base + k] =
        (sums[base + k - 1] as number) +
        (wide * ((under[base + k] as number) + (under[base + k - 1] as number))) / 2;
    }
  }
  return sums;
}
