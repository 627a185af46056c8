/** Looking at the building from outside, without perspective: from which side and how high, at what, and how large. */
import { degreesToRadians } from "../../units/angle.ts";
import type { Vector } from "./placing.ts";

export interface Orbit {
  /** The eye's place round the building: 0 before the first face, counter-clockwise seen from above (degrees). */
  readonly roundDeg: number;
  /** The eye's height over the horizon (degrees). */
  readonly heightDeg: number;
  /** The middle of the view (building frame, mm). */
  readonly target: Vector;
  /** Pixels for a millimetre that is seen without slant. */
  readonly k: number;
}

export interface Sight {
  /** Unit vectors: across the view, up it, and from the target to the eye. */
  readonly right: Vector;
  readonly up: Vector;
  readonly towardsEye: Vector;
}

/** The lowest look is from under a soffit, the highest is the plan. */
const HEIGHTS = [-60, 90] as const;
/** Degrees for a pixel that the hand moves. */
const TURN = 0.4;
/** Pixels for a millimetre: a whole village, and the head of a screw. */
const NEAR = [0.002, 4] as const;

export function sightOf({ roundDeg, heightDeg }: Pick<Orbit, "roundDeg" | "heightDeg">): Sight {
  const [a, e] = [degreesToRadians(roundDeg), degreesToRadians(heightDeg)];
  const [cosA, sinA, cosE, sinE] = [Math.cos(a), Math.sin(a), Math.cos(e), Math.sin(e)];
  return {
    right: [cosA, sinA, 0],
    up: [-sinA * sinE, cosA * sinE, cosE],
    towardsEye: [sinA * cosE, -cosA * cosE, sinE],
  };
}

/** The hand goes right, and the building turns with it. */
export function turned(orbit: Orbit, { dx, dy }: { dx: number; dy: number }): Orbit {
  return {
    ...orbit,
    roundDeg: orbit.roundDeg - dx * TURN,
    heightDeg: Math.min(Math.max(orbit.heightDeg + dy * TURN, HEIGHTS[0]), HEIGHTS[1]),
  };
}

/** Moves the building by so many pixels, y down. */
export function moved(orbit: Orbit, { dx, dy }: { dx: number; dy: number }): Orbit {
  const { right, up } = sightOf(orbit);
  const shift = (axis: 0 | 1 | 2): number =>
    orbit.target[axis] - (right[axis] * dx - up[axis] * dy) / orbit.k;
  return { ...orbit, target: [shift(0), shift(1), shift(2)] };
}

/** @param at what stays where it is, pixels from the middle of the view, y down */
export function nearer(orbit: Orbit, factor: number, [x, y]: readonly [number, number] = [0, 0]): Orbit {
  const k = Math.min(Math.max(orbit.k * factor, NEAR[0]), NEAR[1]);
  const slide = k / orbit.k - 1;
  return { ...moved({ ...orbit, k }, { dx: -x * slide, dy: -y * slide }), k };
}

/** Where a point is seen: right of the middle of the view and up from it, and how far towards the eye (mm). */
function seen(point: Vector, { target, ...from }: Orbit): Vector {
  const { right, up, towardsEye } = sightOf(from);
  const dot = (axis: Vector): number =>
    axis[0] * (point[0] - target[0]) + axis[1] * (point[1] - target[1]) + axis[2] * (point[2] - target[2]);
  return [dot(right), dot(up), dot(towardsEye)];
}

/** The view from one side that shows all of some points. */
export function framing(
  points: readonly Vector[],
  { roundDeg, heightDeg }: Pick<Orbit, "roundDeg" | "heightDeg">,
  { width, height, margin }: { width: number; height: number; margin: number },
): Orbit {
  const from: Orbit = { roundDeg, heightDeg, target: [0, 0, 0], k: 1 };
  const all = points.map((point) => seen(point, from));
  const span = (axis: 0 | 1 | 2): readonly [number, number] => {
    const values = all.map((one) => one[axis]);
    return values.length === 0 ? [0, 0] : [Math.min(...values), Math.max(...values)];
  };
  const [across, upright, deep] = [span(0), span(1), span(2)];
  const { right, up, towardsEye } = sightOf(from);
  const middle = (axis: 0 | 1 | 2): number =>
    (right[axis] * (across[0] + across[1]) +
      up[axis] * (upright[0] + upright[1]) +
      towardsEye[axis] * (deep[0] + deep[1])) /
    2;
  const k = Math.min(
    Math.max(width - 2 * margin, 40) / Math.max(across[1] - across[0], 1),
    Math.max(height - 2 * margin, 40) / Math.max(upright[1] - upright[0], 1),
    NEAR[1],
  );
  return { ...from, target: [middle(0), middle(1), middle(2)], k };
}

export function between(a: Orbit, b: Orbit, part: number): Orbit {
  const mix = (from: number, to: number): number => from + (to - from) * part;
  return {
    roundDeg: mix(a.roundDeg, b.roundDeg),
    heightDeg: mix(a.heightDeg, b.heightDeg),
    target: [mix(a.target[0], b.target[0]), mix(a.target[1], b.target[1]), mix(a.target[2], b.target[2])],
    k: mix(a.k, b.k),
  };
}
