/** What can be drawn anew on a face, how large it starts, and what drawing it does to the file. */
import type { Point } from "../../../geometry/point.ts";
import type { Rect } from "../../../geometry/rect.ts";
import { type Added, faceAt, type Source } from "../../../project/editing/change.ts";
import {
  addOpening,
  type NewOpening,
  OPENING_SIZES,
  roomForOpening,
} from "../../../project/editing/openings.ts";
import {
  addPenetration,
  type NewPenetration,
  PENETRATION_SIZES,
  roomForPenetration,
} from "../../../project/editing/penetrations.ts";
import { snap } from "../../../units/length.ts";
import type { Pick } from "../../picks/pick.ts";
import { LEAST_MM, placed, type SnapLines, type Snapping } from "../snap.ts";

export const NEW_THINGS = ["window", "door", "duct", "lamp box", "tap"] as const;
export type NewThing = (typeof NEW_THINGS)[number];

/** Width and height; of what is round the diameter twice (mm). */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

export function isRound(thing: NewThing): thing is NewPenetration {
  return thing !== "window" && thing !== "door";
}

export function usualExtent(thing: NewThing): Extent {
  if (!isRound(thing)) return OPENING_SIZES[thing];
  const { diameter } = PENETRATION_SIZES[thing];
  return { width: diameter, height: diameter };
}

/** The rectangle from where the press began to where the hand is; what was typed stands in place of what was drawn. */
export function drawnRect(
  from: Point,
  to: Point,
  { snapping, typed }: { snapping: Snapping; typed: Partial<Extent> },
): Rect {
  const along = (
    a: number,
    b: number,
    lines: readonly number[],
    size: number | undefined,
  ): [number, number] => {
    const start = placed(a, { ...snapping, lines });
    const end = size === undefined ? placed(b, { ...snapping, lines }) : snap(start + (b < a ? -size : size));
    return start < end ? [start, end] : [end, start];
  };
  return {
    x: along(from[0], to[0], snapping.lines.x, typed.width),
    y: along(from[1], to[1], snapping.lines.y, typed.height),
  };
}

export function placedPoint([x, y]: Point, { lines, reach, step }: Snapping): Point {
  return [placed(x, { lines: lines.x, reach, step }), placed(y, { lines: lines.y, reach, step })];
}

/** A press that hardly moved meant no opening of its own size. */
export function isDrawn({ x, y }: Rect): boolean {
  return x[1] - x[0] >= LEAST_MM && y[1] - y[0] >= LEAST_MM;
}

/** The lines that the edges of a rectangle lie on. */
export function metBy({ x, y }: Rect, lines: SnapLines): SnapLines {
  return { x: lines.x.filter((at) => x.includes(at)), y: lines.y.filter((at) => y.includes(at)) };
}

/** Around a point: where a finger or a click put it. */
export function rectAround([x, y]: Point, { width, height }: Extent): Rect {
  const [left, low] = [snap(x - width / 2), snap(y - height / 2)];
  return { x: [left, snap(left + width)], y: [low, snap(low + height)] };
}

export function addAt(
  source: Source,
  thing: NewThing,
  { face, rect }: { face: string; rect: Rect },
): Added | undefined {
  if (!isRound(thing)) return addOpening(source, { face, kind: thing, rect });
  const diameter = snap(rect.x[1] - rect.x[0]);
  const at = [snap(rect.x[0] + diameter / 2), snap(rect.y[0] + diameter / 2)] as const;
  return addPenetration(source, { face, kind: thing, round: { at, diameter } });
}

/** In the middle of a face, or where it has room. */
export function addWhereRoom(
  source: Source,
  thing: NewThing,
  { face, extent }: { face: string; extent: Extent },
): Added | undefined {
  const at = faceAt(source, face);
  if (!at) return undefined;
  const rect = isRound(thing)
    ? rectAround(roomForPenetration(at.face, thing, extent.width), { ...extent, height: extent.width })
    : roomForOpening(at.face, { kind: thing satisfies NewOpening, ...extent });
  return addAt(source, thing, { face, rect });
}

export function pickOf(thing: NewThing, { added }: Added): Pick {
  return { kind: isRound(thing) ? "penetration" : "opening", ...added };
}
