/** A run of walls as it is told on site: lengths, and the turns between them. */
import { firstCrossing } from "../../geometry/path.ts";
import { distance, type Point } from "../../geometry/point.ts";
import { signedArea } from "../../geometry/polygon.ts";
import { type Message, message } from "../../text/message.ts";
import { degreesToRadians } from "../../units/angle.ts";
import { type LengthUnit, parseLength } from "../../units/feet-inch.ts";
import { snap } from "../../units/length.ts";
import { PLAN_TOLERANCE_MM } from "../check/outlines.ts";

export interface RunWall {
  /** Of its sheathing (mm). */
  readonly length: number;
  /**
   * The turn at its right end, seen from outside (degrees): to the left round an outer corner, less than nothing to the
   * right into an inner one. The last wall of an open run turns nowhere.
   */
  readonly turnDeg: number;
}

export interface Run {
  readonly walls: readonly RunWall[];
  /** The ends of the walls in plan, one more than walls; building frame (mm). */
  readonly points: readonly Point[];
  /** The last wall ends where the first began. */
  readonly closed: boolean;
}

export type ReadRun =
  | { readonly ok: true; readonly run: Run }
  | { readonly ok: false; readonly says: Message };

const SQUARE_DEG = 90;

/** `left`, `right`, their first letters, the same in French; then degrees where the corner is not square. */
const TURN =
  /(?<!\p{L})(left|right|gauche|droite|[lrgd])(?!\p{L})(?:\s*(\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees)?\b|degrés?))?/giu;

/**
 * Walls walked from left to right, seen from outside: `8400, left, 3600, right 45°, 2400`. A turn after the last wall is
 * the one to the first, so the walls must close.
 */
export function readRun(text: string, unit: LengthUnit): ReadRun {
  const turns = [...text.matchAll(TURN)];
  const ends = [...turns.map(({ index }) => index), text.length];
  const starts = [0, ...turns.map((turn) => turn.index + turn[0].length)];
  const lengths = starts.map((from, i) => text.slice(from, ends[i]).replace(/^[\s,;]+|[\s,;]+$/g, ""));
  const turnAfterLast = turns.length > 0 && lengths.at(-1) === "";
  const walls: RunWall[] = [];
  for (const [i, typed] of (turnAfterLast ? lengths.slice(0, -1) : lengths).entries()) {
    const read = parseLength(typed, unit);
    if (!read.ok || read.value <= PLAN_TOLERANCE_MM)
      return no("project.run.no-length", { wall: i + 1, typed });
    const turnDeg = degreesOf(turns[i]);
    if (Math.abs(turnDeg) >= 180 || (turns[i] && turnDeg === 0))
      return no("project.run.no-turn", { wall: i + 1 });
    walls.push({ length: read.value, turnDeg });
  }
  const points = layOut(walls);
  const [first, last] = [points[0] as Point, points.at(-1) as Point];
  const apart = distance(first, last);
  const closed = walls.length > 2 && apart <= PLAN_TOLERANCE_MM;
  if (turnAfterLast && !closed) return no("project.run.apart", { apart: snap(apart) });
  if (closed) points[points.length - 1] = first;
  const crossing = firstCrossing(points);
  if (crossing !== undefined) return no("project.run.crosses", { wall: crossing + 1 });
  if (closed && signedArea(points.slice(0, -1)) < 0) return no("project.run.inward", {});
  return { ok: true, run: { walls, points, closed } };
}

function no(key: string, values: Readonly<Record<string, number | string>>): ReadRun {
  return { ok: false, says: message(key, values) };
}

function degreesOf(turn: RegExpMatchArray | undefined): number {
  if (!turn) return 0;
  const [, word = "", degrees] = turn;
  const angle = degrees === undefined ? SQUARE_DEG : Number(degrees.replace(",", "."));
  return /^[lg]/i.test(word) ? angle : -angle;
}

/** The first wall runs along the building's X; what turns left turns counter-clockwise seen from above. */
function layOut(walls: readonly RunWall[]): Point[] {
  const points: Point[] = [[0, 0]];
  let headingDeg = 0;
  for (const { length, turnDeg } of walls) {
    const [x, y] = points.at(-1) as Point;
    const heading = degreesToRadians(headingDeg);
    // Adding zero makes a plain zero of −0, which JSON does not know.
    points.push([snap(x + Math.cos(heading) * length) + 0, snap(y + Math.sin(heading) * length) + 0]);
    headingDeg += turnDeg;
  }
  return points;
}
