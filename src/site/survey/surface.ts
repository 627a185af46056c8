/** The wall between its readings: straight from one to the next on a grid, over triangles where they are strewn, and known where it was read. */
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
    return onGrid(x, y) ?? overTriangle(spots, x, y);
  };

  function onGrid(x: number, y: number): number | undefined {
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
  }
}

/** The side of a triangle of strewn readings is no longer (mm), common practice: the diagonal of the widest usual grid, 1200 mm. */
const LONGEST_SIDE = 1700;
/** Readings about a place among which its triangle is sought. */
const NEAREST = 12;

/**
 * Straight over the triangle of three readings round a place that no other reading of those near comes closer to (Delaunay 1934: its circle is empty);
 * undefined where none stands round it, or only too wide a one.
 */
function overTriangle(spots: readonly Spot[], x: number, y: number): number | undefined {
  const near = spots
    .map((spot) => ({ spot, far: Math.hypot(spot.x - x, spot.y - y) }))
    .filter(({ far }) => far <= LONGEST_SIDE)
    .sort((a, b) => a.far - b.far || a.spot.x - b.spot.x || a.spot.y - b.spot.y)
    .slice(0, NEAREST)
    .map(({ spot }) => spot);
  for (const [i, a] of near.entries()) {
    for (const [j, b] of near.slice(i + 1).entries()) {
      for (const c of near.slice(i + j + 2)) {
        const shares = sharesOf([a, b, c], x, y);
        if (!shares || longestSide(a, b, c) > LONGEST_SIDE || !isEmptyCircle([a, b, c], near)) continue;
        return shares[0] * a.outward + shares[1] * b.outward + shares[2] * c.outward;
      }
    }
  }
  return undefined;
}

type Three = readonly [Spot, Spot, Spot];

function longestSide(a: Spot, b: Spot, c: Spot): number {
  const side = (p: Spot, q: Spot): number => Math.hypot(p.x - q.x, p.y - q.y);
  return Math.max(side(a, b), side(b, c), side(c, a));
}

/** Of each corner in the place, all together one; undefined where it lies outside, or they stand in a line. */
function sharesOf([a, b, c]: Three, x: number, y: number): readonly [number, number, number] | undefined {
  const area = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
  if (area === 0) return undefined;
  const ofB = ((x - a.x) * (c.y - a.y) - (c.x - a.x) * (y - a.y)) / area;
  const ofC = ((b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)) / area;
  const ofA = 1 - ofB - ofC;
  return Math.min(ofA, ofB, ofC) < -1e-9 ? undefined : [ofA, ofB, ofC];
}

function isEmptyCircle([a, b, c]: Three, near: readonly Spot[]): boolean {
  const turn = Math.sign((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y));
  return near.every((d) => {
    if (d === a || d === b || d === c) return true;
    const [p, q, r] = [a, b, c].map((one) => {
      const [dx, dy] = [(one.x - d.x) / 1000, (one.y - d.y) / 1000];
      return [dx, dy, dx * dx + dy * dy] as const;
    }) as [Row, Row, Row];
    const inside =
      p[0] * (q[1] * r[2] - r[1] * q[2]) -
      p[1] * (q[0] * r[2] - r[0] * q[2]) +
      p[2] * (q[0] * r[1] - r[0] * q[1]);
    return turn * inside <= 1e-9;
  });
}

type Row = readonly [number, number, number];

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
