/** Ends of walls that meet: both are taken to the corner of their outer faces, wherever the joint of the walls behind it lies. */
import type { Point } from "../../../geometry/point.ts";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { snap } from "../../../units/length.ts";
import type { WallSide } from "./wall-side.ts";

/** Walls that turn less are no corner (sine; three degrees). */
const STRAIGHT = 0.05;

/** How far a wall's end may lie off beyond the thickness of the walls (mm): what drawing leaves. */
const SLACK_MM = 5;

/** Ends that move less are where they were (mm). */
const STAYS_MM = 0.01;

/** A side with the walls that it is made of. */
export interface Planned extends WallSide {
  readonly names: readonly string[];
}

export interface MovedEnd {
  readonly side: number;
  readonly end: "left" | "right";
  /** More than nothing where the face becomes longer (mm). */
  readonly by: number;
}

interface Meeting {
  readonly left: number;
  readonly right: number;
  /** How far the right end of the left one, and the left end of the right one, have to go to the corner (mm). */
  readonly by: readonly [number, number];
}

export function joinCorners(sides: readonly Planned[]): {
  readonly sides: readonly Planned[];
  readonly meets: readonly (readonly [left: number, right: number])[];
  readonly moved: readonly MovedEnd[];
} {
  const found = sides
    .flatMap((_, left) => sides.flatMap((__, right) => meeting(sides, left, right) ?? []))
    .sort((a, b) => strayed(a) - strayed(b));
  const joined = [...sides];
  const meets: (readonly [number, number])[] = [];
  const moved: MovedEnd[] = [];
  for (const { left, right, by } of found) {
    if (meets.some(([l, r]) => l === left || r === right)) continue;
    const a = stretched(joined[left] as Planned, "right", by[0]);
    const b = stretched(joined[right] as Planned, "left", by[1]);
    if (!a || !b) continue;
    joined[left] = a;
    joined[right] = b;
    meets.push([left, right]);
    const ends: MovedEnd[] = [
      { side: left, end: "right", by: by[0] },
      { side: right, end: "left", by: by[1] },
    ];
    moved.push(...ends.filter(({ by: mm }) => Math.abs(mm) > STAYS_MM));
  }
  return { sides: joined, meets, moved };
}

function strayed({ by }: Meeting): number {
  return Math.abs(by[0]) + Math.abs(by[1]);
}

function meeting(sides: readonly Planned[], left: number, right: number): Meeting | undefined {
  const [a, b] = [sides[left], sides[right]] as [Planned, Planned];
  if (left === right) return undefined;
  const sine = a.along[0] * b.along[1] - a.along[1] * b.along[0];
  if (Math.abs(sine) < STRAIGHT) return undefined;
  const [ya, yb] = [polygonBounds(a.outline).y, polygonBounds(b.outline).y];
  if (Math.min(ya[1], yb[1]) <= Math.max(ya[0], yb[0])) return undefined;
  const [from, to] = [endPoint(a, "right"), endPoint(b, "left")];
  const apart: Point = [to[0] - from[0], to[1] - from[1]];
  const onA = (apart[0] * b.along[1] - apart[1] * b.along[0]) / sine;
  const onB = (apart[0] * a.along[1] - apart[1] * a.along[0]) / sine;
  const reach = Math.max(a.thickness, b.thickness) / Math.abs(sine) + SLACK_MM;
  if (Math.abs(onA) > reach || Math.abs(onB) > reach) return undefined;
  return { left, right, by: [onA, -onB] };
}

function endPoint({ along, outward, offset, left, outline }: Planned, end: "left" | "right"): Point {
  const x = left + polygonBounds(outline).x[end === "left" ? 0 : 1];
  return [along[0] * x + outward[0] * offset, along[1] * x + outward[1] * offset];
}

/**
 * A side with one end further out, or in; what runs up to that end at a slope goes on at it. Undefined where the end would be drawn
 * in past a corner of the outline, or an opening.
 */
function stretched(side: Planned, end: "left" | "right", by: number): Planned | undefined {
  const { outline, openings } = side;
  const { x } = polygonBounds(outline);
  const was = end === "left" ? x[0] : x[1];
  const is = snap(end === "left" ? was - by : was + by);
  const beyond = (at: number): boolean => (end === "left" ? at < is : at > is);
  if (outline.some(([at]) => at !== was && beyond(at))) return undefined;
  if (openings.some((one) => beyond(one.x[end === "left" ? 0 : 1]))) return undefined;
  const at = (i: number): Point => outline[(i + outline.length) % outline.length] as Point;
  return {
    ...side,
    outline: outline.map(([px, py], i): Point => {
      if (px !== was) return [px, py];
      const [before, after] = [at(i - 1), at(i + 1)];
      const [qx, qy] = before[0] === was ? after : before;
      return [is, qx === was ? py : snap(py + ((py - qy) / (was - qx)) * (is - was))];
    }),
  };
}
