/** The wall between its readings: straight from one to the next on a grid, and known where it was read. */
import type { Spot } from "./reading.ts";

/** A place this near a reading is that reading (mm), common practice: the rod's foot is no smaller. */
const SAME_PLACE = 30;
/** A place so far outside the grid takes the reading at its edge (mm), common practice. */
const BEYOND_EDGE = 350;

/** How far the wall stands out at a place (mm, face frame); undefined where no reading tells. */
export type Surface = (x: number, y: number) => number | undefined;

/** The surface that places on a full or broken grid, or strewn ones, tell of. */
export function surfaceOf(spots: readonly Spot[]): Surface {
  const xs = steps(spots.map(({ x }) => x));
  const ys = steps(spots.map(({ y }) => y));
  const at = new Map(spots.map((spot) => [`${spot.x} ${spot.y}`, spot.outward]));
  return (x, y) => {
    const near = spots.find((spot) => Math.hypot(spot.x - x, spot.y - y) <= SAME_PLACE);
    if (near) return near.outward;
    const across = between(xs, x);
    const up = between(ys, y);
    if (!across || !up) return undefined;
    const corner = (i: 0 | 1, j: 0 | 1): number | undefined => at.get(`${across.of[i]} ${up.of[j]}`);
    let height = 0;
    for (const i of [0, 1] as const) {
      for (const j of [0, 1] as const) {
        const weight = (i === 0 ? 1 - across.share : across.share) * (j === 0 ? 1 - up.share : up.share);
        if (weight === 0) continue;
        const value = corner(i, j);
        if (value === undefined) return undefined;
        height += weight * value;
      }
    }
    return height;
  };
}

function steps(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

interface Between {
  readonly of: readonly [number, number];
  /** Of the way from the first to the second. */
  readonly share: number;
}

function between(values: readonly number[], value: number): Between | undefined {
  const [first, last] = [values[0], values.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  if (value < first - BEYOND_EDGE || value > last + BEYOND_EDGE) return undefined;
  if (value <= first) return { of: [first, first], share: 0 };
  if (value >= last) return { of: [last, last], share: 0 };
  const next = values.findIndex((one) => one > value);
  const [from, to] = [values[next - 1] as number, values[next] as number];
  return { of: [from, to], share: (value - from) / (to - from) };
}

/**
 * How far the fourth corner of a grid lies off the plane of the other three (mm): nothing where the wall is not twisted. Undefined
 * where a corner was not read.
 */
export function twistOf(spots: readonly Spot[]): number | undefined {
  const xs = steps(spots.map(({ x }) => x));
  const ys = steps(spots.map(({ y }) => y));
  const corner = (x: number | undefined, y: number | undefined): number | undefined =>
    spots.find((spot) => spot.x === x && spot.y === y)?.outward;
  if (xs.length < 2 || ys.length < 2) return undefined;
  const [a, b] = [corner(xs[0], ys[0]), corner(xs.at(-1), ys[0])];
  const [c, d] = [corner(xs[0], ys.at(-1)), corner(xs.at(-1), ys.at(-1))];
  return a === undefined || b === undefined || c === undefined || d === undefined ? undefined : d - b - c + a;
}
