/**
 * A buck's screws: through it and the sheathing into the timber round the opening, as far apart as a batten's, or at every
 * stud where there is nothing else, as under a sill. They pass less than a batten's do, so the same screw reaches deep enough.
 */
import { common, type Interval } from "../../geometry/interval.ts";
import { boundsOverlap, type Polygon, polygonBounds, sliceVertical } from "../../geometry/polygon.ts";
import { snap } from "../../units/length.ts";
import { crossingPoints, type ScrewPoint, screwPoints } from "../batten-screws.ts";
import type { Fixing, Piece, Solid } from "../facade.ts";
import { buckFixer } from "../fixings.ts";
import { turnedPolygon } from "../transpose.ts";
import type { Ground, Wall } from "./wall.ts";

/** From a batten's screw through the same timber (common practice: some eight diameters along the grain). */
const APART_MM = 40;
/** From the edges of the timber. */
const EDGE_MM = 8;

/** The buck with its screws, and whether timber holds it along its whole length. */
export function screwed(
  { project, laid }: Wall,
  at: Ground,
  { buck, solids }: { readonly buck: Piece; readonly solids: readonly Solid[] },
): { readonly buck: Piece; readonly isHeld: boolean } {
  // A stud that would stand in a trimmer is left out, and the bay beside it is wider by as much.
  const { spacing, width } = project.structure.studs;
  const widestBay = spacing + width;
  const { points, isHeld } =
    buck.grain === "x"
      ? levelPoints(buck.outline, solids, widestBay)
      : uprightPoints(buck.outline, solids, widestBay);
  const fix = buckFixer(project, at.plane, { zone: at.ground.zone, z: buck.z });
  const supports = [...new Set(points.map(({ solid }) => solid.id))];
  const others = battenScrewsOver(buck, laid);
  const fixings = points.map((point) => fix(clearOf(others, point, buck)));
  return { buck: { ...buck, supports, fixings }, isHeld };
}

function battenScrewsOver({ outline }: Piece, laid: readonly Piece[]): Fixing[] {
  const { x, y } = polygonBounds(outline);
  return laid
    .filter(({ kind }) => kind === "batten")
    .flatMap(({ fixings }) =>
      fixings.filter(
        (one) =>
          one.x > x[0] - APART_MM &&
          one.x < x[1] + APART_MM &&
          one.y > y[0] - APART_MM &&
          one.y < y[1] + APART_MM,
      ),
    );
}

/** The point, or the nearest one along the buck that stands off the battens' screws in the same timber. */
function clearOf(others: readonly Fixing[], point: ScrewPoint, { grain, outline }: Piece): ScrewPoint {
  const near = others.filter(({ into }) => into === point.solid.id);
  const isFree = ({ x, y }: Place): boolean =>
    near.every((other) => Math.hypot(other.x - x, other.y - y) >= APART_MM - NOISE_MM);
  if (isFree(point)) return point;
  const [box, timber] = [polygonBounds(outline), polygonBounds(point.solid.region)];
  const axis = grain === "x" ? "x" : "y";
  const across = axis === "x" ? "y" : "x";
  const places = near
    .flatMap((other) => {
      const off = other[across] - point[across];
      const by = Math.sqrt(Math.max(0, APART_MM ** 2 - off ** 2));
      return [snap(other[axis] - by), snap(other[axis] + by)];
    })
    .filter(
      (at) =>
        at >= Math.max(box[axis][0] + END_MM, timber[axis][0] + EDGE_MM) &&
        at <= Math.min(box[axis][1] - END_MM, timber[axis][1] - EDGE_MM),
    )
    .map((at) => ({ ...point, [axis]: at }))
    .filter(isFree)
    .sort((a, b) => Math.abs(a[axis] - point[axis]) - Math.abs(b[axis] - point[axis]));
  return places[0] ?? point;
}

type Place = Pick<ScrewPoint, "x" | "y">;

/** From the buck's own ends. */
const END_MM = 25;

interface Points {
  readonly points: readonly ScrewPoint[];
  readonly isHeld: boolean;
}

function uprightPoints(outline: Polygon, solids: readonly Solid[], widestBay: number): Points {
  const { x } = polygonBounds(outline);
  const y = wholeAlong(outline, x);
  if (!y) return { points: [], isHeld: false };
  const { points, missed } = screwPoints({ x, y }, solids, () => undefined);
  if (missed.length === 0) return { points, isHeld: points.length >= 2 };
  const atTimber = crossingPoints({ x, y }, solids);
  const [first, last] = [atTimber[0], atTimber.at(-1)];
  const stops = [y[0], ...atTimber.map((point) => point.y), y[1]];
  const isHeld = stops.slice(1).every((stop, i) => stop - (stops[i] as number) <= widestBay + NOISE_MM);
  return { points: atTimber, isHeld: first !== last && isHeld };
}

/** As an upright one, turned. */
function levelPoints(outline: Polygon, solids: readonly Solid[], widestBay: number): Points {
  const { x, y } = polygonBounds(outline);
  const near = solids.filter(({ region }) => boundsOverlap(region, x, y));
  const turned = near.map((solid) => ({ ...solid, region: turnedPolygon(solid.region) }));
  const { points, isHeld } = uprightPoints(turnedPolygon(outline), turned, widestBay);
  return {
    points: points.map((point) => ({
      x: point.y,
      y: point.x,
      solid: near[turned.indexOf(point.solid)] ?? point.solid,
    })),
    isHeld,
  };
}

const NOISE_MM = 0.001;
/** Just inside the edges, where a slice is certain to cut the outline. */
const INSIDE_MM = 0.01;

/** The height over which a strip has its whole width: a rake takes a corner off it. */
function wholeAlong(outline: Polygon, [left, right]: Interval): Interval | undefined {
  const [a] = sliceVertical(outline, left + INSIDE_MM);
  const [b] = sliceVertical(outline, right - INSIDE_MM);
  return a && b && common(a, b);
}
