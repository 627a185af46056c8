/** A run of walls drawn by hand in plan: where the hand means a corner to be, and the words in which the run is told. */
import { distance, type Point } from "../../geometry/point.ts";
import { degreesToRadians, radiansToDegrees } from "../../units/angle.ts";
import { snap } from "../../units/length.ts";
import { printLength } from "../../units/print-length.ts";

/** Walls are drawn in whole steps of length (mm), their corners in whole steps of turn (degrees). */
export interface PlanSteps {
  readonly lengthMm: number;
  readonly turnDeg: number;
}

/** A wall goes no nearer back on the one before it than this. */
const MOST_TURN_DEG = 165;

/**
 * The corners (plan, building frame, mm) with the one that follows them where the hand is at `at`: the wall before it in whole steps, the
 * first wall along X. Near the first corner, within a step, it is that one; straight on, the last wall grows. Undefined where the
 * hand has gone no step yet.
 */
export function withCorner(points: readonly Point[], at: Point, steps: PlanSteps): Point[] | undefined {
  const next = nextCorner(points, at, steps);
  if (!next) return undefined;
  const [before, last] = points.slice(-2);
  const straight =
    points.length > 1 &&
    before !== undefined &&
    last !== undefined &&
    Math.abs(turnBetween(headingOf(before, last), headingOf(last, next))) < STRAIGHT_DEG;
  return [...(straight ? points.slice(0, -1) : points), next];
}

/** Walls that turn less are one. */
const STRAIGHT_DEG = 1e-6;

function nextCorner(points: readonly Point[], at: Point, steps: PlanSteps): Point | undefined {
  const [first, from] = [points[0], points.at(-1)];
  if (!first || !from) return undefined;
  if (points.length > 2 && distance(first, at) <= steps.lengthMm) return first;
  const before = points.length > 1 ? headingOf(points.at(-2) as Point, from) : 0;
  const wished = turnBetween(before, headingOf(from, at));
  const stepped = Math.round(wished / steps.turnDeg) * steps.turnDeg;
  const turn = points.length > 1 ? Math.min(Math.max(stepped, -MOST_TURN_DEG), MOST_TURN_DEG) : 0;
  const heading = degreesToRadians(before + turn);
  const along = (at[0] - from[0]) * Math.cos(heading) + (at[1] - from[1]) * Math.sin(heading);
  const length = Math.round(along / steps.lengthMm) * steps.lengthMm;
  if (length <= 0) return undefined;
  return [snap(from[0] + Math.cos(heading) * length) + 0, snap(from[1] + Math.sin(heading) * length) + 0];
}

/**
 * The corners with one of them moved to `at`, in whole steps along X and Y; where the run closes its first corner is its last as
 * well. The first two keep to the line of the first wall, which runs along X.
 */
export function cornerMoved(
  points: readonly Point[],
  { corner, at }: { readonly corner: number; readonly at: Point },
  { lengthMm }: PlanSteps,
): Point[] {
  const stepped = (mm: number): number => snap(Math.round(mm / lengthMm) * lengthMm) + 0;
  const [, level] = points[0] as Point;
  const to: Point = [stepped(at[0]), corner < 2 ? level : stepped(at[1])];
  const last = points.length - 1;
  const closes = last > 2 && samePlace(points[0] as Point, points[last] as Point);
  const moved = points.map((point, i) => (i === corner ? to : point));
  if (closes && corner === 0) moved[last] = to;
  if (closes && corner === last) moved[0] = to;
  return moved;
}

/**
 * The run as `readRun` reads it: lengths in the units told, turns to the left or right, with their degrees where they are not
 * square. A run that closes ends with the turn to its first wall.
 */
export function tellRun(
  points: readonly Point[],
  { units, language }: { readonly units: "mm" | "feet-inch"; readonly language: "en" | "fr" },
): string {
  const walls = points.slice(1).map((to, i) => ({ from: points[i] as Point, to }));
  const closes = walls.length > 2 && samePlace(points[0] as Point, points.at(-1) as Point);
  const headings = walls.map(({ from, to }) => headingOf(from, to));
  const told = walls.flatMap(({ from, to }, i): string[] => {
    const next = headings[i + 1] ?? (closes ? headings[0] : undefined);
    const length = printLength(distance(from, to), { display: units, denominator: 64 });
    return next === undefined ? [length] : [length, turnTold(turnBetween(headings[i] ?? 0, next), language)];
  });
  return told.join(", ");
}

const WORDS = { en: { left: "left", right: "right" }, fr: { left: "gauche", right: "droite" } } as const;

function turnTold(turnDeg: number, language: "en" | "fr"): string {
  const word = WORDS[language][turnDeg >= 0 ? "left" : "right"];
  const degrees = Number(Math.abs(turnDeg).toFixed(3));
  return degrees === 90 ? word : `${word} ${degrees}°`;
}

function headingOf([ax, ay]: Point, [bx, by]: Point): number {
  return radiansToDegrees(Math.atan2(by - ay, bx - ax));
}

/** From one heading to another, to the left counted up: above −180 to 180 degrees. */
function turnBetween(from: number, to: number): number {
  const turn = (to - from) % 360;
  if (turn > 180) return turn - 360;
  return turn <= -180 ? turn + 360 : turn;
}

function samePlace(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
