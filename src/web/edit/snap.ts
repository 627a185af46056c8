/** Where a thing goes that is dragged: onto lines that are near, else in even steps. */
import type { Design } from "../../design.ts";
import type { Interval } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Rect } from "../../geometry/rect.ts";
import { snap } from "../../units/length.ts";

/** Lines that edges are drawn to, mm in the face frame. */
export interface SnapLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** The sides that move; both of an axis when the whole is dragged, none when it keeps its place. */
export interface Grip {
  readonly x: "both" | "low" | "high" | "none";
  readonly y: "both" | "low" | "high" | "none";
}

export interface Snapping {
  readonly lines: SnapLines;
  /** How near a line draws (mm). */
  readonly reach: number;
  /** Else places are whole numbers of this (mm). */
  readonly step: number;
}

/** The lines that were met. */
export type Met = SnapLines;

export interface Dragged {
  readonly rect: Rect;
  readonly met: Met;
}

export const NO_LINES: SnapLines = { x: [], y: [] };

/** What is moved by keys goes as far as they say. */
export const AS_GIVEN: Snapping = { lines: NO_LINES, reach: 0, step: 1 / 8000 };

/** Pixels: how near a line draws. */
const DRAWS = 7;

/** Even steps where no line draws (mm): what a hand on a tape sets out. */
const STEP_MM = { mm: 5, "feet-inch": 6.35 };

/** The snapping of a view where a millimetre is `k` pixels; `free` where lines must not draw. */
export function snappingFor(
  lines: SnapLines,
  { k, units, free }: { k: number; units: "mm" | "feet-inch"; free: boolean },
): Snapping {
  return free ? { lines: NO_LINES, reach: 0, step: 1 } : { lines, reach: DRAWS / k, step: STEP_MM[units] };
}

/** An opening is never dragged smaller than this (mm). */
export const LEAST_MM = 100;

export function dragged(
  rect: Rect,
  {
    grip,
    by,
    snapping,
  }: { readonly grip: Grip; readonly by: readonly [number, number]; readonly snapping: Snapping },
): Dragged {
  const x = along(rect.x, { grip: grip.x, by: by[0], lines: snapping.lines.x, snapping });
  const y = along(rect.y, { grip: grip.y, by: by[1], lines: snapping.lines.y, snapping });
  return { rect: { x: x.span, y: y.span }, met: { x: x.met, y: y.met } };
}

function along(
  [low, high]: Interval,
  at: { grip: Grip["x"]; by: number; lines: readonly number[]; snapping: Snapping },
): { span: Interval; met: readonly number[] } {
  const { grip, by, lines, snapping } = at;
  if (grip === "none" || by === 0) return { span: [low, high], met: [] };
  const moving = grip === "both" ? [low + by, high + by] : [(grip === "low" ? low : high) + by];
  const near = nearest(moving, lines, snapping.reach);
  const shift =
    near ?? snap(Math.round((moving[0] as number) / snapping.step) * snapping.step - (moving[0] as number));
  const [first, last] = [
    grip === "high" ? low : snap(low + by + shift),
    grip === "low" ? high : snap(high + by + shift),
  ];
  const span: Interval =
    grip === "low"
      ? [Math.min(first, snap(high - LEAST_MM)), high]
      : grip === "high"
        ? [low, Math.max(last, snap(low + LEAST_MM))]
        : [first, last];
  const ends = grip === "both" ? span : [grip === "low" ? span[0] : span[1]];
  return { span, met: near === undefined ? [] : lines.filter((line) => ends.includes(line)) };
}

/** One place: on the line that is near, else in a whole number of steps. */
export function placed(
  at: number,
  { lines, reach, step }: { lines: readonly number[]; reach: number; step: number },
): number {
  const near = nearest([at], lines, reach);
  return near === undefined ? snap(Math.round(at / step) * step) : snap(at + near);
}

/** The least shift that puts one of the places on a line. */
function nearest(places: readonly number[], lines: readonly number[], reach: number): number | undefined {
  let best: number | undefined;
  for (const place of places) {
    for (const line of lines) {
      const shift = snap(line - place);
      if (Math.abs(shift) <= reach && (best === undefined || Math.abs(shift) < Math.abs(best))) best = shift;
    }
  }
  return best;
}

/** Sides of the studs and of the face's other openings; heads and sills of all openings that stand. */
export function snapLines({ facade }: Design, { face, id }: { face: string; id: string }): SnapLines {
  const own = facade.faces.find((one) => one.id === face);
  const studs = (own?.solids ?? [])
    .filter(({ kind }) => kind === "stud")
    .flatMap(({ region }) => region.map(([x]) => x));
  const beside = (own?.openings ?? []).filter((one) => one.id !== id).flatMap(({ region }) => region.x);
  const level = facade.faces.flatMap((one) =>
    one.openings.filter((other) => one.id !== face || other.id !== id).flatMap(({ region }) => region.y),
  );
  return { x: unique([...studs, ...beside]), y: unique(level) };
}

/** The same for what is measured by its middle, and the middles of the others like it. */
export function roundLines(design: Design, ref: { face: string; id: string }): SnapLines {
  const { x, y } = snapLines(design, ref);
  const others = design.project.faces.flatMap((face) =>
    (face.penetrations ?? []).filter(({ id }) => id !== ref.id).map((one) => ({ face: face.id, ...one })),
  );
  return {
    x: unique([...x, ...others.filter(({ face }) => face === ref.face).map((one) => one.x)]),
    y: unique([...y, ...others.map((one) => one.y)]),
  };
}

/** For sides of zones and joints: middles of studs too, and the lines that the face is set out by. */
export function zoneLines(design: Design, face: string): SnapLines {
  const { x, y } = snapLines(design, { face, id: "" });
  const own = design.facade.faces.find(({ id }) => id === face);
  const studs = (own?.solids ?? [])
    .filter(({ kind }) => kind === "stud")
    .map(({ region }) => polygonBounds(region).x);
  const lines = own?.controlLines ?? [];
  const of = (direction: "horizontal" | "vertical"): number[] =>
    lines.filter((line) => line.direction === direction).map(({ at }) => at);
  return {
    x: unique([...x, ...studs.map(([from, to]) => snap((from + to) / 2)), ...of("vertical")]),
    y: unique([...y, ...of("horizontal")]),
  };
}

function unique(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
