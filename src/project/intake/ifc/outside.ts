/** Which side of a wall looks outside, told from where the other walls of the file stand in plan. */
import { subtractIntervals } from "../../../geometry/interval.ts";
import type { Point } from "../../../geometry/point.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import type { WallSide } from "./wall-side.ts";

/** What is looked from: this many places along the wall, none at its ends, where others join it. */
const PLACES = 9;

/** Round from one end of the wall to the other, from its middle: a look every five degrees. */
const ROUND_LOOKS = 35;

/** What begins so little over a wall's foot and is filled by nothing is walked through (mm). */
const STEP_MM = 100;

/** So far out from the wall's own face the look begins (mm). */
const CLEAR_MM = 1;

export interface Footprint {
  readonly sides: readonly [WallSide, WallSide];
  /** The file says that it stands inside: no bound of the building. */
  readonly inner: boolean;
}

export interface OuterSide {
  readonly side: 0 | 1;
  readonly told: boolean;
  readonly open: boolean;
}

interface Standing {
  readonly wall: Footprint;
  readonly ring: readonly Point[];
  readonly height: readonly [number, number];
}

/**
 * @returns for each wall the place of its outer side, whether the other walls tell it, and whether most of it looks into the open.
 * They tell it where one side looks into a room that is closed all round: walls that face each other over an open end may be those
 * of a room, clad on their backs, or of a porch, clad within.
 */
export function outerSides(walls: readonly Footprint[]): OuterSide[] {
  const standing = walls.map((wall): Standing => {
    const { sides } = wall;
    const [a, b] = sides.map((side) => endsOf(side)) as [Point[], Point[]];
    return { wall, ring: [...a, ...b], height: polygonBounds(sides[0].outline).y };
  });
  const all = polygonBounds(standing.flatMap(({ ring }) => ring));
  const middle: Point = [(all.x[0] + all.x[1]) / 2, (all.y[0] + all.y[1]) / 2];
  return walls.map(({ sides }, i) => {
    const own = standing[i] as Standing;
    const others = standing.filter(
      (other, k) =>
        k !== i && !walls[k]?.inner && other.height[0] < own.height[1] && other.height[1] > own.height[0],
    );
    const looks = sides.map((side) => look(side, others)) as [Look, Look];
    const away = sides.map((side) => {
      const [from, to] = endsOf(side) as [Point, Point];
      const at = [(from[0] + to[0]) / 2 - middle[0], (from[1] + to[1]) / 2 - middle[1]] as const;
      return at[0] * side.outward[0] + at[1] * side.outward[1];
    }) as [number, number];
    // A loop of walls is crossed once from within and not at all, or twice, from without.
    const [first, second] = looks;
    const better = first.free - second.free || second.odd - first.odd || second.met - first.met;
    const side = (better || away[0] - away[1]) < 0 ? 1 : 0;
    return {
      side,
      told: better !== 0 && sides.some((one) => isClosedIn(one, others)),
      open: looks[side].free * 2 > PLACES || (looks[side].odd === 0 && looks[side === 0 ? 1 : 0].odd > 0),
    };
  });
}

interface Look {
  /** From how many places nothing stands in the way. */
  readonly free: number;
  /** From how many an odd number of walls does. */
  readonly odd: number;
  /** Walls that stand in the way, over all places. */
  readonly met: number;
}

function look(side: WallSide, others: readonly Standing[]): Look {
  const [from, to] = endsOf(side) as [Point, Point];
  const counts = Array.from({ length: PLACES }, (_, i) => {
    const share = (i + 1) / (PLACES + 1);
    const [ox, oy] = side.outward;
    const at: Point = [
      from[0] + (to[0] - from[0]) * share + ox * CLEAR_MM,
      from[1] + (to[1] - from[1]) * share + oy * CLEAR_MM,
    ];
    return others.filter(({ ring }) => stands(ring, at, side)).length;
  });
  return {
    free: counts.filter((one) => one === 0).length,
    odd: counts.filter((one) => one % 2 === 1).length,
    met: counts.reduce((sum, one) => sum + one, 0),
  };
}

/** Whether a wall stands wherever one looks from the middle of a side. */
function isClosedIn(side: WallSide, others: readonly Standing[]): boolean {
  const [from, to] = endsOf(side) as [Point, Point];
  const [[ax, ay], [ox, oy]] = [side.along, side.outward];
  const at: Point = [(from[0] + to[0]) / 2 + ox * CLEAR_MM, (from[1] + to[1]) / 2 + oy * CLEAR_MM];
  const [low, high] = polygonBounds(side.outline).y;
  const rings = others.flatMap(({ wall }) => ringsAt(wall, (low + high) / 2));
  return Array.from({ length: ROUND_LOOKS }, (_, i) => (Math.PI * (i + 1)) / (ROUND_LOOKS + 1)).every(
    (angle) => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const outward: Point = [ax * c + ox * s, ay * c + oy * s];
      const along: Point = [-outward[1], outward[0]];
      return rings.some((ring) => stands(ring, at, { outward, along }));
    },
  );
}

/** What of a wall stands at a height, without the ways through it that nothing fills. */
function ringsAt({ sides: [side] }: Footprint, height: number): Point[][] {
  const { x, y: reach } = polygonBounds(side.outline);
  const ways = side.openings.filter(
    ({ kind, y }) => kind === undefined && y[0] - reach[0] <= STEP_MM && y[1] >= height,
  );
  return subtractIntervals(
    x,
    ways.map((way) => way.x),
  ).map((ends) => {
    const front = endsOf(side, ends);
    const [ox, oy] = side.outward;
    const back = front.map(([px, py]): Point => [px - ox * side.thickness, py - oy * side.thickness]);
    return [...front, ...back.reverse()];
  });
}

/** Whether a ring stands in the way of one who looks from a place. */
function stands(
  ring: readonly Point[],
  at: Point,
  { outward, along }: Pick<WallSide, "outward" | "along">,
): boolean {
  return ring.some((from, i) => {
    const to = ring[(i + 1) % ring.length] as Point;
    const [a, b] = [from, to].map(([x, y]) => (x - at[0]) * along[0] + (y - at[1]) * along[1]) as [
      number,
      number,
    ];
    if (a < 0 === b < 0) return false;
    const [out, outTo] = [from, to].map(([x, y]) => (x - at[0]) * outward[0] + (y - at[1]) * outward[1]) as [
      number,
      number,
    ];
    return out + ((outTo - out) * a) / (a - b) > 0;
  });
}

/** The ends of a side in plan, or of a part of it, from left to right seen from outside (mm of the file). */
function endsOf(
  { along, outward, offset, left, outline }: WallSide,
  ends = polygonBounds(outline).x,
): Point[] {
  return ends.map(
    (x): Point => [along[0] * (left + x) + outward[0] * offset, along[1] * (left + x) + outward[1] * offset],
  );
}
